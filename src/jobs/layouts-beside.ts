import { whyApart } from '../check/sites-of.js';
import type { LayoutSource } from '../model/layout-source.js';
import type { ClosedInput } from './checked-input.js';

/** The layouts that were checked together with one. */
export interface LayoutsBeside {
  /** Those of its frame. */
  readonly sources: readonly LayoutSource[];
  /** Names of these. */
  readonly together: readonly string[];
  /** Names of inputs that cannot be compared with it: those of another frame, other revisions of it, and what is no sound layout. */
  readonly apart: readonly string[];
}

/** What lies beside one of the inputs of a check, by the same measure as the check itself. */
export function layoutsBeside(inputs: readonly (ClosedInput | undefined)[], index: number): LayoutsBeside {
  const own = inputs[index]?.model;
  const sources: LayoutSource[] = [];
  const together: string[] = [];
  const apart: string[] = [];
  for (const [k, input] of inputs.entries()) {
    if (k === index || input === undefined) continue;
    const source = input.layout();
    const isBeside =
      source !== undefined &&
      own !== undefined &&
      input.model !== undefined &&
      whyApart(own, input.model) === undefined;
    (isBeside ? together : apart).push(input.summary.name);
    if (isBeside) sources.push(source);
  }
  return { sources, together, apart };
}
