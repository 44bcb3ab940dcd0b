import { describe, expect, it } from 'vitest';
import type { Hole, Layout } from '../../../src/generated/layout.js';
import { checkLimit } from '../../../src/report/sheet/check-limit.js';
import { layoutRecords } from '../../../src/report/sheet/layout-records.js';
import { moveInWords } from '../../../src/report/sheet/move-in-words.js';
import { drillDirection, isToBeDrilled, sheetHole } from '../../../src/report/sheet/sheet-hole.js';
import { sheetLengths } from '../../../src/report/sheet/sheet-lengths.js';
import { ENGLISH_SHEET_WORDS } from '../../../src/report/sheet/english-sheet-words.js';
import { smallLayout } from '../../jobs/small-layout.js';

const type = {
  ...smallLayout.holeTypes[0],
  depthTolerance: [0, 5],
  positionTolerance: { radius: 10 },
  moveAllowance: { along: 30, across: 0, run: [0, 1, 0], ask: 'ask-first' },
};
const group = {
  id: 'G',
  kind: 'trapeze',
  run: [1, 0, 0],
  positionTolerance: { along: [-20, 20], across: [-3, 5] },
  moveAllowance: { along: 50.8, across: 6.35, ask: 'tell-after', movesTogether: true },
};
const records = layoutRecords({ ...smallLayout, holeTypes: [type], groups: [group] } as unknown as Layout);
const facts = (members: Partial<Hole>) =>
  sheetHole({ id: 'H', trade: 'FP', holeType: 'T', substrate: 'S', point: [0, 0, 0], ...members } as Hole, records);
const feet = sheetLengths({ length: 'ft-in', fraction: 16 });
const move = (members: Partial<Hole>, frame = { projectNorthDeg: 0 as number | undefined }) =>
  moveInWords(facts(members), frame, feet, ENGLISH_SHEET_WORDS);

describe('the values that hold for a hole', () => {
  it('come whole from the first of hole, group and type', () => {
    expect(facts({}).positionTolerance).toEqual({ radius: 10 });
    expect(facts({ group: 'G' }).positionTolerance).toEqual(group.positionTolerance);
    const own = facts({ group: 'G', positionTolerance: { radius: 1 }, depth: 70, diameter: 14 });
    expect(own.positionTolerance).toEqual({ radius: 1 });
    expect(own).toMatchObject({ depthMm: 70, diameterMm: 14, isDiameterOfType: false, depthTolerance: [0, 5] });
  });

  it('have the direction of the face where the hole has none', () => {
    expect(drillDirection(facts({}))).toBe('up');
    expect(drillDirection(facts({ axis: [0, 0, -3] }))).toBe('down');
    expect(drillDirection(facts({ axis: [1, 0, 0] }))).toBe('level');
    expect(facts({ axis: [1, 0, 1] }).slantDeg).toBeCloseTo(45);
    expect(drillDirection(facts({ substrate: undefined }))).toBe('unknown');
  });

  it('say whether there is anything to drill', () => {
    const made = layoutRecords({ ...smallLayout, holeTypes: [{ ...type, made: 'cast-in' }] } as unknown as Layout);
    expect(isToBeDrilled(facts({}))).toBe(true);
    expect(isToBeDrilled(sheetHole(facts({}).hole, made))).toBe(false);
  });
});

describe('the move allowance in words', () => {
  it('is that of a group, with its run by the compass', () => {
    expect(move({ group: 'G' })).toBe(
      'may shift 2" along the run (E–W), 1/4" across, whole group together, tell the office after; otherwise ask.',
    );
  });

  it('is turned with project north, and names the plan axis without it', () => {
    expect(move({ group: 'G' }, { projectNorthDeg: 90 })).toContain('(N–S)');
    expect(move({ group: 'G' }, { projectNorthDeg: undefined })).toContain('(x)');
  });

  it('asks first where that is wanted, and rounds down', () => {
    expect(move({})).toBe('ask before any shift; at most 1 1/8" along the run (N–S), 0" across.');
  });

  it('names a run askew by its angle and an upright one as such', () => {
    const along = (run: [number, number, number], north?: number) =>
      move({ moveAllowance: { along: 50, across: 10, run, ask: 'tell-after' } }, { projectNorthDeg: north });
    expect(along([1, 1, 0])).toContain('(45° from x to y)');
    expect(along([1, 1, 0], 0)).toContain('(NE–SW)');
    expect(along([2, 1, 0], 0)).toContain('(27° from x to y)');
    expect(along([0, 0, 1])).toContain('(up and down)');
  });

  it('asks where along and across differ and nobody says along what', () => {
    expect(move({ moveAllowance: { along: 50, across: 10, ask: 'tell-after' } })).toBe(ENGLISH_SHEET_WORDS.noRun);
    expect(move({ moveAllowance: { along: 50.8, across: 50.8, ask: 'tell-after' } })).toContain('(any direction)');
  });

  it('allows nothing where nothing is given', () => {
    const without = layoutRecords(smallLayout as unknown as Layout);
    expect(moveInWords(sheetHole(facts({}).hole, without), {}, feet, ENGLISH_SHEET_WORDS)).toBe(
      ENGLISH_SHEET_WORDS.noAllowance,
    );
    expect(move({ moveAllowance: { along: 0, across: 0, ask: 'tell-after' } })).toBe(ENGLISH_SHEET_WORDS.noShift);
  });
});

describe('the check limit', () => {
  it('is half of the tightest plan tolerance', () => {
    expect(checkLimit([facts({}), facts({ group: 'G' })])).toEqual({ limitMm: 1.5, toleranceMm: 3 });
    expect(checkLimit([facts({})])).toEqual({ limitMm: 5, toleranceMm: 10 });
  });

  it('goes by the side on which less is left, and is none where nothing is', () => {
    const limits = (along: [number, number], across: [number, number]) =>
      checkLimit([facts({ positionTolerance: { along, across } })]);
    expect(limits([-4, 10], [-6, 9])).toEqual({ limitMm: 2, toleranceMm: 4 });
    expect(limits([0, 10], [-6, 9])).toBeUndefined();
  });

  it('is none where no hole has a tolerance in plan', () => {
    expect(checkLimit([facts({ positionTolerance: { height: [-1, 1] } })])).toBeUndefined();
    expect(checkLimit([{ positionTolerance: undefined }])).toBeUndefined();
  });
});
