import { moved } from '../../draw/moved.js';
import type { Primitive } from '../../draw/primitive.js';
import { symbolSign } from '../../draw/symbol-sign.js';
import { type CellLine, cellLines, depthLines, drawCell, lookUp } from './cell-lines.js';
import { fitLines } from './fit-lines.js';
import { paragraphs, RULE, type SheetBlock, stacked, TYPE_MM, LINE_MM, textAt } from './sheet-block.js';
import type { SheetCaps } from './sheet-caps.js';
import type { SheetRow } from './sheet-row.js';
import type { SheetWords } from './sheet-words.js';

/** Columns that do not grow, mm. */
const WIDTHS = { tag: 25, symbol: 12, bit: 21, depth: 23, keys: 10, box: 16 } as const;
/** A box must be high enough to write in. */
const LEAST_ROW_MM = 12.4;
const PAD_MM = 0.5;
const HEAD_MM = 10;
const SIGN_MM = 6;

/** Where the columns of a list begin, and the right end of the last one. */
interface Columns {
  readonly number: number;
  readonly tag: number;
  readonly symbol: number;
  readonly bit: number;
  readonly depth: number;
  readonly grid: number;
  readonly keys: number;
  readonly boxes: readonly number[];
  readonly right: number;
}

/** Where a list stands, and how wide its numbers are. Millimetres. */
export interface ListBox {
  readonly left: number;
  readonly width: number;
  readonly numberMm: number;
}

/** Width of the column of numbers up to a highest one: two digits in the type to work by, more in the smaller one. */
export function numberColumnMm(highest: number): number {
  return highest < 100 ? 9 : 13.5;
}

/** A row ready to be drawn, as high as it must be or higher. */
export interface ListRow {
  readonly leastHeightMm: number;
  readonly isCut: boolean;
  draw(top: number, heightMm: number): Primitive[];
}

function columnsOf({ left, width, numberMm }: ListBox, boxes: number): Columns {
  const tag = left + numberMm;
  const symbol = tag + WIDTHS.tag;
  const bit = symbol + WIDTHS.symbol;
  const depth = bit + WIDTHS.bit;
  const grid = depth + WIDTHS.depth;
  const right = left + width;
  const firstBox = right - boxes * WIDTHS.box;
  return {
    ...{ number: left, tag, symbol, bit, depth, grid, right },
    keys: firstBox - WIDTHS.keys,
    boxes: Array.from({ length: boxes }, (_, k) => firstBox + k * WIDTHS.box),
  };
}

/** The heads of the columns. */
export function listHead(box: ListBox, words: SheetWords, unit: string | undefined): SheetBlock {
  const { heads, boxes } = words;
  const columns = columnsOf(box, boxes.length);
  const edges = edgesOf(columns);
  const titles = [
    heads.number,
    heads.tag,
    heads.symbol,
    heads.bit,
    words.withUnit(heads.depth, unit),
    words.withUnit(heads.grid, unit),
    heads.substrate,
  ];
  const cells = titles.map((text, k) => fitLines(text, edges[k + 1] - edges[k] - 1.2, TYPE_MM['look-up'], 2, true));
  return {
    heightMm: HEAD_MM,
    isCut: false,
    draw: (top) => [
      ...frameOf(columns, top, HEAD_MM),
      ...cells.flatMap(({ lines }, k) =>
        lines.map((text, line) =>
          textAt([edges[k] + 0.9, top + 4 + line * 4.2], text, TYPE_MM['look-up'], { isBold: true }),
        ),
      ),
      ...boxes.flatMap((pair, k) =>
        pair.map((text, line) => textAt([columns.boxes[k] + 0.7, top + 3.9 + line * 5], text, TYPE_MM['look-up'])),
      ),
    ],
  };
}

/** One row of the list. */
export function listRow(row: SheetRow, box: ListBox, words: SheetWords, caps: SheetCaps): ListRow {
  const columns = columnsOf(box, words.boxes.length);
  const { cells, isCut } = cellsOf(row, columns);
  const said = saidBelow(row, { left: columns.tag, width: columns.right - columns.tag - 1 }, words, caps);
  const tallest = Math.max(...cells.map(([, lines]) => lines.reduce((sum, { size }) => sum + LINE_MM[size], 0)));
  const body = Math.max(LEAST_ROW_MM, tallest + 2 * PAD_MM);
  return {
    leastHeightMm: body + said.heightMm,
    isCut: isCut || said.isCut,
    draw(top, heightMm) {
      const cellsMm = heightMm - said.heightMm;
      return [
        ...frameOf(columns, top, cellsMm, heightMm),
        ...(row.findings?.state === 'error' ? [closedBoxes(columns, top, cellsMm)] : []),
        ...cells.flatMap(([x, lines]) => drawCell(lines, x + 0.9, top + PAD_MM)),
        ...signOf(row, columns.symbol + WIDTHS.symbol / 2, top),
        ...said.draw(top + cellsMm),
      ];
    },
  };
}

/** The texts of the cells, each with its left edge. */
function cellsOf(row: SheetRow, columns: Columns): { cells: [number, CellLine[]][]; isCut: boolean } {
  let isCut = false;
  const cell = (texts: readonly string[], from: number, to: number, isBold = false): CellLine[] =>
    texts.flatMap((text) => {
      const found = cellLines(text, to - from - 1.4, isBold);
      isCut ||= found.isCut;
      return found.lines;
    });
  const { keys } = row;
  const cells: [number, CellLine[]][] = [
    [columns.number, numberLines(row)],
    [columns.tag, cell([row.tag], columns.tag, columns.symbol, true)],
    [columns.bit, [...cell([row.bit[0]], columns.bit, columns.depth), ...lookUp(row.bit[1], WIDTHS.bit)]],
    [columns.depth, depthLines(row.depth, columns.grid - columns.depth)],
    [columns.grid, cell(row.grid, columns.grid, columns.keys)],
    [columns.keys, cell([keys.substrate, keys.move], columns.keys, columns.boxes[0])],
  ];
  return { cells, isCut };
}

/** Signs below the number, in the order of what they mean for the work. */
export const ROW_SIGNS = { error: '!!', warning: '!', accepted: '(!)', change: 'Δ' } as const;

/** The number, never broken, and below it the signs of findings and change. */
function numberLines({ number, findings, change }: SheetRow): CellLine[] {
  const signs = [
    ...(findings === undefined ? [] : [ROW_SIGNS[findings.state]]),
    ...(change === undefined ? [] : [ROW_SIGNS.change]),
  ];
  const size = number < 100 ? 'work' : 'look-up';
  return [
    { text: String(number), size, isBold: true },
    ...(signs.length > 0 ? [{ text: signs.join(''), size: 'look-up' as const, isBold: true }] : []),
  ];
}

/** What stands below the cells: findings, what is other than before, notes. */
function saidBelow(
  { findings, change, notes }: SheetRow,
  box: { left: number; width: number },
  words: SheetWords,
  caps: SheetCaps,
): SheetBlock {
  const [first, ...more] = findings?.lines ?? [];
  const isError = findings?.state === 'error';
  const gravest = first === undefined ? [] : [isError ? `${words.doNotDrill} ${first}` : first];
  return stacked([
    paragraphs(gravest, box, 'look-up', 2, isError),
    paragraphs(more, box, 'look-up', caps.rowSaid),
    paragraphs(change === undefined ? [] : [change.text], box, 'look-up', caps.rowSaid),
    paragraphs(notes.length === 0 ? [] : [notes.join(' ')], box, 'look-up', caps.notes),
  ]);
}

function signOf({ look }: SheetRow, x: number, top: number): Primitive[] {
  const letters = fitLines(look.letters ?? '', WIDTHS.symbol - 1, TYPE_MM['look-up'], 1, true).lines;
  return [
    ...moved(symbolSign(look, SIGN_MM, false), x, top + 4.6),
    ...letters.map((text) => textAt([x, top + 11.2], text, TYPE_MM['look-up'], { anchor: 'middle', isBold: true })),
  ];
}

/** A cross through each box, so that nothing is written into it. */
function closedBoxes({ boxes, right }: Columns, top: number, cellsMm: number): Primitive {
  const bottom = top + cellsMm;
  const lines = boxes.flatMap((x, k) => {
    const end = boxes[k + 1] ?? right;
    return [
      [[x, top] as const, [end, bottom] as const],
      [[x, bottom] as const, [end, top] as const],
    ];
  });
  return { kind: 'polyline', lines, style: { stroke: 'ink', strokeWidth: 0.6 } };
}

function edgesOf({ number, tag, symbol, bit, depth, grid, keys, boxes, right }: Columns): number[] {
  return [number, tag, symbol, bit, depth, grid, keys, ...boxes, right];
}

/** Lines around the cells of a row; a line parts the boxes. Below the cells there may be room for notes. */
function frameOf(columns: Columns, top: number, cellsMm: number, heightMm = cellsMm): Primitive[] {
  const edges = edgesOf(columns);
  const { number: left, right, boxes } = columns;
  const middle = top + cellsMm / 2;
  return [
    {
      kind: 'polyline',
      lines: [
        ...edges.map((x) => [[x, top] as const, [x, top + (x === left || x === right ? heightMm : cellsMm)] as const]),
        [
          [left, top],
          [right, top],
        ],
        [
          [left, top + heightMm],
          [right, top + heightMm],
        ],
        [
          [boxes[0], middle],
          [right, middle],
        ],
        ...(heightMm > cellsMm ? [[[boxes[0], top + cellsMm] as const, [right, top + cellsMm] as const]] : []),
      ],
      style: RULE,
    },
  ];
}
