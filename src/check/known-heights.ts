import type { Level } from '../generated/layout.js';
import { firstIndex } from './first-index.js';
import { HoleLevels } from './hole-levels.js';
import { type Kind, kindsOf } from './kinds.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';
import { farSideAt, type Surface } from './surface.js';

/** Heights that agree as far as this, mm, are called the same: less than any two of them differ by on purpose. */
const SAME_HEIGHT_MM = 1;

/** Heights of the levels of a layout under their words: finished floors, structural tops and soffits, in this order. */
type NamedHeights = readonly (readonly [words: string, heights: SortedHeights])[];

interface HeightsOfKind {
  level: Level | undefined;
  ofLevels: NamedHeights;
}

/** Tells which height that the layout knows the height of a hole is. */
export class KnownHeights {
  private readonly ofKind: (HeightsOfKind | undefined)[] = [];
  private readonly ofPart = new Map<SitePart, NamedHeights>();
  private readonly levels: HoleLevels;

  constructor(private readonly site: Site) {
    this.levels = new HoleLevels(site);
  }

  /** The height in words; undefined where it is none that the layout knows. `offset` is that from its face, mm. */
  of(i: number, surface: Surface, offset: number): string | undefined {
    if (surface.isVertical) return undefined;
    const { site } = this;
    const farSide = farSideAt(surface, site.point(i));
    if (farSide !== undefined && Math.abs(offset - farSide) <= SAME_HEIGHT_MM)
      return surface.inward[2] > 0 ? 'the top of the slab' : 'the underside of the slab';
    const z = site.ownHeights[i];
    const { level, ofLevels } = this.heightsOf(kindsOf(site).of[i]);
    if (isSame(z, level?.finishedFloor)) return 'the finished floor';
    if (isSame(z, level?.structuralTop)) return 'the structural top';
    if (isSame(z, level?.elevation)) return 'the datum of the level';
    if (isSame(z, 0)) return 'zero';
    return ofLevels.find(([, heights]) => heights.hasOfOther(level, z))?.[0];
  }

  private heightsOf(index: number): HeightsOfKind {
    const known = this.ofKind[index] ?? this.newHeights(kindsOf(this.site).list[index]);
    this.ofKind[index] = known;
    return known;
  }

  private newHeights(kind: Kind): HeightsOfKind {
    const ofLevels = this.ofPart.get(kind.part) ?? namedHeights(kind.part);
    this.ofPart.set(kind.part, ofLevels);
    return { level: this.levels.of(kind)?.record, ofLevels };
  }
}

function namedHeights({ layout }: SitePart): NamedHeights {
  const levels = layout.collection('levels').judged.filter((level) => level !== undefined);
  return [
    ['the finished floor of another level', new SortedHeights(levels, ({ finishedFloor }) => finishedFloor ?? [])],
    ['the structural top of another level', new SortedHeights(levels, ({ structuralTop }) => structuralTop ?? [])],
    ['a soffit of another level', new SortedHeights(levels, ({ soffits }) => soffits ?? [])],
  ];
}

/** Heights of levels in order: whether one of another level is at some height is found by halving. */
class SortedHeights {
  private readonly sorted: readonly (readonly [height: number, level: Level])[];
  /** For each height the index of the next one that is of another level. */
  private readonly nextOther: Int32Array;

  constructor(levels: readonly Level[], heightsOf: (level: Level) => number | readonly number[]) {
    this.sorted = levels
      .flatMap((level) => [heightsOf(level)].flat().map((height) => [height, level] as const))
      .sort(([a], [b]) => a - b);
    const { sorted } = this;
    this.nextOther = new Int32Array(sorted.length).fill(sorted.length);
    for (let k = sorted.length - 2; k >= 0; k--)
      this.nextOther[k] = sorted[k + 1][1] === sorted[k][1] ? this.nextOther[k + 1] : k + 1;
  }

  hasOfOther(own: Level | undefined, z: number): boolean {
    const { sorted } = this;
    const first = firstIndex(sorted.length, (index) => z - sorted[index][0] <= SAME_HEIGHT_MM);
    const other = sorted[first]?.[1] === own ? this.nextOther[first] : first;
    return isSame(z, sorted[other]?.[0]);
  }
}

function isSame(z: number, height: number | undefined): boolean {
  return height !== undefined && Math.abs(z - height) <= SAME_HEIGHT_MM;
}
