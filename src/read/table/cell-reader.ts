/** What can be wrong with the cells of a row. */
export type CellFault = 'text-after-quote' | 'too-many-cells' | 'cell-too-long';

/** Largest number of cells in a row. */
export const mostCells = 1_000_000;
/** Largest length of a cell, in UTF-16 units. */
export const longestCell = 10_000_000;

const LF = 0x0a;
const CR = 0x0d;
const TAB = 0x09;
const BLANK = 0x20;
const QUOTE = 0x22;

/**
 * Reads the cells of one row character by character, over as many pieces of text as the row has.
 *
 * Slower than a split at the separator, but it knows quotes and limits.
 */
export class CellReader {
  /** The cells that are complete. */
  cells: string[] = [];
  /** What is wrong; after a limit was passed nothing more is read. */
  fault: CellFault | undefined;
  /** Number of the cell with the fault, from 1. */
  faultColumn = 0;
  /** Whether a row was begun and its end not met. */
  inRow = false;
  /** Whether the row ended in a carriage return, after which a line feed still belongs to it. */
  endedInReturn = false;
  /** The text of the cell at hand. */
  cell = '';
  private state: 'start' | 'plain' | 'quoted' | 'closed' = 'start';

  /** Reads blanks and tabs as separators where `blanks` is set, else `separator` alone. */
  constructor(
    private readonly separator: number,
    private readonly blanks: boolean,
  ) {}

  /** Whether the text so far ends inside quotes. */
  get quoteOpen(): boolean {
    return this.inRow && this.state === 'quoted';
  }

  /** Whether a limit was passed. */
  get overLimit(): boolean {
    return this.fault === 'too-many-cells' || this.fault === 'cell-too-long';
  }

  begin(): void {
    this.cells = [];
    this.cell = '';
    this.state = 'start';
    this.fault = undefined;
    this.inRow = true;
    this.endedInReturn = false;
  }

  /** Reads to the end of the row or of the text and returns where it stopped. */
  read(text: string, from: number): number {
    let at = from;
    while (this.inRow && at < text.length && !this.overLimit) {
      if (this.state === 'quoted') at = this.readQuoted(text, at);
      else if (this.state === 'plain') at = this.readPlain(text, at);
      else if (this.state === 'closed') at = this.readClosed(text.charCodeAt(at), at);
      else at = this.readStart(text.charCodeAt(at), at);
    }
    return at;
  }

  /** Ends the row where the text ends. */
  finish(): void {
    if (this.state !== 'start' || (this.cells.length > 0 && !this.blanks)) this.endCell();
    this.inRow = false;
  }

  private readStart(code: number, at: number): number {
    if (this.isLineEnd(code)) return this.endRow(code, at);
    if (code === QUOTE) {
      this.state = 'quoted';
      return at + 1;
    }
    if (!this.isSeparator(code)) {
      this.state = 'plain';
      return at;
    }
    if (!this.blanks) this.endCell();
    return at + 1;
  }

  private readPlain(text: string, from: number): number {
    let at = from;
    let code = 0;
    for (; at < text.length; at++) {
      code = text.charCodeAt(at);
      if (this.isSeparator(code) || this.isLineEnd(code)) break;
    }
    this.extend(text.slice(from, at));
    if (at === text.length) return at;
    if (this.isLineEnd(code)) return this.endRow(code, at);
    this.endCell();
    return at + 1;
  }

  private readQuoted(text: string, from: number): number {
    const quote = text.indexOf('"', from);
    const end = quote < 0 ? text.length : quote;
    this.extend(text.slice(from, end));
    if (quote >= 0) this.state = 'closed';
    return quote < 0 ? end : end + 1;
  }

  private readClosed(code: number, at: number): number {
    if (this.isLineEnd(code)) return this.endRow(code, at);
    if (code === QUOTE) {
      this.extend('"');
      this.state = 'quoted';
      return at + 1;
    }
    if (this.isSeparator(code)) {
      this.endCell();
      return at + 1;
    }
    this.report('text-after-quote');
    this.state = 'plain';
    return at;
  }

  private extend(text: string): void {
    this.cell += text;
    if (this.cell.length > longestCell) this.report('cell-too-long');
  }

  private endCell(): void {
    this.cells.push(this.cell);
    this.cell = '';
    this.state = 'start';
    if (this.cells.length > mostCells) this.report('too-many-cells');
  }

  private endRow(code: number, at: number): number {
    this.finish();
    this.endedInReturn = code === CR;
    return at + 1;
  }

  private report(fault: CellFault): void {
    if (this.fault === 'text-after-quote' && fault === 'text-after-quote') return;
    this.fault = fault;
    this.faultColumn = this.cells.length + (fault === 'too-many-cells' ? 0 : 1);
  }

  private isSeparator(code: number): boolean {
    return code === this.separator || (this.blanks && (code === BLANK || code === TAB));
  }

  private isLineEnd(code: number): boolean {
    return code === LF || code === CR;
  }
}
