import type { Rule } from '../check/rule.js';
import { type Collection, collections, memberNames } from '../generated/schema-tables.js';
import { validateLayoutMember, validateWhole } from '../generated/validators.js';
import type { ByteSource } from '../model/byte-source.js';
import type { Fix, Sight } from '../model/fix.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { Observation } from '../model/observation.js';
import { fromPointer, positionOf, toPointer } from '../read/locate.js';
import { recordBytes } from '../read/places.js';
import { schemaFaults } from '../read/schema-faults.js';
import type { WholeKind } from '../read/whole-document.js';
import { type Judge, mends, ofRecord, ofWhole } from './record-judge.js';
import { UntidyReferences } from './untidy-references.js';

const text = new TextDecoder('utf-8', { ignoreBOM: true });
const isCollection = new Set<string>(collections);
/** Records of more bytes are not looked at for fixes: none that is sound comes near. */
const LARGEST_RECORD = 1 << 20;

const NAMES_OF_ROOT: readonly string[] = memberNames.layout['#'];
/** Members of a layout that one within a column profile has not. */
const GIVEN_BY_TABLE: ReadonlySet<string> = new Set(['ahx', 'kind', 'holes']);

/** What there is to see where nothing can be looked at. */
const NOTHING: Sight = {
  tokens: [],
  pointer: '',
  value: undefined,
  holder: undefined,
  record: undefined,
  layout: undefined,
  written: () => '',
  knownNames: () => [],
  untidyReferences: () => [],
};

/** A record, or a whole small document, that was read once more. */
interface Reread {
  /** Byte where it stands. */
  byte: number;
  bytes: Uint8Array;
  value: unknown;
}

/** Finds the fixes of findings in a document that was read to its end; looks at its bytes again. */
export class FixFinder {
  private last: Reread | undefined;
  private whole: Reread | undefined;
  /** Names that the schema knows, by the object of a record that was read again. */
  private readonly names = new WeakMap<object, readonly string[]>();
  /** The names of the members of the root of a layout. */
  private root: object | undefined;
  private readonly untidy: UntidyReferences | undefined;

  /**
   * @param document the layout that was read; or the kind of a small document and where it begins; or a kind that is
   *   none and where it stands; or nothing, where only the bytes can be mended
   */
  constructor(
    private readonly source: ByteSource,
    private readonly document?: LayoutModel | { kind: string; byte: number },
  ) {
    this.untidy = document === undefined || 'kind' in document ? undefined : new UntidyReferences(document, source);
  }

  /** The one right answer to what a rule has observed; undefined where there is none. */
  find(rule: Rule, { at, data }: Observation): Fix | undefined {
    const { document } = this;
    if (rule.fix === undefined) return undefined;
    if (rule.stage === 'bytes') return rule.fix(data, NOTHING);
    if (document === undefined) return undefined;
    const tokens = fromPointer(at.pointer ?? '');
    if ('kind' in document) return this.inWhole(document, rule, tokens, data);
    if (tokens.length === 1 && at.recordByte === undefined) return this.atRoot(rule, data, tokens[0], document);
    return this.inRecord(rule, tokens, data, at.recordByte, ofRecord(tokens));
  }

  /** In a document that is no layout. */
  private inWhole(
    { kind, byte }: { kind: string; byte: number },
    rule: Rule,
    tokens: readonly string[],
    data: Observation['data'],
  ): Fix | undefined {
    if (!isWhole(kind)) return rule.fix?.(data, { ...NOTHING, tokens, pointer: toPointer(tokens), value: kind });
    // What is observed while the text is read may stand in one that is not sound.
    if (rule.stage !== 'schema') return undefined;
    const [first, ...inner] = tokens;
    if (kind === 'column-profile' && first === 'layout' && inner.length > 0)
      return this.inLayoutOfProfile(rule, inner, data, byte);
    return this.inRecord(rule, tokens, data, byte, ofWhole(kind));
  }

  /** In the layout without holes that a column profile gives; its records are judged as those of any layout. */
  private inLayoutOfProfile(
    rule: Rule,
    inner: readonly string[],
    data: Observation['data'],
    byte: number,
  ): Fix | undefined {
    const layout = valueAt(this.wholeAt(byte)?.value, ['layout']);
    if (typeof layout !== 'object' || layout === null) return undefined;
    const [name] = inner;
    const [tokens, isOfRoot] = [['layout', ...inner], inner.length === 1];
    if (isOfRoot && !NAMES_OF_ROOT.includes(name)) {
      const names = NAMES_OF_ROOT.filter((known) => !GIVEN_BY_TABLE.has(known));
      const fix = rule.fix?.(data, {
        ...NOTHING,
        tokens: inner,
        pointer: toPointer(tokens),
        holder: layout,
        knownNames: () => names,
      });
      return isFitting(fix, (layout as Record<string, unknown>)[name]) ? fix : undefined;
    }
    const judge = ofRecord(inner, 1);
    const { bytes } = this.wholeAt(byte) as Reread;
    return this.inRecord(rule, tokens, data, byte + positionOf(bytes, 0, tokens.slice(0, judge.depth), 'value'), judge);
  }

  /** A whole document, read once: a record in it is read beside it. */
  private wholeAt(byte: number): Reread | undefined {
    this.whole ??= this.reread(byte);
    return this.whole;
  }

  private inRecord(
    rule: Rule,
    tokens: readonly string[],
    data: Observation['data'],
    byte: number | undefined,
    judge: Judge,
  ): Fix | undefined {
    const record = this.reread(byte);
    if (record === undefined || rule.fix === undefined) return undefined;
    const sight = this.sight(record, tokens, judge);
    const fix = rule.fix(data, sight);
    if (fix?.patch === undefined || rule.stage !== 'schema') return fix;
    return mends(fix.patch, { rule: rule.id, tokens }, sight.record, judge) ? fix : undefined;
  }

  private sight(record: Reread, tokens: readonly string[], judge: Judge): Sight {
    const within = tokens.slice(judge.depth);
    const { untidy, document } = this;
    const holder = within.length === 0 ? undefined : valueAt(record.value, within.slice(0, -1));
    return {
      tokens: tokens.slice(judge.outer),
      pointer: toPointer(tokens),
      value: valueAt(record.value, within),
      holder,
      record: record.value,
      layout: document === undefined || 'kind' in document ? undefined : document,
      written: () => writtenAt(record, within),
      knownNames: () => this.namesIn(holder, () => judge.names(record.value, within)),
      untidyReferences: (collection, id) => untidy?.to(collection as Collection, id) ?? [],
    };
  }

  /** One object may have thousands of unknown members; its names are looked for once. */
  private namesIn(holder: unknown, find: () => readonly string[]): readonly string[] {
    if (typeof holder !== 'object' || holder === null) return find();
    const names = this.names.get(holder) ?? find();
    this.names.set(holder, names);
    return names;
  }

  /** A member of the root of a layout whose name is not known. */
  private atRoot(rule: Rule, data: Observation['data'], name: string, layout: LayoutModel): Fix | undefined {
    const byte = layout.memberBytes.get(name);
    if (byte === undefined || rule.fix === undefined) return undefined;
    this.root ??= Object.fromEntries([...layout.present].map((member) => [member, true]));
    const sight: Sight = {
      ...NOTHING,
      tokens: [name],
      pointer: toPointer([name]),
      holder: this.root,
      layout,
      knownNames: () => NAMES_OF_ROOT,
    };
    const fix = rule.fix(data, sight);
    const isList = this.source.slice(byte, byte + 1)[0] === 91;
    return isFitting(fix, isList ? [] : this.reread(byte)?.value) ? fix : undefined;
  }

  private reread(byte: number | undefined): Reread | undefined {
    if (byte === undefined) return undefined;
    if (this.last?.byte === byte) return this.last;
    const bytes = recordBytes(this.source, byte);
    if (bytes === undefined || bytes.length > LARGEST_RECORD) return undefined;
    this.last = { byte, bytes, value: JSON.parse(text.decode(bytes)) };
    return this.last;
  }
}

/** Whether a fix gives a member of the root of a layout a name that goes with its value. */
function isFitting(fix: Fix | undefined, value: unknown): boolean {
  const [operation] = fix?.patch ?? [];
  if (operation?.op !== 'move' || value === undefined) return false;
  const name = fromPointer(operation.path).at(-1) ?? '';
  if (isCollection.has(name)) return Array.isArray(value);
  return schemaFaults(validateLayoutMember[name], value).length === 0;
}

function isWhole(kind: string): kind is WholeKind {
  return Object.hasOwn(validateWhole, kind);
}

function valueAt(value: unknown, tokens: readonly string[]): unknown {
  let at = value;
  for (const token of tokens) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, token)) return undefined;
    at = (at as Record<string, unknown>)[token];
  }
  return at;
}

function writtenAt({ bytes }: Reread, tokens: readonly string[]): string {
  const start = positionOf(bytes, 0, tokens, 'value');
  const source = { byteLength: bytes.length, slice: (from: number, to: number) => bytes.subarray(from, to) };
  return text.decode(recordBytes(source, start) ?? new Uint8Array());
}
