import type { Loss } from '../model/layout-source.js';

/** Takes what did not travel in a conversion, one kind at a time. */
export type Lose = (loss: Loss) => void;

/** Counts what does not travel, by field and reason. */
export class LossTally {
  readonly #losses = new Map<string, Loss>();
  #held: [field: string, reason: string, recoverable: boolean, count: number][] | undefined;

  /** Counts `count` more of a kind. */
  add(field: string, reason: string, recoverable: boolean, count = 1): void {
    if (count === 0) return;
    if (this.#held !== undefined) {
      this.#held.push([field, reason, recoverable, count]);
      return;
    }
    const key = JSON.stringify([field, reason, recoverable]);
    const known = this.#losses.get(key);
    if (known === undefined) this.#losses.set(key, { field, count, reason, recoverable });
    else known.count += count;
  }

  /** Counts provisionally from here on, until `settle`. */
  hold(): void {
    this.#held = [];
  }

  /** Counts what was held, or forgets it. */
  settle(isKept: boolean): void {
    const held = this.#held ?? [];
    this.#held = undefined;
    if (isKept) for (const counted of held) this.add(...counted);
  }

  /** Hands each kind over, in the order in which they were first seen. */
  report(lose: Lose): void {
    for (const loss of this.#losses.values()) lose({ ...loss });
  }
}
