import fc from 'fast-check';

/** How a document is written. */
export interface Manner {
  indent: string | number;
  lineEnd: string;
  hasFinalLineEnd: boolean;
  hasMark: boolean;
}

export const manners: fc.Arbitrary<Manner> = fc.record({
  indent: fc.constantFrom(0, 1, 2, '\t'),
  lineEnd: fc.constantFrom('\n', '\r\n'),
  hasFinalLineEnd: fc.boolean(),
  hasMark: fc.boolean(),
});

/** A value as JSON in a manner of writing. */
export function written(value: unknown, { indent, lineEnd, hasFinalLineEnd, hasMark }: Manner): Uint8Array {
  const text = JSON.stringify(value, undefined, indent).replaceAll('\n', lineEnd);
  return new TextEncoder().encode(`${hasMark ? '\uFEFF' : ''}${text}${hasFinalLineEnd ? lineEnd : ''}`);
}

/** A text without its byte order mark, parsed. */
export function parsed(bytes: Uint8Array): unknown {
  return JSON.parse(new TextDecoder().decode(bytes));
}

/** Bytes of a text as edits leave them and as they make them. */
export const texts = fc
  .array(fc.constantFrom('a', 'b', '\n', '\r\n', 'é', ' '), { maxLength: 60 })
  .map((parts) => parts.join(''));
