import type { ColumnProfile } from '../../../src/generated/column-profile.js';
import type { Hole } from '../../../src/generated/layout.js';
import type { Observation } from '../../../src/model/observation.js';
import { type PointListCounts, PointListReader } from '../../../src/read/table/point-list.js';

export interface PointListReading {
  holes: Hole[];
  rows: number[];
  columnOf: ReadonlyMap<string, number> | undefined;
  observations: Observation[];
  counts: PointListCounts;
}

/** Reads a whole point list at once. */
export function readPoints(text: string, profile: ColumnProfile): PointListReading {
  const holes: Hole[] = [];
  const rows: number[] = [];
  const observations: Observation[] = [];
  let columnOf: ReadonlyMap<string, number> | undefined;
  const reader = new PointListReader(
    profile,
    (hole, row, columns) => {
      holes.push(hole);
      rows.push(row);
      columnOf = columns;
    },
    (observation) => observations.push(observation),
  );
  reader.write(text);
  const counts = reader.end();
  return { holes, rows, columnOf, observations, counts };
}

/** An invented profile: id, x and y in millimetres, one trade and one hole type for all. */
export function plainProfile(changes: Partial<ColumnProfile> = {}): ColumnProfile {
  return {
    ahx: '0.1',
    kind: 'column-profile',
    columns: [
      { column: 'ID', field: 'id' },
      { column: 'X', field: 'x', unit: 'mm' },
      { column: 'Y', field: 'y', unit: 'mm' },
    ],
    constants: { trade: 'FP', holeType: 'W10' },
    ...changes,
  };
}
