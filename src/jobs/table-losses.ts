import type { ColumnProfile } from '../generated/column-profile.js';
import type { Loss } from '../model/layout-source.js';
import type { LeftOut } from '../read/table/left-out-rows.js';
import { PointListReader } from '../read/table/point-list.js';
import { UnreadCells } from '../read/table/unread-cells.js';

/** What of a table did not become a layout. */
export interface TableOutcome {
  losses: Loss[];
  /** Rows that are bad and gave no hole. */
  badRows: number;
}

const MOST_VALUES = 5;

/**
 * Finds what of a table does not travel into the layout that its profile makes of it: columns that the
 * profile does not name, rows before the header, rows that are left out. Takes the bytes of the table as
 * they arrive.
 */
export class TableLosses {
  private readonly decoder = new TextDecoder('utf-8');
  private readonly unread = new UnreadCells();
  private readonly list: PointListReader;

  constructor(profile: ColumnProfile) {
    const ignore = () => {};
    this.list = new PointListReader(profile, ignore, ignore, this.unread);
  }

  write(chunk: Uint8Array): void {
    this.list.write(this.decoder.decode(chunk, { stream: true }));
  }

  end(): TableOutcome {
    this.list.write(this.decoder.decode());
    const { faulty } = this.list.end();
    const losses: Loss[] = this.unread.columns().map(({ column, count }) => ({
      field: `columns/${column}`,
      count,
      reason: 'no column of the profile reads it',
      recoverable: false,
    }));
    const rows = (count: number, reason: string): void => {
      if (count > 0) losses.push({ field: 'rows', count, reason, recoverable: false });
    };
    rows(this.unread.preambleRows, 'they stand before the header');
    for (const [reason, group] of byReason(this.list.leftOutRows)) {
      rows(
        group.reduce((sum, { count }) => sum + count, 0),
        reasonText(reason, group),
      );
    }
    rows(faulty, 'they are bad and were left out as asked');
    return { losses, badRows: faulty };
  }
}

/** Left-out rows by reason; rows without text hold nothing that could be lost. */
function byReason(rows: readonly LeftOut[]): ReadonlyMap<LeftOut['reason'], LeftOut[]> {
  const groups = new Map<LeftOut['reason'], LeftOut[]>();
  for (const row of rows) {
    if (row.reason !== 'empty') groups.set(row.reason, [...(groups.get(row.reason) ?? []), row]);
  }
  return groups;
}

function reasonText(reason: LeftOut['reason'], group: readonly LeftOut[]): string {
  if (reason === 'after-end') return 'they stand behind the end of the data';
  if (reason === 'others') return 'left out by the profile';
  const values = group.slice(0, MOST_VALUES).map(({ value, count }) => `${count} with "${value}"`);
  return `left out by the profile (${values.join(', ')}${group.length > MOST_VALUES ? ', …' : ''})`;
}
