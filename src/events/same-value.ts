import { unit, type Vec3 } from '../geometry/vector.js';
import { ANGLE_SLACK_DEG, LENGTH_SLACK_MM } from '../units/slack.js';
import { isRecord, memberOf, type Rec } from './records.js';

/** Members of which only the direction counts. */
const directions = new Set(['axis', 'inward', 'run']);
/** Members whose numbers are no lengths on site: a thousandth may be much in them. */
const exact = new Set(['georeference', 'depthFactor', 'ext']);
/** Distance of the tips of two unit vectors that are the slack of angles apart. */
const CHORD = (ANGLE_SLACK_DEG * Math.PI) / 180;

/** Two values still to be compared, the member that they stand in, and whether numbers may differ at all. */
interface Pending {
  one: unknown;
  other: unknown;
  member: string;
  isExact: boolean;
}

/**
 * Whether two values of a member mean the same: lengths within 0.0005 mm, members whose names end in `Deg` within
 * 0.00005 degree, axes and runs by direction within as much, numbers of a georeference, factors and extensions
 * exactly; texts exactly; arrays element by element; objects whatever the order of their members.
 *
 * Linear, and as deep as the values are.
 *
 * @param member name of the member that holds them
 */
export function sameValue(one: unknown, other: unknown, member = ''): boolean {
  if (one === other) return true;
  const pending: Pending[] = [{ one, other, member, isExact: exact.has(member) }];
  for (let next = pending.pop(); next !== undefined; next = pending.pop()) if (!isSame(next, pending)) return false;
  return true;
}

/** Whether the two may still be the same; what they hold is added to `pending`. */
function isSame({ one, other, member, isExact }: Pending, pending: Pending[]): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one === 'number' && typeof other === 'number') return isSameNumber(one, other, member, isExact);
  if (Array.isArray(one) && Array.isArray(other)) {
    const angle = isExact || !directions.has(member) ? undefined : chord(one, other);
    if (angle !== undefined) return angle <= CHORD;
    if (one.length !== other.length) return false;
    for (let i = 0; i < one.length; i++) {
      if (one[i] !== other[i]) pending.push({ one: one[i], other: other[i], member, isExact });
    }
    return true;
  }
  if (!isRecord(one) || !isRecord(other)) return false;
  for (const name of Object.keys(one)) pendMember(one, other, name, isExact, pending);
  for (const name of Object.keys(other)) {
    if (!Object.hasOwn(one, name)) pendMember(one, other, name, isExact, pending);
  }
  return true;
}

function pendMember(one: Rec, other: Rec, name: string, isExact: boolean, pending: Pending[]): void {
  const [a, b] = [memberOf(one, name), memberOf(other, name)];
  if (a !== b) pending.push({ one: a, other: b, member: name, isExact: isExact || exact.has(name) });
}

function isSameNumber(one: number, other: number, member: string, isExact: boolean): boolean {
  if (isExact) return one === other;
  return Math.abs(one - other) <= (member.endsWith('Deg') ? ANGLE_SLACK_DEG : LENGTH_SLACK_MM);
}

/** Distance of the tips of the two as unit vectors; undefined where one of them is no direction. */
function chord(one: readonly unknown[], other: readonly unknown[]): number | undefined {
  const [a, b] = [directionOf(one), directionOf(other)];
  return a && b && Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

function directionOf([x, y, z, ...rest]: readonly unknown[]): Vec3 | undefined {
  const isVector = typeof x === 'number' && typeof y === 'number' && typeof z === 'number' && rest.length === 0;
  return isVector ? unit([x, y, z]) : undefined;
}
