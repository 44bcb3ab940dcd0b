/** Points of a plan, `x[k]` and `y[k]` of each, in one unit. */
export interface PlanPoints {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
}

/** A set of points moved so that its centroid is the origin, and where the centroid was. */
export interface CentredPoints {
  x: Float64Array;
  y: Float64Array;
  middle: readonly [x: number, y: number];
  /** Sum of the squared distances from the centroid. */
  spreadSq: number;
}

/**
 * Moves points to their centroid.
 *
 * Differences from the first point are summed, so that coordinates of a map far from its origin lose no
 * digits to the sum.
 */
export function centred({ x, y }: PlanPoints): CentredPoints {
  const count = x.length;
  let sumX = 0;
  let sumY = 0;
  for (let k = 0; k < count; k++) {
    sumX += x[k] - x[0];
    sumY += y[k] - y[0];
  }
  const offX = count > 0 ? sumX / count : 0;
  const offY = count > 0 ? sumY / count : 0;
  const fromX = Float64Array.from(x, (value) => value - x[0] - offX);
  const fromY = Float64Array.from(y, (value) => value - y[0] - offY);
  let spreadSq = 0;
  for (let k = 0; k < count; k++) spreadSq += fromX[k] ** 2 + fromY[k] ** 2;
  return { x: fromX, y: fromY, middle: [x[0] + offX, y[0] + offY], spreadSq };
}
