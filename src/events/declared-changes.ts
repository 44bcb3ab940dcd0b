import type { Change } from '../generated/layout.js';
import type { DeclaredChanges, DeclaredNotFound } from './layout-changes.js';
import { memberOf, type Rec, recordsOf, textOf, textsOf } from './records.js';

export type ChangeKind = Change['kind'];

/** The declared changes of a layout, for questions by kind and hole. */
export class Declarations {
  private readonly changes: readonly Rec[];
  private readonly named = new Map<string, Set<string>>();

  /** @param header of the later layout */
  constructor(header: Rec) {
    this.changes = recordsOf(memberOf(header, 'changes'));
    for (const change of this.changes) {
      const kind = textOf(change, 'kind') ?? '';
      const ids = this.named.get(kind) ?? new Set();
      this.named.set(kind, ids);
      for (const id of textsOf(memberOf(change, 'holes'))) ids.add(id);
    }
  }

  /** Number of declared changes. */
  get count(): number {
    return this.changes.length;
  }

  /** Whether a change of the kind names the hole by one of its ids. */
  has(kind: ChangeKind, id: string, was?: string): boolean {
    const named = this.named.get(kind);
    return named !== undefined && (named.has(id) || (was !== undefined && named.has(was)));
  }

  /**
   * The declared changes that are none.
   *
   * @param isFound whether the hole has a difference of the kind
   * @param isAny whether any hole, or definition, has one
   */
  heldAgainst(
    isFound: (kind: ChangeKind, id: string) => boolean,
    isAny: (kind: ChangeKind) => boolean,
  ): DeclaredChanges {
    const notFound: DeclaredNotFound[] = [];
    this.changes.forEach((change, index) => {
      const kind = textOf(change, 'kind') as ChangeKind;
      const ids = [...new Set(textsOf(memberOf(change, 'holes')))];
      const holes = ids.filter((id) => !isFound(kind, id));
      if (holes.length > 0 || (ids.length === 0 && !isAny(kind))) notFound.push({ index, kind, holes });
    });
    return { count: this.changes.length, notFound };
  }
}
