import type { Display } from '../../generated/layout.js';
import { formatFeetInches } from '../../units/format-feet-inches.js';
import { formatLength } from '../../units/format-length.js';
import { lengthUnits } from '../../units/length-unit.js';

/** Lengths in millimetres as the crew of a project reads them, with unit or mark where the name does not say otherwise. */
export interface SheetLengths {
  /** Name of the unit in `Display`. */
  readonly unit: Display['length'];
  /** The unit where it has to be named beside lengths without one: none for feet and inches, which have marks. */
  readonly unitBeside: string | undefined;
  /** Without the unit that is named beside it. */
  bare(text: string): string;
  /** A place or distance, to the nearest step. */
  distance(mm: number): string;
  /** A size of a hole, to the nearest step; `≈` before it where that changes it by more than 0.05 mm. Inches without feet below a foot. */
  size(mm: number): string;
  /** What may not be more, to the step below; in millimetres where that would be zero. */
  atMost(mm: number): string;
  /** A limit deviation, to the step nearer to zero: `+1/8"`, `−2 mm`, `0`. */
  deviation(mm: number): string;
}

const DECIMALS = { mm: 1, m: 4, ft: 3, in: 3 } as const;
/** What a step may change of a size and nobody sees it. */
const UNSEEN_MM = 0.05;

/** How lengths are written on a sheet; millimetres where the project does not say. */
export function sheetLengths(display: Display | undefined): SheetLengths {
  const unit = display?.length ?? 'mm';
  const fraction = display?.fraction ?? 16;
  const decimals = unit === 'ft-in' ? 0 : (display?.decimals ?? DECIMALS[unit]);
  const stepMm = unit === 'ft-in' ? 25.4 / fraction : stepOf(unit, decimals);
  const distance = (mm: number): string =>
    unit === 'ft-in' ? formatFeetInches(mm, fraction) : `${formatLength(mm, { unit, decimals })} ${unit}`;
  const short = (mm: number): string => (unit === 'ft-in' ? withoutFeet(distance(mm)) : distance(mm));
  const atMost = (mm: number): string => {
    // The addend lets a whole step stand that the division put a hair below.
    const steps = Math.floor(mm / stepMm + 1e-6);
    return steps === 0 && mm > 0 ? `${formatLength(mm, { unit: 'mm', decimals: 2 })} mm` : short(steps * stepMm);
  };
  return {
    unit,
    unitBeside: unit === 'ft-in' ? undefined : unit,
    bare: (text) => (unit !== 'ft-in' && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text),
    distance,
    size(mm) {
      const nearest = Math.round(mm / stepMm) * stepMm;
      return `${Math.abs(nearest - mm) > UNSEEN_MM ? '≈ ' : ''}${short(mm)}`;
    },
    atMost,
    deviation: (mm) => (mm === 0 ? '0' : `${mm > 0 ? '+' : '−'}${atMost(Math.abs(mm))}`),
  };
}

function stepOf(unit: 'mm' | 'm' | 'ft' | 'in', decimals: number): number {
  const { numerator, denominator } = lengthUnits[unit];
  return numerator / denominator / 10 ** decimals;
}

/** `0'-1 5/8"` as `1 5/8"`, `0'-0 1/4"` as `1/4"`. */
function withoutFeet(text: string): string {
  return text.replace(/^(-?)0'-/, '$1').replace(/^(-?)0 (?=\d)/, '$1');
}
