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
  const { x0, y0 } = middlesTwice(places, part);
  const overX = { ...AS_WRITTEN, xx: -1 };
  const overY = { ...AS_WRITTEN, yy: -1 };
  return [
    { axis: 'x', about: 'origin', reading: overX },
    { axis: 'y', about: 'origin', reading: overY },
    { axis: 'x', about: 'middle', reading: { ...overX, x0 } },
    { axis: 'y', about: 'middle', reading: { ...overY, y0 } },
  ];
}

/** For each kind of holes twice the middle of the box around the outlines of the level of its substrate, mm. */
function middlesTwice(places: PlacesOnFaces, { layout }: SitePart): { x0: Float64Array; y0: Float64Array } {
  const boxes = new Map<string | undefined, PlanBox>();
  for (const record of layout.collection('substrates').judged) {
    const box = boxes.get(record?.level) ?? new PlanBox();
    boxes.set(record?.level, box);
    for (const [x, y] of record?.outline?.points ?? []) box.add(x, y);
  }
  const placed = places.placed();
  const length = placed.reduce((most, { index }) => Math.max(most, index + 1), 0);
  const x0 = new Float64Array(length);
  const y0 = new Float64Array(length);
  for (const { face, index } of placed) {
    const box = boxes.get(face.substrate.level);
    if (box === undefined) continue;
    x0[index] = box.xLow + box.xHigh;
    y0[index] = box.yLow + box.yHigh;
  }
  return { x0, y0 };
}
