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

/** Lines as the data of one SVG path; closed ones go back to their first point. Lines without points give nothing. */
export function pathData(lines: readonly (readonly Spot[])[], isClosed: boolean): string {
  return lines.map((line) => oneLine(line, isClosed)).join('');
}

/** Whole steps, and each point counted from the one before it: short text, and no rounding that adds up. */
function oneLine(line: readonly Spot[], isClosed: boolean): string {
  if (line.length === 0) return '';
  let x = steps(line[0][0]);
  let y = steps(line[0][1]);
  let text = `M${pair(x, y)}`;
  for (let k = 1; k < line.length; k++) {
    const [nextX, nextY] = [steps(line[k][0]), steps(line[k][1])];
    text += `${k === 1 ? 'l' : nextX < x ? '' : ' '}${pair(nextX - x, nextY - y)}`;
    x = nextX;
    y = nextY;
  }
  return isClosed ? `${text}z` : line.length === 1 ? `${text}h0` : text;
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
