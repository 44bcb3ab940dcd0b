import type { HoleType, Substrate } from '../generated/layout.js';
import type { Points } from '../geometry/near-pairs.js';
import { dot, unit, type Vec3 } from '../geometry/vector.js';
import type { LayoutModel } from '../model/layout-model.js';
import { farSideAt, heightAt, newSurface, type Surface } from './surface.js';

/**
 * A layout as the geometry rules see it: the value that holds for each hole, taken from the hole, its
 * type and its substrate. Millimetres, site frame.
 */
export class Site {
  readonly holeCount: number;
  /** 1 for a hole that an earlier stage has found broken. */
  readonly broken: Uint8Array;
  /** Hole points; z is NaN where it is not known and cannot be taken from a face. */
  readonly points: Points;
  /** Whether any hole has no height of its own. */
  readonly hasUnknownHeights: boolean;
  private readonly substrates: readonly (Substrate | undefined)[];
  private readonly surfaces: (Surface | undefined)[];
  private readonly types: readonly (HoleType | undefined)[];
  private readonly surfaceOfName: Int32Array;
  private readonly typeOfName: Int32Array;
  private readonly units: (Vec3 | undefined)[] = [];

  constructor(readonly layout: LayoutModel) {
    const { holes } = layout;
    const substrates = layout.collection('substrates');
    const types = layout.collection('holeTypes');
    this.holeCount = holes.count;
    this.broken = holes.broken;
    this.substrates = substrates.judged;
    this.surfaces = this.substrates.map((record) => record && newSurface(record));
    this.types = types.judged;
    this.surfaceOfName = Int32Array.from({ length: substrates.names.count }, (_, name) => substrates.indexOf(name));
    this.typeOfName = Int32Array.from({ length: types.names.count }, (_, name) => types.indexOf(name));
    for (let k = 0; k < holes.axes.length; k += 3)
      this.units.push(unit([holes.axes[k], holes.axes[k + 1], holes.axes[k + 2]]));
    let unknown = 0;
    for (let i = 0; i < holes.count; i++) if (Number.isNaN(holes.z[i])) unknown++;
    this.hasUnknownHeights = unknown > 0;
    const z = unknown > 0 ? this.resolvedHeights() : holes.z;
    this.points = { count: holes.count, x: holes.x, y: holes.y, z };
  }

  /** Whether the layout itself gives the height of the hole. */
  hasHeight(i: number): boolean {
    const z = this.layout.holes.z[i];
    return !Number.isNaN(z);
  }

  point(i: number): Vec3 {
    const { x, y, z } = this.points;
    return [x[i], y[i], z[i]];
  }

  /** Number of the substrate's id among the ids, or -1: two holes name the same substrate when it is equal. */
  substrateName(i: number): number {
    return this.layout.holes.referenceOf('substrate', i);
  }

  tradeName(i: number): number {
    return this.layout.holes.referenceOf('trade', i);
  }

  /** The face of the hole's substrate. */
  surface(i: number): Surface | undefined {
    const name = this.substrateName(i);
    return name < 0 ? undefined : this.surfaces[this.surfaceOfName[name]];
  }

  /** Whether the hole names a substrate whose record is broken. */
  substrateIsBroken(i: number): boolean {
    const name = this.substrateName(i);
    return name >= 0 && this.substrates[this.surfaceOfName[name]] === undefined;
  }

  holeType(i: number): HoleType | undefined {
    const name = this.layout.holes.referenceOf('holeType', i);
    return name < 0 ? undefined : this.types[this.typeOfName[name]];
  }

  /** Diameter that holds, or NaN. */
  diameter(i: number): number {
    const own = this.layout.holes.diameterOf(i);
    return !Number.isNaN(own) ? own : (this.holeType(i)?.diameter ?? Number.NaN);
  }

  /** Depth that holds: of the hole, of its type, and of a through hole without one what its axis needs to leave the concrete; or NaN. */
  depth(i: number): number {
    const own = this.layout.holes.depthOf(i);
    if (!Number.isNaN(own)) return own;
    const type = this.holeType(i);
    if (type === undefined) return Number.NaN;
    if (type.depth !== undefined) return type.depth;
    return type.form === 'through' ? this.throughDepth(i) : Number.NaN;
  }

  /** Unit vector along the axis, into the concrete; undefined where nothing tells it. */
  axis(i: number): Vec3 | undefined {
    const index = this.layout.holes.axis[i];
    return index >= 0 ? this.units[index] : this.surface(i)?.inward;
  }

  private throughDepth(i: number): number {
    const surface = this.surface(i);
    const axis = this.axis(i);
    const p = this.point(i);
    if (surface === undefined || axis === undefined || Number.isNaN(p[2])) return Number.NaN;
    const thickness = farSideAt(surface, p);
    const slope = dot(axis, surface.inward);
    return thickness === undefined || slope <= 0 ? Number.NaN : thickness / slope;
  }

  private resolvedHeights(): Float64Array {
    const { holes } = this.layout;
    const z = holes.z.slice(0, holes.count);
    for (let i = 0; i < holes.count; i++) {
      if (!Number.isNaN(z[i])) continue;
      const surface = this.surface(i);
      if (surface !== undefined && !surface.isVertical) z[i] = heightAt(surface, holes.x[i], holes.y[i]);
    }
    return z;
  }
}
