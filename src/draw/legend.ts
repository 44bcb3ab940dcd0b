import type { Primitive } from './primitive.js';

/** A line of the legend. */
export interface LegendEntry {
  /** What stands for the thing, drawn about 0, 0 in a box 9 mm wide and 3 mm high. */
  readonly sample: readonly Primitive[];
  readonly text: string;
}

/** What a part of a plan draws, and what it has to say about it. */
export interface PlanPart {
  readonly primitives: readonly Primitive[];
  readonly notes: readonly string[];
}
