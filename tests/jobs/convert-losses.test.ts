import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { ColumnProfile } from '../../src/generated/column-profile.js';
import type { Layout } from '../../src/generated/layout.js';
import { convert, findLostRows, lossLines, TableLosses } from '../../src/jobs/convert.js';
import type { LayoutSource } from '../../src/model/layout-source.js';

const example = (path: string) => readFileSync(`examples/${path}`, 'utf8');
const profile = JSON.parse(example('ferry-terminal/sprinkler.profile.json')) as ColumnProfile;

function sourceOf(path: string): LayoutSource {
  const { holes, ...header } = JSON.parse(example(path)) as Layout;
  return { header, holeCount: holes.length, holes: () => holes };
}

describe('lossLines', () => {
  it('says each reason once, with its fields', () => {
    const reason = 'it has no place on a map';
    expect(
      lossLines([
        { field: 'packages', count: 2, reason, recoverable: false },
        { field: 'geometry', count: 7, reason: 'it lies off the map projection', recoverable: true },
        { field: 'groups', count: 3, reason, recoverable: false },
      ]),
    ).toEqual([`${reason}: packages (2), groups (3)`, 'it lies off the map projection: geometry (7)']);
  });
});

describe('TableLosses', () => {
  it('finds the control shots of the example, however its bytes are cut', () => {
    const bytes = new TextEncoder().encode(example('ferry-terminal/sprinkler-points.csv'));
    const outcomes = [1, 7, bytes.length].map((size) => {
      const losses = new TableLosses(profile);
      for (let at = 0; at < bytes.length; at += size) losses.write(bytes.subarray(at, at + size));
      return losses.end();
    });
    const reason = 'left out by the profile (4 with "CTL", 2 with "CHK")';
    for (const { losses, badRows } of outcomes) {
      expect(losses).toContainEqual({ field: 'rows', count: 6, reason, recoverable: false });
      expect([losses, badRows]).toEqual([outcomes[0].losses, 0]);
    }
  });
});

describe('findLostRows', () => {
  it('finds none where the profile has all that the rows need', () => {
    expect(findLostRows(sourceOf('ferry-terminal/sprinkler.ahx.json'), profile)).toEqual([]);
  });

  it('finds rows whose cells may not be empty, and says why and at which hole', () => {
    const columns = profile.columns.map((column) =>
      column.field === 'note' ? { ...column, optional: false } : column,
    );
    const source = sourceOf('ferry-terminal/sprinkler.ahx.json');
    const without = [...source.holes()].filter(({ note }) => note === undefined);
    const lost = findLostRows(source, { ...profile, columns });
    expect(without.length).toBeGreaterThan(0);
    expect(lost.map(({ count, first }) => [count, first])).toEqual([[without.length, without[0].id]]);
    expect(lost[0].reason).toMatch(/empty/);
  });
});

describe('GeoJSON', () => {
  it('comes with a note where there is no georeference, and without one where there is', async () => {
    const note = async (path: string) => (await convert(sourceOf(path), { form: 'geojson' })).note;
    expect(await note('ferry-terminal/sprinkler.ahx.json')).toContain('the layout has no georeference');
    expect(await note('workshop-deck/workshop.ahx.json')).toBeUndefined();
  });
});
