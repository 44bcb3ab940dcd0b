const encoder = new TextEncoder();

/** The prime of the hash is 2^40 + LOW_PRIME. */
const LOW_PRIME = 0x1b3;
const TWO_32 = 2 ** 32;

/**
 * FNV-1a of the UTF-8 of a text, 64 bits, as 16 hexadecimal digits (draft-eastlake-fnv). It tells texts apart that
 * nobody chose to look alike; it is no proof of anything.
 */
export function fnvHash(text: string): string {
  let high = 0xcbf29ce4;
  let low = 0x84222325;
  for (const byte of encoder.encode(text)) {
    const mixed = (low ^ byte) >>> 0;
    // Below 2^41, so exact.
    const product = mixed * LOW_PRIME;
    high = (Math.imul(high, LOW_PRIME) + Math.floor(product / TWO_32) + (mixed << 8)) >>> 0;
    low = product >>> 0;
  }
  return [high, low].map((half) => half.toString(16).padStart(8, '0')).join('');
}
