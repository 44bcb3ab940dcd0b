import { describe, expect, it } from 'vitest';
import { HoleColumns } from '../../src/model/hole-columns.js';
import { holeReferences, newHoleRow, rowFromHole } from '../../src/model/hole-row.js';
import { Names } from '../../src/model/names.js';

function newColumns() {
  const names = holeReferences.map(() => new Names());
  const columns = new HoleColumns(names);
  const row = newHoleRow();
  const push = (hole: unknown, isBroken = false) => {
    rowFromHole(hole, row);
    return columns.push(row, columns.count * 100, isBroken);
  };
  return { columns, names, push };
}

/** Columns of holes that have only these ids. */
function withIds(...ids: unknown[]): HoleColumns {
  const { columns, push } = newColumns();
  for (const id of ids) push({ id });
  return columns;
}

/** Bytes of all arrays of numbers that the columns hold themselves. */
function byteLength(columns: HoleColumns): number {
  const arrays = Object.values(columns).flatMap((value) => (Array.isArray(value) ? value : [value]));
  return arrays.reduce((sum, value) => sum + (ArrayBuffer.isView(value) ? value.byteLength : 0), 0);
}

describe('the columns of holes', () => {
  it('keep what a hole has and mark what it has not', () => {
    const { columns, names, push } = newColumns();
    expect(
      push({ id: 'A', trade: 'FP', holeType: 'T', point: [1, 2, 3], axis: [0, 0, 2], diameter: 12, depth: 60 }),
    ).toBe(0);
    expect(push({ id: 'B', trade: 'EL', origin: { source: 'D' }, above: { level: 'L2' }, point: [-1, -2] })).toBe(1);
    expect(push({}, true)).toBe(2);
    expect(columns.count).toBe(3);
    expect([...columns.x.subarray(0, 3)]).toEqual([1, -1, Number.NaN]);
    expect([...columns.z.subarray(0, 3)]).toEqual([3, Number.NaN, Number.NaN]);
    expect([...columns.axis.subarray(0, 3)]).toEqual([0, -1, -1]);
    expect([0, 1, 2].map((i) => columns.diameterOf(i))).toEqual([12, Number.NaN, Number.NaN]);
    expect([0, 1, 2].map((i) => columns.depthOf(i))).toEqual([60, Number.NaN, Number.NaN]);
    expect([0, 1, 2].map((i) => columns.referenceOf('trade', i))).toEqual([0, 1, -1]);
    expect([0, 1, 2].map((i) => columns.referenceOf('origin.source', i))).toEqual([-1, 0, -1]);
    expect(names[holeReferences.indexOf('above.level')].text(columns.referenceOf('above.level', 1))).toBe('L2');
    expect(columns.reference('group')).toHaveLength(0);
    expect([0, 1, 2].map((i) => columns.id(i))).toEqual(['A', 'B', '']);
    expect([...columns.byte.subarray(0, 3)]).toEqual([0, 100, 200]);
  });

  it('keep each axis once, as it was written', () => {
    const { columns, push } = newColumns();
    const axes = [
      [0, 0, 1],
      [0, 0, 1],
      [0, 0, 2],
      [1, 0, 0],
      [0, 0, 1],
      [0, 0, -1],
    ];
    for (const axis of axes) push({ id: 'A', axis });
    expect([...columns.axis.subarray(0, 6)]).toEqual([0, 0, 1, 2, 0, 3]);
    expect(columns.axes).toEqual([0, 0, 1, 0, 0, 2, 1, 0, 0, 0, 0, -1]);
  });

  it('count broken holes, and give up a hole once', () => {
    const { columns, push } = newColumns();
    push({ id: 'A' });
    push({ id: 'B' }, true);
    columns.giveUp(0);
    columns.giveUp(0);
    columns.giveUp(1);
    expect(columns.brokenCount).toBe(2);
    expect([...columns.broken.subarray(0, 2)]).toEqual([HoleColumns.GIVEN_UP, HoleColumns.BROKEN_RECORD]);
  });

  it('keep the position tolerance that a hole has of its own, part by part', () => {
    const { columns, push } = newColumns();
    const tolerances = [
      undefined,
      { radius: 3 },
      { along: [-5, 5], across: [-2, 0] },
      { radius: 0, height: [0, 12.5] },
      {},
    ];
    for (const positionTolerance of tolerances) push({ id: 'A', positionTolerance });
    expect(tolerances.map((_, i) => columns.positionToleranceOf(i))).toEqual([...tolerances.slice(0, 4), undefined]);
  });

  it('keep a hash of the tag, 0 where there is none', () => {
    const { columns, push } = newColumns();
    for (const tag of [undefined, 'A-1 3/8"', 'A-1 3/8"', 'A-2 3/8"', 7]) push({ id: 'A', tag });
    const hashes = [0, 1, 2, 3, 4].map((i) => columns.tagHashOf(i));
    expect(hashes).toEqual([0, hashes[1], hashes[1], hashes[3], 0]);
    expect(hashes[1]).not.toBe(hashes[3]);
    expect(hashes[1]).not.toBe(0);
  });

  it('take no memory for what no hole has', () => {
    const held = (hole: object) => {
      const { columns, push } = newColumns();
      for (let i = 0; i < 100; i++) push({ id: `H-${i}`, point: [i, 0, 0], ...hole });
      return byteLength(columns);
    };
    const bare = held({});
    expect(held({ positionTolerance: { radius: 3 } }) - bare).toBe(128 * Float64Array.BYTES_PER_ELEMENT);
    expect(held({ tag: 'A' }) - bare).toBe(128 * Int32Array.BYTES_PER_ELEMENT);
  });

  it('keep values of columns that begin late', () => {
    const { columns, push } = newColumns();
    for (let i = 0; i < 1000; i++) {
      push({
        id: `H-${i}`,
        point: [i, -i, i / 2],
        ...(i === 0 && { depth: 7 }),
        ...(i >= 700 && { diameter: i, group: `G-${i % 3}`, tag: 'T', positionTolerance: { along: [-i, i] } }),
      });
    }
    for (const i of [0, 63, 64, 65, 112, 699, 700, 999]) {
      expect([columns.id(i), columns.x[i], columns.y[i], columns.z[i]]).toEqual([`H-${i}`, i, -i, i / 2]);
      expect(columns.diameterOf(i)).toBe(i >= 700 ? i : Number.NaN);
      expect(columns.tagHashOf(i) === 0).toBe(i < 700);
      expect(columns.positionToleranceOf(i)).toEqual(i >= 700 ? { along: [-i, i] } : undefined);
      expect(columns.depthOf(i)).toBe(i === 0 ? 7 : Number.NaN);
      expect(columns.referenceOf('group', i)).toBe(i >= 700 ? (i - 700) % 3 : -1);
    }
  });
});

describe('the ids of holes', () => {
  it('that come again are paired with the first hole that has them', () => {
    expect(withIds('A', 'B', 'A', 'C', 'A', 'B').duplicates).toEqual([
      [2, 0],
      [4, 0],
      [5, 1],
    ]);
  });

  it('that differ only in the case of A to Z are lookalikes of the first such hole', () => {
    expect(withIds('ab', 'AB', 'aB', 'x', 'AB').lookalikes).toEqual([
      [1, 0],
      [2, 0],
    ]);
    expect(withIds('ab', 'AB', 'aB', 'x', 'AB').duplicates).toEqual([[4, 1]]);
    expect(withIds('é', 'É', '[', '{', '@', '`', 'a\u0301', 'A\u0301').lookalikes).toEqual([[7, 6]]);
  });

  it('that cannot be read are no duplicates of each other', () => {
    const columns = withIds('A', 7, undefined, '', 'A');
    expect(columns.duplicates).toEqual([[4, 0]]);
    expect([1, 2, 3].map((i) => columns.id(i))).toEqual(['', '', '']);
  });

  it('are found by their text', () => {
    const columns = withIds('A', 'a', 'é', 'A');
    expect(['A', 'a', 'é', 'b', ''].map((id) => columns.find(id))).toEqual([0, 1, 2, -1, -1]);
  });

  it('agree with a map, two hundred thousand of them', () => {
    const { columns, push } = newColumns();
    const first = new Map<string, number>();
    const firstFolded = new Map<string, number>();
    const duplicates: [number, number][] = [];
    const lookalikes: [number, number][] = [];
    for (let i = 0; i < 200_000; i++) {
      const number = (i * 40_503) % 190_051;
      const id = `${number % 7 === 0 && i % 2 === 0 ? 'h' : 'H'}-${number.toString(36)}`;
      const folded = id.toLowerCase();
      if (first.has(id)) duplicates.push([i, first.get(id) as number]);
      else if (firstFolded.has(folded)) lookalikes.push([i, firstFolded.get(folded) as number]);
      if (!first.has(id)) first.set(id, i);
      if (!firstFolded.has(folded)) firstFolded.set(folded, i);
      push({ id });
    }
    expect(duplicates.length).toBeGreaterThan(5000);
    expect(lookalikes.length).toBeGreaterThan(500);
    expect(columns.duplicates).toEqual(duplicates);
    expect(columns.lookalikes).toEqual(lookalikes);
    for (const [id, i] of first) if (columns.find(id) !== i) expect([id, columns.find(id)]).toEqual([id, i]);
    expect(columns.find('H-zzzzz')).toBe(-1);
  });
});

describe('a row from a parsed hole', () => {
  it('takes members of a wrong type as absent', () => {
    for (const hole of [
      null,
      7,
      'x',
      [],
      { id: 7, trade: {}, point: 'x', axis: [1], depth: '60', origin: 'x', above: [] },
    ]) {
      const row = newHoleRow();
      rowFromHole(hole, row);
      expect(row.idStart).toBe(-1);
      expect([...row.refStarts]).toEqual(holeReferences.map(() => -1));
      expect(Number.isNaN(row.numbers[7])).toBe(true);
    }
  });

  it('takes own members only', () => {
    const row = newHoleRow();
    rowFromHole(JSON.parse('{"__proto__":{"id":"A","depth":1}}'), row);
    expect([row.idStart, row.numbers[7]]).toEqual([-1, Number.NaN]);
  });

  it('forgets the hole before', () => {
    const row = newHoleRow();
    rowFromHole({ id: 'A', trade: 'FP', point: [1, 2, 3] }, row);
    rowFromHole({ id: 'B' }, row);
    expect([row.refStarts[0], row.numbers[0]]).toEqual([-1, Number.NaN]);
    expect(new TextDecoder().decode(row.bytes.subarray(row.idStart, row.idEnd))).toBe('B');
  });
});
