import type { Site } from './site.js';

/** Names of the causes that findings about two holes of trades share: made once for each pair of trades. */
export class CausesOfPairs {
  private readonly known = new Map<number, string>();

  constructor(private readonly site: Site) {}

  /** @param trade number of the trade of the one hole; `otherTrade` that of the hole `other` */
  of(trade: number, otherTrade: number, other: number): string {
    const { trades } = this.site;
    const { input } = this.site.partOf(other);
    const key = (input * (trades.count + 1) + trade) * (trades.count + 1) + otherTrade;
    const cause = this.known.get(key) ?? `${trades.id(trade)} ${trades.id(otherTrade)} ${input}`;
    this.known.set(key, cause);
    return cause;
  }
}
