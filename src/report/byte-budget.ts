const encoder = new TextEncoder();

/** Number of bytes of a text in UTF-8. */
export function utf8Length(text: string): number {
  return encoder.encode(text).length;
}

/** Takes pieces of a text while they are few and small enough; what comes after the first refusal is refused too. */
export class ByteBudget {
  readonly pieces: string[] = [];
  private bytes = 0;
  private isFull = false;

  /**
   * @param mostPieces most pieces taken
   * @param mostBytes most bytes in UTF-8 of all pieces taken
   */
  constructor(
    private readonly mostPieces: number,
    private readonly mostBytes: number,
  ) {}

  /** Takes a piece, or says that it does not fit. */
  take(piece: string): boolean {
    if (this.isFull || this.pieces.length >= this.mostPieces) return false;
    const bytes = utf8Length(piece);
    this.isFull = this.bytes + bytes > this.mostBytes;
    if (this.isFull) return false;
    this.bytes += bytes;
    this.pieces.push(piece);
    return true;
  }
}
