import type { Hole, HoleType, KeepOut, Layout, Substrate } from '../../src/generated/layout.js';

/*
 * What the five geometry rules look for, worked out on a second way: every pair, in plan, without
 * an index and without anything from src. It holds for level soffits only, and it is stricter than
 * the rules where it forgets heights: a hole over a keep-out counts as one through it.
 */

type Plan = readonly [x: number, y: number];

const slackMm = 0.0005;
const samePlaceMm = 1;

export interface Placed {
  hole: Hole;
  type: HoleType;
  layout: Layout;
  substrate: Substrate;
}

/** The holes of layouts whose type, substrate and point are there. */
export function placedHoles(layouts: readonly Layout[]): Placed[] {
  return layouts.flatMap((layout) =>
    layout.holes.flatMap((hole) => {
      const type = layout.holeTypes.find(({ id }) => id === hole.holeType);
      const substrate = layout.substrates?.find(({ id }) => id === hole.substrate);
      const complete = type && substrate && hole.point;
      return complete ? [{ hole, type, layout, substrate }] : [];
    }),
  );
}

/** Pairs of hole ids within a millimetre, and pairs that are nearer than their least spacing. */
export function nearPairs(placed: readonly Placed[]): { same: string[]; close: string[] } {
  const same: string[] = [];
  const close: string[] = [];
  placed.forEach((first, index) => {
    for (const second of placed.slice(index + 1)) {
      const distanceMm = distance(planOf(first.hole), planOf(second.hole));
      const name = `${first.hole.id} ${second.hole.id}`;
      if (distanceMm <= samePlaceMm + slackMm) same.push(name);
      else if (distanceMm < leastSpacing(first, second) - slackMm) close.push(name);
    }
  });
  return { same, close };
}

function leastSpacing(first: Placed, second: Placed): number {
  const shared = first.layout === second.layout && first.hole.group === second.hole.group;
  const group = shared ? first.layout.groups?.find(({ id }) => id === first.hole.group) : undefined;
  const single = Math.max(first.type.minSpacing?.value ?? 0, second.type.minSpacing?.value ?? 0);
  return group?.designSpacing?.value ?? single;
}

/** Ids of holes whose wall leaves the outline or enters an opening. */
export function outside(placed: readonly Placed[]): string[] {
  return idsOf(placed, ({ hole, type, substrate }) => {
    const radius = (hole.diameter ?? type.diameter) / 2;
    const inRing = (ring: Plan[], sign: number) => sign * depthInRing(planOf(hole), ring);
    const outline = ringOf(substrate.outline?.points ?? []);
    const openings = (substrate.openings ?? []).map(({ points }) => ringOf(points));
    return inRing(outline, 1) < radius - slackMm || openings.some((ring) => inRing(ring, -1) < radius - slackMm);
  });
}

/** Ids of blind holes that leave less than their backing, over a rib where there are ribs. */
export function breaksThrough(placed: readonly Placed[]): string[] {
  return idsOf(placed, ({ hole, type, substrate }) => {
    if (type.form === 'through') return false;
    const zone = substrate.zones?.findLast(({ outline }) => depthInRing(planOf(hole), ringOf(outline.points)) > 0);
    const solidMm = substrate.deck?.overRib ?? zone?.thickness ?? substrate.thickness ?? 0;
    const depthMm = hole.depth ?? type.depth ?? Number.POSITIVE_INFINITY;
    return depthMm + (type.backing?.value ?? 0) > solidMm + slackMm;
  });
}

/** Ids of holes that in plan come nearer to a keep-out than its standoff and position tolerance. */
export function overKeepOuts(placed: readonly Placed[]): string[] {
  return idsOf(placed, ({ hole, type, layout }) => {
    const radius = (hole.diameter ?? type.diameter) / 2;
    return (layout.keepOuts ?? []).some((keepOut) => {
      const least = radius + keepOut.standoff + (keepOut.positionTolerance ?? 0);
      return planDistance(planOf(hole), keepOut) < least - slackMm;
    });
  });
}

function planDistance(at: Plan, { shape }: KeepOut): number {
  if (shape.path) return chainDistance(at, ringOf(shape.path.points), false) - shape.path.radius;
  if (shape.sphere) {
    const [x, y] = shape.sphere.centre;
    return distance(at, [x, y]) - shape.sphere.radius;
  }
  return -depthInRing(at, ringOf(shape.prism?.base ?? []));
}

/** Distance to the ring in plan: positive inside, negative outside. */
export function depthInRing(at: Plan, ring: readonly Plan[]): number {
  let inside = false;
  ring.forEach(([x0, y0], index) => {
    const [x1, y1] = ring[(index + 1) % ring.length];
    const crosses = y0 > at[1] !== y1 > at[1];
    if (crosses && at[0] < x0 + ((at[1] - y0) * (x1 - x0)) / (y1 - y0)) inside = !inside;
  });
  return (inside ? 1 : -1) * chainDistance(at, ring, true);
}

function chainDistance(at: Plan, chain: readonly Plan[], closed: boolean): number {
  const starts = closed ? chain : chain.slice(0, -1);
  const distances = starts.map((start, index) => {
    const end = chain[(index + 1) % chain.length];
    const length2 = distance(start, end) ** 2;
    const along = (at[0] - start[0]) * (end[0] - start[0]) + (at[1] - start[1]) * (end[1] - start[1]);
    const share = Math.min(1, Math.max(0, along / length2));
    return distance(at, [start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])]);
  });
  return Math.min(...distances);
}

function idsOf(placed: readonly Placed[], test: (one: Placed) => boolean): string[] {
  return placed.filter(test).map(({ hole }) => hole.id);
}

export function planOf(hole: Hole): Plan {
  return [hole.point[0], hole.point[1]];
}

function ringOf(points: readonly (readonly number[])[]): Plan[] {
  return points.map(([x, y]) => [x, y]);
}

function distance(first: Plan, second: Plan): number {
  return Math.hypot(first[0] - second[0], first[1] - second[1]);
}
