import { nameText, shorten } from './text-of.js';

/** One open object or array and, for an object, the names it has so far. */
export class OpenValue {
  private readonly spans: number[] = [];
  private names: Set<string> | undefined;
  constructor(readonly isObject: boolean) {}

  /** Adds the name at `from..to` (without quotes); returns it when it is there already. */
  add(b: Uint8Array, from: number, to: number): string | undefined {
    // A handful of plain names is compared as bytes; many names, or escaped ones, as texts.
    if (this.names === undefined && (this.spans.length >= 40 || hasEscape(b, from, to))) {
      this.names = new Set();
      for (let k = 0; k < this.spans.length; k += 2) this.names.add(nameText(b, this.spans[k], this.spans[k + 1]));
    }
    if (this.names !== undefined) {
      const name = nameText(b, from, to);
      if (this.names.has(name)) return shorten(name);
      this.names.add(name);
      return undefined;
    }
    for (let k = 0; k < this.spans.length; k += 2) {
      if (sameSpan(b, this.spans[k], this.spans[k + 1], from, to)) return nameText(b, from, to);
    }
    this.spans.push(from, to);
    return undefined;
  }
}

function hasEscape(b: Uint8Array, from: number, to: number): boolean {
  for (let k = from; k < to; k++) if (b[k] === 92) return true;
  return false;
}

/** Whether the same bytes stand at both spans. */
export function sameSpan(b: Uint8Array, from: number, to: number, from2: number, to2: number): boolean {
  if (to - from !== to2 - from2) return false;
  for (let k = 0; k < to - from; k++) if (b[from + k] !== b[from2 + k]) return false;
  return true;
}
