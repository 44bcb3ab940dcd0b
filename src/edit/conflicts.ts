import type { FixOperation } from '../model/fix.js';
import type { Found, Places } from './find-places.js';

/** An operation that one or several fixes ask for, with what it takes for itself. */
export interface Claim {
  operation: FixOperation;
  /** Numbers of the fixes. */
  fixes: number[];
  /** What stands at its pointer; of an addition its holder. */
  found: Found;
  /** Bytes that no other operation may touch; of an addition none, before the bracket that closes its holder. */
  start: number;
  end: number;
  /** Pointer of a member that it makes. */
  makes: string | undefined;
}

/**
 * Sorts the operations of all fixes; the same one of several fixes is one claim.
 *
 * @param refuse called where an operation has no one place in the text
 */
export function claimsOf(
  patches: readonly (readonly FixOperation[])[],
  { places, ambiguous }: Places,
  refuse: (fix: number, why: string) => void,
): Claim[] {
  const claims = new Map<string, Claim>();
  patches.forEach((patch, fix) => {
    for (const operation of patch) {
      const key = JSON.stringify(operation);
      const known = claims.get(key);
      if (known !== undefined) {
        if (!known.fixes.includes(fix)) known.fixes.push(fix);
        continue;
      }
      const pointer = placeOf(operation);
      const found = places.get(pointer);
      if (ambiguous.has(pointer)) refuse(fix, `a name on the way to "${pointer}" comes twice`);
      else if (found === undefined) refuse(fix, `there is nothing at "${pointer}"`);
      else if (operation.op === 'remove' && found.holder === undefined) refuse(fix, 'it is the document itself');
      else if (operation.op === 'move' && !(isRename(operation) && found.holder?.isObject))
        refuse(fix, `"${pointer}" would leave its object`);
      else claims.set(key, { operation, fixes: [fix], found, ...extentOf(operation, found) });
    }
  });
  return [...claims.values()];
}

/** Pointer of what an operation needs to be there. */
export function placeOf(operation: FixOperation): string {
  if (operation.op === 'move') return operation.from;
  return operation.op === 'add' ? parentOf(operation.path) : operation.path;
}

export function parentOf(pointer: string): string {
  return pointer.slice(0, pointer.lastIndexOf('/'));
}

function isRename({ from, path }: { from: string; path: string }): boolean {
  return parentOf(from) === parentOf(path);
}

function extentOf(operation: FixOperation, found: Found): Pick<Claim, 'start' | 'end' | 'makes'> {
  const { from, nameEnd, start, end } = found;
  switch (operation.op) {
    case 'replace':
      return { start, end, makes: undefined };
    case 'remove':
      return { start: from, end, makes: undefined };
    case 'move':
      return { start: from, end: nameEnd, makes: operation.path };
    case 'add':
      return { start: end - 1, end: end - 1, makes: operation.path };
  }
}

/**
 * Finds the claims that cannot be had together: of bytes that overlap, of one new member, or of an addition and a
 * removal in one object. None of them is better than another.
 *
 * @param refuse called for every fix of such a claim
 */
export function findConflicts(
  claims: readonly Claim[],
  { places }: Places,
  refuse: (fix: number, why: string) => void,
): void {
  const refuseAll = (group: readonly Claim[]) => {
    const pointers = group.map(({ operation }) => `"${placeOf(operation)}"`);
    const named = [...new Set(pointers)].slice(0, 3).join(', ');
    for (const { fixes } of group) for (const fix of fixes) refuse(fix, `${group.length} changes at ${named} overlap`);
  };
  for (const group of overlapping(claims)) refuseAll(group);
  const makers = new Map<string, Claim[]>();
  for (const claim of claims) {
    if (claim.makes === undefined) continue;
    makers.set(claim.makes, [...(makers.get(claim.makes) ?? []), claim]);
    if (places.has(claim.makes)) for (const fix of claim.fixes) refuse(fix, `there is a "${claim.makes}" already`);
  }
  for (const group of makers.values()) if (group.length > 1) refuseAll(group);
  const removals = new Map(
    claims.flatMap((claim) => (claim.operation.op === 'remove' ? [[claim.found.holder?.open, claim] as const] : [])),
  );
  for (const claim of claims) {
    const removal = claim.operation.op === 'add' ? removals.get(claim.found.start) : undefined;
    if (removal !== undefined) refuseAll([claim, removal]);
  }
}

/** Groups of claims of which each shares bytes with another one of the group. */
function overlapping(claims: readonly Claim[]): Claim[][] {
  const inOrder = claims.toSorted((a, b) => a.start - b.start || b.end - a.end);
  const groups: Claim[][] = [];
  let group: Claim[] = [];
  let end = -1;
  for (const claim of inOrder) {
    if (claim.start >= end) {
      if (group.length > 1) groups.push(group);
      group = [];
    }
    group.push(claim);
    end = Math.max(end, claim.end);
  }
  if (group.length > 1) groups.push(group);
  return groups;
}
