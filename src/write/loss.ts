import type { Loss } from '../model/layout-source.js';

/** Takes what did not travel in a conversion, one kind at a time. */
export type Lose = (loss: Loss) => void;

/** Counts what does not travel, by field and reason. */
export class LossTally {
  readonly #losses = new Map<string, Loss>();

  /** Counts `count` more of a kind. */
  add(field: string, reason: string, recoverable: boolean, count = 1): void {
    if (count === 0) return;
    const key = JSON.stringify([field, reason, recoverable]);
    const known = this.#losses.get(key);
    if (known === undefined) this.#losses.set(key, { field, count, reason, recoverable });
    else known.count += count;
  }

  /** Hands each kind over, in the order in which they were first seen. */
  report(lose: Lose): void {
    for (const loss of this.#losses.values()) lose({ ...loss });
  }
}
