import type { Display } from '../generated/layout.js';

/** A scale of a drawing. */
export interface Scale {
  /** Millimetres of the building to one of paper. */
  readonly denominator: number;
  /** As it is written on drawings: `1:100`, `1/8" = 1'-0"`, `1" = 20'`. */
  readonly name: string;
}

export type UnitSystem = 'metric' | 'imperial';

/** The system of units that a project reads; millimetres where it does not say. */
export function unitSystemOf(display: Display | undefined): UnitSystem {
  const unit = display?.length ?? 'mm';
  return unit === 'mm' || unit === 'm' ? 'metric' : 'imperial';
}

/** Scales of drawings in inches to the foot; common practice. */
const TO_THE_FOOT: readonly [inches: string, denominator: number][] = [
  ['3', 4],
  ['1 1/2', 8],
  ['1', 12],
  ['3/4', 16],
  ['1/2', 24],
  ['3/8', 32],
  ['1/4', 48],
  ['3/16', 64],
  ['1/8', 96],
  ['3/32', 128],
  ['1/16', 192],
];

const IMPERIAL: readonly Scale[] = TO_THE_FOOT.map(([inches, denominator]) => ({
  denominator,
  name: `${inches}" = 1'-0"`,
}));

/** Steps of round scales within a power of ten. */
const BAR_STEPS = [1, 2, 5];
/** The same with quarters, such as 1:250; common practice. */
const METRIC_STEPS = [1, 2, 2.5, 5];
/** Feet to an inch. */
const FEET_STEPS = [1, 2, 3, 4, 5, 6];

/** The largest round scale at which so many millimetres of the building need no more than one of paper. */
export function roundScale(leastDenominator: number, system: UnitSystem): Scale {
  const least = Math.max(leastDenominator, 1) * (1 - 1e-9);
  if (system === 'metric') {
    const denominator = roundUp(least, METRIC_STEPS);
    return { denominator, name: `1:${denominator}` };
  }
  const toTheFoot = IMPERIAL.find(({ denominator }) => denominator >= least);
  if (toTheFoot !== undefined) return toTheFoot;
  const feet = roundUp(Math.max(least / 12, 20), FEET_STEPS);
  return { denominator: feet * 12, name: `1" = ${feet}'` };
}

/** A scale bar: a round length and its name. */
export interface ScaleBar {
  readonly lengthMm: number;
  /** The length without its unit, and half of it. */
  readonly value: number;
  readonly unit: 'mm' | 'm' | 'in' | 'ft';
}

/** The longest bar of a round length that is no longer than that, in the unit of the project. */
export function scaleBar(mostMm: number, display: Display | undefined): ScaleBar {
  const isMetric = unitSystemOf(display) === 'metric';
  const [large, small] = isMetric ? (['m', 'mm'] as const) : (['ft', 'in'] as const);
  const [largeMm, smallMm] = isMetric ? [1000, 1] : [304.8, 25.4];
  const isLarge = mostMm >= largeMm;
  const unitMm = isLarge ? largeMm : smallMm;
  const value = roundDown(mostMm / unitMm, BAR_STEPS);
  return { lengthMm: value * unitMm, value, unit: isLarge ? large : small };
}

/** The least step times a power of ten that is not below a value. */
function roundUp(value: number, steps: readonly number[]): number {
  const power = 10 ** Math.floor(Math.log10(value));
  for (const step of steps) if (step * power >= value) return tidy(step * power);
  return tidy(10 * power);
}

function roundDown(value: number, steps: readonly number[]): number {
  const power = 10 ** Math.floor(Math.log10(value));
  for (let k = steps.length - 1; k >= 0; k--) if (steps[k] * power <= value * (1 + 1e-9)) return tidy(steps[k] * power);
  return tidy(power);
}

/** Without the last digits that a power of ten below one leaves. */
function tidy(value: number): number {
  return Number(value.toPrecision(3));
}
