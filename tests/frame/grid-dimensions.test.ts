import { describe, expect, it } from 'vitest';
import { gridDimensionText } from '../../src/frame/grid-dimension-text.js';
import { LevelGridlines } from '../../src/frame/grid-dimensions.js';
import type { Grid } from '../../src/generated/layout.js';
import { formatFeetInches } from '../../src/units/format-feet-inches.js';

type Point = [number, number];
const line = (name: string, from: Point, to: Point) => ({ name, from, to });
const grid = (...lines: Grid['lines']): Grid => ({ id: 'g', lines });
const level = { id: 'L1', building: 'b' };
const on = (grids: Grid[], projectNorthDeg?: number) => new LevelGridlines(grids, level, { projectNorthDeg });
const mm = (value: number) => `${Math.round(value * 1000) / 1000} mm`;

/** Lines 1, 2, 3 along y at x = 0, 6000, 12000; A, B along x at y = 0, 8000; Q askew. */
const main = grid(
  line('1', [0, -500], [0, 8500]),
  line('2', [6000, -500], [6000, 8500]),
  line('3', [12000, 8500], [12000, -500]),
  line('A', [-500, 0], [12500, 0]),
  line('B', [-500, 8000], [12500, 8000]),
  line('Q', [0, 0], [2000, 2000]),
);

describe('LevelGridlines', () => {
  it('measures from the nearest line of each family, east and west first', () => {
    const found = on([main], 0).of(6965.2, 7000);
    expect(found).toEqual({
      lines: [
        { line: '2', distanceMm: expect.closeTo(965.2, 9), side: 'E', isBeyondEnd: false },
        { line: 'B', distanceMm: 1000, side: 'S', isBeyondEnd: false },
      ],
      angleDeg: 90,
      basis: 'square',
    });
    expect(gridDimensionText(found, (value) => formatFeetInches(value, 16))).toBe(`3'-2" E of 2, 3'-3 3/8" S of B`);
  });

  it('does not let a single line askew take the place of the grid', () => {
    expect(
      on([main], 0)
        .of(1500, 1400)
        .lines.map((one) => one.line),
    ).toEqual(['1', 'A']);
  });

  it('says sides by the plan axes where there is no project north', () => {
    expect(gridDimensionText(on([main]).of(5000, 8300), mm)).toBe('1000 mm to −x of 2, 300 mm to +y of B');
  });

  it('turns the sides with project north', () => {
    // Project north along +x: +x is N, +y is W.
    const found = on([main], 90).of(7000, 300);
    expect(found.lines).toMatchObject([
      { line: 'A', side: 'W', distanceMm: 300 },
      { line: '2', side: 'N', distanceMm: 1000 },
    ]);
  });

  it('says the same side whichever way a line was drawn', () => {
    expect(on([main], 0).of(12300, 100).lines[0]).toMatchObject({ line: '3', side: 'E', distanceMm: 300 });
  });

  it('says when a point lies on a line', () => {
    expect(gridDimensionText(on([main], 0).of(6000, 400), mm)).toBe('on 2, 400 mm N of A');
  });

  it('says when a line has to be lengthened', () => {
    expect(gridDimensionText(on([main], 0).of(300, -900), mm)).toBe('300 mm E of 1 (line lengthened), 900 mm S of A');
  });

  it('gives a point half-way between two lines to the earlier one', () => {
    expect(
      on([main], 0)
        .of(3000, 4000)
        .lines.map((one) => one.line),
    ).toEqual(['1', 'A']);
  });

  it('gives the two sides of one line opposite words at every angle', () => {
    const opposite: Record<string, string> = { N: 'S', NE: 'SW', E: 'W', SE: 'NW', S: 'N', SW: 'NE', W: 'E', NW: 'SE' };
    for (let half = 0; half < 16; half++) {
      const angle = (half * Math.PI) / 8;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      const one = on([grid(line('R', [0, 0], [dx * 1000, dy * 1000]))], 0);
      const left = one.of(-dy * 100, dx * 100).lines[0].side;
      const right = one.of(dy * 100, -dx * 100).lines[0].side;
      expect(opposite[left]).toBe(right);
    }
  });

  it('measures square to the lines of a skewed grid', () => {
    // Lines along y at x = 0 and 5000, and lines at 60 degrees to them: direction (sin 60, cos 60).
    const [s, c] = [Math.sin(Math.PI / 3), Math.cos(Math.PI / 3)];
    const skewed = grid(
      line('1', [0, 0], [0, 9000]),
      line('2', [5000, 0], [5000, 9000]),
      line('A', [0, 0], [9000 * s, 9000 * c]),
      line('B', [0, 5000], [9000 * s, 5000 + 9000 * c]),
    );
    // From A to the point (1000, 2000): |s·2000 − c·1000| = 1732.051 − 500.
    const found = on([skewed], 0).of(1000, 2000);
    expect(found.basis).toBe('skewed');
    expect(found.angleDeg).toBeCloseTo(60, 9);
    expect(found.lines[0]).toMatchObject({ line: '1', side: 'E', distanceMm: 1000 });
    expect(found.lines[1]).toMatchObject({ line: 'A', side: 'NW' });
    expect(found.lines[1].distanceMm).toBeCloseTo(1232.0508, 4);
    expect(gridDimensionText(found, mm)).toBe('1000 mm E of 1, 1232.051 mm NW of A (lines meet at 60°)');
  });

  it('takes the two nearest lines at 30 degrees or more of a radial grid', () => {
    const ray = (name: string, deg: number) =>
      line(name, [0, 0], [10000 * Math.cos((deg * Math.PI) / 180), 10000 * Math.sin((deg * Math.PI) / 180)]);
    const radial = on([grid(...[0, 20, 40, 60, 80].map((deg) => ray(`R${deg}`, deg)))], 0);
    // At 22 degrees and 5000 mm: R20 is 174.5 mm away; R40 meets it at 20 degrees; R60 lies at 38, R0 at 22 degrees.
    const at = (deg: number): Point => [5000 * Math.cos((deg * Math.PI) / 180), 5000 * Math.sin((deg * Math.PI) / 180)];
    const found = radial.of(...at(22));
    expect(found.lines.map((one) => one.line).sort()).toEqual(['R20', 'R60']);
    expect(found.basis).toBe('skewed');
    expect(found.angleDeg).toBeCloseTo(40, 9);
    expect(found.lines.find((one) => one.line === 'R20')?.distanceMm).toBeCloseTo(174.4975, 4);
    expect(found.lines.find((one) => one.line === 'R60')?.distanceMm).toBeCloseTo(3078.3074, 4);
  });

  it('says how narrow the angle is where no lines meet at 30 degrees', () => {
    const narrow = on([grid(line('1', [0, 0], [1000, 0]), line('2', [0, 0], [1000, 200]))], 0).of(500, -100);
    expect(narrow.basis).toBe('narrow');
    expect(gridDimensionText(narrow, mm)).toMatch(/\(lines meet at 11°\)$/);
  });

  it('gives one dimension where all lines are parallel', () => {
    const one = on([grid(line('1', [0, 0], [0, 1000]), line('2', [900, 0], [900, 1000]))], 0).of(700, 500);
    expect(one).toMatchObject({ basis: 'one-family', lines: [{ line: '2', side: 'W', distanceMm: 200 }] });
    expect(gridDimensionText(one, mm)).toBe('200 mm W of 2 (parallel gridlines only)');
  });

  it('gives nothing without a grid, for a line without length and for a point without place', () => {
    expect(on([]).of(0, 0)).toEqual({ lines: [], basis: 'no-grid' });
    expect(on([grid(line('1', [5, 5], [5, 5]))]).of(0, 0).basis).toBe('no-grid');
    expect(on([main]).of(Number.NaN, 0).basis).toBe('no-grid');
    expect(gridDimensionText(on([]).of(0, 0), mm)).toBe('');
  });

  it('looks at the grids of the level and its building only', () => {
    const elsewhere: Grid = { id: 'x', levels: ['L2'], lines: [line('9', [0, 0], [0, 1])] };
    const other: Grid = { id: 'y', building: 'c', lines: [line('8', [0, 0], [0, 1])] };
    expect(on([elsewhere, other]).of(0, 0).basis).toBe('no-grid');
    const own: Grid = { id: 'z', building: 'b', levels: ['L1'], lines: [line('7', [0, 0], [0, 1])] };
    expect(on([elsewhere, other, own]).of(0, 0).lines[0].line).toBe('7');
  });

  it('names the grid where two lines of a level have one name', () => {
    const east: Grid = { id: 'e', name: 'East wing', lines: [line('1', [9000, 0], [9000, 100])] };
    expect(on([grid(line('1', [0, 0], [0, 100])), east]).of(8900, 50).lines[0].line).toBe('1 (East wing)');
  });

  it('measures far away without losing numbers', () => {
    const found = on([main], 0).of(1e9, -1e9);
    expect(found.lines).toMatchObject([
      { line: '3', distanceMm: 1e9 - 12000, isBeyondEnd: true },
      { line: 'A', distanceMm: 1e9, isBeyondEnd: true },
    ]);
  });

  it('says how many lines it leaves out', () => {
    const many = Array.from({ length: 2500 }, (_, k) => line(`${k}`, [k * 100, 0], [k * 100, 1000]));
    expect(on([grid(...many)]).leftOut).toBe(500);
  });
});
