import type { BoundColumns } from './bind-columns.js';

/** Counts what of a table no column of the profile reads. */
export class UnreadCells {
  /** Rows with text that stand before the header. */
  preambleRows = 0;
  private header: readonly string[] = [];
  private used: ReadonlySet<number> = new Set();
  private readonly counts: number[] = [];

  /** Takes the header and the columns that are read. */
  bind({ columns, filter, code }: BoundColumns, header: readonly string[]): void {
    this.header = header;
    const used = new Set(columns.map(({ index }) => index));
    if (filter !== undefined) used.add(filter);
    if (code !== undefined) used.add(code);
    this.used = used;
  }

  /** Takes the cells of a row that became a hole. */
  count(cells: readonly string[]): void {
    for (let index = 0; index < cells.length; index++) {
      if (!this.used.has(index) && cells[index].trim() !== '') this.counts[index] = (this.counts[index] ?? 0) + 1;
    }
  }

  /** Columns that are not read and the number of holes that have text there; `#n` without a name. */
  columns(): { column: string; count: number }[] {
    return this.counts.flatMap((count, index) => [{ column: this.header[index]?.trim() || `#${index + 1}`, count }]);
  }
}
