import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import { columnNumber, fieldPointer, HeightReference, mayBeEmpty } from '../../src/model/table-profile.js';

function heights(height: ColumnProfile['height'], levels: unknown): HeightReference {
  return new HeightReference({ ahx: '0.1', kind: 'column-profile', columns: [], height, layout: { levels } });
}

describe('heights of a table', () => {
  const levels = [
    { id: 'L1', finishedFloor: 100, structuralTop: 50, soffits: [3000] },
    { id: 'L2', soffits: [6000, 6200] },
    null,
    { id: 7, finishedFloor: 1 },
  ];

  it('are turned into z and back after their reference', () => {
    const cases: [kind: ColumnProfile['height'], height: number, z: number][] = [
      [undefined, 12, 12],
      ['datum', 12, 12],
      ['finished-floor', 12, 112],
      ['structural-top', 12, 62],
      ['soffit-down', 12, 2988],
    ];
    for (const [kind, height, z] of cases) {
      expect([kind, heights(kind, levels).toZ(height, 'L1')]).toEqual([kind, z]);
      expect([kind, heights(kind, levels).fromZ(z, 'L1')]).toEqual([kind, height]);
    }
  });

  it('are not turned where the level has no such height, or several', () => {
    expect(heights('soffit-down', levels).toZ(12, 'L2')).toBeUndefined();
    expect(heights('finished-floor', levels).fromZ(12, 'L2')).toBeUndefined();
    expect(heights('finished-floor', levels).toZ(12, undefined)).toBeUndefined();
    expect(heights('finished-floor', 'no levels').toZ(12, 'L1')).toBeUndefined();
    expect([heights('datum', levels).knows(undefined), heights('soffit-down', levels).knows('L2')]).toEqual([
      true,
      false,
    ]);
  });
});

describe('columns of a table', () => {
  it('are named or numbered', () => {
    expect(['#1', '#12', '#0', '#01', 'East', '#'].map(columnNumber)).toEqual([
      1,
      12,
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  it('may be empty unless they are id, plan point, diameter or depth, or the profile says otherwise', () => {
    const empty = (field: ColumnProfile['columns'][number]['field'], optional?: boolean) =>
      mayBeEmpty({ column: 'C', field, optional });
    expect([empty('id', true), empty('x', true), empty('y', true)]).toEqual([false, false, false]);
    expect([empty('z'), empty('z', false), empty('diameter'), empty('diameter', true), empty('note')]).toEqual([
      true,
      false,
      false,
      true,
      true,
    ]);
  });

  it('become members of the hole', () => {
    expect((['id', 'x', 'z', 'axis.y', 'origin.code'] as const).map(fieldPointer)).toEqual([
      '/id',
      '/point/0',
      '/point/2',
      '/axis/1',
      '/origin/code',
    ]);
  });
});
