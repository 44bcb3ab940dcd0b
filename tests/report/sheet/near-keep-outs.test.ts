import { describe, expect, it } from 'vitest';
import type { Hole, KeepOut, Layout } from '../../../src/generated/layout.js';
import { layoutRecords } from '../../../src/report/sheet/layout-records.js';
import { NearKeepOuts } from '../../../src/report/sheet/near-keep-outs.js';
import { sheetHole } from '../../../src/report/sheet/sheet-hole.js';
import { smallLayout } from '../../jobs/small-layout.js';

const keepOut = (id: string, shape: KeepOut['shape']): KeepOut => ({
  id,
  kind: 'other',
  shape,
  standoff: 50,
  knownFrom: 'scan',
});
const keepOuts = [
  keepOut('path', {
    path: {
      points: [
        [-5000, 500, 30],
        [5000, 500, 30],
      ],
      radius: 20,
    },
  }),
  keepOut('ball', { sphere: { centre: [0, 0, 200], radius: 40 } }),
  keepOut('prism', {
    prism: {
      base: [
        [300, -100, 0],
        [400, -100, 0],
        [400, 100, 0],
        [300, 100, 0],
      ],
      extrude: [0, 0, 50],
    },
  }),
  keepOut('far', { sphere: { centre: [0, 9000, 0], radius: 40 } }),
];
const records = layoutRecords(smallLayout as unknown as Layout);
const hole = (members: Partial<Hole>) =>
  sheetHole({ id: 'H', trade: 'FP', holeType: 'T', substrate: 'S', point: [0, 0, 0], ...members } as Hole, records);
const found = (near: NearKeepOuts, members: Partial<Hole>) =>
  near.of(hole(members)).map(({ index, distanceMm }) => [keepOuts[index].id, Math.round(distanceMm)]);

describe('keep-outs near a hole', () => {
  const near = new NearKeepOuts(keepOuts, 1000);

  it('are found from its surface to its depth', () => {
    // The hole is 60 mm deep: its end is 140 mm below the middle of the ball.
    expect(found(near, {})).toEqual([
      ['path', 480],
      ['ball', 100],
      ['prism', 300],
    ]);
  });

  it('are found on the face where the hole has no height', () => {
    expect(found(near, { point: [0, 0] })).toEqual(found(near, {}));
  });

  it('are found in plan where nothing gives the height', () => {
    expect(found(near, { point: [0, 0], substrate: undefined })).toEqual([
      ['path', 480],
      ['ball', 0],
      ['prism', 300],
    ]);
    const slanting = keepOut('s', {
      prism: {
        base: [
          [0, 0, 0],
          [0, 10, 0],
          [0, 10, 10],
        ],
        extrude: [800, 0, 0],
      },
    });
    const [first] = new NearKeepOuts([slanting], 1000).of(hole({ point: [900, 5], substrate: undefined }));
    expect(first.distanceMm).toBeCloseTo(100);
  });

  it('are found in plan where nothing tells which way the hole goes or how deep', () => {
    const high = new NearKeepOuts([keepOut('high', { sphere: { centre: [0, 0, 1400], radius: 40 } })], 1000);
    expect(high.of(hole({}))).toEqual([]);
    expect(high.of(hole({ substrate: undefined, point: [0, 0, 0] }))).toEqual([{ index: 0, distanceMm: 0 }]);
  });

  it('are left out beyond the distance', () => {
    expect(found(new NearKeepOuts(keepOuts, 299), {})).toEqual([['ball', 100]]);
  });
});
