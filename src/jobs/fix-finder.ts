import type { Rule } from '../check/rule.js';
import { type Collection, collections, memberNames } from '../generated/schema-tables.js';
import { type Validate, validateLayoutMember, validateRecord, validateWhole } from '../generated/validators.js';
import type { ByteSource } from '../model/byte-source.js';
import type { Fix, FixOperation, Sight } from '../model/fix.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { Observation } from '../model/observation.js';
import { explainSchema, type SchemaFault } from '../read/explain-schema.js';
import { fromPointer, positionOf, toPointer } from '../read/locate.js';
import { recordBytes } from '../read/places.js';
import { knownNamesAt, schemaFaults } from '../read/schema-faults.js';
import type { WholeKind } from '../read/whole-document.js';
import { appliedTo } from '../edit/applied-to.js';
import { UntidyReferences } from './untidy-references.js';

const text = new TextDecoder('utf-8', { ignoreBOM: true });
const isCollection = new Set<string>(collections);
/** Records of more bytes are not looked at for fixes: none that is sound comes near. */
const LARGEST_RECORD = 1 << 20;

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

/** What judges a record, and how many tokens of a pointer lead to it. */
interface Judge {
  depth: number;
  faults(value: unknown): SchemaFault[];
  names(value: unknown, tokens: readonly string[]): readonly string[];
}

/** Finds the fixes of findings in a document that was read to its end; looks at its bytes again. */
export class FixFinder {
  private last: Reread | undefined;
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
    return rule.stage === 'schema' ? this.inRecord(rule, tokens, data, byte, ofWhole(kind)) : undefined;
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
    return this.mends(fix.patch, rule.id, sight, judge) ? fix : undefined;
  }

  private sight(record: Reread, tokens: readonly string[], judge: Judge): Sight {
    const within = tokens.slice(judge.depth);
    const { untidy, document } = this;
    return {
      tokens,
      pointer: toPointer(tokens),
      value: valueAt(record.value, within),
      holder: within.length === 0 ? undefined : valueAt(record.value, within.slice(0, -1)),
      record: record.value,
      layout: document === undefined || 'kind' in document ? undefined : document,
      written: () => writtenAt(record, within),
      knownNames: () => judge.names(record.value, within),
      untidyReferences: (collection, id) => untidy?.to(collection as Collection, id) ?? [],
    };
  }

  /** A member of the root of a layout whose name is not known. */
  private atRoot(rule: Rule, data: Observation['data'], name: string, layout: LayoutModel): Fix | undefined {
    const byte = layout.memberBytes.get(name);
    if (byte === undefined || rule.fix === undefined) return undefined;
    const sight: Sight = {
      ...NOTHING,
      tokens: [name],
      pointer: toPointer([name]),
      holder: Object.fromEntries([...layout.present].map((member) => [member, true])),
      layout,
      knownNames: () => memberNames.layout['#'],
    };
    const fix = rule.fix(data, sight);
    const [operation] = fix?.patch ?? [];
    return operation?.op === 'move' && this.fits(operation.path.slice(1), byte) ? fix : undefined;
  }

  /** Whether the value at a byte is one that a member of the root of this name may have. */
  private fits(name: string, byte: number): boolean {
    if (isCollection.has(name)) return this.source.slice(byte, byte + 1)[0] === 91;
    const value = this.reread(byte);
    return value !== undefined && schemaFaults(validateLayoutMember[name], value.value).length === 0;
  }

  /** Whether a record with a patch has no fault that it had not before, and not the one that is to be mended. */
  private mends(patch: readonly FixOperation[], rule: string, { tokens, record }: Sight, judge: Judge): boolean {
    const base = toPointer(tokens.slice(0, judge.depth));
    const own = patch.filter(({ path }) => path === base || path.startsWith(`${base}/`));
    const before = new Set(judge.faults(record).map(keyOf));
    const after = judge.faults(appliedTo(record, own, base)).map(keyOf);
    return after.every((key) => before.has(key)) && !after.includes(keyOf({ rule, tokens: tokens.slice(judge.depth) }));
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

function isWhole(kind: string): kind is WholeKind {
  return Object.hasOwn(validateWhole, kind);
}

/** What judges a whole document that is no layout. */
function ofWhole(kind: WholeKind): Judge {
  const validate = validateWhole[kind];
  return {
    depth: 0,
    faults: (value) => (validate(value) ? [] : explainSchema(validate.errors ?? [], value, kind)),
    names: (value, tokens) => knownNamesAt(validate, value, kind, tokens),
  };
}

/** What judges the record of a layout that a pointer leads into. */
function ofRecord(tokens: readonly string[]): Judge {
  const [name] = tokens;
  const isElement = isCollection.has(name) && tokens.length > 1;
  const judges: Readonly<Record<string, Validate>> = isElement ? validateRecord : validateLayoutMember;
  const validate = Object.hasOwn(judges, name) ? judges[name] : () => true;
  return {
    depth: isElement ? 2 : 1,
    faults: (value) => schemaFaults(validate, value),
    names: (value, within) => knownNamesAt(validate, value, 'layout', within),
  };
}

function keyOf({ rule, tokens }: { rule: string; tokens: readonly string[] }): string {
  return `${rule} ${toPointer(tokens)}`;
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
