import { type ErrorObject, validateColumnProfile, validateReport } from '../generated/validators.js';
import type { Observe } from '../model/observation.js';
import { explainSchema } from './explain-schema.js';
import { positionOf, toPointer, tokensTo } from './locate.js';
import { blanks, describeByte, Scanner } from './scan.js';

/** Documents that are small enough to be read at once. */
export type WholeKind = 'report' | 'column-profile';

const validators = { report: validateReport, 'column-profile': validateColumnProfile };
const text = new TextDecoder('utf-8', { ignoreBOM: true });

/**
 * Reads a report or a column profile and observes what is wrong with it.
 *
 * @param bytes the whole text
 * @returns the document where nothing but warnings was observed, else undefined
 */
export function readWholeDocument(bytes: Uint8Array, kind: WholeKind, observe: Observe): unknown {
  const b = new Uint8Array(bytes.length + 32);
  b.set(bytes);
  const start = blanks(b, b[0] === 0xef && b[1] === 0xbb && b[2] === 0xbf ? 3 : 0);
  if (start >= 3 && b[0] === 0xef)
    observe({ rule: 'byte-order-mark', at: { pointer: '', byte: 0 }, data: {}, cause: '' });
  const scanner = new Scanner();
  const outcome = scanner.scan(b, start, bytes.length, true);
  let isSound = outcome === 'whole';
  for (const { rule, at, data } of scanner.faults) {
    if (rule !== 'number-loses-digits') isSound = false;
    const pointer = outcome === 'whole' ? toPointer(tokensTo(b, start, at)) : '';
    observe({ rule, at: { pointer, byte: at }, data, cause: `${pointer} ${data.name ?? ''}` });
  }
  const after = blanks(b, scanner.end);
  if (isSound && after < bytes.length) {
    const data = { expected: 'nothing after the document', found: describeByte(b, after, bytes.length) };
    observe({ rule: 'json-syntax', at: { pointer: '', byte: after }, data, cause: '' });
    isSound = false;
  }
  if (!isSound) return undefined;
  const value: unknown = JSON.parse(text.decode(b.subarray(start, scanner.end)));
  const validate = validators[kind];
  if (validate(value)) return value;
  for (const { rule, tokens, aim, data } of explainSchema((validate.errors ?? []) as ErrorObject[], value, kind)) {
    const pointer = toPointer(tokens);
    observe({
      rule,
      at: { pointer, byte: positionOf(b, start, tokens, aim) },
      data,
      cause: `${pointer} ${data.member ?? ''}`,
    });
  }
  return undefined;
}
