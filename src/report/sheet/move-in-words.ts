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
  return words.allowance({
    along: lengths.atMost(along),
    across: lengths.atMost(across),
    run: run && runInWords(run, frame, words),
    isTogether: group !== undefined && (movesTogether === true || group.movesTogether !== false),
    ask,
  });
}

/** Which way a run goes: the two of eight compass points by project north, without it the plan axis that it follows most; undefined for an upright one. */
function runInWords(
  [x, y, z]: readonly [number, number, number],
  { projectNorthDeg }: Pick<Frame, 'projectNorthDeg'>,
  { compass }: SheetWords,
) {
  if (Math.hypot(x, y) < Math.abs(z)) return undefined;
  if (projectNorthDeg === undefined) return Math.abs(x) >= Math.abs(y) ? 'x' : 'y';
  const bearingDeg = (Math.atan2(x, y) * 180) / Math.PI - projectNorthDeg;
  const eighth = Math.round(bearingDeg / 45);
  return compass[((eighth % 4) + 4) % 4];
}
