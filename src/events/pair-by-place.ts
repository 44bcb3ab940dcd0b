import { nearPairs, type Points } from '../geometry/near-pairs.js';
import { LENGTH_SLACK_MM } from '../units/slack.js';
import { type Place, placeOf } from './place-of.js';
import { memberOf, type Rec, textOf } from './records.js';

/** Holes at most so far apart lie at one place, millimetres. */
export const ONE_PLACE_MM = 1;
/** Where more holes than so many lie together on the average, only those at equal coordinates are paired. */
const MOST_TOGETHER = 64;
/** Levels are set so far apart, millimetres, where a height that is not known leaves only the level. */
const LEVEL_APART_MM = 1000;

/** A hole as it is looked for: its place, what is drilled there for whom, and its level, both as numbers. */
interface Placed extends Place {
  kind: number;
  level: number;
}

/**
 * Pairs holes of one trade and hole type that lie at one place: within 1 mm in plan and height, the nearest first.
 * Where a height is not known, within 1 mm in plan on the same level. Of holes as near, the first with the first.
 *
 * Swapping the two lists swaps the pairs. About linear, for crowds too.
 *
 * @returns pairs of indices into the two lists, by the second
 */
export function pairByPlace(before: readonly Rec[], after: readonly Rec[]): [before: number, after: number][] {
  const numbers = new Map<string, number>();
  const search = new PlaceSearch(placedHoles(before, numbers), placedHoles(after, numbers));
  search.pairEqual();
  search.pairNear(({ z }) => z, true);
  // A known height says nothing beside an unknown one.
  search.pairNear(({ level }) => level * LEVEL_APART_MM, false);
  return search.pairs.sort(([, a], [, b]) => a - b);
}

function placedHoles(holes: readonly Rec[], numbers: Map<string, number>): (Placed | undefined)[] {
  return holes.map((hole) => {
    const place = placeOf(memberOf(hole, 'point'));
    const kind = JSON.stringify([textOf(hole, 'trade'), textOf(hole, 'holeType')]);
    return place && { ...place, kind: numberOf(kind, numbers), level: numberOf(`${textOf(hole, 'level')}`, numbers) };
  });
}

function numberOf(text: string, numbers: Map<string, number>): number {
  const known = numbers.get(text);
  if (known === undefined) numbers.set(text, numbers.size);
  return known ?? numbers.size - 1;
}

class PlaceSearch {
  readonly pairs: [number, number][] = [];

  /** Holes that are paired are taken out of the lists. */
  constructor(
    private readonly before: (Placed | undefined)[],
    private readonly after: (Placed | undefined)[],
  ) {}

  /** Holes at equal coordinates, in their order. */
  pairEqual(): void {
    const waiting = new Map<string, number[]>();
    // From the end, so that the first is on top.
    for (let i = this.before.length - 1; i >= 0; i--) {
      const hole = this.before[i];
      if (hole === undefined) continue;
      const key = keyOf(hole);
      const others = waiting.get(key);
      if (others === undefined) waiting.set(key, [i]);
      else others.push(i);
    }
    for (let j = 0; j < this.after.length; j++) {
      const hole = this.after[j];
      const i = hole && waiting.get(keyOf(hole))?.pop();
      if (i !== undefined) this.take(i, j);
    }
  }

  /** Holes near each other, both with a height or not. */
  pairNear(heightOf: (hole: Placed) => number, withHeights: boolean): void {
    const { before, after } = this;
    const holes = [...before, ...after];
    if (!holes.some((hole) => hole !== undefined && !Number.isNaN(hole.z) === withHeights)) return;
    const points: Points = {
      count: holes.length,
      x: new Float64Array(holes.length).fill(Number.NaN),
      y: new Float64Array(holes.length),
      z: new Float64Array(holes.length),
    };
    for (let k = 0; k < holes.length; k++) {
      const hole = holes[k];
      if (hole === undefined) continue;
      points.x[k] = hole.x;
      points.y[k] = hole.y;
      points.z[k] = heightOf(hole);
    }
    const near: { i: number; j: number; distance: number }[] = [];
    const none = new Uint8Array(holes.length);
    const visit = (b: number, a: number, distance: number): void => {
      if (b < before.length || a >= before.length) return;
      const [one, other] = [holes[a] as Placed, holes[b] as Placed];
      if (one.kind !== other.kind || (!Number.isNaN(one.z) && !Number.isNaN(other.z)) !== withHeights) return;
      near.push({ i: a, j: b - before.length, distance });
    };
    nearPairs(points, none, ONE_PLACE_MM + LENGTH_SLACK_MM, visit, MOST_TOGETHER);
    // An order that is the same when the lists are swapped: of two pairs that it leaves open none takes from the other.
    near.sort((p, q) => p.distance - q.distance || p.i + p.j - q.i - q.j || Math.abs(p.i - p.j) - Math.abs(q.i - q.j));
    for (const { i, j } of near) if (before[i] !== undefined && after[j] !== undefined) this.take(i, j);
  }

  private take(i: number, j: number): void {
    this.pairs.push([i, j]);
    this.before[i] = undefined;
    this.after[j] = undefined;
  }
}

/** The same for holes of one kind at equal coordinates; without a height, of one level. */
function keyOf({ kind, x, y, z, level }: Placed): string {
  return `${kind} ${x} ${y} ${Number.isNaN(z) ? `level ${level}` : z}`;
}
