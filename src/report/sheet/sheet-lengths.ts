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
  /**
   * A depth with what it may be deeper and shallower, such as `1 5/8"`, `+1/8"` and `0`: what is written lies between
   * the least and the greatest depth, whatever is rounded. Millimetres where no step does.
   */
  depth(mm: number, limits: readonly [lower: number, upper: number]): [depth: string, upper: string, lower: string];
}

const DECIMALS = { mm: 1, m: 4, ft: 3, in: 3 } as const;
/** Share of a step that lets a whole one stand that a division put a hair beside. */
const HAIR = 1e-6;
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
    const steps = Math.floor(mm / stepMm + HAIR);
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
    depth(mm, [lower, upper]) {
      const least = Math.ceil((mm + lower) / stepMm - HAIR);
      const greatest = Math.floor((mm + upper) / stepMm + HAIR);
      if (least > greatest) return [inMm(mm), deviation(upper, inMm), deviation(lower, inMm)];
      const steps = Math.min(Math.max(Math.round(mm / stepMm), least), greatest);
      const written = `${Math.abs(steps * stepMm - mm) > UNSEEN_MM ? '≈ ' : ''}${short(steps * stepMm)}`;
      return [written, deviation((greatest - steps) * stepMm, short), deviation((least - steps) * stepMm, short)];
    },
  };
}

function inMm(mm: number): string {
  return `${formatLength(mm, { unit: 'mm', decimals: 2 })} mm`;
}

/** A limit deviation with its sign: `+1/8"`, `−2 mm`, `0`. */
function deviation(mm: number, say: (mm: number) => string): string {
  return mm === 0 ? '0' : `${mm > 0 ? '+' : '−'}${say(Math.abs(mm))}`;
}

function stepOf(unit: 'mm' | 'm' | 'ft' | 'in', decimals: number): number {
  const { numerator, denominator } = lengthUnits[unit];
  return numerator / denominator / 10 ** decimals;
}

/** `0'-1 5/8"` as `1 5/8"`, `0'-0 1/4"` as `1/4"`. */
function withoutFeet(text: string): string {
  return text.replace(/^(-?)0'-/, '$1').replace(/^(-?)0 (?=\d)/, '$1');
}
