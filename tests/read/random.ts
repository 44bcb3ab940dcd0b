/** A seeded source of numbers in [0, 1), after G. Marsaglia, "Xorshift RNGs", 2003: the same run for the same seed. */
export function newRandom(seed: number): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4294967296;
  };
}

/** One of the choices. */
export function pick<T>(random: () => number, choices: readonly T[]): T {
  return choices[Math.floor(random() * choices.length)];
}
