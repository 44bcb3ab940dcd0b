import type { Observe } from '../../model/observation.js';

/** Why rows became no holes though nothing is wrong with them. */
export type LeftOutReason = 'empty' | 'filter' | 'code' | 'after-end';

/** Rows that were left out for one reason and one value. */
export interface LeftOut {
  reason: LeftOutReason | 'others';
  /** Text of the cell that decided, as far as one did. */
  value?: string;
  count: number;
  firstRow: number;
}

const MOST_LISTED = 100;

/** Counts rows that are left out, by reason and value. */
export class LeftOutRows {
  total = 0;
  private readonly byKey = new Map<string, LeftOut>();
  private others: LeftOut | undefined;

  add(reason: LeftOutReason, row: number, value?: string): void {
    this.total++;
    const key = `${reason} ${value ?? ''}`;
    const known = this.byKey.get(key);
    if (known !== undefined) known.count++;
    else if (this.byKey.size < MOST_LISTED) this.byKey.set(key, { reason, value, count: 1, firstRow: row });
    else if (this.others !== undefined) this.others.count++;
    else this.others = { reason: 'others', count: 1, firstRow: row };
  }

  /** Why rows were left out, each reason with its rows. */
  list(): readonly LeftOut[] {
    return this.others === undefined ? [...this.byKey.values()] : [...this.byKey.values(), this.others];
  }

  /** Observes `rows-left-out` once, and `code-unmapped` once for each code whose rows were left out. */
  report(observe: Observe, codeColumn: string | undefined): void {
    if (this.total === 0) return;
    const reasons = this.list();
    for (const { reason, value, count, firstRow } of reasons) {
      if (reason !== 'code') continue;
      const data = { column: codeColumn, code: value, count };
      const cause = `${codeColumn}=${value}`;
      observe({ rule: 'code-unmapped', at: { row: firstRow }, data, cause, severity: 'info' });
    }
    const first = Math.min(...reasons.map(({ firstRow }) => firstRow));
    const data = { total: this.total, reasons };
    observe({ rule: 'rows-left-out', at: { row: first }, data, cause: 'rows-left-out', severity: 'info' });
  }
}
