import type { KeepOut } from '../generated/layout.js';
import { bucketMask, hashRow } from '../geometry/near-pairs.js';
import { distanceToPrism, newPrism, type Prism } from '../geometry/prism.js';
import { distancePointSegment, distanceSegmentSegment } from '../geometry/segment.js';
import { along, subtract, type Vec3 } from '../geometry/vector.js';

/** Side of a cell, mm: somewhat larger than the reach of most holes, so that one looks into one or two. */
const CELL_MM = 1500;
/** A shape that touches more cells than this is tested against every hole instead. */
const MOST_CELLS = 200_000;
/** Cells of all shapes together; shapes beyond are tested against every hole. */
const MOST_PAIRS = 2_000_000;
/** A hole that touches more cells than this is tested against every shape instead. */
const MOST_CELLS_OF_HOLE = 1000;

interface Entry {
  keepOut: KeepOut;
  prism: Prism | undefined;
  /** Clear distance at which it begins to matter: standoff and radius, mm. */
  reach: number;
}

/** Keep-outs by place. Millimetres, site frame. */
export class KeepOutIndex {
  /** Keep-outs that have a shape that can be judged. */
  readonly count: number;
  /** Distances computed since the index was made. */
  tests = 0;
  private readonly entries: Entry[];
  private readonly everywhere: number[] = [];
  private readonly starts: Int32Array;
  private readonly items: Int32Array;
  private readonly mask: number;
  /** Keep-outs found by the search at hand, and for each the search that found it last. */
  private readonly found: Int32Array;
  private readonly seen: Float64Array;
  /** For each keep-out the box outside of which nothing comes near: least x, y, z, then greatest. */
  private readonly boxes: Float64Array;
  private searches = 0;

  constructor(records: readonly (KeepOut | undefined)[]) {
    this.entries = records.flatMap((keepOut) => {
      if (keepOut === undefined) return [];
      const { path, prism, sphere } = keepOut.shape;
      const solid = prism && newPrism(prism.base, prism.extrude);
      if (prism !== undefined && solid === undefined) return [];
      return [{ keepOut, prism: solid, reach: keepOut.standoff + (path?.radius ?? sphere?.radius ?? 0) }];
    });
    this.count = this.entries.length;
    this.found = new Int32Array(this.count);
    this.seen = new Float64Array(this.count);
    this.boxes = boxesOf(this.entries);
    const pairs: [cell: number, entry: number][] = [];
    this.entries.forEach((entry, index) => {
      const cells = cellsOf(entry, Math.min(MOST_CELLS, MOST_PAIRS - pairs.length));
      if (cells === undefined) this.everywhere.push(index);
      else for (const cell of cells) pairs.push([cell, index]);
    });
    this.mask = bucketMask(pairs.length);
    this.starts = new Int32Array(this.mask + 2);
    for (const [cell] of pairs) this.starts[(cell & this.mask) + 1]++;
    for (let k = 0; k <= this.mask; k++) this.starts[k + 1] += this.starts[k];
    this.items = new Int32Array(pairs.length);
    const fill = this.starts.slice();
    for (const [cell, index] of pairs) this.items[fill[cell & this.mask]++] = index;
  }

  /**
   * Visits the keep-outs near a hole with the clear distance of each, once, in the order of the layout.
   *
   * @param p point on the surface
   * @param axis unit vector into the concrete
   * @param depth along the axis
   * @param radius of the hole
   */
  near(p: Vec3, axis: Vec3, depth: number, radius: number, visit: (keepOut: KeepOut, clear: number) => void): void {
    const end = along(p, axis, depth);
    const count = this.gather(p, end, radius);
    for (let k = 0; k < count; k++) {
      const entry = this.entries[this.found[k]];
      this.tests++;
      visit(entry.keepOut, clearDistance(entry, p, end, radius));
    }
  }

  /** Whether the box of a hole meets that of a keep-out. */
  private isNear(index: number, a: Vec3, b: Vec3, radius: number): boolean {
    const { boxes } = this;
    for (let k = 0; k < 3; k++) {
      if (Math.max(a[k], b[k]) + radius < boxes[index * 6 + k]) return false;
      if (Math.min(a[k], b[k]) - radius > boxes[index * 6 + k + 3]) return false;
    }
    return true;
  }

  /** Collects the keep-outs in the cells that the box of the hole touches, in their order; returns their number. */
  private gather(a: Vec3, b: Vec3, radius: number): number {
    const { found, seen, starts, items, mask, everywhere } = this;
    const x0 = Math.floor((Math.min(a[0], b[0]) - radius) / CELL_MM);
    const x1 = Math.floor((Math.max(a[0], b[0]) + radius) / CELL_MM);
    const y0 = Math.floor((Math.min(a[1], b[1]) - radius) / CELL_MM);
    const y1 = Math.floor((Math.max(a[1], b[1]) + radius) / CELL_MM);
    const z0 = Math.floor((Math.min(a[2], b[2]) - radius) / CELL_MM);
    const z1 = Math.floor((Math.max(a[2], b[2]) + radius) / CELL_MM);
    if ((x1 - x0 + 1) * (y1 - y0 + 1) * (z1 - z0 + 1) > MOST_CELLS_OF_HOLE) {
      for (let index = 0; index < this.entries.length; index++) found[index] = index;
      return this.entries.length;
    }
    const search = ++this.searches;
    let count = 0;
    for (let k = 0; k < everywhere.length; k++) found[count++] = everywhere[k];
    for (let cz = z0; cz <= z1; cz++) {
      for (let cy = y0; cy <= y1; cy++) {
        const row = hashRow(cy, cz);
        for (let cx = x0; cx <= x1; cx++) {
          const bucket = (row + cx) & mask;
          for (let k = starts[bucket]; k < starts[bucket + 1]; k++) {
            const index = items[k];
            // Cells share keep-outs, and buckets share cells.
            if (seen[index] === search) continue;
            seen[index] = search;
            if (this.isNear(index, a, b, radius)) found[count++] = index;
          }
        }
      }
    }
    if (count > 1) found.subarray(0, count).sort();
    return count;
  }
}

/** Boxes around the shapes, larger by their reach and a hair, so that rounding hides nothing. */
function boxesOf(entries: readonly Entry[]): Float64Array {
  const boxes = new Float64Array(entries.length * 6);
  entries.forEach(({ keepOut, reach }, index) => {
    const box = boxes.subarray(index * 6, index * 6 + 6);
    box.fill(Number.POSITIVE_INFINITY, 0, 3).fill(Number.NEGATIVE_INFINITY, 3);
    for (const corners of pieces(keepOut)) {
      for (const corner of corners) {
        for (let k = 0; k < 3; k++) {
          box[k] = Math.min(box[k], corner[k] - reach - 1);
          box[k + 3] = Math.max(box[k + 3], corner[k] + reach + 1);
        }
      }
    }
  });
  return boxes;
}

/** Numbers of the cells that a hole may lie in when it matters; undefined when they are more than `most`. */
function cellsOf({ keepOut, reach }: Entry, most: number): Set<number> | undefined {
  const cells = new Set<number>();
  for (const [from, to] of pieces(keepOut)) {
    const low = [0, 1, 2].map((k) => Math.floor((Math.min(from[k], to[k]) - reach) / CELL_MM));
    const high = [0, 1, 2].map((k) => Math.floor((Math.max(from[k], to[k]) + reach) / CELL_MM));
    const boxed = [0, 1, 2].reduce((product, k) => product * (high[k] - low[k] + 1), 1);
    if (cells.size + boxed > most) return undefined;
    for (let cx = low[0]; cx <= high[0]; cx++) {
      for (let cy = low[1]; cy <= high[1]; cy++) {
        for (let cz = low[2]; cz <= high[2]; cz++) cells.add((hashRow(cy, cz) + cx) | 0);
      }
    }
  }
  return cells;
}

/** Boxes, as two corners each, that together hold the middle of the shape; a long slanting path is cut up. */
function* pieces({ shape: { path, prism, sphere } }: KeepOut): Generator<[Vec3, Vec3]> {
  if (sphere !== undefined) yield [sphere.centre, sphere.centre];
  if (prism !== undefined) {
    const low: [number, number, number] = [...prism.base[0]];
    const high: [number, number, number] = [...prism.base[0]];
    for (const corner of prism.base.flatMap((point) => [point, along(point, prism.extrude, 1)])) {
      for (let k = 0; k < 3; k++) {
        low[k] = Math.min(low[k], corner[k]);
        high[k] = Math.max(high[k], corner[k]);
      }
    }
    yield [low, high];
  }
  for (let k = 1; k < (path?.points.length ?? 0); k++) {
    const from = path?.points[k - 1] as Vec3;
    const d = subtract(path?.points[k] as Vec3, from);
    const steps = Math.max(1, Math.ceil(Math.hypot(d[0], d[1], d[2]) / (4 * CELL_MM)));
    for (let s = 0; s < Math.min(steps, MOST_CELLS + 1); s++)
      yield [along(from, d, s / steps), along(from, d, (s + 1) / steps)];
  }
}

function clearDistance({ keepOut: { shape }, prism }: Entry, a: Vec3, b: Vec3, radius: number): number {
  if (prism !== undefined) return distanceToPrism(prism, a, b) - radius;
  if (shape.sphere !== undefined) return distancePointSegment(shape.sphere.centre, a, b) - shape.sphere.radius - radius;
  const { points, radius: own } = shape.path as NonNullable<typeof shape.path>;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 1; k < points.length; k++)
    least = Math.min(least, distanceSegmentSegment(a, b, points[k - 1], points[k]));
  return least - own - radius;
}
