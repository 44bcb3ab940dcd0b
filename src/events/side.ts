import type { Rec } from './records.js';

/** One of two layouts, its holes in memory. */
export interface Side {
  header: Rec;
  holes: readonly Rec[];
}
