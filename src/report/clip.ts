/** A text of at most `most` UTF-16 units, not cut inside a character; what was cut shows as an ellipsis. */
export function clip(text: string, most: number): string {
  if (text.length <= most) return text;
  const kept = text.slice(0, most - 1);
  return `${/[\ud800-\udbff]$/.test(kept) ? kept.slice(0, -1) : kept}…`;
}
