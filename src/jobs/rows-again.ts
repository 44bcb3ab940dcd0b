import { rules } from '../check/list.js';
import type { ColumnProfile } from '../generated/column-profile.js';
import type { Hole } from '../generated/layout.js';
import type { LayoutSource } from '../model/layout-source.js';
import type { Observation } from '../model/observation.js';
import { PointListReader } from '../read/table/point-list.js';
import { sayAs } from '../report/say.js';
import { type RowFilter, writeCsv } from '../write/csv.js';

/** Rows that the profile by which they were written cannot read again, for one reason. */
export interface LostRows {
  /** Why, as a plain sentence. */
  reason: string;
  count: number;
  /** Id of the first hole. */
  first: string;
}

const MOST_REASONS = 100;

/** Reads each row that is written with the profile again, and keeps those that give a hole. */
export class RowsAgain implements RowFilter {
  private readonly byCause = new Map<string, LostRows>();
  private preamble = '';
  private list: PointListReader | undefined;
  private seen: Observation | undefined;

  constructor(
    private readonly profile: ColumnProfile,
    private readonly display: LayoutSource['header']['display'],
  ) {}

  begin(preamble: string): void {
    this.preamble = preamble;
    this.restart();
  }

  keeps(row: string, hole: Hole): boolean {
    const before = this.list?.counts.holes ?? 0;
    this.seen = undefined;
    this.list?.write(row);
    if ((this.list?.counts.holes ?? 0) > before) return true;
    this.count(hole);
    // Behind the row that ends the data no other would be read.
    if (this.list?.hasEnded) this.restart();
    return false;
  }

  /** The rows that were not kept, by reason. */
  get lost(): readonly LostRows[] {
    return [...this.byCause.values()];
  }

  private restart(): void {
    this.list = new PointListReader(
      this.profile,
      () => {},
      (observation) => {
        this.seen ??= observation;
      },
    );
    this.list.write(this.preamble);
  }

  private count({ id }: Hole): void {
    const { seen } = this;
    const key = seen === undefined ? '' : `${seen.rule} ${seen.cause}`;
    const isFull = this.byCause.size >= MOST_REASONS && !this.byCause.has(key);
    const known = this.byCause.get(isFull ? '' : key);
    if (known !== undefined) known.count++;
    else this.byCause.set(isFull ? '' : key, { reason: this.reason(isFull ? undefined : seen), count: 1, first: id });
  }

  private reason(seen: Observation | undefined): string {
    const rule = rules.find(({ id }) => id === seen?.rule);
    if (seen === undefined || rule === undefined) return 'The profile leaves the row out.';
    return rule.message(seen.data, sayAs(this.display));
  }
}

/** Finds the rows of a table that its profile could not read again; nothing is kept of the text. */
export function findLostRows(source: LayoutSource, profile: ColumnProfile): readonly LostRows[] {
  const rows = new RowsAgain(profile, source.header.display);
  for (const _ of writeCsv(source, profile, () => {}, rows));
  return rows.lost;
}
