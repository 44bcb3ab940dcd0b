import type { Level } from '../generated/layout.js';
import { HoleLevels } from './hole-levels.js';
import { type Kind, kindsOf } from './kinds.js';
import type { Site } from './site.js';
import { farSideAt, type Surface } from './surface.js';

/** Heights that agree as far as this, mm, are called the same: less than any two of them differ by on purpose. */
const SAME_HEIGHT_MM = 1;

interface HeightsOfKind {
  level: Level | undefined;
  /** Finished floors, structural tops and soffits of other levels, in this order. */
  ofOthers: readonly (readonly [words: string, heights: readonly number[]])[];
}

/** Tells which height that the layout knows the height of a hole is. */
export class KnownHeights {
  private readonly ofKind: (HeightsOfKind | undefined)[] = [];
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
    const { level, ofOthers } = this.heightsOf(kindsOf(site).of[i]);
    if (isSame(z, level?.finishedFloor)) return 'the finished floor';
    if (isSame(z, level?.structuralTop)) return 'the structural top';
    if (isSame(z, level?.elevation)) return 'the datum of the level';
    if (isSame(z, 0)) return 'zero';
    return ofOthers.find(([, heights]) => heights.some((height) => isSame(z, height)))?.[0];
  }

  private heightsOf(index: number): HeightsOfKind {
    const known = this.ofKind[index] ?? this.newHeights(kindsOf(this.site).list[index]);
    this.ofKind[index] = known;
    return known;
  }

  private newHeights(kind: Kind): HeightsOfKind {
    const level = this.levels.of(kind)?.record;
    const others = kind.part.layout.collection('levels').judged.filter((other) => other !== level);
    const ofOthers = [
      ['the finished floor of another level', others.flatMap((other) => other?.finishedFloor ?? [])],
      ['the structural top of another level', others.flatMap((other) => other?.structuralTop ?? [])],
      ['a soffit of another level', others.flatMap((other) => other?.soffits ?? [])],
    ] as const;
    return { level, ofOthers };
  }
}

function isSame(z: number, height: number | undefined): boolean {
  return height !== undefined && Math.abs(z - height) <= SAME_HEIGHT_MM;
}
