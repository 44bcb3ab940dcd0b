import type { Fix, FixOperation } from '../model/fix.js';
import { type Claim, claimsOf, findConflicts, parentOf, placeOf } from './conflicts.js';
import { findPlaces, itemsOf } from './find-places.js';
import { renamed } from './renamed.js';
import type { TextEdit } from './text-edit.js';

/** What is done to a text, and what is not. */
export interface EditPlan {
  /** In order, none overlapping another. */
  edits: TextEdit[];
  /** The same as a JSON Patch, one operation after the other; the byte order mark is no part of it. */
  patch: FixOperation[];
  /** For each fix why it is not made; undefined for those that are. */
  refused: (string | undefined)[];
}

const encoder = new TextEncoder();
const NOTHING = new Uint8Array();

/**
 * Turns fixes into edits of the text that leave every other byte as it is. The same operation of two fixes is
 * made once; of fixes that want different things at one place none is made.
 *
 * @param bytes a text that is sound JSON to its end; where `isSound` is false only the byte order mark is dealt with
 */
export function planEdits(bytes: Uint8Array, fixes: readonly Fix[], isSound = true): EditPlan {
  const refused: (string | undefined)[] = fixes.map(({ patch }) =>
    isSound || patch === undefined ? undefined : 'the text is no JSON to its end',
  );
  const refuse = (fix: number, why: string) => {
    refused[fix] ??= why;
  };
  const patches = fixes.map(({ patch = [] }) => (isSound ? patch : []));
  const operations = patches.flat();
  const pointers = operations.flatMap((operation) => [placeOf(operation), operation.path]);
  const places =
    operations.length === 0 ? { places: new Map(), ambiguous: new Set<string>() } : findPlaces(bytes, pointers);
  const all = claimsOf(patches, places, refuse);
  findConflicts(all, places, refuse);
  const claims = all.filter((claim) => claim.fixes.some((fix) => refused[fix] === undefined));
  refuseFarAdditions(bytes, claims, refuse);
  const made = claims.filter((claim) => claim.fixes.some((fix) => refused[fix] === undefined));
  const mark = fixes.some(({ byteOrderMark }) => byteOrderMark !== undefined) && bytes[0] === 0xef;
  const edits = [
    ...(mark ? [{ start: 0, end: 3, text: NOTHING }] : []),
    ...made.flatMap((claim) => editOf(claim)),
    ...removals(made),
    ...additions(bytes, made),
  ];
  return { edits: edits.sort((a, b) => a.start - b.start), patch: inTurn(made), refused };
}

function editOf({ operation, start, end }: Claim): TextEdit[] {
  if (operation.op === 'replace') return [{ start, end, text: jsonBytes(operation.value) }];
  if (operation.op === 'move') return [{ start, end, text: jsonBytes(lastToken(operation.path)) }];
  return [];
}

function jsonBytes(value: unknown): Uint8Array {
  return encoder.encode(JSON.stringify(value));
}

function lastToken(pointer: string): string {
  return pointer
    .slice(pointer.lastIndexOf('/') + 1)
    .replaceAll('~1', '/')
    .replaceAll('~0', '~');
}

/** Members and elements go with one comma; what goes side by side goes together. */
function removals(claims: readonly Claim[]): TextEdit[] {
  const gone = claims.filter(({ operation, found }) => operation.op === 'remove' && found.holder !== undefined);
  gone.sort((a, b) => a.start - b.start);
  const edits: TextEdit[] = [];
  for (let k = 0; k < gone.length; k++) {
    const { found: first } = gone[k];
    while (k + 1 < gone.length && gone[k + 1].start === gone[k].found.after) k++;
    const { found: last } = gone[k];
    const { open = 0, close = 0 } = first.holder ?? {};
    if (first.before !== undefined) edits.push({ start: first.before, end: last.end, text: NOTHING });
    else if (last.after !== undefined) edits.push({ start: first.from, end: last.after, text: NOTHING });
    else edits.push({ start: open + 1, end: close, text: NOTHING });
  }
  return edits;
}

/** An element is added at the end of a list only. */
function refuseFarAdditions(
  bytes: Uint8Array,
  claims: readonly Claim[],
  refuse: (fix: number, why: string) => void,
): void {
  for (const { operation, found, fixes } of claims) {
    if (operation.op !== 'add' || bytes[found.start] === 123) continue;
    const token = lastToken(operation.path);
    const isEnd =
      bytes[found.start] === 91 &&
      (token === '-' || token === String([...itemsOf(bytes, found.start, found.end)].length));
    if (!isEnd) for (const fix of fixes) refuse(fix, `"${operation.path}" is not the end of a list`);
  }
}

/** New members come last, in the manner of the member before them. */
function additions(bytes: Uint8Array, claims: readonly Claim[]): TextEdit[] {
  const byHolder = new Map<number, Claim[]>();
  for (const claim of claims) {
    if (claim.operation.op !== 'add') continue;
    byHolder.set(claim.found.start, [...(byHolder.get(claim.found.start) ?? []), claim]);
  }
  const text = new TextDecoder();
  return [...byHolder].map(([open, added]) => {
    const isObject = bytes[open] === 123;
    const last = [...itemsOf(bytes, open, added[0].found.end)].at(-1);
    const gapStart = last?.before === undefined ? open + 1 : bytes.indexOf(44, last.before) + 1;
    const gap = last === undefined ? '' : text.decode(bytes.subarray(gapStart, last.from));
    const colon = last === undefined ? ': ' : text.decode(bytes.subarray(last.nameEnd, last.start));
    const texts = added.map(({ operation }) => {
      const value = JSON.stringify((operation as { value: unknown }).value);
      return isObject ? `${JSON.stringify(lastToken(operation.path))}${colon}${value}` : value;
    });
    const start = last?.end ?? open + 1;
    return {
      start,
      end: start,
      text: encoder.encode(`${last === undefined ? '' : `,${gap}`}${texts.join(`,${gap}`)}`),
    };
  });
}

/**
 * The operations in an order in which each finds what its pointer meant in the document as it was: values first,
 * then names, the innermost first, then what goes, from the end.
 */
function inTurn(claims: readonly Claim[]): FixOperation[] {
  const of = (op: FixOperation['op']) => claims.filter(({ operation }) => operation.op === op);
  const depth = ({ operation }: Claim) => parentOf(operation.path).split('/').length;
  const moves = of('move').sort((a, b) => depth(b) - depth(a) || a.start - b.start);
  const names = new Map(
    moves.flatMap(({ operation }) => (operation.op === 'move' ? [[operation.from, operation.path]] : [])),
  );
  const gone = of('remove').sort((a, b) => b.start - a.start);
  return [
    ...[...of('replace'), ...of('add'), ...moves].map(({ operation }) => operation),
    ...gone.map(({ operation }): FixOperation => ({ op: 'remove', path: renamed(operation.path, names) })),
  ];
}
