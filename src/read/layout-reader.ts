import {
  type Collection as CollectionName,
  collections,
  memberNames,
  requiredMembers,
} from '../generated/schema-tables.js';
import { type Validate, validateLayoutMember, validateRecord } from '../generated/validators.js';
import { LayoutModel } from '../model/layout-model.js';
import { nearest } from '../model/nearest.js';
import type { Observation, Observe } from '../model/observation.js';
import { DocumentReader, type DocumentSink, type Piece } from './document.js';
import type { SchemaFault } from './explain-schema.js';
import { HoleTaker } from './hole-taker.js';
import { tokensTo, toPointer } from './locate.js';
import { leniency, type OtherVersion, otherVersion, unsupportedVersion } from './other-version.js';
import { schemaFaults } from './schema-faults.js';

const text = new TextDecoder();
const isCollectionName = new Set<string>(collections);
/** Faults of the text of one record that get a pointer to the value; the others point to the record. */
const MOST_POINTERS = 100;

/**
 * Reads a layout from bytes, in any number of chunks, into a {@link LayoutModel}.
 *
 * Faults of the text and against the schema are observed on the way; a record that has one is kept by its
 * id only and not judged further.
 */
export class LayoutReader implements DocumentSink {
  readonly model: LayoutModel;
  /** Records of collections, and one for the members of the header. */
  records = 1;
  private other: OtherVersion | undefined;
  /** Members of the root that misspelt ones are near to. */
  private readonly meant = new Set<string>();
  private readonly document = new DocumentReader(this);
  private readonly taker: HoleTaker;

  /**
   * @param totalBytes size of the input, where it is known; saves time, changes nothing
   * @param ahx version that the document is known to name, wherever it stands in the text
   */
  constructor(
    private readonly tell: Observe,
    totalBytes = 0,
    ahx?: string,
  ) {
    this.model = new LayoutModel(totalBytes);
    this.taker = new HoleTaker(this.model.holes, tell);
    this.other = otherVersion(ahx);
  }

  write(chunk: Uint8Array): void {
    this.document.write(chunk);
  }

  /** Ends the text. The model may be used from now on. */
  end(): void {
    this.document.end();
    this.taker.settle();
    if (this.complete) this.missingMembers();
  }

  /** Whether the text was sound JSON to its end, with an object at the root. */
  get complete(): boolean {
    return this.document.complete && this.isObject;
  }

  /** The `ahx` of a document of another version than this reader knows. */
  get otherVersion(): string | undefined {
    return this.other?.found;
  }

  /** Bytes looked at; one that was looked at twice counts twice. */
  get scanned(): number {
    return this.document.scanned + this.taker.lookedAgain;
  }

  private isObject = true;

  private observe(observation: Observation): void {
    this.taker.hear(observation, this.tell(observation) === true);
  }

  isCollection(name: string): boolean {
    return isCollectionName.has(name);
  }

  takesFast(name: string): boolean {
    return name === 'holes';
  }

  takeFast(_name: string, bytes: Uint8Array, start: number, base: number): number {
    const end = this.taker.take(bytes, start, base);
    if (end >= 0) this.records++;
    return end;
  }

  element(name: string, index: number, piece: Piece): void {
    this.model.present.add(name);
    const value = this.sound(piece, [name, String(index)], validateRecord[name]);
    const byte = piece.base + piece.start;
    this.records++;
    if (name === 'holes') {
      this.taker.takeParsed(value.parsed, byte, piece.end - piece.start, value.sound);
      return;
    }
    const id = (value.parsed as { id?: unknown } | null)?.id;
    const collection = this.model.collection(name as Exclude<CollectionName, 'holes'>);
    collection.define(typeof id === 'string' ? id : undefined, (value.sound ? value.parsed : undefined) as never, byte);
  }

  collectionEnd(name: string): void {
    this.model.present.add(name);
  }

  member(name: string, piece: Piece, nameByte: number): void {
    const { model } = this;
    model.present.add(name);
    model.memberBytes.set(name, piece.base + piece.start);
    const validate = Object.hasOwn(validateLayoutMember, name) ? validateLayoutMember[name] : undefined;
    if (validate === undefined) {
      this.unknownMember(name, nameByte);
      if (!this.textFaults(piece, [name])) model.isHeaderBroken = true;
      return;
    }
    if (name === 'ahx' && this.version(piece)) return;
    const value = this.sound(piece, [name], validate);
    // A collection comes this way when it is no array.
    if (this.isCollection(name)) this.model.unreadable.add(name);
    if (value.sound) (model.header as Record<string, unknown>)[name] = value.parsed;
    else model.isHeaderBroken = true;
  }

  root(piece: Piece): void {
    this.isObject = false;
    this.textFaults(piece, []);
    const byte = piece.base + piece.start;
    const found = piece.bytes[piece.start] === 91 ? 'an array' : 'a single value';
    this.observe({ rule: 'wrong-type', at: { pointer: '', byte }, data: { expected: 'an object', found }, cause: '' });
  }

  fault(fault: { rule: string; byte: number; data: Record<string, unknown> }, pointer: string): void {
    if (fault.rule !== 'byte-order-mark') this.model.isHeaderBroken = true;
    this.observe({
      rule: fault.rule,
      at: { pointer, byte: fault.byte },
      data: fault.data,
      cause: String(fault.data.expected ?? ''),
    });
  }

  /** Parses a piece and judges it; observes what is wrong with it. */
  private sound(piece: Piece, path: string[], validate: Validate): { parsed: unknown; sound: boolean } {
    const clean = this.textFaults(piece, path);
    const parsed: unknown = JSON.parse(text.decode(piece.bytes.subarray(piece.start, piece.end)));
    if (!clean) return { parsed, sound: false };
    const faults = schemaFaults(validate, parsed);
    for (const fault of faults) this.schemaFault(fault, piece, path);
    return { parsed, sound: faults.length === 0 };
  }

  private schemaFault({ rule, tokens, aim, data }: SchemaFault, piece: Piece, path: string[]): void {
    const all = [...path, ...tokens];
    const cause = `${causePath(all)} ${String(data.member ?? data.expected ?? '')}`;
    // The way to the byte is gone only for findings that are listed: a record may have thousands of faults.
    const recordByte = piece.base + piece.start;
    const place =
      tokens.length === 0
        ? { byte: recordByte, recordByte }
        : { recordByte, within: toPointer(tokens), isName: aim === 'name' };
    const at = { pointer: toPointer(all), ...place, hole: holeIndex(path) };
    this.observe({ rule, at, data, cause, ...leniency(rule, this.other) });
  }

  /** Observes the faults of the text of a piece; true when none of them makes the value doubtful. */
  private textFaults(piece: Piece, path: string[]): boolean {
    let clean = true;
    let told = 0;
    for (const { rule, at, data, count } of piece.faults) {
      if (rule !== 'number-loses-digits') clean = false;
      const tokens = [...path, ...(told++ < MOST_POINTERS ? tokensTo(piece.bytes, piece.start, at) : [])];
      const recordByte = piece.base + piece.start;
      const spot = { pointer: toPointer(tokens), byte: piece.base + at, recordByte, hole: holeIndex(path) };
      this.observe({ rule, at: spot, data, count, cause: `${causePath(tokens)} ${String(data.name ?? '')}` });
    }
    return clean;
  }

  private unknownMember(name: string, byte: number): void {
    const near = nearest(name, memberNames.layout['#'] ?? []);
    const data = { member: name, ...(near === undefined ? {} : { nearest: near }) };
    const at = { pointer: toPointer([name]), byte };
    const lenient = leniency('unknown-member', this.other);
    if (lenient.severity === undefined) this.model.isHeaderBroken = true;
    if (near !== undefined) this.meant.add(near);
    this.observe({ rule: 'unknown-member', at, data, cause: name, ...lenient });
  }

  /** Judges a version that is not this reader's own; true when there is no more to say about the member. */
  private version(piece: Piece): boolean {
    this.taker.settle();
    this.other = otherVersion(JSON.parse(text.decode(piece.bytes.subarray(piece.start, piece.end))));
    if (this.other === undefined) return false;
    this.observe(unsupportedVersion(this.other, piece.base + piece.start));
    return true;
  }

  private missingMembers(): void {
    for (const member of requiredMembers) {
      if (this.model.present.has(member)) continue;
      this.model.unreadable.add(member);
      this.model.isHeaderBroken = true;
      // A misspelt member is one fault, not one too many and one too few.
      if (this.meant.has(member)) continue;
      const at = { pointer: '', byte: this.document.rootByte };
      this.observe({ rule: 'missing-member', at, data: { member }, cause: member });
    }
  }
}

/** A path with its indexes left out: what findings in different records share. */
function causePath(tokens: readonly string[]): string {
  return toPointer(tokens.map((token) => (/^\d+$/.test(token) ? '*' : token)));
}

function holeIndex(path: readonly string[]): number | undefined {
  return path[0] === 'holes' && path.length > 1 ? Number(path[1]) : undefined;
}
