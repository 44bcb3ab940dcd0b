import { PointQuarters } from '../geometry/point-quarters.js';
import { type Kind, kindsOf } from './kinds.js';
import type { Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { isToBeMade } from './to-be-made.js';

/** The holes of a site that are to be made, sorted by where they lie in plan: all, and by level, when first asked for. */
export class HoleQuarters {
  private whole: PointQuarters | undefined;
  private byLevel: ReadonlyMap<string | undefined, Int32Array> | undefined;
  private readonly sorted = new Map<string | undefined, PointQuarters>();

  /** @param levelOfKind for each kind of holes the key of their level; undefined where it is not known */
  constructor(
    private readonly site: Site,
    private readonly levelOfKind: readonly (string | undefined)[],
  ) {}

  get all(): PointQuarters {
    this.whole ??= this.sort(indicesBy(this.site, () => undefined).get(undefined));
    return this.whole;
  }

  /** The holes of a level, or for undefined those whose level is not known. */
  ofLevel(key: string | undefined): PointQuarters {
    this.byLevel ??= indicesBy(this.site, (k) => this.levelOfKind[k]);
    const known = this.sorted.get(key) ?? this.sort(this.byLevel.get(key));
    this.sorted.set(key, known);
    return known;
  }

  private sort(indices: Int32Array = new Int32Array()): PointQuarters {
    const { x, y } = this.site.points;
    return new PointQuarters(x, y, indices, LENGTH_SLACK_MM);
  }
}

/** Whether holes of a kind are known to be wanted and not there yet. */
export function isMade({ out, type }: Kind): boolean {
  return out === undefined && type !== undefined && isToBeMade(type);
}

/** The holes that are to be made by a key of their kind, in order. */
function indicesBy(
  site: Site,
  keyOf: (kind: number) => string | undefined,
): ReadonlyMap<string | undefined, Int32Array> {
  const { list, of } = kindsOf(site);
  const numbers = new Map<string | undefined, number>();
  const counts: number[] = [];
  const numberOfKind = Int32Array.from(list, (kind, k) => {
    if (!isMade(kind)) return -1;
    const number = numbers.get(keyOf(k)) ?? numbers.size;
    numbers.set(keyOf(k), number);
    counts[number] = (counts[number] ?? 0) + kind.count;
    return number;
  });
  const indices = counts.map((count) => new Int32Array(count));
  const filled = new Int32Array(counts.length);
  for (let i = 0; i < site.holeCount; i++) {
    const number = numberOfKind[of[i]];
    if (number >= 0) indices[number][filled[number]++] = i;
  }
  return new Map([...numbers].map(([key, number]) => [key, indices[number]]));
}
