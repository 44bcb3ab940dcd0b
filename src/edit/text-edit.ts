/** One change of a text: the bytes from `start` up to `end` become `text`. */
export interface TextEdit {
  start: number;
  end: number;
  text: Uint8Array;
}

/** The bytes with edits made, which are in order and do not overlap. */
export function edited(bytes: Uint8Array, edits: readonly TextEdit[]): Uint8Array {
  const change = edits.reduce((sum, { start, end, text }) => sum + text.length - (end - start), 0);
  const result = new Uint8Array(bytes.length + change);
  let from = 0;
  let to = 0;
  for (const { start, end, text } of edits) {
    result.set(bytes.subarray(from, start), to);
    to += start - from;
    result.set(text, to);
    to += text.length;
    from = end;
  }
  result.set(bytes.subarray(from), to);
  return result;
}

/** A stretch of the text as it is now: bytes of the original one, or new ones. */
type Piece = { start: number; end: number } | { text: Uint8Array };

/**
 * Edits of the original text that do at once what `first` and then `second`, edits of the text after `first`, do.
 * What is taken out of the original and put back unchanged counts as an edit.
 *
 * @param length bytes of the original text
 */
export function composed(length: number, first: readonly TextEdit[], second: readonly TextEdit[]): TextEdit[] {
  const pieces = piecesOf(length, first);
  const result: Piece[] = [];
  let index = 0;
  let used = 0;
  /** Hands over, or drops, the next bytes of the text after `first`. */
  const pass = (count: number, isKept: boolean) => {
    for (let left = count; left > 0; ) {
      const piece = pieces[index];
      const size = sizeOf(piece) - used;
      const taken = Math.min(size, left);
      if (isKept) result.push(part(piece, used, used + taken));
      left -= taken;
      used = taken === size ? 0 : used + taken;
      if (used === 0) index++;
    }
  };
  let at = 0;
  for (const { start, end, text } of second) {
    pass(start - at, true);
    pass(end - start, false);
    if (text.length > 0) result.push({ text });
    at = end;
  }
  if (used > 0) {
    result.push(part(pieces[index], used, sizeOf(pieces[index])));
    index++;
  }
  result.push(...pieces.slice(index));
  return editsOf(length, result);
}

function sizeOf(piece: Piece): number {
  return 'text' in piece ? piece.text.length : piece.end - piece.start;
}

function part(piece: Piece, from: number, to: number): Piece {
  if ('text' in piece) return { text: piece.text.subarray(from, to) };
  return { start: piece.start + from, end: piece.start + to };
}

function piecesOf(length: number, edits: readonly TextEdit[]): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  for (const { start, end, text } of edits) {
    if (start > at) pieces.push({ start: at, end: start });
    if (text.length > 0) pieces.push({ text });
    at = end;
  }
  if (length > at) pieces.push({ start: at, end: length });
  return pieces;
}

function editsOf(length: number, pieces: readonly Piece[]): TextEdit[] {
  const edits: TextEdit[] = [];
  let at = 0;
  let texts: Uint8Array[] = [];
  const close = (next: number) => {
    if (next > at || texts.length > 0) edits.push({ start: at, end: next, text: joined(texts) });
    texts = [];
  };
  for (const piece of pieces) {
    if ('text' in piece) texts.push(piece.text);
    else {
      close(piece.start);
      at = piece.end;
    }
  }
  close(length);
  return edits;
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  if (parts.length === 1) return parts[0];
  const result = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const one of parts) {
    result.set(one, at);
    at += one.length;
  }
  return result;
}
