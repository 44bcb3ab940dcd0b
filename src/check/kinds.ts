import type { HoleType } from '../generated/layout.js';
import type { Vec3 } from '../geometry/vector.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';
import type { Surface } from './surface.js';

/**
 * Holes that agree in all that they refer to. What hangs on the type, the substrate and the axis alone is
 * judged once for a kind and not a million times.
 */
export interface Kind {
  /** Holes of the kind, and the first of them. */
  count: number;
  first: number;
  part: SitePart;
  /** Why the holes are not judged; undefined where they are. */
  out: string | undefined;
  type: HoleType | undefined;
  surface: Surface | undefined;
  /** Unit vector into the concrete: of the hole, else the inward direction of its face. */
  axis: Vec3 | undefined;
  /** Numbers of names, as in the joints of the site; -1 where nothing is named. */
  trade: number;
  holeType: number;
  substrate: number;
  level: number;
  area: number;
  /** What the holes have of their own, so that it differs from hole to hole. */
  hasHeight: boolean;
  hasDiameter: boolean;
  hasDepth: boolean;
  hasTolerance: boolean;
  hasGroup: boolean;
}

const HAS_HEIGHT = 1;
const HAS_DIAMETER = 2;
const HAS_DEPTH = 4;
const HAS_TOLERANCE = 8;
const HAS_GROUP = 16;
const FLAGS = 5;
const FIELDS = 7;

const made = new WeakMap<Site, Kinds>();

/** The kinds of the holes of a site; sorted out once. */
export function kindsOf(site: Site): Kinds {
  const known = made.get(site) ?? new Kinds(site);
  made.set(site, known);
  return known;
}

/** The kinds of the holes of a site. */
export class Kinds {
  readonly list: Kind[] = [];
  /** For each hole the index of its kind. */
  readonly of: Int32Array;
  private table = new Int32Array(256).fill(-1);
  private keys: number[] = [];
  private readonly key = new Int32Array(FIELDS);

  constructor(private readonly site: Site) {
    this.of = new Int32Array(site.holeCount);
    const { trades, types, substrates, levels, areas, groups } = site;
    const { key } = this;
    for (const part of site.parts) {
      const { holes } = part.layout;
      const firstAxis = site.firstAxisOf(part);
      for (let own = 0; own < holes.count; own++) {
        const i = part.firstHole + own;
        key[0] = trades.nameOf(i);
        key[1] = types.nameOf(i);
        key[2] = substrates.nameOf(i);
        key[3] = levels.nameOf(i);
        key[4] = areas.nameOf(i);
        key[5] = holes.axis[own] < 0 ? -1 : firstAxis + holes.axis[own];
        let flags = 0;
        if (!Number.isNaN(holes.z[own])) flags |= HAS_HEIGHT;
        if (!Number.isNaN(holes.diameterOf(own))) flags |= HAS_DIAMETER;
        if (!Number.isNaN(holes.depthOf(own))) flags |= HAS_DEPTH;
        if (holes.hasPositionTolerance(own)) flags |= HAS_TOLERANCE;
        if (groups.nameOf(i) >= 0) flags |= HAS_GROUP;
        key[6] = (((part.input << 2) | site.out[i]) << FLAGS) | flags;
        const kind = this.find(i, part);
        this.of[i] = kind;
        this.list[kind].count++;
      }
    }
  }

  /** The kind of hole `i`. */
  at(i: number): Kind {
    return this.list[this.of[i]];
  }

  private find(i: number, part: SitePart): number {
    const { key, keys, table } = this;
    let hash = 0;
    for (let k = 0; k < FIELDS; k++) hash = (Math.imul(hash, 0x01000193) ^ key[k]) | 0;
    hash ^= hash >>> 15;
    const mask = table.length - 1;
    for (let slot = hash & mask; ; slot = (slot + 1) & mask) {
      const kind = table[slot];
      if (kind < 0) {
        table[slot] = this.list.length;
        return this.add(i, part);
      }
      let k = 0;
      while (k < FIELDS && keys[kind * FIELDS + k] === key[k]) k++;
      if (k === FIELDS) return kind;
    }
  }

  private add(first: number, part: SitePart): number {
    const { site, key } = this;
    const flags = key[6];
    const index =
      this.list.push({
        count: 0,
        first,
        part,
        out: site.whyOut(first),
        type: site.types.of(first),
        surface: site.surface(first),
        axis: site.axis(first),
        trade: key[0],
        holeType: key[1],
        substrate: key[2],
        level: key[3],
        area: key[4],
        hasHeight: (flags & HAS_HEIGHT) !== 0,
        hasDiameter: (flags & HAS_DIAMETER) !== 0,
        hasDepth: (flags & HAS_DEPTH) !== 0,
        hasTolerance: (flags & HAS_TOLERANCE) !== 0,
        hasGroup: (flags & HAS_GROUP) !== 0,
      }) - 1;
    this.keys.push(...key);
    if (this.list.length * 2 > this.table.length) this.grow();
    return index;
  }

  private grow(): void {
    const table = new Int32Array(this.table.length * 2).fill(-1);
    const mask = table.length - 1;
    for (let kind = 0; kind < this.list.length; kind++) {
      let hash = 0;
      for (let k = 0; k < FIELDS; k++) hash = (Math.imul(hash, 0x01000193) ^ this.keys[kind * FIELDS + k]) | 0;
      hash ^= hash >>> 15;
      let slot = hash & mask;
      while (table[slot] >= 0) slot = (slot + 1) & mask;
      table[slot] = kind;
    }
    this.table = table;
  }
}
