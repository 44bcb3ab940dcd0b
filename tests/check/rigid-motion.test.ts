import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/geometry/vector.js';
import { check } from '../../src/jobs/check.js';
import { seeded } from '../bench/make-layout.js';
import { type Motion, randomMotion } from '../geometry/motion.js';
import { type Expected, IN_PLAN, IN_SPACE, layoutOf, type Vector } from './limit-vectors.js';

const STEP_MM = 0.001;
const SHIFT_MM = 300_000;

interface Motions {
  move: Motion;
  turn: Motion;
}

/** Members that hold points, and members that hold directions. */
const POINTS = new Set(['point', 'points', 'base', 'centre']);
const DIRECTIONS = new Set(['inward', 'axis', 'run', 'extrude']);

/** The layout with everything in it moved; areas and unknown heights only where the motion keeps the vertical. */
function moved(value: unknown, motions: Motions, write: (n: number) => number, key = ''): unknown {
  if (Array.isArray(value) && typeof value[0] === 'number') return movedNumbers(value as number[], motions, write, key);
  if (Array.isArray(value)) return value.map((item) => moved(item, motions, write, key));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, moved(item, motions, write, name)]));
}

function movedNumbers(numbers: number[], { move, turn }: Motions, write: (n: number) => number, key: string): number[] {
  // A pattern is counted from the first member of its group, along and across.
  if (key === 'pattern') return numbers;
  const [x, y, z = 0] = numbers;
  // Only the direction counts: a length of a metre keeps it exact enough in six decimals. A prism is as long as it is.
  if (DIRECTIONS.has(key)) return turn([x, y, z]).map((n) => write(key === 'extrude' ? n : n * 1000));
  if (!POINTS.has(key) && key !== 'outline') throw new Error(`what is ${key}?`);
  return move([x, y, z]).slice(0, numbers.length).map(write);
}

const exactly = (n: number) => n;
const sixDecimals = (n: number) => Number(n.toFixed(6));

/** What is found, without the order of records: of two holes at one place the later one. */
function found(layout: unknown, text = JSON.stringify(layout)) {
  const { findings, verdict } = check([{ name: 'limits', data: text }]);
  return {
    said: findings.map(({ rule, severity, id, data }) => [rule, severity, id ?? data.group].join(' ')).sort(),
    verdict,
  };
}

const said = (expected: readonly Expected[]) => expected.map((one) => one.join(' ')).sort();

/** A few vectors, each with a step off its limit. */
function vectors(makers: typeof IN_PLAN): fc.Arbitrary<Vector[]> {
  const names = Object.keys(makers);
  const one = fc.record({
    name: fc.constantFrom(...names),
    steps: fc.constantFrom(-1, 0, 1),
    turn: fc.integer({ min: 0, max: 62_831 }).map((part) => part / 10_000),
  });
  return fc.array(one, { minLength: 1, maxLength: 14 }).map((chosen) =>
    chosen.map(({ name, steps, turn }, k) => {
      const place = { k, x: (k % 4) * 4000 + 10, y: Math.floor(k / 4) * 4000 + 20, turn };
      return makers[name](place, steps * STEP_MM);
    }),
  );
}

const seed = fc.integer({ min: 1, max: 1_000_000 });

/** A turn about the vertical, then a shift. */
function planMotion(random: () => number): Motions {
  const angle = random() * 2 * Math.PI;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const by: Vec3 = [random() * SHIFT_MM, random() * SHIFT_MM, random() * 10_000];
  const turn: Motion = ([x, y, z]) => [c * x - s * y, s * x + c * y, z];
  const move: Motion = (p) => turn(p).map((n, k) => n + by[k]) as unknown as Vec3;
  return { move, turn };
}

describe.each([
  ['in space', IN_SPACE, (random: () => number) => randomMotion(random, SHIFT_MM)],
  ['about the vertical', IN_PLAN, planMotion],
] as const)('holes one step below, at and above their limits, turned and shifted %s,', (_, makers, motion) => {
  it.each(Object.keys(makers))('fail where they should: %s', (name) => {
    for (const steps of [-1, 0, 1]) {
      const vector = makers[name]({ k: 1, x: 10, y: 20, turn: 1.234 }, steps * STEP_MM);
      expect({ steps, ...found(layoutOf([vector])) }).toMatchObject({ steps, said: said(vector.expected) });
    }
  });

  it('give the same rules, holes and severities, in memory and in six decimals', () => {
    const holds = (chosen: Vector[], number: number) => {
      const layout = layoutOf(chosen);
      const before = found(layout);
      expect(before.said).toEqual(said(chosen.flatMap(({ expected }) => expected)));
      const motions = motion(seeded(number));
      expect(found(moved(layout, motions, exactly))).toEqual(before);
      expect(found(moved(layout, motions, sixDecimals))).toEqual(before);
    };
    fc.assert(fc.property(vectors(makers), seed, holds), { seed: 7, numRuns: 150 });
  });

  it('give the same with records in another order, and in a text with other blanks', () => {
    const holds = (chosen: Vector[], number: number) => {
      const layout = layoutOf(chosen);
      const before = found(layout);
      const random = seeded(number);
      const shuffled = Object.fromEntries(
        Object.entries(layout).map(([name, value]) => [name, Array.isArray(value) ? shuffle(value, random) : value]),
      );
      expect(later(found(shuffled).said)).toEqual(later(before.said));
      expect(found(layout, JSON.stringify(layout, null, '\t').replaceAll('\n', '\r\n'))).toEqual(before);
    };
    fc.assert(fc.property(vectors(makers), seed, holds), { seed: 8, numRuns: 50 });
  });
});

function shuffle<T>(items: readonly T[], random: () => number): T[] {
  return items
    .map((item) => [random(), item] as const)
    .sort(([a], [b]) => a - b)
    .map(([, item]) => item);
}

/** Of two holes at one place the later one is named; which one that is hangs on the order. */
function later(lines: readonly string[]): string[] {
  return lines.map((line) => (line.startsWith('holes-coincide') ? line.slice(0, -1) : line)).sort();
}
