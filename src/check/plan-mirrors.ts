import { PlanBox } from '../geometry/plan-box.js';
import { AS_WRITTEN, type PlacesOnFaces, type Reading } from './places-on-faces.js';
import type { SitePart } from './site-part.js';

/** A mirror image of the plan of a layout. */
export interface PlanMirror {
  /** Axis whose coordinates are turned over. */
  axis: 'x' | 'y';
  about: 'origin' | 'middle';
  reading: Reading;
}

/** The ways in which a plan is mirrored by mistake: about the origin, or about the middle of the outlines of each level. */
export function mirrorsOf(places: PlacesOnFaces, part: SitePart): PlanMirror[] {
  const [overY, overX] = mirrorsAlong(places, part, 1, 0);
  return [
    { axis: 'x', about: 'origin', reading: { ...AS_WRITTEN, xx: -1 } },
    { axis: 'y', about: 'origin', reading: { ...AS_WRITTEN, yy: -1 } },
    { axis: 'x', about: 'middle', reading: overX },
    { axis: 'y', about: 'middle', reading: overY },
  ];
}

/** Whether the outlines hold some mirror image of the holes too, about the axes or about the longest edge of an outline. */
export function holdsMirrorImage(places: PlacesOnFaces, part: SitePart): boolean {
  const [cos, sin] = longestEdge(places);
  const readings = [...mirrorsOf(places, part).map(({ reading }) => reading), ...mirrorsAlong(places, part, cos, sin)];
  return readings.some((reading) => places.explainedBy(reading) !== undefined);
}

/**
 * The mirror images about the line of a direction and about the one square to it, both through the middle of
 * the outlines of each level.
 */
function mirrorsAlong(places: PlacesOnFaces, part: SitePart, cos: number, sin: number): [Reading, Reading] {
  const { along, across } = middlesTwice(places, part, cos, sin);
  const [cos2, sin2] = [cos * cos - sin * sin, 2 * cos * sin];
  return [
    {
      ...{ xx: cos2, xy: sin2, yx: sin2, yy: -cos2, zz: 1 },
      x0: across.map((middle) => -sin * middle),
      y0: across.map((middle) => cos * middle),
    },
    {
      ...{ xx: -cos2, xy: -sin2, yx: -sin2, yy: cos2, zz: 1 },
      x0: along.map((middle) => cos * middle),
      y0: along.map((middle) => sin * middle),
    },
  ];
}

/** For each kind of holes twice the middle of the box around the outlines of the level of its substrate, along a direction and across, mm. */
function middlesTwice(
  places: PlacesOnFaces,
  { layout }: SitePart,
  cos: number,
  sin: number,
): { along: Float64Array; across: Float64Array } {
  const boxes = new Map<string | undefined, PlanBox>();
  for (const record of layout.collection('substrates').judged) {
    const box = boxes.get(record?.level) ?? new PlanBox();
    boxes.set(record?.level, box);
    for (const [x, y] of record?.outline?.points ?? []) box.add(cos * x + sin * y, cos * y - sin * x);
  }
  const placed = places.placed();
  const length = placed.reduce((most, { index }) => Math.max(most, index + 1), 0);
  const along = new Float64Array(length);
  const across = new Float64Array(length);
  for (const { face, index } of placed) {
    const box = boxes.get(face.substrate.level);
    if (box === undefined) continue;
    along[index] = box.xLow + box.xHigh;
    across[index] = box.yLow + box.yHigh;
  }
  return { along, across };
}

/** Direction in plan of the longest edge of all outlines. */
function longestEdge(places: PlacesOnFaces): [cos: number, sin: number] {
  let longest = 0;
  let direction: [number, number] = [1, 0];
  for (const { face } of places.placed()) {
    const points = face.substrate.outline?.points ?? [];
    points.forEach(([x, y], k) => {
      const [xBefore, yBefore] = points.at(k - 1) as readonly number[];
      const length = Math.hypot(x - xBefore, y - yBefore);
      if (length <= longest) return;
      longest = length;
      direction = [(x - xBefore) / length, (y - yBefore) / length];
    });
  }
  return direction;
}
