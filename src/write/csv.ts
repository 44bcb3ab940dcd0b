import type { ColumnProfile } from '../generated/column-profile.js';
import type { Hole } from '../generated/layout.js';
import { guardFormula } from '../model/formula-guard.js';
import type { LayoutSource } from '../model/layout-source.js';
import { HoleToRow } from './hole-to-row.js';
import { inChunks } from './in-chunks.js';
import { type Lose, LossTally } from './loss.js';
import { jsonKey, sameJson } from './same-json.js';
import { tableSlots } from './table-slots.js';

/** Says of each row that is about to be written whether it is kept. */
export interface RowFilter {
  /** Takes what stands before the first row. */
  begin(preamble: string): void;
  keeps(row: string, hole: Hole): boolean;
}

const separators = { comma: ',', semicolon: ';', tab: '\t', blanks: ' ' } as const;
/** What of a header means nothing in another document. */
const constant: readonly string[] = ['$schema', 'ahx', 'kind'];

/**
 * A layout as a point list that the same profile reads again, as text in chunks of about 64 KB.
 *
 * Rows end in CRLF and cells are quoted after RFC 4180. The preamble that the profile skips is blank
 * lines; columns stand as `tableSlots` says; lengths are in the unit, fraction and decimals of
 * their columns; a height that is not known is an empty cell. Maps and codes are turned round: of
 * several texts that mean the same the first is taken, of several codes the one that the hole carried.
 * A text that a spreadsheet would take for a formula is guarded by an apostrophe; numbers never are.
 *
 * When the text is complete, `lose` is told each kind of thing that did not travel: records of the
 * header that the layout of the profile has not likewise, members of holes that neither column nor
 * code nor constant carries, lengths that were rounded, rows that `filter` did not keep. The holes are
 * read once. The profile must be one that
 * `checkProfile` finds no fault in: a length without unit throws an Error, a length that is not
 * finite a RangeError.
 */
export function writeCsv(
  source: LayoutSource,
  profile: ColumnProfile,
  lose: Lose,
  filter?: RowFilter,
): Generator<string> {
  return inChunks(csvPieces(source, profile, lose, filter));
}

function* csvPieces(
  source: LayoutSource,
  profile: ColumnProfile,
  lose: Lose,
  filter: RowFilter | undefined,
): Generator<string> {
  const { separator = 'comma', skipRows = 0, header = true, end } = profile.table ?? {};
  const tally = new LossTally();
  const slots = tableSlots(profile);
  const rows = new HoleToRow(profile, slots, tally, source.header);
  const special = separator === 'blanks' ? /^$|[\s"]/ : new RegExp(`["\\r\\n${separators[separator]}]`);
  const quote = (cell: string): string => (special.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  const line = (cells: readonly string[]): string => `${cells.map(quote).join(separators[separator])}\r\n`;
  const preamble =
    '\r\n'.repeat(skipRows) + (header ? line(slots.map((slot) => guardFormula(slot?.header ?? ''))) : '');
  filter?.begin(preamble);
  yield preamble;
  let row = skipRows + (header ? 1 : 0);
  for (const hole of source.holes()) {
    tally.hold();
    const text = line(rows.make(hole, row + 1));
    const isKept = filter === undefined || filter.keeps(text, hole);
    tally.settle(isKept);
    if (isKept) {
      row++;
      yield text;
    } else tally.add('holes', 'the profile cannot read its row again; it was left out as asked', false);
  }
  if (end !== undefined) yield line([guardFormula(end)]);
  countHeader(source.header, profile.layout ?? {}, tally);
  tally.report(lose);
}

/** Counts records and members of the header that the layout of the profile does not have likewise. */
function countHeader(header: LayoutSource['header'], inProfile: Record<string, unknown>, tally: LossTally): void {
  for (const [name, value] of Object.entries(header)) {
    if (value === undefined || constant.includes(name)) continue;
    const known: unknown = inProfile[name];
    const reason = 'it stands in no row, and the layout of the profile does not have it likewise';
    if (!Array.isArray(value)) {
      if (!sameJson(value, known)) tally.add(name, reason, false);
      continue;
    }
    const carried = new Set((Array.isArray(known) ? (known as unknown[]) : []).map(jsonKey));
    const lost = (value as unknown[]).filter((record) => !carried.has(jsonKey(record)));
    tally.add(name, reason, false, lost.length);
  }
}
