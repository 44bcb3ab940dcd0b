import { formatFeetInches, type InchDenominator } from './format-feet-inches.js';
import { formatDecimal, formatMm } from './format-mm.js';
import { lengthUnits } from './length-unit.js';
import type { TextUnit } from './parse-length.js';
import type { DecimalSign } from './scan-decimal.js';

/** How a length is written. */
export interface LengthFormat {
  readonly unit: TextUnit;
  /** With `ft-in`: finest fraction of an inch. Absent: 64. */
  readonly fraction?: InchDenominator;
  /** With a decimal unit: most decimals. Absent: as few as hold a millionth of a millimetre. */
  readonly decimals?: number;
  /** Absent: point. */
  readonly decimal?: DecimalSign;
}

/** Below half a millionth of a millimetre, so that rounding what is read back finds the length. */
const LARGEST_CHANGE_MM = 0.0000004;

/** A length in millimetres as text in the format; `parseLength` with the same unit reads it back. */
export function formatLength(mm: number, format: LengthFormat): string {
  if (format.unit === 'ft-in') return formatFeetInches(mm, format.fraction ?? 64);
  const text = formatInUnit(mm, format.unit, format.decimals);
  return format.decimal === 'comma' ? text.replace('.', ',') : text;
}

function formatInUnit(mm: number, unit: keyof typeof lengthUnits, decimals: number | undefined): string {
  if (unit === 'mm' && decimals === undefined) return formatMm(mm);
  const { numerator, denominator, decimals: most } = lengthUnits[unit];
  const value = (mm * denominator) / numerator;
  if (decimals !== undefined) return formatDecimal(value, decimals);
  return formatDecimal(value, fewestDecimals(value, mm, numerator / denominator, most));
}

/** Fewest decimals that keep the length to a millionth of a millimetre. */
function fewestDecimals(value: number, mm: number, mmPerUnit: number, most: number): number {
  let power = 1;
  for (let decimals = 0; decimals < most; decimals++) {
    const nearest = Math.round(value * power) / power;
    if (Math.abs(nearest * mmPerUnit - mm) <= LARGEST_CHANGE_MM) return decimals;
    power *= 10;
  }
  return most;
}
