/** A hole as people know it: its id, and its tag where that says something else. */
export function idAndTag({ id, tag }: { id: string; tag?: string }): string {
  return tag === undefined || tag === id ? id : `${id} (tag ${tag})`;
}
