import type { Primitive, Spot, Style } from '../../draw/primitive.js';
import { fitLines } from './fit-lines.js';
import { LOOK_UP_LINE_MM, LOOK_UP_TYPE_MM, WORK_LINE_MM, WORK_TYPE_MM } from './sheet-paper.js';

/** A piece of a sheet that goes over its whole width or a column of it. */
export interface SheetBlock {
  readonly heightMm: number;
  /** Whether a text in it was cut. */
  readonly isCut: boolean;
  /** @param top its upper edge on paper, mm */
  draw(top: number): Primitive[];
}

/** Size of type of a block: what one works by, or what one looks up. */
export type TypeSize = 'work' | 'look-up';

export const TYPE_MM: Readonly<Record<TypeSize, number>> = { work: WORK_TYPE_MM, 'look-up': LOOK_UP_TYPE_MM };
export const LINE_MM: Readonly<Record<TypeSize, number>> = { work: WORK_LINE_MM, 'look-up': LOOK_UP_LINE_MM };

/** Below a block. */
const GAP_MM = 0.5;
const INK: Style = { fill: 'ink' };
export const RULE: Style = { stroke: 'ink', strokeWidth: 0.3 };

export function textAt(
  at: Spot,
  text: string,
  size: number,
  { anchor, isBold }: { anchor?: 'start' | 'middle' | 'end'; isBold?: boolean } = {},
): Primitive {
  return { kind: 'text', items: [{ at, text }], size, anchor, isBold, style: INK };
}

/** Lines of one look below each other. */
export function textLines([left, top]: Spot, lines: readonly string[], size: TypeSize, isBold = false): Primitive[] {
  if (lines.length === 0) return [];
  const items = lines.map((text, k) => ({ at: [left, top + LINE_MM[size] * k + TYPE_MM[size] * 0.82] as const, text }));
  return [{ kind: 'text', items, size: TYPE_MM[size], isBold, style: INK }];
}

/** A bold label at the left and paragraphs beside it, each with a most of lines; without paragraphs nothing. */
export function labelled(
  label: string,
  paragraphs: readonly string[],
  box: { left: number; width: number; labelWidth: number },
  size: TypeSize,
  mostLines: number,
): SheetBlock {
  const width = box.width - box.labelWidth;
  const fitted = paragraphs.map((text) => fitLines(text, width, TYPE_MM[size], mostLines));
  const lines = fitted.flatMap((one) => one.lines);
  const [head] = fitLines(label, box.labelWidth - 1, TYPE_MM[size], 1, true).lines;
  return {
    heightMm: lines.length === 0 ? 0 : lines.length * LINE_MM[size] + GAP_MM,
    isCut: fitted.some(({ isCut }) => isCut),
    draw: (top) =>
      lines.length === 0
        ? []
        : [
            ...(head === undefined ? [] : textLines([box.left, top], [head], size, true)),
            ...textLines([box.left + box.labelWidth, top], lines, size),
          ],
  };
}

/** Paragraphs over the whole width. */
export function paragraphs(
  texts: readonly string[],
  box: { left: number; width: number },
  size: TypeSize,
  mostLines: number,
  isBold = false,
): SheetBlock {
  const fitted = texts.map((text) => fitLines(text, box.width, TYPE_MM[size], mostLines, isBold));
  const lines = fitted.flatMap((one) => one.lines);
  return {
    heightMm: lines.length === 0 ? 0 : lines.length * LINE_MM[size] + GAP_MM,
    isCut: fitted.some(({ isCut }) => isCut),
    draw: (top) => textLines([box.left, top], lines, size, isBold),
  };
}

/** Blocks one below the other. */
export function stacked(blocks: readonly SheetBlock[]): SheetBlock {
  return {
    heightMm: blocks.reduce((sum, { heightMm }) => sum + heightMm, 0),
    isCut: blocks.some(({ isCut }) => isCut),
    draw(top) {
      let y = top;
      return blocks.flatMap((block) => {
        const drawn = block.draw(y);
        y += block.heightMm;
        return drawn;
      });
    },
  };
}
