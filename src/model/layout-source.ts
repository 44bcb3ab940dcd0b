import type { Hole, Layout } from '../generated/layout.js';

/**
 * A layout as the writers read it: all members but the holes at once, the holes one by one.
 *
 * Holes are the parsed records as they stood in the input, unknown members included, so that a
 * writer that can carry them does.
 */
export interface LayoutSource {
  /** All members of the layout but `holes`. */
  readonly header: Omit<Layout, 'holes'>;
  /** Number of holes. */
  readonly holeCount: number;
  /** The holes in the order of the document; may be called more than once. */
  holes(): Iterable<Hole>;
}

/** One kind of thing that did not travel in a conversion. */
export interface Loss {
  /** What did not travel: a member such as `holes/moveAllowance`, or a collection such as `keepOuts`. */
  field: string;
  /** How many times. */
  count: number;
  /** Why, in plain words. */
  reason: string;
  /** Whether the target holds enough to find it again. */
  recoverable: boolean;
}
