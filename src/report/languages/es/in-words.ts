import { prose, proseOrValue } from './prose.js';
import { word } from './word.js';

/** Where another record is, as words behind its id. */
export function inInput(otherName: unknown): string {
  return otherName === undefined ? '' : ` en ${otherName}`;
}

/** Words for the trade of the other hole; none where it is the same. */
export function ofOtherTrade(trade: unknown, otherTrade: unknown): string {
  return trade === otherTrade ? '' : ` de la especialidad "${otherTrade}"`;
}

/** What was expected and what was found, without a full stop; undefined where there are no words for one. */
export function expectedAndFound(expected: unknown, found: unknown): string | undefined {
  const [wanted, seen] = [prose(expected), proseOrValue(found)];
  return wanted && seen && `Se espera: ${wanted}; se encontró: ${seen}`;
}

/** A question about the nearest name; nothing where there is none. */
export function didYouMean(nearest: unknown): string {
  return nearest === undefined ? '' : ` ¿Quiso decir "${nearest}"?`;
}

/** An angle: `1 grado`, `2.5 grados`. */
export function angle(deg: unknown): string {
  const shown = Number(Number(deg).toFixed(2));
  return `${shown} ${shown === 1 ? 'grado' : 'grados'}`;
}

const RINGS: ReadonlyMap<unknown, string> = new Map([
  ['outline', 'El contorno del elemento de concreto'],
  ['opening', 'Un hueco del elemento de concreto'],
  ['zone', 'Una zona del elemento de concreto'],
  ['area', 'El contorno del área'],
  ['base', 'La base de la zona de exclusión'],
]);

/** A ring, for the beginning of a sentence. */
export function ring(kind: unknown, record: unknown): string {
  return `${RINGS.get(kind) ?? kind} "${record}"`;
}

/** The control of a level or of the layout, for the beginning of a sentence. */
export function controlOf(level: unknown): string {
  return level === undefined ? 'El control' : `El control del nivel "${level}"`;
}

const SIDES: ReadonlyMap<unknown, string> = new Map([
  ['low-flute', ' sobre el valle'],
  ['high-flute', ' sobre la cresta'],
  ['unknown', ' sobre la cresta, que se supone porque no se sabe dónde están los valles'],
  ['void', ' sobre un alvéolo'],
  ['between-voids', ' entre dos alvéolos'],
  ['void-assumed', ' sobre un alvéolo, que se supone porque no se sabe dónde están los alvéolos'],
]);

/** The side that a thickness was taken from, as the end of a sentence; nothing where there is none. */
export function side(ofThickness: unknown, phaseFrom: unknown): string {
  return `${SIDES.get(ofThickness) ?? ''}${guess(phaseFrom)}`;
}

function guess(phaseFrom: unknown): string {
  return phaseFrom === 'drawing' ? '; la posición de los valles se conoce solo por un plano' : '';
}

/** The same where flutes are all that a finding is about. */
export function fluteGuess(phaseFrom: unknown): string {
  return phaseFrom === undefined ? '; el trazo no dice de dónde se conoce la posición de los valles' : guess(phaseFrom);
}

/** A keep-out with its kind and where it is known from. */
export function keepOut({ keepOut: id, otherName, kind, knownFrom }: Record<string, unknown>): string {
  return `la zona de exclusión "${id}"${inInput(otherName)} (${word(kind)}, según ${word(knownFrom)})`;
}

/** A number, or `ninguna` where it is 0. */
export function orNone(count: unknown): unknown {
  return count || 'ninguna';
}
