import type { Spot } from './primitive.js';

/** A box on paper, millimetres. */
export interface PaperBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What lies beyond the box is kept so far, so that the ends of what is cut are not seen; mm of paper. */
const BEYOND_MM = 5;
/** Points nearer than this to the last one are left out of a line; mm of paper. */
const FINEST_MM = 0.03;

/** How a piece of the plan comes to paper: x to the right, y upward, as if seen from above. Exact at any distance from the origin. */
export class PlanView {
  /**
   * @param box where on paper
   * @param denominator millimetres of the building to one of paper
   * @param x y plan point in the middle of the box, millimetres
   */
  constructor(
    readonly box: PaperBox,
    readonly denominator: number,
    private readonly x: number,
    private readonly y: number,
  ) {}

  /** Place of a plan point on paper; anywhere, also far off it. */
  spot(x: number, y: number): Spot {
    const { left, top, right, bottom } = this.box;
    return [(left + right) / 2 + (x - this.x) / this.denominator, (top + bottom) / 2 - (y - this.y) / this.denominator];
  }

  /** Whether a spot lies in the box. */
  holds([x, y]: Spot): boolean {
    const { left, top, right, bottom } = this.box;
    return x >= left && x <= right && y >= top && y <= bottom;
  }

  /** Plan coordinates of the corners that the box shows. */
  get shown(): { xLow: number; yLow: number; xHigh: number; yHigh: number } {
    const { left, top, right, bottom } = this.box;
    const [halfX, halfY] = [((right - left) / 2) * this.denominator, ((bottom - top) / 2) * this.denominator];
    return { xLow: this.x - halfX, yLow: this.y - halfY, xHigh: this.x + halfX, yHigh: this.y + halfY };
  }

  /** The pieces of a line that lie in the box or up to `beyond` outside of it, thinned to what can be seen. */
  line(points: readonly (readonly [number, number, ...number[]])[], beyond = BEYOND_MM): Spot[][] {
    const box = grownBox(this.box, beyond);
    const pieces: Spot[][] = [];
    let piece: Spot[] = [];
    let last = points.length > 0 ? this.spot(points[0][0], points[0][1]) : undefined;
    for (let k = 1; k < points.length && last !== undefined; k++) {
      const spot = this.spot(points[k][0], points[k][1]);
      const isEnd = k === points.length - 1;
      if (!isEnd && Math.hypot(spot[0] - last[0], spot[1] - last[1]) < FINEST_MM) continue;
      const cut = cutSegment(last, spot, box);
      if (cut !== undefined) {
        const end = piece.at(-1);
        if (end === undefined || end[0] !== cut[0][0] || end[1] !== cut[0][1]) {
          piece = [cut[0]];
          pieces.push(piece);
        }
        piece.push(cut[1]);
      }
      last = spot;
    }
    return pieces;
  }

  /** The part of a ring that lies in the box or a little outside of it, for filling; without points where there is none. */
  ring(points: readonly (readonly [number, number, ...number[]])[], beyond = BEYOND_MM): Spot[] {
    const spots: Spot[] = [];
    for (const [x, y] of points) {
      const spot = this.spot(x, y);
      const last = spots.at(-1);
      if (last === undefined || Math.hypot(spot[0] - last[0], spot[1] - last[1]) >= FINEST_MM) spots.push(spot);
    }
    return cutRing(spots, grownBox(this.box, beyond));
  }
}

export function grownBox({ left, top, right, bottom }: PaperBox, by: number): PaperBox {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}

/** The part of a segment in a box (Liang and Barsky); undefined where there is none. */
export function cutSegment(from: Spot, to: Spot, box: PaperBox): [Spot, Spot] | undefined {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  let [start, end] = [0, 1];
  const sides = [
    [-dx, from[0] - box.left],
    [dx, box.right - from[0]],
    [-dy, from[1] - box.top],
    [dy, box.bottom - from[1]],
  ];
  for (const [p, q] of sides) {
    if (p === 0 && q < 0) return undefined;
    if (p < 0) start = Math.max(start, q / p);
    if (p > 0) end = Math.min(end, q / p);
  }
  if (!(start <= end)) return undefined;
  const at = (t: number): Spot => [from[0] + t * dx, from[1] + t * dy];
  return [start === 0 ? from : at(start), end === 1 ? to : at(end)];
}

/** A ring cut to a box, one side after the other (Sutherland and Hodgman). */
function cutRing(ring: readonly Spot[], box: PaperBox): Spot[] {
  const sides: [axis: 0 | 1, limit: number, sign: 1 | -1][] = [
    [0, box.left, 1],
    [0, box.right, -1],
    [1, box.top, 1],
    [1, box.bottom, -1],
  ];
  let cut = [...ring];
  for (const [axis, limit, sign] of sides) {
    const aside = (spot: Spot) => (spot[axis] - limit) * sign;
    const next: Spot[] = [];
    for (let k = 0; k < cut.length; k++) {
      const [from, to] = [cut[(k + cut.length - 1) % cut.length], cut[k]];
      const [a, b] = [aside(from), aside(to)];
      if (a < 0 !== b < 0) {
        const t = a / (a - b);
        next.push([from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])]);
      }
      if (b >= 0) next.push(to);
    }
    cut = next;
  }
  return cut;
}
