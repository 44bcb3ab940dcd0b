const ZIP = 'PK\u0003\u0004';
const LOOKED_AT = 400;

/**
 * What a file is that was taken for a table and is no text in UTF-8, in words; undefined where its first
 * piece, decoded as UTF-8, may be one. UTF-16 shows by zeros at every other place; its byte order mark
 * decodes to two replacement characters.
 */
export function foreignText(piece: string): string | undefined {
  if (piece.startsWith(ZIP)) return 'a packed file such as a spreadsheet workbook; save the sheet as CSV in UTF-8';
  const head = piece.slice(0, LOOKED_AT).replace(/^\ufffd\ufffd/, '');
  const zeros = [0, 0];
  for (let at = 0; at < head.length; at++) if (head[at] === '\0') zeros[at % 2]++;
  const [even, odd] = zeros;
  // Letters outside Latin have no zero, line ends and digits always have.
  if (Math.min(even, odd) > 0 || 8 * Math.max(even, odd) < head.length || head.length < 4) return undefined;
  return even > 0 ? 'UTF-16, big-endian' : 'UTF-16, little-endian';
}
