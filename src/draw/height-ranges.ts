import type { Bore, KeepOut, Substrate } from '../generated/layout.js';

/** A stretch of heights, millimetres. */
export interface HeightRange {
  low: number;
  high: number;
}

/** How far from its faces and holes something may lie and still be thought to be of a level, mm. */
const REACH_MM = 300;

/** A range that holds nothing yet. */
export function emptyRange(): HeightRange {
  return { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY };
}

/** Makes a range reach a height; one that is no number changes nothing. */
export function stretch(range: HeightRange, z: number): void {
  if (z < range.low) range.low = z;
  if (z > range.high) range.high = z;
}

/** Makes a range reach over the concrete of a substrate, as far as its face and thickness tell. */
export function stretchOver(range: HeightRange, { face, thickness = 0, outline }: Substrate): void {
  if (face === undefined) return;
  const rise = Math.sign(face.inward[2]) * thickness;
  const heights = outline === undefined ? [face.point[2]] : outline.points.map((point) => point[2]);
  for (const z of heights) {
    stretch(range, z);
    stretch(range, z + rise);
  }
}

export function isNear(range: HeightRange, { low, high }: HeightRange): boolean {
  return low <= range.high + REACH_MM && high >= range.low - REACH_MM;
}

/** Heights that a keep-out takes, its radius included. */
export function heightsOfKeepOut({ shape: { path, prism, sphere } }: KeepOut): HeightRange {
  const range = emptyRange();
  const points = path?.points ?? prism?.base ?? (sphere === undefined ? [] : [sphere.centre]);
  const radius = path?.radius ?? sphere?.radius ?? 0;
  for (const [, , z] of points) {
    stretch(range, z - radius);
    stretch(range, z + radius + (prism?.extrude[2] ?? 0));
  }
  return range;
}

/** Height of the point of a bore; empty where it is not known. */
export function heightOfBore({ point }: Bore): HeightRange {
  const range = emptyRange();
  if (point.length === 3) stretch(range, point[2]);
  return range;
}
