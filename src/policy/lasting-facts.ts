/**
 * Numbers that differ by no more are the same fact: what a layout loses when it is written with six decimals of a
 * millimetre, with some room. For small numbers, which may be ratios, a thousandth of them counts.
 */
const SAME = 0.0005;
const SAME_SHARE = 0.001;
const LEAST = 1e-6;

/**
 * Facts that hang on the day of the check, on which inputs it was given, or on how many other holes share a cause:
 * not on what was accepted.
 */
const PASSING: ReadonlySet<string> = new Set([
  'day',
  'input',
  'otherInput',
  'otherName',
  'shared',
  'ofLevel',
  'least',
  'most',
]);

/** The facts of a finding that decide whether it is the one that was accepted. */
export function lastingFacts(data: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(data).filter(([key, value]) => !PASSING.has(key) && value !== undefined));
}

/** Whether two facts are the same: numbers but for rounding, all else equal. */
export function isSameFact(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return isSameNumber(a, b);
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSameFact(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}

function isSameNumber(a: number, b: number): boolean {
  const most = Math.max(LEAST, Math.min(SAME, SAME_SHARE * Math.max(Math.abs(a), Math.abs(b))));
  return Math.abs(a - b) <= most || Object.is(a, b);
}
