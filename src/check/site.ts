import type { HoleType } from '../generated/layout.js';
import type { Points } from '../geometry/near-pairs.js';
import { dot, unit, type Vec3 } from '../geometry/vector.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { Doubts } from './doubts.js';
import { Joint } from './joint.js';
import type { InputLayout, SitePart } from './site-part.js';
import { allThatCounts, slabsOf } from './slab-key.js';
import { farSideAt, gapAt, heightAt, isDeck, LEVEL_SINE, newSurface, riseAt, type Surface } from './surface.js';

/** Why a hole is left out that an earlier stage found broken. */
export const BROKEN = 'record broken';
/** Why a hole is left out whose numbers may be no millimetres of this frame. */
export const IN_DOUBT = 'unit or frame of its layout in doubt';

/** Why a hole is left out that has no height and whose face cannot give one. */
export const NO_HEIGHT = 'height not known on an upright face';

/** Values of {@link Site.out}. */
const OUT_BROKEN = 1;
const OUT_IN_DOUBT = 2;

/**
 * The layouts of one site as the rules see them together: the value that holds for each hole, taken from
 * the hole, its type and its substrate. The holes of all layouts have one numbering. Millimetres, site frame.
 */
export class Site {
  readonly parts: readonly SitePart[];
  readonly holeCount: number;
  /** 0 for a hole that is judged; see {@link whyOut}. */
  readonly out: Uint8Array;
  /** Hole points; a height that is not known, or in doubt, is that of the face; NaN where there is none to take it from. */
  readonly points: Points;
  /** Heights that the layouts give; NaN where "on the surface as found". */
  readonly ownHeights: Float64Array;
  /** Whether any hole has no height that holds. */
  readonly hasUnknownHeights: boolean;
  readonly trades: Joint<'trades'>;
  readonly types: Joint<'holeTypes'>;
  readonly substrates: Joint<'substrates'>;
  readonly levels: Joint<'levels'>;
  readonly areas: Joint<'areas'>;
  readonly groups: Joint<'groups'>;
  /** Faces by number of the substrate's name; undefined where there is none or the record is broken. */
  readonly surfaces: readonly (Surface | undefined)[];
  /** For each number of a substrate's name the least one that means the same slab, however else it is described. */
  private readonly slabs: Int32Array;
  private readonly units: (Vec3 | undefined)[] = [];
  private readonly firstAxes = new Map<SitePart, number>();

  /** @param doubts layouts whose holes no rule is to judge, and holes whose place no rule is to build on */
  constructor(
    given: readonly InputLayout[],
    private readonly doubts?: Doubts,
  ) {
    let holeCount = 0;
    this.parts = given.map((part) => {
      const firstHole = holeCount;
      holeCount += part.layout.holes.count;
      return { ...part, firstHole };
    });
    this.holeCount = holeCount;
    const { parts } = this;
    this.trades = new Joint(parts, 'trades', 'trade', ({ id, name, firm }) => JSON.stringify([id, name, firm]));
    this.types = new Joint(parts, 'holeTypes', 'holeType');
    this.substrates = new Joint(parts, 'substrates', 'substrate', allThatCounts);
    this.levels = new Joint(parts, 'levels', 'level', ({ id, name, building }) => JSON.stringify([id, name, building]));
    this.areas = new Joint(parts, 'areas', 'area');
    this.groups = new Joint(parts, 'groups', 'group');
    this.slabs = slabsOf(this.substrates.records);
    this.surfaces = this.substrates.records.map((record) => record && newSurface(record));
    for (const part of parts) {
      this.firstAxes.set(part, this.units.length);
      const { axes } = part.layout.holes;
      for (let k = 0; k < axes.length; k += 3) this.units.push(unit([axes[k], axes[k + 1], axes[k + 2]]));
    }
    this.out = joined(parts, holeCount, Uint8Array, ({ broken }) => broken).slice(0, holeCount);
    for (let i = 0; i < holeCount; i++) if (this.out[i] !== 0) this.out[i] = OUT_BROKEN;
    for (const { layout, firstHole } of parts) {
      if (doubts?.layouts.has(layout) !== true) continue;
      for (let i = firstHole; i < firstHole + layout.holes.count; i++)
        if (this.out[i] === 0) this.out[i] = OUT_IN_DOUBT;
    }
    const x = joined(parts, holeCount, Float64Array, (holes) => holes.x);
    const y = joined(parts, holeCount, Float64Array, (holes) => holes.y);
    let z: Float64Array = joined(parts, holeCount, Float64Array, (holes) => holes.z);
    this.ownHeights = z;
    let hasUnknown = false;
    for (let i = 0; i < holeCount && !hasUnknown; i++) hasUnknown = Number.isNaN(z[i]);
    if (hasUnknown || doubts?.places !== undefined) z = this.resolvedHeights(x, y, z);
    this.hasUnknownHeights = hasUnknown || doubts?.places !== undefined;
    this.points = { count: holeCount, x, y, z };
  }

  /** The layout that hole `i` belongs to. */
  partOf(i: number): SitePart {
    const { parts } = this;
    let p = parts.length - 1;
    while (parts[p].firstHole > i) p--;
    return parts[p];
  }

  /** Id of hole `i`. */
  holeId(i: number): string {
    const { layout, firstHole } = this.partOf(i);
    return layout.holes.id(i - firstHole);
  }

  /**
   * What a finding at hole `i` says of another hole: its id, and where it is in another input also that.
   * The keys are `other`, `otherInput` (from 1) and `otherName`.
   */
  otherHole(i: number, other: number): { other: string; otherInput?: number; otherName?: string } {
    const from = this.partOf(other);
    const id = { other: this.holeId(other) };
    return from === this.partOf(i) ? id : { ...id, otherInput: from.input + 1, otherName: from.name };
  }

  /** Why hole `i` is not judged; undefined where it is. */
  whyOut(i: number): string | undefined {
    if (this.out[i] === 0) return undefined;
    return this.out[i] === OUT_BROKEN ? BROKEN : IN_DOUBT;
  }

  /** Why hole `i` has no face to be judged by; undefined where it has one. */
  whyNoSurface(i: number): string | undefined {
    const name = this.substrates.nameOf(i);
    if (name < 0) return 'no substrate named';
    if (this.surfaces[name] !== undefined) return undefined;
    return this.substrates.records[name] === undefined ? 'record of its substrate broken' : 'substrate without a face';
  }

  /**
   * Number of the substrate on which hole `i` is compared in plan with others whose height is not known; -1
   * where it names none, a broken one, or one with a vertical face, on which a place in plan says little.
   */
  planSubstrate(i: number): number {
    return this.planOfSubstrate(this.substrates.nameOf(i));
  }

  /** The same for the number of a substrate's name. */
  planOfSubstrate(name: number): number {
    return name >= 0 && this.substrates.records[name] !== undefined && this.surfaces[name]?.isVertical !== true
      ? this.slabs[name]
      : -1;
  }

  /** Whether the layout itself gives a height of the hole that holds; one off a face that could give it does not. */
  hasHeight(i: number): boolean {
    return !Number.isNaN(this.ownHeights[i]) && !(this.isPlaceInDoubt(i) && this.planSubstrate(i) >= 0);
  }

  /** Whether an earlier stage found that the hole does not lie on its face. */
  isPlaceInDoubt(i: number): boolean {
    return this.doubts?.places?.[i] === 1;
  }

  point(i: number): Vec3 {
    const { x, y, z } = this.points;
    return [x[i], y[i], z[i]];
  }

  /** The face of the hole's substrate. */
  surface(i: number): Surface | undefined {
    const name = this.substrates.nameOf(i);
    return name < 0 ? undefined : this.surfaces[name];
  }

  holeType(i: number): HoleType | undefined {
    return this.types.of(i);
  }

  /** Diameter that holds, or NaN. */
  diameter(i: number): number {
    const { layout, firstHole } = this.partOf(i);
    const own = layout.holes.diameterOf(i - firstHole);
    return !Number.isNaN(own) ? own : (this.types.of(i)?.diameter ?? Number.NaN);
  }

  /** Depth that holds: of the hole, of its type, and of a through hole without one what its axis needs to leave the concrete; or NaN. */
  depth(i: number): number {
    const given = this.givenDepth(i);
    return Number.isNaN(given) && this.types.of(i)?.form === 'through' ? this.throughDepth(i) : given;
  }

  /** Unit vector along the axis, into the concrete; undefined where nothing tells it. */
  axis(i: number): Vec3 | undefined {
    const part = this.partOf(i);
    const index = part.layout.holes.axis[i - part.firstHole];
    return index >= 0 ? this.units[this.firstAxisOf(part) + index] : this.surface(i)?.inward;
  }

  /** Number of the first distinct axis of a part among those of all. */
  firstAxisOf(part: SitePart): number {
    return this.firstAxes.get(part) ?? 0;
  }

  /**
   * How far a hole goes from its point along its axis: its depth, and what lies before the concrete where the
   * point is not on it; a through hole at least until it is out on the far side. NaN where that is not known.
   */
  sweptDepth(i: number): number {
    const depth = this.givenDepth(i);
    const surface = this.surface(i);
    const isThrough = this.types.of(i)?.form === 'through';
    if (surface === undefined || (!isThrough && !isDeck(surface))) return depth;
    const axis = this.axis(i);
    const slope = axis === undefined ? 0 : dot(axis, surface.inward);
    if (!(slope > LEVEL_SINE)) return depth;
    const gap = isDeck(surface) ? gapAt(surface, this.point(i)) / slope : 0;
    const through = isThrough ? this.throughDepth(i) : Number.NaN;
    if (Number.isNaN(depth)) return through;
    return Number.isNaN(through) ? depth + gap : Math.max(depth + gap, through);
  }

  /** Depth of the hole, else of its type, else NaN. */
  private givenDepth(i: number): number {
    const { layout, firstHole } = this.partOf(i);
    const own = layout.holes.depthOf(i - firstHole);
    return Number.isNaN(own) ? (this.types.of(i)?.depth ?? Number.NaN) : own;
  }

  private throughDepth(i: number): number {
    const surface = this.surface(i);
    const axis = this.axis(i);
    const p = this.point(i);
    if (surface === undefined || axis === undefined || Number.isNaN(p[2])) return Number.NaN;
    const thickness = farSideAt(surface, p);
    const slope = dot(axis, surface.inward);
    if (thickness === undefined || !(slope > LEVEL_SINE)) return Number.NaN;
    return (thickness - (isDeck(surface) ? riseAt(surface, p) : 0)) / slope;
  }

  private resolvedHeights(x: Float64Array, y: Float64Array, own: Float64Array): Float64Array {
    const z = own.slice(0, this.holeCount);
    for (let i = 0; i < this.holeCount; i++) {
      if (!Number.isNaN(z[i]) && !this.isPlaceInDoubt(i)) continue;
      const surface = this.surface(i);
      if (surface !== undefined && !surface.isVertical) z[i] = heightAt(surface, x[i], y[i]);
    }
    return z;
  }
}

/** One column over all parts: that of the layout itself where there is one. */
function joined<A extends Float64Array | Uint8Array>(
  parts: readonly SitePart[],
  count: number,
  make: new (length: number) => A,
  column: (holes: LayoutModel['holes']) => A,
): A {
  if (parts.length === 1) return column(parts[0].layout.holes);
  const all = new make(count);
  for (const { layout, firstHole } of parts)
    all.set(column(layout.holes).subarray(0, layout.holes.count) as never, firstHole);
  return all;
}
