import type { Area } from '../generated/layout.js';
import { distanceToRing, insideRing, type Ring } from '../geometry/ring.js';
import { RingCells } from '../geometry/ring-cells.js';
import { HoleLevels } from './hole-levels.js';
import { type Kind, type Kinds, kindsOf } from './kinds.js';
import { planRing } from './plan-ring.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';
import { LENGTH_SLACK_MM } from './slack.js';

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
 * The areas that a rule asks for, by input and record, and which of them hold a hole. The holes of all layouts are
 * compared with the areas of all.
 */
export class SiteAreas {
  readonly list: readonly SiteArea[];
  private readonly kinds: Kinds;
  private readonly rings: readonly (Ring | undefined)[];
  private readonly grid: RingCells;
  /** Keys of levels: of each area, and of the holes of each kind. */
  private readonly levels: readonly (string | undefined)[];
  private readonly levelOfKind: readonly (string | undefined)[];

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
    this.kinds = kindsOf(site);
    this.rings = this.list.map(({ area }) => planRing(area.outline));
    this.grid = new RingCells(this.rings);
    this.levels = this.list.map(({ area, part }) => levelKey(part, area.level));
    const levels = new HoleLevels(site);
    this.levelOfKind = this.kinds.list.map((kind) => levelKey(kind.part, levels.of(kind)?.id));
  }

  /** Index of the area that the holes of a kind name, or -1. */
  namedBy({ area }: Kind): number {
    return area < 0 ? -1 : this.list.findIndex(({ name }) => name === area);
  }

  /** Indices of the few areas whose outline may hold hole `i`, in order. */
  near(i: number): readonly number[] {
    const { x, y } = this.site.points;
    return this.grid.near(x[i], y[i]);
  }

  /** Whether the outline of an area holds hole `i`; `perhaps` where the level of the hole is not known and that of the area is. */
  holds(index: number, i: number): Held {
    const ring = this.rings[index];
    const level = this.levels[index];
    const ofHole = this.levelOfKind[this.kinds.of[i]];
    if (ring === undefined || (level !== undefined && ofHole !== undefined && level !== ofHole)) return 'no';
    const { x, y } = this.site.points;
    if (!insideRing(ring, x[i], y[i]) || distanceToRing(ring, x[i], y[i]) < LENGTH_SLACK_MM) return 'no';
    return level !== undefined && ofHole === undefined ? 'perhaps' : 'yes';
  }
}

/** Levels of two layouts are one where id, name and building are. */
function levelKey({ layout }: SitePart, id: string | undefined): string | undefined {
  if (id === undefined) return undefined;
  const levels = layout.collection('levels');
  const record = levels.judged[levels.indexOf(levels.names.find(id))];
  return JSON.stringify([id, record?.name, record?.building]);
}
