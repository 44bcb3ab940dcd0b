import type {
  Group,
  Hole,
  HoleType,
  Limits,
  MoveAllowance,
  PositionTolerance,
  Substrate,
} from '../../generated/layout.js';
import { dot, unit, type Vec3 } from '../../geometry/vector.js';
import type { LayoutRecords } from './layout-records.js';
import type { DrillDirection } from './sheet-words.js';

/** A hole with the values that hold for it, each taken whole from the first record that has it. Millimetres, site frame. */
export interface SheetHole {
  readonly hole: Hole;
  readonly type: HoleType | undefined;
  readonly group: Group | undefined;
  readonly substrate: Substrate | undefined;
  /** Its own level or that of its substrate. */
  readonly level: string | undefined;
  readonly diameterMm: number | undefined;
  /** Whether the bit of its type is one for its diameter. */
  readonly isDiameterOfType: boolean;
  readonly depthMm: number | undefined;
  readonly depthTolerance: Limits | undefined;
  readonly positionTolerance: PositionTolerance | undefined;
  readonly moveAllowance: MoveAllowance | undefined;
  /** Unit vector into the concrete; undefined where nothing gives it. */
  readonly axis: Vec3 | undefined;
  /** Angle between the axis and the inward direction of the face; 0 where one of them is not given. */
  readonly slantDeg: number;
}

/** The values that hold for a hole, after the table of chapter 3.5 of the specification. */
export function sheetHole(hole: Hole, { holeTypes, groups, substrates }: LayoutRecords): SheetHole {
  const type = holeTypes.get(hole.holeType);
  const group = hole.group === undefined ? undefined : groups.get(hole.group);
  const substrate = hole.substrate === undefined ? undefined : substrates.get(hole.substrate);
  const inward = substrate?.face && unit(substrate.face.inward);
  const axis = hole.axis === undefined ? inward : unit(hole.axis);
  return {
    hole,
    type,
    group,
    substrate,
    level: hole.level ?? substrate?.level,
    diameterMm: hole.diameter ?? type?.diameter,
    isDiameterOfType: hole.diameter === undefined || hole.diameter === type?.diameter,
    depthMm: hole.depth ?? type?.depth,
    depthTolerance: hole.depthTolerance ?? type?.depthTolerance,
    positionTolerance: hole.positionTolerance ?? group?.positionTolerance ?? type?.positionTolerance,
    moveAllowance: hole.moveAllowance ?? group?.moveAllowance ?? type?.moveAllowance,
    axis,
    slantDeg: axis === undefined || inward === undefined ? 0 : angleDeg(axis, inward),
  };
}

/** Whether there is something to drill or core: neither cast in nor there already. */
export function isToBeDrilled({ type }: SheetHole): boolean {
  return type?.made !== 'cast-in' && type?.purpose !== 'existing';
}

/** Within this of plumb or level a direction has a plain word. */
const PLAIN_DEG = 5;

export function drillDirection({ axis }: SheetHole): DrillDirection {
  if (axis === undefined) return 'unknown';
  const riseDeg = (Math.asin(Math.max(-1, Math.min(1, axis[2]))) * 180) / Math.PI;
  if (riseDeg > 90 - PLAIN_DEG) return 'up';
  if (riseDeg < PLAIN_DEG - 90) return 'down';
  return Math.abs(riseDeg) < PLAIN_DEG ? 'level' : 'slanting';
}

function angleDeg(a: Vec3, b: Vec3): number {
  return (Math.acos(Math.max(-1, Math.min(1, dot(a, b)))) * 180) / Math.PI;
}
