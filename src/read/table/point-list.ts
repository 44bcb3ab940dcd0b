import type { Assignment, ColumnProfile } from '../../generated/column-profile.js';
import type { Hole } from '../../generated/layout.js';
import { cellText } from '../../model/formula-guard.js';
import { nearest } from '../../model/nearest.js';
import type { Observe } from '../../model/observation.js';
import { type BoundColumns, bindColumns } from './bind-columns.js';
import { checkProfile, profileUnfit } from './check-profile.js';
import { foreignText } from './foreign-text.js';
import { type LeftOut, LeftOutRows } from './left-out-rows.js';
import { RowToHole } from './row-to-hole.js';
import { TableReader } from './table-reader.js';
import type { UnreadCells } from './unread-cells.js';

/**
 * Takes a hole, the row that it came from, and where its members came from: numbers of columns, from
 * 1, by JSON Pointers relative to the hole (`""` is the id). The map is the same for all holes of a table.
 */
export type OnHole = (hole: Hole, row: number, columnOf: ReadonlyMap<string, number>) => void;

const LONGEST_CODE = 80;
const MOST_CODES_KEPT = 10_000;

/** What became of the rows of a table, blank lines, preamble, header and end row not counted. */
export interface PointListCounts {
  /** All rows: the sum of the three others. */
  rows: number;
  holes: number;
  /** Rows with something bad in them. */
  faulty: number;
  /** Rows that the profile leaves out. */
  leftOut: number;
}

/**
 * Reads a point list into holes, as its text arrives, after a column profile that holds to its schema.
 *
 * Lengths become millimetres; heights become z of the site frame. Ids and other texts stay as they
 * are but for blanks around them and the apostrophe of `guardFormula`. A column says what a member is, where its cell is empty the code
 * says it, then the constants. Every hole gets `origin` with its row, and with its code where the
 * table has codes. A row with a bad cell gives no hole and is counted as faulty.
 *
 * Observes what `TableReader` does, and `not-utf8` where the text is none, `profile-unfit`, `column-missing`, `row-length`,
 * `cell-unreadable`, `cell-empty`, `code-unmapped` and `rows-left-out`. With an unfit profile or a
 * missing column no row is read.
 */
export class PointListReader {
  /** What became of the rows so far. */
  readonly counts: PointListCounts = { rows: 0, holes: 0, faulty: 0, leftOut: 0 };
  private readonly table: TableReader;
  private readonly leftOut = new LeftOutRows();
  private readonly constants: Assignment;
  /** What a row with a code is given, the constants included. */
  private readonly codes = new Map<string, Assignment>();
  private readonly keep: ReadonlySet<string> | undefined;
  private readonly drop: ReadonlySet<string>;
  private usable: boolean;
  private isBegun = false;
  /** The nearest known code of codes that are not in the map. */
  private readonly nearestCodes = new Map<string, string | undefined>();
  private bound: BoundColumns | undefined;
  private maker: RowToHole | undefined;
  private headerSeen = false;
  private ended = false;

  constructor(
    private readonly profile: ColumnProfile,
    private readonly onHole: OnHole,
    private readonly observe: Observe,
    private readonly unread?: UnreadCells,
  ) {
    this.table = new TableReader(
      profile.table?.separator ?? 'comma',
      (cells, row) => this.takeRow(cells, row),
      observe,
    );
    const { constants = {}, codes } = profile;
    this.constants = constants;
    for (const [code, members] of Object.entries(codes?.map ?? {})) this.codes.set(code, { ...constants, ...members });
    this.keep = profile.rows?.keep && new Set(profile.rows.keep);
    this.drop = new Set(profile.rows?.drop);
    this.usable = this.acceptProfile();
    if (this.usable && profile.table?.header === false) this.bind(undefined, 1);
  }

  /** Reads the next piece of the text. */
  write(piece: string): void {
    if (!this.isBegun && piece !== '') this.begin(piece);
    if (this.usable) this.table.write(piece);
  }

  /** Whether the row that ends the data was met. */
  get hasEnded(): boolean {
    return this.ended;
  }

  /** The rows that the profile leaves out, so far. */
  get leftOutRows(): readonly LeftOut[] {
    return this.leftOut.list();
  }

  /** Reads what is left and reports what was left out. */
  end(): PointListCounts {
    if (!this.usable) return this.counts;
    this.table.end();
    if (!this.headerSeen) this.reportNoHeader();
    const { end } = this.profile.table ?? {};
    if (end !== undefined && !this.ended && !this.table.stopped) {
      const problem = `No row begins with "${end}", which should end the data; rows may be missing.`;
      this.observe(profileUnfit({ member: '/table/end', problem, severity: 'warning' }));
    }
    this.leftOut.report(this.observe, this.profile.codes?.column);
    this.counts.leftOut = this.leftOut.total;
    this.counts.rows += this.table.faultyRows;
    this.counts.faulty += this.table.faultyRows;
    return this.counts;
  }

  /** Looks at the first piece: what is no text at all is said once and not read. */
  private begin(piece: string): void {
    this.isBegun = true;
    const found = foreignText(piece);
    if (found === undefined || !this.usable) return;
    this.usable = false;
    this.observe({ rule: 'not-utf8', at: { byte: 0 }, data: { found }, cause: found });
  }

  /** One finding is enough where there are no columns at all. */
  private reportNoHeader(): void {
    const [{ column }] = this.profile.columns;
    const at = { row: Math.max(1, this.table.row) };
    this.observe({ rule: 'column-missing', at, data: { column, header: [], columns: 0 }, cause: column });
  }

  private acceptProfile(): boolean {
    const faults = checkProfile(this.profile);
    for (const fault of faults) this.observe(profileUnfit(fault));
    return faults.every(({ severity }) => severity === 'warning');
  }

  private bind(header: readonly string[] | undefined, row: number): void {
    this.headerSeen = true;
    this.bound = bindColumns(this.profile, header, row, this.observe);
    this.maker = this.bound && new RowToHole(this.profile, this.bound, this.observe);
    if (this.bound !== undefined) this.unread?.bind(this.bound, header ?? []);
  }

  private takeRow(cells: string[], row: number): void {
    const { skipRows = 0, end } = this.profile.table ?? {};
    if (row <= skipRows) {
      if (this.unread !== undefined) this.unread.preambleRows++;
      return;
    }
    if (!this.headerSeen) {
      this.bind(cells, row);
      return;
    }
    if (!this.ended && end !== undefined && cellText(cells[0]) === end) {
      this.ended = true;
      return;
    }
    this.counts.rows++;
    if (this.ended) this.leftOut.add('after-end', row);
    else if (cells.every((cell) => cell.trim() === '')) this.leftOut.add('empty', row);
    else if (this.bound !== undefined && this.isHole(cells, row, this.bound)) this.takeHole(cells, row, this.bound);
    else if (this.bound === undefined) this.counts.faulty++;
  }

  /** Whether the row filter lets the row through; a row too short for it goes on to be reported. */
  private isHole(cells: readonly string[], row: number, { filter }: BoundColumns): boolean {
    if (filter === undefined || filter >= cells.length) return true;
    const value = cellText(cells[filter]);
    if (!this.drop.has(value) && (this.keep === undefined || this.keep.has(value))) return true;
    this.leftOut.add('filter', row, value);
    return false;
  }

  private takeHole(cells: readonly string[], row: number, bound: BoundColumns): void {
    if (!this.hasLength(cells, row, bound)) {
      this.counts.faulty++;
      return;
    }
    const code = bound.code === undefined ? undefined : cellText(cells[bound.code]);
    const given = code === undefined ? this.constants : this.codes.get(code);
    if (given === undefined && this.leaveOut(code ?? '', row, bound)) return;
    const hole = given && this.maker?.make(cells, row, given, code);
    if (hole === undefined) {
      this.counts.faulty++;
      return;
    }
    this.counts.holes++;
    this.unread?.count(cells);
    this.onHole(hole, row, bound.columnOf);
  }

  /** Empty cells beyond the last column do no harm; any other difference may have shifted the cells. */
  private hasLength(cells: readonly string[], row: number, { width, open }: BoundColumns): boolean {
    const fits =
      cells.length >= width &&
      (open || cells.length === width || cells.slice(width).every((cell) => cell.trim() === ''));
    if (fits) return true;
    const at = { row, column: Math.min(cells.length, width) + 1 };
    const data = { what: 'cells', expected: width, found: cells.length };
    this.observe({ rule: 'row-length', at, data, cause: `${cells.length} cells` });
    return false;
  }

  /** Leaves the row out where the profile says so, else observes its code; true where it was left out. */
  private leaveOut(code: string, row: number, bound: BoundColumns): boolean {
    const { codes } = this.profile;
    if (codes?.unmapped === 'leave-out') {
      this.leftOut.add('code', row, code);
      return true;
    }
    const at = { row, column: (bound.code ?? 0) + 1 };
    const near = this.nearestCode(code);
    const shown = code.length > LONGEST_CODE ? `${code.slice(0, LONGEST_CODE - 1)}…` : code;
    const data = { column: codes?.column, code: shown, ...(near !== undefined && { nearest: near }) };
    this.observe({ rule: 'code-unmapped', at, data, cause: `${codes?.column}=${code}` });
    return false;
  }

  /** The code of the map that was most likely meant; looked up once for each code, as long as they are few. */
  private nearestCode(code: string): string | undefined {
    if (this.nearestCodes.has(code)) return this.nearestCodes.get(code);
    // Another number is another size: only a code with the same digits can be a misspelling.
    const digits = digitsOf(code);
    const near = nearest(
      code,
      [...this.codes.keys()].filter((known) => digitsOf(known) === digits),
    );
    if (this.nearestCodes.size < MOST_CODES_KEPT) this.nearestCodes.set(code, near);
    return near;
  }
}

function digitsOf(code: string): string {
  return code.replace(/\D/g, '');
}
