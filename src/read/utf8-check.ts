/** Finds the first byte of a stream that begins no sequence of UTF-8 (RFC 3629). */
export class Utf8Check {
  /** The byte, and what stands there; undefined as long as the stream is UTF-8. */
  firstBad: { byte: number; found: string } | undefined;
  private offset = 0;
  /** Bytes still to come of the sequence at hand, and the range that the next one must lie in. */
  private open = 0;
  private low = 0x80;
  private high = 0xbf;
  /** Offset and value of the byte that began the sequence at hand. */
  private leadByte = 0;
  private lead = 0;

  write(chunk: Uint8Array): void {
    for (let k = 0; k < chunk.length && this.firstBad === undefined; k++) {
      const c = chunk[k];
      if (this.open === 0) {
        if (c < 0x80) continue;
        this.leadByte = this.offset + k;
        this.lead = c;
        if (!this.begin(c)) this.bad();
      } else if (c < this.low || c > this.high) {
        this.bad();
      } else {
        this.open--;
        this.low = 0x80;
        this.high = 0xbf;
      }
    }
    this.offset += chunk.length;
  }

  /** Ends the stream: a sequence that is still open was cut off. */
  end(): void {
    if (this.open > 0 && this.firstBad === undefined) this.bad();
  }

  private bad(): void {
    this.firstBad = { byte: this.leadByte, found: `0x${this.lead.toString(16).toUpperCase()}` };
  }

  /** Takes the first byte of a sequence; the second byte shuts out overlong forms, surrogates and what lies beyond U+10FFFF. */
  private begin(c: number): boolean {
    if (c < 0xc2 || c > 0xf4) return false;
    this.open = c < 0xe0 ? 1 : c < 0xf0 ? 2 : 3;
    this.low = c === 0xe0 ? 0xa0 : c === 0xf0 ? 0x90 : 0x80;
    this.high = c === 0xed ? 0x9f : c === 0xf4 ? 0x8f : 0xbf;
    return true;
  }
}
