import type { GridDimension, GridDimensions } from './grid-dimensions.js';

/** Words of grid dimensions as one line of text; other languages give their own. */
export interface GridDimensionWords {
  /** @param length the distance as the project reads lengths */
  from(length: string, side: Exclude<GridDimension['side'], 'on'>, line: string): string;
  on(line: string): string;
  /** Added to a line that would have to be lengthened. */
  lengthened: string;
  /** Added where two lines do not meet at right angles; in whole degrees. */
  askew(angleDeg: number): string;
  oneFamily: string;
}

export const GRID_DIMENSION_WORDS: GridDimensionWords = {
  from: (length, side, line) => `${length} ${/^[+−]/.test(side) ? 'to ' : ''}${side} of ${line}`,
  on: (line) => `on ${line}`,
  lengthened: 'line lengthened',
  askew: (angleDeg) => `lines meet at ${angleDeg}°`,
  oneFamily: 'parallel gridlines only',
};

/**
 * Grid dimensions as one line of text, such as `3'-2" E of C, 1'-0" N of 4`; empty where there is no grid.
 *
 * @param say writes a length in millimetres as the project reads lengths
 */
export function gridDimensionText(
  { lines, angleDeg, basis }: GridDimensions,
  say: (mm: number) => string,
  words: GridDimensionWords = GRID_DIMENSION_WORDS,
): string {
  const parts = lines.map(({ line, distanceMm, side, isBeyondEnd }) => {
    const text = side === 'on' ? words.on(line) : words.from(say(distanceMm), side, line);
    return isBeyondEnd ? `${text} (${words.lengthened})` : text;
  });
  const text = parts.join(', ');
  const isAskew = basis === 'skewed' || basis === 'narrow';
  if (isAskew && angleDeg !== undefined) return `${text} (${words.askew(Math.round(angleDeg))})`;
  return basis === 'one-family' ? `${text} (${words.oneFamily})` : text;
}
