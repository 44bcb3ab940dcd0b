/** Bytes of a text, or the bytes given, with the zeros behind them that readers of lexemes count on. */
export function padded(text: string | readonly number[] | Uint8Array): { bytes: Uint8Array; limit: number } {
  const given = typeof text === 'string' ? new TextEncoder().encode(text) : Uint8Array.from(text);
  const bytes = new Uint8Array(given.length + 32);
  bytes.set(given);
  return { bytes, limit: given.length };
}
