import { siteToWgs84 } from '../frame/site-to-wgs84.js';
import type { ColumnProfile } from '../generated/column-profile.js';
import type { Report } from '../generated/report.js';
import type { LayoutSource, Loss } from '../model/layout-source.js';
import { writeCsv } from '../write/csv.js';
import { writeGeoJson } from '../write/geojson.js';
import { writeLayout } from '../write/layout.js';
import type { ClosedInput } from './checked-input.js';
import { RowsAgain } from './rows-again.js';

export { findLostRows, type LostRows } from './rows-again.js';
export { TableLosses, type TableOutcome } from './table-losses.js';

/** What a layout can be written as. */
export type ConvertTarget =
  | { form: 'layout' }
  /**
   * A point list, by the column profile. `findLostRows` says which rows the profile could not read again;
   * with `leaveOutBadRows` they are left out.
   */
  | { form: 'csv'; profile: ColumnProfile; leaveOutBadRows?: boolean }
  | { form: 'geojson' };

/** A layout on its way into another form. */
export interface Conversion {
  /** The text, in chunks. */
  text: Iterable<string>;
  /** What did not travel; complete when the text has been taken to its end. */
  losses: readonly Loss[];
  /** What has to be said of the text besides, as a plain sentence. */
  note?: string;
}

/**
 * Why an input cannot be converted, or undefined where it can: only what is valid AHX travels, since a
 * record that cannot be understood cannot be carried over either.
 */
export function whyNot(report: Report, input: ClosedInput, leaveOutBadRows = false): string | undefined {
  if (input.summary.kind !== 'layout') return `it is no layout (${input.summary.kind})`;
  if (report.verdict.format === 'cannot-judge') return 'it could not be judged to its end';
  const blocking = report.causes.filter(
    (cause) =>
      cause.class === 'format' && cause.severity === 'error' && !(leaveOutBadRows && ROW_RULES.has(cause.rule)),
  );
  if (blocking.length > 0) return 'it has errors of form';
  return input.layout() === undefined ? 'it could not be read to its end' : undefined;
}

/** Rules whose findings are about one row of a table, which may be left out. */
const ROW_RULES = new Set(['row-length', 'cell-unreadable', 'cell-empty', 'code-unmapped']);

/** Begins the conversion of a sound layout. Nothing is read or written before the text is taken. */
export async function convert(source: LayoutSource, target: ConvertTarget): Promise<Conversion> {
  const losses: Loss[] = [];
  const lose = (loss: Loss) => void losses.push(loss);
  if (target.form === 'layout') return { text: writeLayout(source.header, source.holes(), lose), losses };
  if (target.form === 'csv') {
    const { profile, leaveOutBadRows } = target;
    const filter = leaveOutBadRows ? new RowsAgain(profile, source.header.display) : undefined;
    return { text: writeCsv(source, profile, lose, filter), losses };
  }
  const { georeference } = source.header.frame;
  const wgs84 = georeference && (await siteToWgs84(georeference));
  return {
    text: writeGeoJson(source, { wgs84 }, lose),
    losses,
    ...(wgs84 === undefined && { note: NO_GEOREFERENCE }),
  };
}

const NO_GEOREFERENCE =
  'Every "geometry" is null, because the layout has no georeference; "place" has the coordinates of the site.';

/** Whether what keeps a table from being converted are rows that may be left out, and nothing else. */
export function isKeptByRowsOnly(report: Report, input: ClosedInput): boolean {
  return whyNot(report, input) !== undefined && whyNot(report, input, true) === undefined;
}

/** Losses for people, a line for each reason. */
export function lossLines(losses: readonly Loss[]): string[] {
  const byReason = new Map<string, string[]>();
  for (const { field, count, reason } of losses) {
    byReason.set(reason, [...(byReason.get(reason) ?? []), `${field} (${count})`]);
  }
  return [...byReason].map(([reason, fields]) => `${reason}: ${fields.join(', ')}`);
}

/** A loss as a sentence. */
export function lossInWords({ field, count, reason }: Loss): string {
  return `${field} (${count}): ${reason}`;
}
