import type { Observe } from '../../model/observation.js';
import { CellReader, longestCell, mostCells } from './cell-reader.js';

/** What separates the cells of a row; `blanks` is any run of blanks and tabs. */
export type Separator = 'comma' | 'semicolon' | 'tab' | 'blanks';

/** Takes a row: its cells as they stand, and its number, from 1. */
export type OnRow = (cells: string[], row: number) => void;

const separators: Readonly<Record<Separator, string>> = { comma: ',', semicolon: ';', tab: '\t', blanks: ' ' };

/** A row up to this length cannot pass a limit, and may be split at once. */
const SHORT_ROW = 65_536;
const SHOWN = 40;

/**
 * Cuts delimited text into rows and cells, as the text arrives.
 *
 * Quotes follow RFC 4180: a cell that begins with a quote ends at the next quote that is not
 * doubled, and may hold separators and line ends. A quote further in is a character like any other,
 * such as an inch mark. Rows end in CRLF, LF or CR and are counted as a spreadsheet counts them: a
 * line end inside quotes begins no row; a blank line is a row and is not handed on. A byte order
 * mark at the start is skipped.
 *
 * Observes `quote-not-closed` where the text ends inside quotes, `cell-unreadable` where text
 * follows a closing quote, and `row-length` for a row of more than 1,000,000 cells or a cell of more
 * than 10,000,000 UTF-16 units, after which nothing more is read. A row with one of these is not
 * handed on. Memory is bounded by the longest row and the piece at hand.
 */
export class TableReader {
  /** Number of the last row that was begun. */
  row = 0;
  /** Rows that were not handed on because of a fault. */
  faultyRows = 0;
  private readonly separator: string;
  private readonly blanks: boolean;
  private readonly slow: CellReader;
  private rest = '';
  private atStart = true;
  private skipLineFeed = false;

  constructor(
    separator: Separator,
    private readonly onRow: OnRow,
    private readonly observe: Observe,
  ) {
    this.separator = separators[separator];
    this.blanks = separator === 'blanks';
    this.slow = new CellReader(this.separator.charCodeAt(0), this.blanks);
  }

  /** Whether a limit was passed, after which nothing is read. */
  get stopped(): boolean {
    return this.slow.overLimit;
  }

  /** Reads the next piece of the text. */
  write(piece: string): void {
    if (this.stopped || piece === '') return;
    const start = this.atStart && piece.charCodeAt(0) === 0xfeff ? 1 : 0;
    this.atStart = false;
    const text = this.rest === '' ? piece : this.rest + piece;
    this.rest = '';
    this.readRows(text, start);
  }

  /** Reads what is left after the last line end. */
  end(): void {
    if (this.rest !== '') {
      this.row++;
      this.splitRow(this.rest);
      this.rest = '';
    } else if (this.slow.quoteOpen && !this.stopped) {
      this.faultyRows++;
      this.observeOpenQuote();
    } else if (this.slow.inRow && !this.stopped) {
      this.slow.finish();
      this.takeSlowRow();
    }
  }

  /** Reads rows while they are whole and keeps the beginning of the last one. */
  private readRows(text: string, from: number): void {
    let at = from;
    let lineFeed = text.indexOf('\n', at);
    let carriageReturn = text.indexOf('\r', at);
    let quote = text.indexOf('"', at);
    while (at < text.length && !this.stopped) {
      if (this.skipLineFeed) {
        this.skipLineFeed = false;
        if (text.charCodeAt(at) === 0x0a) {
          at++;
          continue;
        }
      }
      // Each mark is looked for again only when it lies behind, so that every character is seen once.
      if (lineFeed >= 0 && lineFeed < at) lineFeed = text.indexOf('\n', at);
      if (carriageReturn >= 0 && carriageReturn < at) carriageReturn = text.indexOf('\r', at);
      if (quote >= 0 && quote < at) quote = text.indexOf('"', at);
      const end = lineFeed < 0 || (carriageReturn >= 0 && carriageReturn < lineFeed) ? carriageReturn : lineFeed;
      const stop = end < 0 ? text.length : end;
      if (this.slow.inRow || stop - at > SHORT_ROW || (quote >= 0 && quote < stop)) {
        at = this.readSlowRow(text, at);
      } else if (end < 0) {
        this.rest = text.slice(at);
        return;
      } else {
        this.row++;
        this.splitRow(text.slice(at, end));
        this.skipLineFeed = end === carriageReturn;
        at = end + 1;
      }
    }
  }

  /** Hands on a row without quotes and of ordinary length. */
  private splitRow(line: string): void {
    const cells = this.blanks ? splitAtBlanks(line) : line.split(this.separator);
    if (!isBlank(cells)) this.onRow(cells, this.row);
  }

  private readSlowRow(text: string, from: number): number {
    const { slow } = this;
    if (!slow.inRow) {
      this.row++;
      slow.begin();
    }
    const at = slow.read(text, from);
    if (slow.overLimit || !slow.inRow) this.takeSlowRow();
    this.skipLineFeed = !slow.inRow && slow.endedInReturn;
    return at;
  }

  private takeSlowRow(): void {
    const { cells, fault } = this.slow;
    if (fault === undefined) {
      if (!isBlank(cells)) this.onRow(cells, this.row);
      return;
    }
    this.faultyRows++;
    const at = { row: this.row, column: this.slow.faultColumn };
    if (fault === 'text-after-quote') {
      const expected = 'followed by a separator or the end of the row behind its closing quote';
      const data = { expected, found: shorten(cells[at.column - 1]) };
      this.observe({ rule: 'cell-unreadable', at, data, cause: 'text-after-quote' });
      return;
    }
    const what = fault === 'too-many-cells' ? 'cells' : 'characters in a cell';
    const expected = fault === 'too-many-cells' ? mostCells : longestCell;
    const found = fault === 'too-many-cells' ? cells.length : this.slow.cell.length;
    this.observe({ rule: 'row-length', at, data: { what, expected, found, limit: true }, cause: fault });
  }

  private observeOpenQuote(): void {
    const { cell, cells } = this.slow;
    const linesInside = cell.split(/\r\n|\r|\n/).length - 1;
    this.observe({
      rule: 'quote-not-closed',
      at: { row: this.row, column: cells.length + 1 },
      data: { found: shorten(cell), linesInside },
      cause: 'quote-not-closed',
    });
  }
}

function isBlank(cells: readonly string[]): boolean {
  return cells.length === 0 || (cells.length === 1 && cells[0].trim() === '');
}

function splitAtBlanks(line: string): string[] {
  const cells: string[] = [];
  let start = -1;
  for (let at = 0; at < line.length; at++) {
    const code = line.charCodeAt(at);
    if (code !== 0x20 && code !== 0x09) {
      if (start < 0) start = at;
    } else if (start >= 0) {
      cells.push(line.slice(start, at));
      start = -1;
    }
  }
  if (start >= 0) cells.push(line.slice(start));
  return cells;
}

function shorten(text: string): string {
  const line = text.split(/[\r\n]/, 1)[0];
  return line.length > SHOWN || line.length < text.length ? `${line.slice(0, SHOWN)}…` : line;
}
