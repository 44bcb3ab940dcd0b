/** Points that outlines, keep-outs and gridlines of one plan may have; more than any plan shows. */
const MOST_POINTS = 40_000;

/** Keeps a plan small whatever a layout holds: shapes are drawn in their order until their points are used up. */
export class ShapeBudget {
  private left = MOST_POINTS;
  /** Shapes that found none left. */
  leftOut = 0;

  /** Lets the shape through, or counts it as left out and gives one without points. */
  take<T>(shape: readonly T[]): readonly T[] {
    if (shape.length > this.left) {
      this.leftOut++;
      return [];
    }
    this.left -= shape.length;
    return shape;
  }
}
