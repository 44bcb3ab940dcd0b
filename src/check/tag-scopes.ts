import { type HoleLevel, HoleLevels } from './hole-levels.js';
import { type Kind, kindsOf } from './kinds.js';
import type { Site } from './site.js';

/** Where a tag must be unique: one trade on one level of one building. */
export class TagScopes {
  /** For each kind of holes the number of its scope; -1 where it has none, see {@link why}. */
  readonly ofKind: Float64Array;
  /** For each kind why it has no scope. */
  readonly why: readonly (string | undefined)[];
  private readonly levels: HoleLevels;
  private readonly numbers = new Map<string, number>();
  private readonly known = new Map<HoleLevel, number>();

  constructor(private readonly site: Site) {
    const { list } = kindsOf(site);
    this.levels = new HoleLevels(site);
    this.why = list.map((kind) => kind.out ?? this.whyNoLevel(kind));
    this.ofKind = Float64Array.from(list, (kind, k) => (this.why[k] === undefined ? this.scopeOf(kind) : -1));
  }

  /** The level of a hole in words of its layout; undefined in a layout without levels. */
  levelOf(kind: Kind): string | undefined {
    return this.levels.of(kind)?.id;
  }

  private whyNoLevel(kind: Kind): string | undefined {
    if (this.levels.of(kind) !== undefined) return undefined;
    const { layout } = kind.part;
    const hasLevels = layout.collection('levels').ids.length > 0 || layout.unreadable.has('levels');
    return hasLevels ? 'level not known' : undefined;
  }

  private scopeOf(kind: Kind): number {
    const level = this.levels.of(kind);
    const number = level === undefined ? 0 : (this.known.get(level) ?? this.numberOf(kind, level));
    return number * this.site.trades.count + kind.trade;
  }

  /** A level of two layouts is one where both say the same of it. */
  private numberOf({ part }: Kind, level: HoleLevel): number {
    const { id, record } = level;
    const key = JSON.stringify(record === undefined ? [part.input, id] : [id, record.name, record.building]);
    const number = this.numbers.get(key) ?? this.numbers.size + 1;
    this.numbers.set(key, number);
    this.known.set(level, number);
    return number;
  }
}
