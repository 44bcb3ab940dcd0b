import { newPrism } from '../geometry/prism.js';
import type { Vec3 } from '../geometry/vector.js';
import type { SchemaFault } from './explain-schema.js';

/** Members that hold a direction. */
export const DIRECTIONS: ReadonlySet<string> = new Set(['axis', 'run', 'inward', 'extrude']);
/** Members that hold limit deviations where they are pairs of numbers. */
export const DEVIATIONS: ReadonlySet<string> = new Set([
  'along',
  'across',
  'height',
  'diameterTolerance',
  'depthTolerance',
]);
/** Members that are judged beyond the schema where they hold more than a word or a number. */
export const SINGLED_OUT: readonly string[] = ['id', 'prism', ...DIRECTIONS, ...DEVIATIONS];

/**
 * Faults of a record that its schema has no word for: an id that is not in Unicode normalisation form C,
 * a direction without length, a lower limit above its upper one, a prism without volume. Additions under `ext` are left alone.
 */
export function beyondSchema(value: unknown): SchemaFault[] {
  const found: SchemaFault[] = [];
  walk(value, [], found);
  return found;
}

/** @param tokens the way to `value`; the same array for all calls */
function walk(value: unknown, tokens: string[], found: SchemaFault[]): void {
  if (typeof value !== 'object' || value === null) return;
  const members = value as Readonly<Record<string, unknown>>;
  const isList = Array.isArray(value);
  for (const name of Object.keys(value)) {
    const member = members[name];
    // Most values are numbers and words that nothing more is said of.
    if (name === 'ext' || ((typeof member !== 'object' || member === null) && name !== 'id')) continue;
    tokens.push(name);
    if (isList) walk(member, tokens, found);
    else judge(name, member, tokens, found);
    tokens.pop();
  }
}

function judge(name: string, member: unknown, tokens: string[], found: SchemaFault[]): void {
  if (name === 'id' && typeof member === 'string') {
    if (member.normalize('NFC') !== member) found.push(notComposed(member, [...tokens]));
  } else if (isZero(name, member)) {
    found.push(outOfRange([...tokens], 'a direction, with at least one part that is not 0', JSON.stringify(member)));
  } else if (areTurned(name, member)) {
    found.push(outOfRange([...tokens], 'the lower limit first, then the upper one', JSON.stringify(member)));
  } else {
    const before = found.length;
    walk(member, tokens, found);
    if (found.length > before || name !== 'prism' || !isWithoutVolume(member)) return;
    const expected = 'a base with an area and an extrude that leaves its plane';
    found.push(outOfRange([...tokens], expected, 'a prism without volume'));
  }
}

function isZero(name: string, member: unknown): boolean {
  return DIRECTIONS.has(name) && Array.isArray(member) && member.length === 3 && member.every((part) => part === 0);
}

function areTurned(name: string, member: unknown): boolean {
  if (!DEVIATIONS.has(name) || !Array.isArray(member) || member.length !== 2) return false;
  return member.every((part) => typeof part === 'number') && member[0] > member[1];
}

/** Whether a prism that holds to its schema has no volume: nothing could ever be found to lie in it. */
function isWithoutVolume(prism: unknown): boolean {
  const { base, extrude } = Object(prism) as { base?: unknown; extrude?: unknown };
  if (!isPoints(base) || !isPoints([extrude])) return false;
  const solid = newPrism(base as Vec3[], extrude as Vec3);
  const [x, y, z] = extrude as Vec3;
  return solid === undefined || Math.abs(solid.rise) <= 1e-9 * Math.hypot(x, y, z);
}

function isPoints(value: unknown): boolean {
  const isPoint = (point: unknown) =>
    Array.isArray(point) && point.length === 3 && point.every((part) => typeof part === 'number');
  return Array.isArray(value) && value.length > 0 && value.every(isPoint);
}

function notComposed(id: string, tokens: string[]): SchemaFault {
  const data = { expected: 'in Unicode normalisation form C', found: JSON.stringify(id) };
  return { rule: 'bad-text', tokens, aim: 'value', data };
}

function outOfRange(tokens: string[], expected: string, found: string): SchemaFault {
  return { rule: 'out-of-range', tokens, aim: 'value', data: { expected, found } };
}
