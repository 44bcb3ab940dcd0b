/** About how wide a text is, in the unit of its size: no type is measured, so rather too wide than too narrow. */
export function textWidth(text: string, size: number): number {
  let ems = 0;
  for (const character of text) ems += widthOf(character);
  return ems * size;
}

function widthOf(character: string): number {
  if (/[ijlI.,:;'|!()[\]]/.test(character)) return 0.36;
  if (/[mwMW@%—]/.test(character)) return 0.92;
  if (/[A-Z&]/.test(character)) return 0.72;
  return character < '\u2e80' ? 0.6 : 1.05;
}

/** A text cut to a width, with an ellipsis where something is missing. */
export function shortened(text: string, size: number, most: number): string {
  if (textWidth(text, size) <= most) return text;
  let kept = '';
  let room = most / size - 1;
  for (const character of text) {
    room -= widthOf(character);
    if (room < 0) break;
    kept += character;
  }
  return `${kept.trimEnd()}…`;
}

/** Sentences as lines no wider than that; a sentence is cut at blanks where it must be. */
export function wrapped(text: string, size: number, most: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size) > most) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  if (line !== '') lines.push(line);
  return lines.map((one) => shortened(one, size, most));
}
