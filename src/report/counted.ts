/** A number with its noun: `1 finding`, `2 findings`. */
export function counted(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}
