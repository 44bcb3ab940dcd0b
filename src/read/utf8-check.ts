/** Finds the first byte of a stream that is not UTF-8 (RFC 3629). */
export class Utf8Check {
  firstBad: { byte: number; found: string } | undefined;
  private offset = 0;
  /** Bytes still to come of the sequence at hand, and the range that the next one must lie in. */
  private open = 0;
  private low = 0x80;
  private high = 0xbf;
  /** Whether the byte at hand begins a sequence. */
  private isLead = false;

  write(chunk: Uint8Array): void {
    for (let k = 0; k < chunk.length && this.firstBad === undefined; k++) {
      const c = chunk[k];
      if (this.open === 0 && c < 0x80) continue;
      if (this.open === 0 ? !this.begin(c) : c < this.low || c > this.high) {
        this.firstBad = { byte: this.offset + k, found: `0x${c.toString(16).toUpperCase()}` };
      } else if (this.open > 0 && !this.isLead) {
        this.open--;
        this.low = 0x80;
        this.high = 0xbf;
      }
      this.isLead = false;
    }
    this.offset += chunk.length;
  }

  /** Ends the stream: a sequence that is still open was cut off. */
  end(): void {
    if (this.open > 0 && this.firstBad === undefined)
      this.firstBad = { byte: this.offset, found: 'the end of the text' };
  }

  /** Takes the first byte of a sequence; the second byte shuts out overlong forms, surrogates and what lies beyond U+10FFFF. */
  private begin(c: number): boolean {
    if (c < 0xc2 || c > 0xf4) return false;
    this.isLead = true;
    this.open = c < 0xe0 ? 1 : c < 0xf0 ? 2 : 3;
    this.low = c === 0xe0 ? 0xa0 : c === 0xf0 ? 0x90 : 0x80;
    this.high = c === 0xed ? 0x9f : c === 0xf4 ? 0x8f : 0xbf;
    return true;
  }
}
