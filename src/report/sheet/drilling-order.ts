import type { Frame } from '../../generated/layout.js';
import type { SheetHole } from './sheet-hole.js';

/** Depth of a row of holes, mm: 1.5 m, and 5 ft where the project reads feet or inches. */
export const ROW_MM = { metric: 1500, imperial: 1524 };

/**
 * Holes in the order in which a sheet lists them, level by level as the levels come.
 *
 * Those that were given first keep their order. The others go in rows from project north to south, to and fro;
 * the members of a group stay together at the place of the one that comes first. Without project north, north is the y axis.
 *
 * @param rowMm depth of a row
 * @param given number of holes at the start whose order the layout gives
 */
export function drillingOrder(
  holes: readonly SheetHole[],
  given: number,
  rowMm: number,
  levels: readonly (string | undefined)[],
  { projectNorthDeg = 0 }: Pick<Frame, 'projectNorthDeg'>,
): SheetHole[] {
  const rankOf = new Map(levels.map((level, rank) => [level, rank]));
  const rank = ({ level }: SheetHole) => rankOf.get(level) ?? levels.length;
  const turn = (projectNorthDeg * Math.PI) / 180;
  const rest = inRows(holes.slice(given), rowMm, Math.sin(turn), Math.cos(turn));
  return [...holes.slice(0, given), ...rest]
    .map((hole, k) => ({ hole, k }))
    .sort((a, b) => rank(a.hole) - rank(b.hole) || a.k - b.k)
    .map(({ hole }) => hole);
}

function inRows(holes: readonly SheetHole[], rowMm: number, sin: number, cos: number): SheetHole[] {
  const placed = holes.map((hole, k) => {
    const [x, y] = hole.hole.point;
    return { hole, k, north: tidy(x * sin + y * cos), east: tidy(x * cos - y * sin) };
  });
  let first = Number.NEGATIVE_INFINITY;
  for (const { north } of placed) first = Math.max(first, north);
  const rowOf = (north: number) => Math.floor((first - north) / rowMm);
  const sorted = placed
    .map((one) => ({ ...one, row: rowOf(one.north) }))
    .sort(
      (a, b) =>
        a.row - b.row || (a.row % 2 === 0 ? a.east - b.east : b.east - a.east) || b.north - a.north || a.k - b.k,
    );
  const members = new Map<string, SheetHole[]>();
  for (const { hole } of sorted) {
    const key = groupKey(hole);
    if (key === undefined) continue;
    const known = members.get(key);
    if (known === undefined) members.set(key, [hole]);
    else known.push(hole);
  }
  return sorted.flatMap(({ hole }) => {
    const key = groupKey(hole);
    if (key === undefined) return [hole];
    const group = members.get(key) ?? [];
    members.delete(key);
    return group;
  });
}

/** Without the hair that turning leaves. */
function tidy(mm: number): number {
  return Math.round(mm * 1000) / 1000;
}

/** Members of a group on one level. */
function groupKey({ hole, level }: SheetHole): string | undefined {
  return hole.group === undefined ? undefined : JSON.stringify([level, hole.group]);
}
