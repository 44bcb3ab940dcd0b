/** Whether two JSON values are the same: members in any order, elements in theirs. */
export function sameJson(one: unknown, other: unknown): boolean {
  return one === other || jsonKey(one) === jsonKey(other);
}

/** A text that is the same for the same JSON value, whatever the order of members. */
export function jsonKey(value: unknown): string | undefined {
  return JSON.stringify(value, (_, member: unknown) =>
    typeof member === 'object' && member !== null && !Array.isArray(member) ? sorted(member) : member,
  );
}

function sorted(members: object): Record<string, unknown> {
  return Object.fromEntries(Object.entries(members).sort(([a], [b]) => (a < b ? -1 : 1)));
}
