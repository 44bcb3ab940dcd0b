import { GAVE_UP } from '../geometry/neighbour-grid.js';
import { PlanMarks } from '../geometry/plan-marks.js';
import { BoreKinds, type BoreLimit, boreLimit } from './bore-limits.js';
import { BorePoints } from './bore-points.js';
import { BoreVolumes, type MostSizes, type Volume } from './bore-volumes.js';
import type { Site } from './site.js';
import type { SiteBore } from './site-bores.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { COINCIDENT_REACH_MM } from './spacing-limits.js';
import { SweptHoles } from './swept-holes-of.js';

/** Why a hole is left out where it hangs on what is not known of a bore. */
const SIZE_UNKNOWN = 'depth or diameter of a bore near it not known';
const CROWDED = 'too many bores near it';

/** A bore that a hole is at fault with. */
export interface BoreFault {
  bore: SiteBore;
  /** The first of these that is so. */
  fault: 'same-place' | 'runs-into' | 'too-close';
  /** Distance of the points, mm. */
  distance: number;
  /** Only where it is not kept. */
  limit: BoreLimit | undefined;
  /** How far the walls lie in each other, mm; undefined where they do not, or where it cannot be judged. */
  overlap: number | undefined;
}

/** Judges holes against the bores of a site. Lengths in millimetres. */
export class BoreFaults {
  private readonly swept: SweptHoles;
  private readonly volumes: BoreVolumes;
  private readonly inSpace: BorePoints;
  private readonly inPlan: BorePoints;
  private readonly inPlanUnknown: BorePoints;
  private readonly marks: PlanMarks;
  /** By number of the type's name how near a bore must be to be too near, and to be so if it is as deep as can be. */
  private readonly reachOf: Float64Array;
  private readonly doubtReachOf: Float64Array;
  private readonly storey: number;
  private best = -1;
  private bestDistance = Number.POSITIVE_INFINITY;
  private isInDoubt = false;

  constructor(
    private readonly site: Site,
    private readonly bores: readonly SiteBore[],
    private readonly sizes: MostSizes,
  ) {
    const known = bores.map(({ bore }) => bore);
    const reachOf = (unknownDepth: number) => {
      const kinds = new BoreKinds(known, unknownDepth);
      return Float64Array.from(site.types.records, (type) => (type ? kinds.reachOf(type) : COINCIDENT_REACH_MM));
    };
    this.reachOf = reachOf(0);
    this.doubtReachOf = reachOf(sizes.depth);
    const reach = this.doubtReachOf.reduce((most, own) => Math.max(most, own), COINCIDENT_REACH_MM);
    this.storey = Math.max(10 * reach, 10_000);
    const storeyOf = ({ planSubstrate }: SiteBore) => (planSubstrate < 0 ? Number.NaN : planSubstrate * this.storey);
    this.inSpace = new BorePoints(bores, ({ point }) => point[2]);
    this.inPlan = new BorePoints(bores, (bore) => (bore.hasHeight ? storeyOf(bore) : Number.NaN));
    this.inPlanUnknown = new BorePoints(bores, (bore) => (bore.hasHeight ? Number.NaN : storeyOf(bore)));
    this.swept = new SweptHoles(site);
    this.volumes = new BoreVolumes(bores, sizes);
    this.marks = this.marked(reach);
  }

  /** Bores that are so large that no hole is compared with their volume. */
  get tooLarge(): number {
    return this.bores.filter((_, k) => this.volumes.isLeftOut(k)).length;
  }

  /** The nearest bore that hole `i` is at fault with, why it cannot be judged, or undefined where nothing is wrong. */
  judge(i: number): BoreFault | string | undefined {
    const { site } = this;
    const out = site.whyOut(i);
    if (out !== undefined) return out;
    const { x, y } = site.points;
    const why = site.types.of(i) === undefined ? 'record of its hole type broken' : this.whyNotPlaced(i);
    if (!this.marks.mayBeIn(x[i], y[i])) return why ?? this.swept.whyOut(i);
    this.best = -1;
    this.bestDistance = Number.POSITIVE_INFINITY;
    this.isInDoubt = false;
    const isWhole = this.searchPoints(i);
    const isAll = this.swept.whyOut(i) === undefined && this.searchVolumes(i);
    if (this.best >= 0) return this.fault(i);
    const unknown = why ?? this.swept.whyOut(i);
    if (unknown !== undefined) return unknown;
    if (!isWhole || !isAll) return CROWDED;
    return this.isInDoubt ? SIZE_UNKNOWN : undefined;
  }

  private whyNotPlaced(i: number): string | undefined {
    const isPlaced = this.site.hasHeight(i) || this.site.planSubstrate(i) >= 0;
    return isPlaced ? undefined : 'height not known, and no substrate to compare in plan';
  }

  /** Judges the distance of points; returns whether all that matter were. */
  private searchPoints(i: number): boolean {
    const type = this.site.types.nameOf(i);
    const radius = type < 0 ? COINCIDENT_REACH_MM : this.reachOf[type];
    const isWhole = this.search(i, radius, (bore, distance) => this.isTooNear(i, bore, distance));
    const doubtRadius = type < 0 ? 0 : this.doubtReachOf[type];
    if (this.best >= 0 || doubtRadius === radius) return isWhole;
    // What may be too near is looked for by itself: the first one ends the search.
    const isInDoubt = (bore: number, distance: number) => {
      this.isInDoubt ||= distance < (this.limit(i, bore)?.most ?? 0) - LENGTH_SLACK_MM;
      return this.isInDoubt;
    };
    return this.search(i, doubtRadius, isInDoubt) && isWhole;
  }

  /** Looks for the nearest bore that `accept` takes and keeps it, unless that is in doubt. */
  private search(i: number, radius: number, accept: (bore: number, distance: number) => boolean): boolean {
    const { site, storey } = this;
    const { x, y, z } = site.points;
    const substrate = site.planSubstrate(i);
    let isWhole = true;
    const look = (points: BorePoints, height: number) => {
      const found = points.nearest(x[i], y[i], height, Math.min(radius, this.bestDistance), accept);
      if (found === GAVE_UP) isWhole = false;
      else if (found >= 0 && !this.isInDoubt) this.keep(found, this.distance(i, found));
    };
    // A height that is not known is taken from the face; on one slab the distance in plan is never more.
    if (!Number.isNaN(z[i])) look(this.inSpace, z[i]);
    if (substrate >= 0) look(this.inPlanUnknown, substrate * storey);
    if (substrate >= 0 && !site.hasHeight(i)) look(this.inPlan, substrate * storey);
    return isWhole;
  }

  private isTooNear(i: number, bore: number, distance: number): boolean {
    if (distance <= COINCIDENT_REACH_MM) return true;
    return distance < (this.limit(i, bore)?.least ?? 0) - LENGTH_SLACK_MM;
  }

  /** Judges the clear distances; returns whether all that matter were. */
  private searchVolumes(i: number): boolean {
    return this.volumes.near(this.volumeOf(i), (bore, clearMost) => {
      if (clearMost < -LENGTH_SLACK_MM) this.keep(bore, this.distance(i, bore));
      else this.isInDoubt ||= this.hasUnknownSize(bore);
    });
  }

  private hasUnknownSize(bore: number): boolean {
    const { bore: own, axis } = this.bores[bore];
    return own.depth === undefined || own.diameter === undefined || axis === undefined;
  }

  private keep(bore: number, distance: number): void {
    if (distance > this.bestDistance || (distance === this.bestDistance && bore > this.best)) return;
    this.best = bore;
    this.bestDistance = distance;
  }

  private fault(i: number): BoreFault {
    const { best, bestDistance: distance } = this;
    const limit = this.limit(i, best);
    const isTooClose = limit !== undefined && distance < limit.least - LENGTH_SLACK_MM;
    const clear = this.swept.whyOut(i) === undefined ? this.volumes.clear(this.volumeOf(i), best) : Number.NaN;
    const overlap = clear < -LENGTH_SLACK_MM ? -clear : undefined;
    const isSame = distance <= COINCIDENT_REACH_MM;
    const fault = isSame ? 'same-place' : overlap === undefined ? 'too-close' : 'runs-into';
    return { bore: this.bores[best], fault, distance, limit: isTooClose ? limit : undefined, overlap };
  }

  private limit(i: number, bore: number): BoreLimit | undefined {
    const type = this.site.types.of(i);
    return type && boreLimit(type, this.bores[bore].bore, this.sizes.depth);
  }

  private volumeOf(i: number): Volume {
    return { from: this.site.point(i), to: this.swept.end(i), radius: this.site.diameter(i) / 2 };
  }

  /** In space, in plan where a height is not known and both are on one substrate; else of the points as the faces give them. */
  private distance(i: number, bore: number): number {
    const { site } = this;
    const { point, hasHeight, planSubstrate } = this.bores[bore];
    const [x, y, z] = site.point(i);
    const isKnown = hasHeight && site.hasHeight(i);
    const isPlan = !isKnown && planSubstrate >= 0 && planSubstrate === site.planSubstrate(i);
    const dz = isPlan ? 0 : z - point[2];
    return Math.sqrt((x - point[0]) ** 2 + (y - point[1]) ** 2 + dz ** 2);
  }

  private marked(reach: number): PlanMarks {
    const about = Math.max(reach, this.swept.largest) + 1;
    const marks = new PlanMarks(2 * about, this.bores.length);
    this.bores.forEach((_, k) => {
      const { from, to, radius } = this.volumes.mostOf(k);
      const around = radius + about;
      const [lowX, lowY] = [0, 1].map((axis) => Math.min(from[axis], to[axis]) - around);
      const [highX, highY] = [0, 1].map((axis) => Math.max(from[axis], to[axis]) + around);
      marks.mark(lowX, lowY, highX, highY);
    });
    return marks;
  }
}
