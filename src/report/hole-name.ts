import type { Phrases } from '../model/language.js';

/** A hole as people know it: its id, and its tag where that says something else. */
export function idAndTag({ id, tag }: { id: string; tag?: string }, phrases: Phrases): string {
  return tag === undefined || tag === id ? id : phrases.tagged(id, tag);
}
