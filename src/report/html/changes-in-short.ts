import type { LayoutChanges } from '../../events/layout-changes.js';
import type { ChangesPhrases } from './html-phrases.js';
import type { HtmlReportParts } from './reported-layout.js';

/** What a reader must know of the changes before the tables: sentences for the first page. */
export function changesInShort({ changes = [], uncompared = [], language }: HtmlReportParts): string[] {
  const { changes: words } = language.html;
  return [...uncompared.map((layout) => words.uncompared(layout)), ...changes.flatMap((one) => inShort(one, words))];
}

function inShort(changes: LayoutChanges, words: ChangesPhrases): string[] {
  const { after, before, parent } = changes;
  const undeclared = numberUndeclared(changes);
  const isOneLabel = before.revision === after.revision && hasDifference(changes);
  return [
    ...(undeclared > 0 ? [words.undeclared(after.layout, before.revision, undeclared)] : []),
    ...(parent === 'differs' ? [words.otherParent(after.layout, before.revision)] : []),
    ...(isOneLabel ? [words.oneLabel(after.layout, after.revision)] : []),
  ];
}

/** Differences of holes and definitions that no declared change names. */
function numberUndeclared(changes: LayoutChanges): number {
  const { moved, added, removed, respecified, reassigned, renumbered, redefined } = changes;
  const ofHoles = [moved, added, removed, respecified, reassigned, renumbered].flat();
  return (
    ofHoles.filter(({ isDeclared }) => !isDeclared).length +
    redefined.filter(({ isDeclared }) => isDeclared === 'for-none' || isDeclared === 'for-some').length
  );
}

function hasDifference({ before, after, unchanged, redefined, header }: LayoutChanges): boolean {
  return unchanged < Math.max(before.holes, after.holes) || redefined.length > 0 || header.length > 0;
}
