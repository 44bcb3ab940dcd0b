import type { Position } from '../generated/layout.js';
import { LENGTH_SLACK_MM } from '../units/slack.js';
import type { Move } from './layout-changes.js';

/** Where a hole lies, millimetres in the site frame; `z` is no number where its height is not known. */
export interface Place {
  x: number;
  y: number;
  z: number;
}

/** The place that a `point` names, or undefined where it is none. */
export function placeOf(point: unknown): Place | undefined {
  if (!Array.isArray(point) || point.length < 2 || point.length > 3) return undefined;
  const isPlace = point.every((coordinate) => typeof coordinate === 'number' && Number.isFinite(coordinate));
  return isPlace ? { x: point[0], y: point[1], z: point[2] ?? Number.NaN } : undefined;
}

/** The move from one place to another; undefined where each coordinate stays within 0.0005 mm. */
export function moveBetween(before: Place, after: Place): Move | undefined {
  const [deltaX, deltaY, deltaZ] = [after.x - before.x, after.y - before.y, after.z - before.z];
  const [wasKnown, isKnown] = [!Number.isNaN(before.z), !Number.isNaN(after.z)];
  const hasHeights = wasKnown && isKnown;
  const isStill = [deltaX, deltaY, hasHeights ? deltaZ : 0].every((delta) => Math.abs(delta) <= LENGTH_SLACK_MM);
  if (isStill && wasKnown === isKnown) return undefined;
  const move: Move = { from: positionOf(before), to: positionOf(after), deltaX, deltaY, distance: 0 };
  if (hasHeights) move.deltaZ = deltaZ;
  else if (wasKnown !== isKnown) move.height = isKnown ? 'now-known' : 'now-unknown';
  move.distance = Math.hypot(deltaX, deltaY, move.deltaZ ?? 0);
  return move;
}

function positionOf({ x, y, z }: Place): Position {
  return Number.isNaN(z) ? [x, y] : [x, y, z];
}
