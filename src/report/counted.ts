import type { Cause } from '../generated/report.js';

/** A number with its noun: `1 finding`, `2 findings`. */
export function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

/** How many findings causes stand for. */
export function findingsIn(causes: readonly Cause[]): number {
  return causes.reduce((total, { findings }) => total + findings, 0);
}
