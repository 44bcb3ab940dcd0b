import { edited, type TextEdit } from './text-edit.js';

/** Lines shown before and after a change. */
const CONTEXT = 3;
/** A diff with a line of more bytes helps nobody. */
export const LONGEST_LINE = 1 << 16;

const LF = 10;

/** Lines that change together: from byte `start` up to `end`, both at ends of lines, or the end of the text. */
interface Block {
  start: number;
  end: number;
  edits: TextEdit[];
}

/** Lines to be shown: `old`, the bytes from `start` up to `end`, goes, `now` comes; `line` is the number of the first, from 1. */
interface Change {
  line: number;
  start: number;
  end: number;
  old: Uint8Array[];
  now: Uint8Array[];
}

const decoder = new TextDecoder('utf-8', { ignoreBOM: true });

/**
 * What edits do to a text, as a unified diff with three lines of context, in pieces; lines end in a line feed.
 *
 * Undefined where a line to be shown is longer than 65,536 bytes. The name must hold no line end.
 */
export function unifiedDiff(name: string, bytes: Uint8Array, edits: readonly TextEdit[]): string[] | undefined {
  const lines = new Lines(bytes);
  const changes = blocksOf(lines, edits).map((block) => changeOf(lines, block));
  const hunks: string[] = [];
  let shift = 0;
  for (let from = 0; from < changes.length; ) {
    let to = from + 1;
    while (to < changes.length && changes[to].line - endOf(changes[to - 1]) <= 2 * CONTEXT) to++;
    const group = changes.slice(from, to);
    const hunk = hunkOf(lines, group, shift);
    if (hunk === undefined) return undefined;
    hunks.push(hunk);
    for (const { old, now } of group) shift += now.length - old.length;
    from = to;
  }
  return hunks.length === 0 ? [] : [`--- ${name}\n+++ ${name}\n`, ...hunks];
}

/** Number of the line behind a change. */
function endOf({ line, old }: Change): number {
  return line + old.length;
}

/** The lines of a text by number; numbers are asked for in order. */
class Lines {
  private line = 1;
  private at = 0;

  constructor(readonly bytes: Uint8Array) {}

  /** Number of the line that begins at a byte, which is not before the last one asked for. */
  numberAt(byte: number): number {
    for (let end = this.bytes.indexOf(LF, this.at); end >= 0 && end < byte; end = this.bytes.indexOf(LF, this.at)) {
      this.line++;
      this.at = end + 1;
    }
    return this.line;
  }

  startOf(byte: number): number {
    return byte === 0 ? 0 : this.bytes.lastIndexOf(LF, byte - 1) + 1;
  }

  /** Position behind the line that holds a byte. */
  endOf(byte: number): number {
    const end = this.bytes.indexOf(LF, byte);
    return end < 0 ? this.bytes.length : end + 1;
  }

  /** Up to `count` lines before, or from, a byte at the beginning of a line. */
  before(byte: number, count: number): Uint8Array[] {
    let start = byte;
    for (let k = 0; k < count && start > 0; k++) start = this.startOf(start - 1);
    return linesOf(this.bytes.subarray(start, byte));
  }

  from(byte: number, count: number): Uint8Array[] {
    let end = byte;
    for (let k = 0; k < count && end < this.bytes.length; k++) end = this.endOf(end);
    return linesOf(this.bytes.subarray(byte, end));
  }
}

function linesOf(bytes: Uint8Array): Uint8Array[] {
  const lines: Uint8Array[] = [];
  for (let start = 0; start < bytes.length; ) {
    const end = bytes.indexOf(LF, start);
    const stop = end < 0 ? bytes.length : end + 1;
    lines.push(bytes.subarray(start, stop));
    start = stop;
  }
  return lines;
}

function blocksOf(lines: Lines, edits: readonly TextEdit[]): Block[] {
  const blocks: Block[] = [];
  for (const edit of edits) {
    const last = blocks.at(-1);
    const end = lines.endOf(edit.end);
    if (last !== undefined && lines.startOf(edit.start) <= last.end) {
      last.end = Math.max(last.end, end);
      last.edits.push(edit);
    } else blocks.push({ start: lines.startOf(edit.start), end, edits: [edit] });
  }
  return blocks;
}

function changeOf(lines: Lines, { start, end, edits }: Block): Change {
  const part = lines.bytes.subarray(start, end);
  const old = linesOf(part);
  const moved = edits.map((edit) => ({ ...edit, start: edit.start - start, end: edit.end - start }));
  const now = linesOf(edited(part, moved));
  let same = 0;
  while (same < Math.min(old.length, now.length) && isSame(old[same], now[same])) same++;
  let tail = 0;
  while (
    tail < Math.min(old.length, now.length) - same &&
    isSame(old[old.length - 1 - tail], now[now.length - 1 - tail])
  )
    tail++;
  const sizeOf = (list: Uint8Array[]) => list.reduce((sum, { length }) => sum + length, 0);
  const line = lines.numberAt(start) + same;
  return {
    line,
    old: old.slice(same, old.length - tail),
    now: now.slice(same, now.length - tail),
    start: start + sizeOf(old.slice(0, same)),
    end: end - sizeOf(tail === 0 ? [] : old.slice(-tail)),
  };
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((c, k) => c === b[k]);
}

function hunkOf(lines: Lines, group: readonly Change[], shift: number): string | undefined {
  const first = group[0];
  const last = group[group.length - 1];
  const head = lines.before(first.start, CONTEXT);
  const tail = lines.from(last.end, CONTEXT);
  const body: [string, Uint8Array][] = head.map((line) => [' ', line]);
  group.forEach(({ old, now, end }, k) => {
    for (const line of old) body.push(['-', line]);
    for (const line of now) body.push(['+', line]);
    const next = group[k + 1];
    if (next !== undefined) for (const line of linesOf(lines.bytes.subarray(end, next.start))) body.push([' ', line]);
  });
  for (const line of tail) body.push([' ', line]);
  if (body.some(([, line]) => line.length > LONGEST_LINE)) return undefined;
  const counts = (mark: string) => body.filter(([own]) => own === ' ' || own === mark).length;
  const start = first.line - head.length;
  return `@@ -${range(start, counts('-'))} +${range(start + shift, counts('+'))} @@\n${body.map(shown).join('')}`;
}

/** Of no lines the number of the line before is written. */
function range(start: number, count: number): string {
  return `${count === 0 ? start - 1 : start},${count}`;
}

function shown([mark, line]: [string, Uint8Array]): string {
  const isWhole = line[line.length - 1] === LF;
  return `${mark}${decoder.decode(line)}${isWhole ? '' : '\n\\ No newline at end of file\n'}`;
}
