import type { Surface, Thickness } from './surface.js';

/** Data of a finding that says over what a thickness was taken. */
export const SIDE = {
  side: 'on a composite deck or a hollow plank with voids: what the thickness was taken over',
  phaseFrom: 'on a composite deck: where the phase of the flutes is known from; absent when it is not known',
} as const;

/** What a finding says of the side that a thickness was taken from. */
export function sideData({ side }: Thickness, { substrate }: Surface): { side?: string; phaseFrom?: string } {
  if (side === undefined) return {};
  const phaseFrom = side === 'low-flute' || side === 'high-flute' ? substrate.deck?.phaseFrom : undefined;
  return phaseFrom === undefined ? { side } : { side, phaseFrom };
}

const WORDS: Readonly<Record<string, string>> = {
  'low-flute': ' over the low flute',
  'high-flute': ' over the rib',
  unknown: ' over the rib, which is assumed because it is not known where the flutes lie',
  void: ' over a void',
  'between-voids': ' between two voids',
  'void-assumed': ' over a void, which is assumed because it is not known where the voids lie',
};

/** The side as the end of a sentence; nothing where there is none. */
export function sideInWords(side: unknown, phaseFrom: unknown): string {
  return `${WORDS[String(side)] ?? ''}${guessInWords(phaseFrom)}`;
}

/** What is added where the place of flutes is from a drawing. */
export function guessInWords(phaseFrom: unknown): string {
  return phaseFrom === 'drawing' ? '; where the flutes lie is known from a drawing only' : '';
}

/** The same where flutes are all that a finding is about: a phase of which nothing is said is a guess too. */
export function fluteGuessInWords(phaseFrom: unknown): string {
  return phaseFrom === undefined
    ? '; the layout does not say where the place of the flutes is known from'
    : guessInWords(phaseFrom);
}
