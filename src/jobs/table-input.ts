import { checkLayout } from '../check/check-layout.js';
import type { ColumnProfile } from '../generated/column-profile.js';
import type { Hole, Layout } from '../generated/layout.js';
import { SCHEMA_VERSION } from '../generated/schema-tables.js';
import type { ByteSource } from '../model/byte-source.js';
import { KeptBytes } from '../model/byte-source.js';
import type { LayoutSource } from '../model/layout-source.js';
import { grown } from '../model/names.js';
import type { Observation } from '../model/observation.js';
import { LayoutReader } from '../read/layout-reader.js';
import { PointListReader } from '../read/table/point-list.js';
import { Utf8Check } from '../read/utf8-check.js';
import type { CheckedInput, Hindrance } from './checked-input.js';
import type { InputOptions } from './json-input.js';
import { requiresUnknown } from './requires-unknown.js';

const encoder = new TextEncoder();
const BATCH = 1 << 16;

/**
 * Reads a point list in chunks and checks the layout that it stands for.
 *
 * The rows become the text of a layout, which goes through the same reader as any other, so that a row is
 * judged by the same rules; places are led back to row and column.
 */
export class TableInput {
  private readonly list: PointListReader;
  private readonly reader: LayoutReader;
  private readonly decoder = new TextDecoder('utf-8');
  private readonly kept: KeptBytes | undefined;
  private readonly utf8 = new Utf8Check();
  private rows = new Int32Array(64);
  private tags: (string | undefined)[] = [];
  private columnOf: ReadonlyMap<string, number> = new Map();
  private holeCount = 0;
  private byteLength = 0;
  private batch: string;
  private isUsable = true;
  /** Whether the bytes are no UTF-8 text but something else as a whole. */
  private isForeign = false;

  constructor(
    private readonly profile: ColumnProfile,
    private readonly options: InputOptions,
  ) {
    this.kept = options.source === undefined ? new KeptBytes() : undefined;
    this.reader = new LayoutReader((observation) => this.inTable(observation));
    this.list = new PointListReader(
      profile,
      (hole, row, columnOf) => this.take(hole, row, columnOf),
      (observation) => {
        const severity = observation.severity ?? 'error';
        if (observation.rule === 'profile-unfit' || observation.rule === 'column-missing')
          this.isUsable &&= severity !== 'error';
        if (observation.rule === 'not-utf8') {
          this.isUsable = false;
          this.isForeign = true;
        }
        options.observe(observation);
      },
    );
    this.batch = `${JSON.stringify(headerOf(profile)).slice(0, -1)},"holes":[`;
  }

  write(chunk: Uint8Array): void {
    this.byteLength += chunk.length;
    this.kept?.add(chunk);
    this.utf8.write(chunk);
    this.list.write(this.decoder.decode(chunk, { stream: true }));
  }

  close(): CheckedInput {
    this.list.write(this.decoder.decode());
    const counts = this.list.end();
    this.judgeText();
    this.flush(']}');
    this.reader.end();
    const { model } = this.reader;
    const hindrances = new Set<Hindrance>(this.isUsable ? [] : ['table']);
    const observe = (observation: Observation) => this.inTable(observation);
    if (this.reader.otherVersion !== undefined) hindrances.add('version');
    if (requiresUnknown(model, this.options.extensions, observe)) hindrances.add('extension');
    const judged =
      hindrances.has('table') || hindrances.has('extension')
        ? undefined
        : { layout: model, observe, covered: checkLayout(model, observe, this.options.settings) };
    const { holes, header } = model;
    return {
      summary: {
        name: this.options.name,
        kind: 'layout',
        format: 'csv',
        bytes: this.byteLength,
        ...(header.id !== undefined && { id: header.id }),
        ...(header.revision && { revision: header.revision.label }),
        holes: holes.count,
        judged: judged === undefined ? 0 : holes.count - holes.brokenCount,
      },
      display: header.display,
      hindrances,
      hasBrokenRecords: counts.faulty > 0 || this.utf8.firstBad !== undefined || model.hasBroken,
      records: counts.rows,
      judged,
      model,
      places: (spots) =>
        spots.map(({ row, column, pointer, byte }) => ({
          ...(byte !== undefined && { byte }),
          ...(pointer !== undefined && { pointer }),
          ...(row !== undefined && { row }),
          ...(column !== undefined && { column }),
        })),
      layout: () => this.layout(holes.count),
      hole: (index) => ({
        id: holes.id(index),
        row: this.rows[index],
        ...(this.tags[index] !== undefined && { tag: this.tags[index] }),
      }),
    };
  }

  /** The layout that the rows stand for, read from the table once more. */
  private layout(holeCount: number): LayoutSource | undefined {
    if (!this.isUsable) return undefined;
    const { profile } = this;
    const source = this.options.source ?? (this.kept as KeptBytes);
    return { header: headerOf(profile), holeCount, holes: () => holesOf(profile, source) };
  }

  private judgeText(): void {
    this.utf8.end();
    const { firstBad } = this.utf8;
    // A file that is no text at all has been told already.
    if (firstBad === undefined || this.isForeign) return;
    this.options.observe({ rule: 'not-utf8', at: { byte: firstBad.byte }, data: { found: firstBad.found }, cause: '' });
  }

  private take(hole: Hole, row: number, columnOf: ReadonlyMap<string, number>): void {
    const index = this.holeCount++;
    if (index === this.rows.length) this.rows = grown(this.rows, index + 1);
    this.rows[index] = row;
    if (hole.tag !== undefined) this.tags[index] = hole.tag;
    this.columnOf = columnOf;
    this.batch += (index > 0 ? ',' : '') + JSON.stringify(hole);
    if (this.batch.length > BATCH) this.flush('');
  }

  private flush(end: string): void {
    this.reader.write(encoder.encode(this.batch + end));
    this.batch = '';
  }

  /** Leads an observation about the layout back to the row and column, or to the profile, that it came from. */
  private inTable(observation: Observation): unknown {
    const { pointer = '', hole } = observation.at;
    const at =
      hole === undefined
        ? { pointer: `/layout${pointer}` }
        : { hole, row: this.rows[hole], column: this.column(pointer.replace(/^\/holes\/\d+/, '')) };
    return this.options.observe({ ...observation, at });
  }

  /** Column of a member of a hole: its own, or that of the record it lies in. */
  private column(member: string): number | undefined {
    for (let pointer = member; ; pointer = pointer.slice(0, pointer.lastIndexOf('/'))) {
      const column = this.columnOf.get(pointer);
      if (column !== undefined || pointer === '') return column;
    }
  }
}

/** The holes of a table, from its bytes, one batch of text at a time. */
function* holesOf(profile: ColumnProfile, source: ByteSource): Generator<Hole> {
  const decoder = new TextDecoder('utf-8');
  let batch: Hole[] = [];
  const list = new PointListReader(
    profile,
    (hole) => batch.push(hole),
    () => {},
  );
  for (let at = 0; at < source.byteLength; at += BATCH) {
    list.write(decoder.decode(source.slice(at, at + BATCH), { stream: true }));
    yield* batch;
    batch = [];
  }
  list.write(decoder.decode());
  list.end();
  yield* batch;
}

/** The members of the layout that the profile gives. */
export function headerOf(profile: ColumnProfile): Omit<Layout, 'holes'> {
  const given = (profile.layout ?? {}) as Partial<Layout>;
  return { ahx: SCHEMA_VERSION, kind: 'layout', ...given } as Omit<Layout, 'holes'>;
}
