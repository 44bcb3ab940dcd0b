import { printable } from '../../model/printable.js';
import type { SheetContext } from './sheet-context.js';
import type { SheetRow } from './sheet-row.js';

/** More heights than this are said as a range. */
const MOST_HEIGHTS = 3;

/**
 * How high the surface is at the holes of a sheet, each with what it is counted from: the finished floor of their level,
 * its structural top, else what z = 0 is.
 */
export function heightsInWords(rows: readonly SheetRow[], { records, lengths, words }: SheetContext): string[] {
  const { level } = rows[0].hole;
  const record = level === undefined ? undefined : records.levels.get(level);
  const datum = printable(records.header.frame.heightDatum);
  const [zeroMm, reference] =
    record?.finishedFloor !== undefined
      ? [record.finishedFloor, words.heightAbove.finishedFloor(printable(record.name))]
      : record?.structuralTop !== undefined
        ? [record.structuralTop, words.heightAbove.structuralTop(printable(record.name))]
        : [0, words.heightAbove.datum(datum)];
  const numbers = new Map<string, number[]>();
  const unknown: number[] = [];
  const known = rows.filter(({ hole, number }) => {
    const z = hole.hole.point[2];
    if (z === undefined) unknown.push(number);
    else {
      const text = lengths.distance(z - zeroMm);
      numbers.set(text, [...(numbers.get(text) ?? []), number]);
    }
    return z !== undefined;
  });
  const asFound =
    unknown.length === 0 ? [] : [words.heightAsFound(unknown.length === rows.length ? '' : unknown.join(', '))];
  if (known.length === 0) return asFound;
  if (numbers.size === 1 && unknown.length === 0) return [words.heightOfAll([...numbers.keys()][0], reference)];
  if (numbers.size <= MOST_HEIGHTS) {
    const each = [...numbers].map(([text, of]) => words.heightOf(text, of.join(', ')));
    return [`${each.join('; ')} ${reference}.`, ...asFound];
  }
  const heights = known.map(({ hole }) => (hole.hole.point[2] as number) - zeroMm);
  const [least, most] = [Math.min(...heights), Math.max(...heights)].map((mm) => lengths.distance(mm));
  return [words.heightRange(least, most, reference), ...asFound];
}
