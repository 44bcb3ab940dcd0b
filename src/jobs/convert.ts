import { siteToWgs84 } from '../frame/site-to-wgs84.js';
import type { ColumnProfile } from '../generated/column-profile.js';
import type { Report } from '../generated/report.js';
import type { LayoutSource, Loss } from '../model/layout-source.js';
import { writeCsv } from '../write/csv.js';
import { writeGeoJson } from '../write/geojson.js';
import { writeLayout } from '../write/layout.js';
import type { ClosedInput } from './checked-input.js';

/** What a layout can be written as. */
export type ConvertTarget =
  | { form: 'layout' }
  /** A point list, by the column profile. */
  | { form: 'csv'; profile: ColumnProfile }
  | { form: 'geojson' };

/** A layout on its way into another form. */
export interface Conversion {
  /** The text, in chunks. */
  text: Iterable<string>;
  /** What did not travel; complete when the text has been taken to its end. */
  losses: readonly Loss[];
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
  if (target.form === 'layout') return { text: writeLayout(source.header, source.holes()), losses };
  if (target.form === 'csv') return { text: writeCsv(source, target.profile, lose), losses };
  const { georeference } = source.header.frame;
  const wgs84 = georeference && (await siteToWgs84(georeference));
  return { text: writeGeoJson(source, { wgs84 }, lose), losses };
}

/** A loss as a sentence. */
export function lossInWords({ field, count, reason }: Loss): string {
  return `${field} (${count}): ${reason}`;
}
