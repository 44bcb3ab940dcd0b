import type { Primitive } from './primitive.js';

/** A line of the legend. */
export interface LegendEntry {
  /** What stands for the thing, drawn about 0, 0 in a box 9 mm wide and 3 mm high. */
  readonly sample: readonly Primitive[];
  readonly text: string;
}
