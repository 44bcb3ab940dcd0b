/**
 * A JSON Pointer as it is after members were renamed, the innermost first: what lies further out has its old name
 * until then.
 *
 * @param names new pointers by old ones
 */
export function renamed(pointer: string, names: ReadonlyMap<string, string>): string {
  if (names.size === 0) return pointer;
  let at = pointer;
  for (let end = pointer.length; end > 0; end = at.lastIndexOf('/', end - 1)) {
    const to = names.get(at.slice(0, end));
    if (to === undefined) continue;
    at = to + at.slice(end);
    end = to.length;
  }
  return at;
}
