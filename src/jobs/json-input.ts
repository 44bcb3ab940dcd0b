import { checkLayout } from '../check/check-layout.js';
import type { Settings } from '../check/run.js';
import type { Place } from '../generated/report.js';
import { type ByteSource, KeptBytes } from '../model/byte-source.js';
import { nearest } from '../model/nearest.js';
import type { Observe, Spot } from '../model/observation.js';
import { LayoutReader } from '../read/layout-reader.js';
import { byteInRecord, lineColumns, recordBytes } from '../read/places.js';
import { blanks } from '../read/scan.js';
import { SNIFFED_BYTES, sniffKind } from '../read/sniff-kind.js';
import { readWholeDocument, type WholeKind } from '../read/whole-document.js';
import type { CheckedInput, Hindrance, HoleIdentity } from './checked-input.js';
import { layoutSource } from './layout-source.js';
import { FixFinder } from './fix-finder.js';
import { requiresUnknown } from './requires-unknown.js';

/** What an input of a check is told besides its bytes. */
export interface InputOptions {
  name: string;
  observe: Observe;
  settings: Settings;
  /** Extensions that the caller understands. */
  extensions: ReadonlySet<string>;
  /** The same bytes, to look at again; absent: they are kept as they come. */
  source?: ByteSource;
}

/** Kinds of documents that can be checked. */
const WHOLE_KINDS: readonly WholeKind[] = ['column-profile', 'report', 'config', 'baseline'];
const KINDS = ['layout', ...WHOLE_KINDS];

const text = new TextDecoder();

/** Reads a JSON document in chunks and checks it by its kind. */
export class JsonInput {
  private readonly kept: KeptBytes | undefined;
  private readonly source: ByteSource;
  /** First bytes and the zeros behind them, until the kind is known. */
  private first: Uint8Array | undefined = new Uint8Array(SNIFFED_BYTES + 32);
  private firstLength = 0;
  private reader: LayoutReader | undefined;
  private wholeKind: WholeKind | undefined;
  /** The `kind` of a document of no known kind, and where it stands. */
  private strange: { kind: string; byte: number } | undefined;
  private byteLength = 0;

  constructor(private readonly options: InputOptions) {
    this.kept = options.source === undefined ? new KeptBytes() : undefined;
    this.source = options.source ?? (this.kept as KeptBytes);
  }

  write(chunk: Uint8Array): void {
    this.byteLength += chunk.length;
    this.kept?.add(chunk);
    if (this.first === undefined) {
      this.reader?.write(chunk);
      return;
    }
    const part = chunk.subarray(0, SNIFFED_BYTES - this.firstLength);
    this.first.set(part, this.firstLength);
    this.firstLength += part.length;
    if (this.firstLength < SNIFFED_BYTES) return;
    this.choose();
    this.reader?.write(chunk.subarray(part.length));
  }

  close(): CheckedInput {
    this.choose();
    if (this.strange !== undefined) return this.closeStrange(this.strange);
    return this.reader === undefined ? this.closeWhole() : this.closeLayout(this.reader);
  }

  private choose(): void {
    const { first } = this;
    if (first === undefined) return;
    this.first = undefined;
    const { kind, kindByte = 0, ahx } = sniffKind(first, this.firstLength);
    this.wholeKind = WHOLE_KINDS.find((whole) => whole === kind);
    if (this.wholeKind !== undefined) return;
    if (kind !== undefined && kind !== 'layout') {
      this.strange = { kind, byte: kindByte };
      return;
    }
    this.reader = new LayoutReader(this.options.observe, this.options.source?.byteLength, ahx);
    this.reader.write(first.subarray(0, this.firstLength));
  }

  private closeWhole(): CheckedInput {
    const kind = this.wholeKind as WholeKind;
    const bytes = this.source.slice(0, this.byteLength);
    const { value, otherVersion } = readWholeDocument(bytes, kind, this.options.observe);
    return {
      ...this.common(otherVersion === undefined ? { kind, byte: startOf(bytes) } : undefined),
      summary: { name: this.options.name, kind, format: 'json', bytes: this.byteLength },
      hindrances: new Set(otherVersion !== undefined ? ['version'] : value === undefined ? ['text'] : []),
      hasBrokenRecords: value === undefined,
    };
  }

  /** A kind that is not known is the one thing to say: the members of another kind are no mistakes. */
  private closeStrange({ kind, byte }: { kind: string; byte: number }): CheckedInput {
    const near = nearest(kind, KINDS);
    const data = { choices: KINDS, found: JSON.stringify(kind), ...(near !== undefined && { nearest: near }) };
    this.options.observe({ rule: 'not-a-choice', at: { pointer: '/kind', byte }, data, cause: kind });
    return {
      ...this.common({ kind, byte }),
      summary: { name: this.options.name, kind: 'unknown', format: 'json', bytes: this.byteLength },
      hindrances: new Set(['kind']),
      hasBrokenRecords: true,
    };
  }

  private closeLayout(reader: LayoutReader): CheckedInput {
    reader.end();
    const { model } = reader;
    const hindrances = new Set<Hindrance>();
    if (!reader.complete) hindrances.add('text');
    if (reader.otherVersion !== undefined) hindrances.add('version');
    if (requiresUnknown(model, this.options.extensions, this.options.observe)) hindrances.add('extension');
    const { observe, settings } = this.options;
    const judged =
      hindrances.has('text') || hindrances.has('extension')
        ? undefined
        : { layout: model, observe, covered: checkLayout(model, observe, settings) };
    const { holes } = model;
    const isLayout = model.present.has('kind') || model.present.has('holes');
    const isFixable = reader.complete && reader.otherVersion === undefined;
    return {
      ...this.common(isFixable ? model : undefined),
      summary: {
        name: this.options.name,
        kind: isLayout ? 'layout' : 'unknown',
        format: 'json',
        bytes: this.byteLength,
        ...(typeof model.header.id === 'string' && { id: model.header.id }),
        ...(model.header.revision && { revision: model.header.revision.label }),
        ...(isLayout && { holes: holes.count, judged: judged === undefined ? 0 : holes.count - holes.brokenCount }),
      },
      display: model.header.display,
      hindrances,
      hasBrokenRecords: model.hasBroken,
      records: reader.records,
      judged,
      ...(isLayout && { model }),
      hole: (index) => this.hole(holes.byte[index], holes.id(index)),
      layout: () => (reader.complete && isLayout ? layoutSource(model, this.source) : undefined),
    };
  }

  /** @param fixable what fixes can be found in; absent: nothing but the byte order mark */
  private common(
    fixable?: ConstructorParameters<typeof FixFinder>[1],
  ): Omit<CheckedInput, 'summary' | 'hindrances' | 'hasBrokenRecords'> {
    const finder = new FixFinder(this.source, fixable);
    return {
      display: undefined,
      records: 1,
      fix: (rule, observation) => finder.find(rule, observation),
      places: (spots) => this.places(spots),
      hole: (index) => ({ id: String(index) }),
      layout: () => undefined,
    };
  }

  private places(spots: readonly Spot[]): Place[] {
    const bytes = spots.map(({ byte, recordByte, within = '', isName }) =>
      byte === undefined && recordByte !== undefined
        ? byteInRecord(this.source, recordByte, within, isName)
        : (byte ?? 0),
    );
    const lines = lineColumns(this.source, bytes);
    return spots.map(({ pointer = '' }, k) => ({ pointer, ...lines[k], byte: bytes[k] }));
  }

  /** The hole as it stands in the text. */
  private hole(byte: number, id: string): HoleIdentity {
    const record = recordBytes(this.source, byte);
    if (record === undefined) return { id };
    const value = JSON.parse(text.decode(record)) as { tag?: unknown; origin?: { row?: unknown } } | null;
    const tag = value?.tag;
    const row = value?.origin?.row;
    return {
      id,
      ...(typeof tag === 'string' && { tag }),
      ...(Number.isSafeInteger(row) && Number(row) >= 1 && { row: Number(row) }),
    };
  }
}

/** Where a document begins. */
function startOf(bytes: Uint8Array): number {
  return blanks(bytes, bytes[0] === 0xef ? 3 : 0);
}
