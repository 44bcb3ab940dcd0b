/** Length of a chunk in UTF-16 units: few writes, little memory. */
const CHUNK_LENGTH = 65_536;

/** Joins small pieces of text into chunks of about 64 KB; the text stays the same. */
export function* inChunks(pieces: Iterable<string>): Generator<string> {
  let chunk = '';
  for (const piece of pieces) {
    chunk += piece;
    if (chunk.length >= CHUNK_LENGTH) {
      yield chunk;
      chunk = '';
    }
  }
  if (chunk !== '') yield chunk;
}
