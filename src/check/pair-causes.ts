import type { Site } from './site.js';

/**
 * Causes of findings about two holes, where they hang on the trades and types of the two and on the input of
 * the other one. Each is made once and not a million times.
 */
export class PairCauses {
  private readonly known = new Map<number, string>();
  private readonly trades: number;
  private readonly types: number;
  private readonly isCountable: boolean;

  constructor(private readonly site: Site) {
    // A hole may name none.
    this.trades = site.trades.count + 1;
    this.types = site.types.count + 1;
    const keys = (this.trades * this.types) ** 2 * site.parts.length;
    this.isCountable = keys <= Number.MAX_SAFE_INTEGER;
  }

  /** The cause of a finding at hole `i` about another one; `make` says it. */
  of(i: number, other: number, make: () => string): string {
    if (!this.isCountable) return make();
    const key = this.keyOf(i, other);
    const known = this.known.get(key) ?? make();
    this.known.set(key, known);
    return known;
  }

  private keyOf(i: number, other: number): number {
    const { site, trades, types } = this;
    const one = (hole: number) => (site.trades.nameOf(hole) + 1) * types + site.types.nameOf(hole) + 1;
    return (one(i) * trades * types + one(other)) * site.parts.length + site.parts.indexOf(site.partOf(other));
  }
}
