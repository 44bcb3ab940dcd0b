/** A number with its noun in Spanish: `1 hallazgo`, `2 hallazgos`. */
export function counted(n: number, one: string, many = `${one}s`): string {
  return `${n} ${n === 1 ? one : many}`;
}
