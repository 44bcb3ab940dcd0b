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
export function beyondSchema(value: unknown, tokens: string[] = []): SchemaFault[] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap((item, index) => beyondSchema(item, [...tokens, String(index)]));
  return Object.entries(value).flatMap(([name, member]) => {
    if (name === 'ext') return [];
    const at = [...tokens, name];
    if (name === 'id' && typeof member === 'string') return idFaults(member, at);
    if (Array.isArray(member) && DIRECTIONS.has(name) && member.length === 3 && member.every((part) => part === 0)) {
      return [outOfRange(at, 'a direction, with at least one part that is not 0', JSON.stringify(member))];
    }
    if (
      Array.isArray(member) &&
      DEVIATIONS.has(name) &&
      member.length === 2 &&
      member.every((part) => typeof part === 'number') &&
      member[0] > member[1]
    ) {
      return [outOfRange(at, 'the lower limit first, then the upper one', JSON.stringify(member))];
    }
    const inside = beyondSchema(member, at);
    if (inside.length > 0 || name !== 'prism' || !isWithoutVolume(member)) return inside;
    return [outOfRange(at, 'a base with an area and an extrude that leaves its plane', 'a prism without volume')];
  });
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

function idFaults(id: string, tokens: string[]): SchemaFault[] {
  if (id.normalize('NFC') === id) return [];
  const data = { expected: 'in Unicode normalisation form C', found: JSON.stringify(id) };
  return [{ rule: 'bad-text', tokens, aim: 'value', data }];
}

function outOfRange(tokens: string[], expected: string, found: string): SchemaFault {
  return { rule: 'out-of-range', tokens, aim: 'value', data: { expected, found } };
}
