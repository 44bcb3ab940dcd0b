import type { Area, Level } from '../generated/layout.js';
import type { Filling, PointQuarters } from '../geometry/point-quarters.js';
import type { Ring } from '../geometry/ring.js';
import { HoleLevels } from './hole-levels.js';
import { HoleQuarters } from './hole-quarters.js';
import { type Kind, kindsOf } from './kinds.js';
import { planRing } from './plan-ring.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';

/** Why it is not known whether an area with a level holds a hole without one. */
export const LEVEL_UNKNOWN = 'level of the hole not known where an area may hold it';

/** Why a hole is left out whose area cannot be judged. */
export const AREA_BROKEN = 'record of its area broken';

/** Whether the outline of an area holds a hole. */
export type Held = 'yes' | 'no' | 'perhaps';

/** An area of a layout of the site. */
export interface SiteArea {
  area: Area;
  part: SitePart;
  /** Index in the collection of its layout. */
  index: number;
  /** Number of its name in the joint of the site. */
  name: number;
}

/**
 * The areas that a rule asks for, by input and record, and which of them hold holes that are to be made. The holes
 * of all layouts are compared with the areas of all.
 */
export class SiteAreas {
  readonly list: readonly SiteArea[];
  private readonly rings: readonly (Ring | undefined)[];
  /** Keys of the levels of the areas. */
  private readonly levels: readonly (string | undefined)[];
  private readonly byName = new Map<number, number>();
  private readonly quarters: HoleQuarters;

  constructor(
    private readonly site: Site,
    isWanted: (area: Area) => boolean,
  ) {
    this.list = site.parts.flatMap((part) => {
      const areas = part.layout.collection('areas').judged;
      return areas.flatMap((area, index) =>
        area === undefined || !isWanted(area) ? [] : [{ area, part, index, name: site.areas.numberOf(part, area.id) }],
      );
    });
    for (const [k, { name }] of this.list.entries()) if (!this.byName.has(name)) this.byName.set(name, k);
    this.rings = this.list.map(({ area }) => planRing(area.outline));
    const keys = new LevelKeys();
    this.levels = this.list.map(({ area, part }) => keys.of(part, area.level));
    const levels = new HoleLevels(site);
    const levelOfKind = kindsOf(site).list.map((kind) => keys.of(kind.part, levels.of(kind)?.id));
    this.quarters = quartersOf(site, levelOfKind);
  }

  /** Index of the area that the holes of a kind name, or -1. */
  namedBy({ area }: Kind): number {
    return area < 0 ? -1 : (this.byName.get(area) ?? -1);
  }

  /** Whether the outline of an area holds any of the holes. */
  holdsAny(index: number): Held {
    const ring = this.rings[index];
    if (ring === undefined) return 'no';
    return this.holesFor(index).find(([, holes]) => holes.anyIn(ring))?.[0] ?? 'no';
  }

  /**
   * For each hole the first area whose outline holds it, or -1.
   *
   * @param isWanted whether an area counts that holds a hole, or perhaps holds it
   */
  firstAbout(isWanted: (index: number, held: Held) => boolean): Int32Array {
    const values = new Int32Array(this.site.holeCount).fill(-1);
    const fillings = new Map<PointQuarters, Filling>();
    for (const [index, ring] of this.rings.entries()) {
      if (ring === undefined) continue;
      for (const [held, holes] of this.holesFor(index)) {
        if (!isWanted(index, held)) continue;
        const filling = fillings.get(holes) ?? holes.newFilling(values);
        fillings.set(holes, filling);
        holes.fill(ring, index, filling);
      }
    }
    return values;
  }

  /** The holes that an area may hold: `perhaps` where the level of the hole is not known and that of the area is. */
  private holesFor(index: number): (readonly [Held, PointQuarters])[] {
    const level = this.levels[index];
    if (level === undefined) return [['yes', this.quarters.all]];
    return [
      ['yes', this.quarters.ofLevel(level)],
      ['perhaps', this.quarters.ofLevel(undefined)],
    ];
  }
}

const made = new WeakMap<Site, HoleQuarters>();

/** Several rules ask for the same holes: they are sorted once. */
function quartersOf(site: Site, levelOfKind: readonly (string | undefined)[]): HoleQuarters {
  const known = made.get(site) ?? new HoleQuarters(site, levelOfKind);
  made.set(site, known);
  return known;
}

/** Keys of levels: those of two layouts are one where id, name and building are. */
class LevelKeys {
  private readonly levels = new Map<SitePart, readonly (Level | undefined)[]>();
  private readonly known = new Map<SitePart, Map<string, string>>();

  of(part: SitePart, id: string | undefined): string | undefined {
    if (id === undefined) return undefined;
    const ofPart = this.known.get(part) ?? new Map<string, string>();
    this.known.set(part, ofPart);
    const known = ofPart.get(id) ?? this.newKey(part, id);
    ofPart.set(id, known);
    return known;
  }

  private newKey(part: SitePart, id: string): string {
    const collection = part.layout.collection('levels');
    const judged = this.levels.get(part) ?? collection.judged;
    this.levels.set(part, judged);
    const record = judged[collection.indexOf(collection.names.find(id))];
    return JSON.stringify([id, record?.name, record?.building]);
  }
}
