import { handOf } from '../fit/pattern-hand.js';
import { fitPlan } from '../fit/plan-fit.js';
import type { Group } from '../generated/layout.js';
import { along as shifted, cross, dot, squareTo, unit, type Vec3 } from '../geometry/vector.js';
import { commonInward } from './group-members.js';
import type { Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** Up to so many members all pairs are judged. */
const MOST_IN_PAIRS = 64;

/** What is worst about the members of a group against their pattern. Lengths in millimetres. */
export type GroupMisfit =
  | { fault: 'distance'; member: number; other: number; distance: number; inPattern: number }
  | { fault: 'turned' | 'mirrored' | 'place'; member: number; distance: number };

/** Two coordinates of members in the face or three in space, from the first one, one after the other. */
interface Offsets {
  /** Two or three. */
  size: number;
  values: Float64Array;
  /** Whether the first coordinate is along the run. */
  hasRun: boolean;
}

/**
 * Compares the members of a group with its pattern, which has a place for each.
 *
 * @returns undefined where they fit, or why they cannot be compared
 */
export function misfitOf(
  site: Site,
  { run, pattern = [] }: Group,
  members: Int32Array,
  tolerance: number,
): GroupMisfit | string | undefined {
  if (members.some((i) => Number.isNaN(site.points.z[i]))) return 'height of a member not known';
  const offsets = offsetsOf(site, run, members);
  const places = Float64Array.from(pattern.flat(), (value, k) => value - pattern[0][k % 2]);
  const limit = tolerance + LENGTH_SLACK_MM;
  const pair = worstPair(offsets, places, members);
  if (Math.abs(pair.distance - pair.inPattern) > limit) return pair;
  const { size, values, hasRun } = offsets;
  if (run !== undefined && !hasRun) return size === 3 ? 'a run, and no face of all members' : 'run square to the face';
  // Of two members the distance says all.
  if (!hasRun && members.length === 2) return undefined;
  if (size === 3) {
    return members.length > MOST_IN_PAIRS ? `more than ${MOST_IN_PAIRS} members, and no face of all` : undefined;
  }
  if (!hasRun && fitsAtOnce(values, places, limit)) return undefined;
  const [member, distance] = hasRun ? farthest(values, places) : farthestInFit(values, places);
  if (distance <= limit) return undefined;
  return { fault: hasRun ? faultOf(values, places, limit) : 'place', member: members[member], distance };
}

/**
 * Whether a turn about the first member shows, without the best fit, that no member lies farther than `limit` in that:
 * the squares of the best fit sum up to no more than those of any other motion, and none is more than their sum.
 */
function fitsAtOnce(values: Float64Array, places: Float64Array, limit: number): boolean {
  return handOf(values, places, limit / Math.sqrt(places.length / 2), true) !== 'neither';
}

/** How the members fit their pattern that do not lie along and across as it says; `place` where they do not. */
function faultOf(values: Float64Array, places: Float64Array, limit: number): 'turned' | 'mirrored' | 'place' {
  const turned = handOf(values, places, limit, true);
  if (turned === 'mirrored' || handOf(values, places, limit, false) === 'mirrored') return 'mirrored';
  return turned === 'neither' ? 'place' : 'turned';
}

function offsetsOf(site: Site, run: Vec3 | undefined, members: Int32Array): Offsets {
  const { x, y, z } = site.points;
  const inward = commonInward(site, members);
  const axes = inward && axesOf(inward, run, site.surface(members[0])?.isVertical === true);
  const size = axes === undefined ? 3 : 2;
  const values = new Float64Array(size * members.length);
  const first = members[0];
  for (let k = 0; k < members.length; k++) {
    const i = members[k];
    const d: Vec3 = [x[i] - x[first], y[i] - y[first], z[i] - z[first]];
    if (axes === undefined) values.set(d, 3 * k);
    else {
      values[2 * k] = dot(d, axes.along);
      values[2 * k + 1] = dot(d, axes.across);
    }
  }
  return { size, values, hasRun: axes?.hasRun === true };
}

/** Along the run and across it in a face; any two axes of the face where there is no run in it. */
function axesOf(inward: Vec3, run: Vec3 | undefined, isVertical: boolean) {
  // The normal that points up, or out of the concrete where the face is vertical.
  const isInwardUp = !isVertical && inward[2] > 0;
  const normal: Vec3 = isInwardUp ? inward : [-inward[0], -inward[1], -inward[2]];
  const inFace = run && unit(run) && shifted(unit(run) as Vec3, normal, -dot(unit(run) as Vec3, normal));
  // A run that is square to the face but for rounding has no direction in it.
  const hasRun = inFace !== undefined && Math.hypot(...inFace) > 1e-9;
  const along = hasRun ? (unit(inFace) as Vec3) : squareTo(normal);
  return { along, across: cross(normal, along), hasRun };
}

function worstPair({ size, values }: Offsets, places: Float64Array, members: Int32Array) {
  const count = members.length;
  const pair = { fault: 'distance' as const, member: members[0], other: members[0], distance: 0, inPattern: 0 };
  let worst = -1;
  for (let a = 1; a < count; a++) {
    for (let b = count > MOST_IN_PAIRS && a > 1 ? a - 1 : 0; b < a; b++) {
      judge(a, b);
      // In a large group each is compared with the one before it and with the first one.
      if (count > MOST_IN_PAIRS && a > 1) judge(a, 0);
    }
  }
  return pair;

  function judge(a: number, b: number): void {
    let distanceSq = 0;
    for (let k = 0; k < size; k++) distanceSq += (values[size * a + k] - values[size * b + k]) ** 2;
    const distance = Math.sqrt(distanceSq);
    const inPattern = Math.hypot(places[2 * a] - places[2 * b], places[2 * a + 1] - places[2 * b + 1]);
    const deviation = Math.abs(distance - inPattern);
    if (deviation <= worst) return;
    worst = deviation;
    Object.assign(pair, { member: members[a], other: members[b], distance, inPattern });
  }
}

/** Which member lies farthest from its place, and how far. */
function farthest(offsets: Float64Array, places: Float64Array): [member: number, distance: number] {
  let [member, most] = [0, 0];
  for (let k = 0; k < places.length / 2; k++) {
    const distance = Math.hypot(offsets[2 * k] - places[2 * k], offsets[2 * k + 1] - places[2 * k + 1]);
    if (distance > most) [member, most] = [k, distance];
  }
  return [member, most];
}

/** The same after the pattern is moved in the face so that it fits best, in the hand that fits better. */
function farthestInFit(offsets: Float64Array, places: Float64Array): [member: number, distance: number] {
  const [from, to] = [places, offsets].map((flat) => ({ x: secondsOf(flat, 0), y: secondsOf(flat, 1) }));
  const fits = [false, true].map((mirror) => fitPlan(from, to, { scale: 'fixed', mirror }));
  const [declared, turnedOver] = fits;
  // All at one place: no direction is needed, and the distances say all.
  if (declared === undefined || turnedOver === undefined) return [0, 0];
  const { x, y } = (turnedOver.rms < declared.rms ? turnedOver : declared).residuals;
  return farthest(
    Float64Array.from(offsets, (_, k) => (k % 2 === 0 ? x : y)[k >> 1]),
    new Float64Array(offsets.length),
  );
}

/** Each second value, from the one at `start` on. */
function secondsOf(flat: Float64Array, start: 0 | 1): Float64Array {
  return Float64Array.from({ length: flat.length / 2 }, (_, k) => flat[2 * k + start]);
}
