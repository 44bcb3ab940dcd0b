import type { Spot } from './primitive.js';

/** Steps in a millimetre of paper: 0.01 mm is finer than any printer. */
const STEPS = 100;
/** Beyond this a number has no place on paper. */
const FARTHEST_MM = 1e6;

/**
 * A length on paper as text: two decimals at most, no zeros that say nothing.
 * Throws a `RangeError` for what is no number or far off the paper.
 */
export function paperLength(mm: number): string {
  return stepsText(steps(mm));
}

/** The same with one decimal, for what nobody sees move by less. */
export function coarseLength(mm: number): string {
  return stepsText(Math.round(steps(mm) / 10) * 10);
}

/**
 * Lines as the data of one SVG path; closed ones go back to their first point. Lines without points give nothing.
 * Each point is counted in whole steps from the one before it: short text, and no rounding that adds up.
 */
export function pathData(lines: readonly (readonly Spot[])[], isClosed: boolean): string {
  let text = '';
  let [x, y] = [0, 0];
  for (const line of lines) {
    if (line.length === 0) continue;
    const [firstX, firstY] = [steps(line[0][0]), steps(line[0][1])];
    text += text === '' ? `M${pair(firstX, firstY)}` : `m${pair(firstX - x, firstY - y)}`;
    [x, y] = [firstX, firstY];
    let last = 'm';
    for (let k = 1; k < line.length; k++) {
      const [nextX, nextY] = [steps(line[k][0]), steps(line[k][1])];
      const step =
        nextY === y
          ? `h${stepsText(nextX - x)}`
          : nextX === x
            ? `v${stepsText(nextY - y)}`
            : `l${pair(nextX - x, nextY - y)}`;
      // A letter that stands there already need not be repeated; the sign of a number parts it from the one before.
      text += step[0] !== last ? step : step[1] === '-' ? step.slice(1) : ` ${step.slice(1)}`;
      last = step[0];
      [x, y] = [nextX, nextY];
    }
    if (isClosed) {
      text += 'z';
      [x, y] = [firstX, firstY];
    } else if (line.length === 1) text += 'h0';
  }
  return text;
}

function pair(x: number, y: number): string {
  return `${stepsText(x)}${y < 0 ? '' : ' '}${stepsText(y)}`;
}

function steps(mm: number): number {
  if (!(Math.abs(mm) < FARTHEST_MM)) throw new RangeError(`No length on paper: ${mm}.`);
  return Math.round(mm * STEPS);
}

function stepsText(count: number): string {
  return String(count / STEPS)
    .replace(/^(-?)0\./, '$1.')
    .replace(/^-0$/, '0');
}
