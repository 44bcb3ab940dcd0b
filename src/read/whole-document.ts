import type { ColumnProfile } from '../generated/column-profile.js';
import { SCHEMA_VERSION } from '../generated/schema-tables.js';
import { type ErrorObject, validateWhole } from '../generated/validators.js';
import type { Observation, Observe } from '../model/observation.js';
import { explainSchema } from './explain-schema.js';
import { LayoutReader } from './layout-reader.js';
import { fromPointer, positionOf, tokensTo, toPointer } from './locate.js';
import { leniency, otherVersion, unsupportedVersion } from './other-version.js';
import { blanks, describeByte, Scanner } from './scan.js';
import { checkProfile, profileUnfit } from './table/check-profile.js';

/** Documents that are small enough to be read at once. */
export type WholeKind = 'report' | 'column-profile' | 'config' | 'baseline';

const text = new TextDecoder('utf-8', { ignoreBOM: true });

/** A document that was read at once. */
export interface WholeDocument {
  /** The document; undefined where anything but warnings was observed. */
  value: unknown;
  /** The `ahx` of a document of another version than this reader knows. */
  otherVersion?: string;
}

/**
 * Reads a document that is no layout and observes what is wrong with it.
 *
 * @param bytes the whole text
 */
export function readWholeDocument(bytes: Uint8Array, kind: WholeKind, observe: Observe): WholeDocument {
  const b = new Uint8Array(bytes.length + 32);
  b.set(bytes);
  const start = blanks(b, b[0] === 0xef && b[1] === 0xbb && b[2] === 0xbf ? 3 : 0);
  if (start >= 3 && b[0] === 0xef)
    observe({ rule: 'byte-order-mark', at: { pointer: '', byte: 0 }, data: {}, cause: '' });
  const end = soundEnd(b, start, bytes.length, observe);
  if (end === undefined) return { value: undefined };
  const value: unknown = JSON.parse(text.decode(b.subarray(start, end)));
  const version = otherVersion((value as { ahx?: unknown } | null)?.ahx);
  if (version !== undefined) observe(unsupportedVersion(version, positionOf(b, start, ['ahx'], 'value')));
  const validate = validateWhole[kind];
  const errors = validate(value) ? [] : ((validate.errors ?? []) as ErrorObject[]);
  for (const { rule, tokens, aim, data } of explainSchema(errors, value, kind)) {
    const pointer = toPointer(tokens);
    if (version !== undefined && pointer === '/ahx') continue;
    const at = { pointer, byte: positionOf(b, start, tokens, aim) };
    observe({ rule, at, data, cause: `${pointer} ${data.member ?? ''}`, ...leniency(rule, version) });
  }
  if (version !== undefined) return { value: undefined, otherVersion: version.found };
  if (errors.length > 0) return { value: undefined };
  let isFit = true;
  for (const observation of kind === 'column-profile' ? aboutProfile(value as ColumnProfile) : []) {
    const { pointer = '', isName } = observation.at;
    const byte = positionOf(b, start, fromPointer(pointer), isName ? 'name' : 'value');
    observe({ ...observation, at: { pointer, byte } });
    if (observation.severity === undefined) isFit = false;
  }
  return { value: isFit ? value : undefined };
}

/** What a profile that holds to its own schema is found wrong in: in itself, and in the layout that it gives. */
function aboutProfile(profile: ColumnProfile): Observation[] {
  const found = checkProfile(profile).map(profileUnfit);
  if (found.length > 0 || profile.layout === undefined) return found;
  const reader = new LayoutReader(({ at, ...rest }) => {
    found.push({ ...rest, at: { pointer: `/layout${at.pointer ?? ''}`, isName: at.isName } });
  });
  const layout = { ahx: SCHEMA_VERSION, kind: 'layout', ...profile.layout, holes: [] };
  reader.write(new TextEncoder().encode(JSON.stringify(layout)));
  reader.end();
  return found;
}

/** Position behind the document in a text that is sound JSON to its end; observes what is wrong with it. */
function soundEnd(b: Uint8Array, start: number, limit: number, observe: Observe): number | undefined {
  const scanner = new Scanner();
  const outcome = scanner.scan(b, start, limit, true);
  let isSound = outcome === 'whole';
  for (const { rule, at, data } of scanner.faults) {
    if (rule !== 'number-loses-digits') isSound = false;
    const pointer = outcome === 'whole' ? toPointer(tokensTo(b, start, at)) : '';
    observe({ rule, at: { pointer, byte: at }, data, cause: `${pointer} ${data.name ?? ''}` });
  }
  const after = blanks(b, scanner.end);
  if (isSound && after < limit) {
    const data = { expected: 'nothing after the document', found: describeByte(b, after, limit) };
    observe({ rule: 'json-syntax', at: { pointer: '', byte: after }, data, cause: '' });
    return undefined;
  }
  return isSound ? scanner.end : undefined;
}
