// A name may begin with U+FEFF; it is no byte order mark there.
const text = new TextDecoder('utf-8', { ignoreBOM: true });

/** The text between two positions. */
export function textOf(b: Uint8Array, from: number, to: number): string {
  return text.decode(b.subarray(from, to));
}

/** The decoded name between `from` and `to`. */
export function nameText(b: Uint8Array, from: number, to: number): string {
  const raw = text.decode(b.subarray(from, to));
  return raw.includes('\\') ? (JSON.parse(`"${raw}"`) as string) : raw;
}

/** A text that is quoted in a finding, cut to a length that a line holds. */
export function shorten(written: string): string {
  return written.length > 60 ? `${written.slice(0, 57)}...` : written;
}
