import type { Frame } from '../../generated/layout.js';
import type { SheetHole } from './sheet-hole.js';
import type { SheetLengths } from './sheet-lengths.js';
import type { SheetWords } from './sheet-words.js';

/** How far a crew may shift a hole, as a sentence. */
export function moveInWords(
  { hole, group, moveAllowance }: SheetHole,
  frame: Pick<Frame, 'projectNorthDeg'>,
  lengths: SheetLengths,
  words: SheetWords,
): string {
  if (moveAllowance === undefined) return words.noAllowance;
  const { along, across, ask, movesTogether } = moveAllowance;
  if (along === 0 && across === 0) return words.noShift;
  // The run of the allowance is that of holes without a group.
  const run = hole.group === undefined ? moveAllowance.run : group?.run;
  // Along and across mean nothing without a direction, unless they are alike.
  if (run === undefined && along !== across) return words.noRun;
  return words.allowance({
    along: lengths.atMost(along),
    across: lengths.atMost(across),
    run: run === undefined ? words.anyDirection : runInWords(run, frame, words),
    isTogether: group !== undefined && (movesTogether === true || group.movesTogether !== false),
    ask,
  });
}

/** A run farther off a compass line or an axis is told in degrees. */
const OFF_DEG = 5;

/**
 * Which way a run goes: the two of eight compass points by project north, without it the plan axis that it follows;
 * where it is farther off than 5 degrees its angle from the x axis.
 */
function runInWords(
  [x, y, z]: readonly [number, number, number],
  { projectNorthDeg }: Pick<Frame, 'projectNorthDeg'>,
  { compass, upright, fromX }: SheetWords,
): string {
  if (Math.hypot(x, y) < Math.abs(z)) return upright;
  const angleDeg = ((((Math.atan2(y, x) * 180) / Math.PI) % 180) + 180) % 180;
  if (projectNorthDeg === undefined) {
    if (angleDeg <= OFF_DEG || angleDeg >= 180 - OFF_DEG) return 'x';
    return Math.abs(angleDeg - 90) <= OFF_DEG ? 'y' : fromX(Math.round(angleDeg));
  }
  const bearingDeg = (Math.atan2(x, y) * 180) / Math.PI - projectNorthDeg;
  const eighth = Math.round(bearingDeg / 45);
  if (Math.abs(bearingDeg - 45 * eighth) > OFF_DEG) return fromX(Math.round(angleDeg));
  return compass[((eighth % 4) + 4) % 4];
}
