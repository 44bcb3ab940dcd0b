/** A length unit in which decimal numbers are written. */
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft' | 'us-ft';

/** A unit as an exact ratio: one unit is `numerator / denominator` millimetres. */
export interface LengthRatio {
  readonly numerator: number;
  readonly denominator: number;
  /** Least number of decimals of the unit whose last place is finer than 0.000001 mm. */
  readonly decimals: number;
}

/**
 * Millimetres in one unit, exactly. The inch is 25.4 mm, the foot is the international foot of
 * 0.3048 m, the US survey foot is 1200/3937 m (85 FR 62698 of 5 October 2020).
 */
export const lengthUnits: Readonly<Record<LengthUnit, LengthRatio>> = {
  mm: { numerator: 1, denominator: 1, decimals: 6 },
  cm: { numerator: 10, denominator: 1, decimals: 7 },
  m: { numerator: 1000, denominator: 1, decimals: 9 },
  in: { numerator: 254, denominator: 10, decimals: 8 },
  ft: { numerator: 3048, denominator: 10, decimals: 9 },
  'us-ft': { numerator: 1200000, denominator: 3937, decimals: 9 },
};
