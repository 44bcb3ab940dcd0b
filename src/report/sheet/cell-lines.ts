import type { Primitive } from '../../draw/primitive.js';
import { fitLines, typeWidth } from './fit-lines.js';
import { LINE_MM, type TypeSize, TYPE_MM, textAt } from './sheet-block.js';

/** A line of a cell of the list. */
export interface CellLine {
  readonly text: string;
  readonly size: TypeSize;
  readonly isBold: boolean;
}

/** The depth, and its limits in the type to work by only where they find room in one line. */
export function depthLines([depth, limits]: readonly [string, string], width: number): CellLine[] {
  const { lines } = cellLines(depth, width - 1.4, false);
  const isShort = typeWidth(limits, TYPE_MM.work) <= width - 1.4;
  return [...lines, ...(isShort ? cellLines(limits, width - 1.4, false).lines : lookUp(limits, width))];
}

/** In the type to work by where that finds room in two lines, else in the smaller one. */
export function cellLines(text: string, width: number, isBold: boolean): { lines: CellLine[]; isCut: boolean } {
  const large = fitLines(text, width, TYPE_MM.work, 2, isBold);
  if (!large.isCut) {
    return { lines: large.lines.map((line) => ({ text: line, size: 'work', isBold })), isCut: false };
  }
  const small = fitLines(text, width, TYPE_MM['look-up'], 4, isBold);
  return { lines: small.lines.map((line) => ({ text: line, size: 'look-up', isBold })), isCut: small.isCut };
}

/** In the smaller type, two lines at most. */
export function lookUp(text: string, width: number): CellLine[] {
  return fitLines(text, width - 1.4, TYPE_MM['look-up'], 2).lines.map((line) => ({
    text: line,
    size: 'look-up',
    isBold: false,
  }));
}

/** Lines of a cell below each other. */
export function drawCell(lines: readonly CellLine[], x: number, top: number): Primitive[] {
  let y = top;
  return lines.map(({ text, size, isBold }) => {
    const drawn = textAt([x, y + TYPE_MM[size] * 0.88], text, TYPE_MM[size], { isBold });
    y += LINE_MM[size];
    return drawn;
  });
}
