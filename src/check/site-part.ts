import type { LayoutModel } from '../model/layout-model.js';
import type { Observe } from '../model/observation.js';

/** A layout that is to be checked. */
export interface InputLayout {
  layout: LayoutModel;
  /** Number of the input among all, from 0, and the name that it was given. */
  input: number;
  name: string;
  observe: Observe;
  /** Reads the tag of a hole from the input once more, which takes time. Absent: tags cannot be compared. */
  tagOf?(hole: number): string | undefined;
}

/** One layout of a site. */
export interface SitePart extends InputLayout {
  /** Number of its first hole among those of all parts. */
  firstHole: number;
}
