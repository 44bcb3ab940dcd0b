import type { Hole, Level } from '../generated/layout.js';
import type { Collection, LayoutModel } from '../model/layout-model.js';
import { LENGTH_SLACK_MM } from './slack.js';

/**
 * Id of the one level, of the building of the level that a hole names, whose holes of this direction lie at
 * height z; undefined where none or several do, where the direction is not known, or where the substrate of the
 * hole names a level, which would then contradict the hole.
 *
 * Holes that go up lie in a soffit: between the floor and the next level, or the highest soffit, and not near
 * the floor. Holes that go down lie in the floor, give or take steps. Holes that go level lie between two floors.
 *
 * @param margin how far steps and pits reach, mm
 */
export function levelByHeight(layout: LayoutModel, hole: Hole, z: number, margin: number): string | undefined {
  const { judged, hasBroken } = layout.collection('levels');
  const substrate = recordOf(layout.collection('substrates'), hole.substrate);
  const rise = riseOf(hole.axis ?? substrate?.face?.inward);
  if (hasBroken || rise === undefined || substrate?.level !== undefined) return undefined;
  const building = recordOf(layout.collection('levels'), hole.level)?.building;
  const levels = judged.filter((level): level is Level => level !== undefined && level.building === building);
  // A level without an elevation may be the one that is meant.
  if (levels.some(({ elevation }) => elevation === undefined)) return undefined;
  const storeys = levels.map((level) => ({ id: level.id, low: level.elevation as number, high: topOf(level, levels) }));
  const fitting = storeys.filter(({ low, high }) => {
    if (rise < -Math.SQRT1_2) return Math.abs(z - low) <= margin;
    const isBelow = high !== undefined && z <= high + (rise > Math.SQRT1_2 ? LENGTH_SLACK_MM : -LENGTH_SLACK_MM);
    return isBelow && z > low + (rise > Math.SQRT1_2 ? margin : LENGTH_SLACK_MM);
  });
  return fitting.length === 1 ? fitting[0].id : undefined;
}

/** Where the holes of a level end above: at the next higher level or its own highest soffit; undefined where neither is given. */
function topOf({ elevation = 0, soffits = [] }: Level, levels: readonly Level[]): number | undefined {
  const next = levels.map((level) => level.elevation as number).filter((other) => other > elevation);
  const tops = next.length > 0 ? [Math.min(...next), ...soffits] : soffits;
  return tops.length > 0 ? Math.max(...tops) : undefined;
}

function recordOf<T>(collection: Collection<T>, id: string | undefined): T | undefined {
  return id === undefined ? undefined : collection.judged[collection.indexOf(collection.names.find(id))];
}

/** Sine of the angle at which a direction rises. */
function riseOf([x, y, z]: readonly number[] = [0, 0, 0]): number | undefined {
  const length = Math.hypot(x, y, z);
  return length === 0 ? undefined : z / length;
}
