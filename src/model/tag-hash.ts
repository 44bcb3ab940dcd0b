const encoder = new TextEncoder();

/** Where the hash of a tag begins. */
export const TAG_HASH_START = 0x811c9dc5 | 0;

/** The hash with one more byte of the tag's UTF-8 (FNV-1a). */
export function tagHashStep(hash: number, byte: number): number {
  return Math.imul(hash ^ byte, 0x01000193);
}

/** The finished hash: never 0, which stands for no tag. */
export function tagHashEnd(hash: number): number {
  const mixed = Math.imul(hash ^ (hash >>> 15), 0x2c1b3c6d);
  return mixed === 0 ? 1 : mixed;
}

/** Hash of a tag: 32 bits, not 0, equal for equal texts; different texts may share one. */
export function tagHash(tag: string): number {
  const bytes = encoder.encode(tag);
  return tagHashOf(bytes, 0, bytes.length);
}

/** Hash of the tag whose UTF-8 stands at `from..to`. */
export function tagHashOf(b: Uint8Array, from: number, to: number): number {
  let hash = TAG_HASH_START;
  for (let k = from; k < to; k++) hash = tagHashStep(hash, b[k]);
  return tagHashEnd(hash);
}
