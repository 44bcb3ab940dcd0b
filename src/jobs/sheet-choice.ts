import type { Hole } from '../generated/layout.js';
import type { LayoutSource } from '../model/layout-source.js';
import { type LayoutRecords, layoutRecords, partyInWords } from '../report/sheet/layout-records.js';
import type { SheetSubject } from '../report/sheet/sheet-head.js';
import { isToBeDrilled, type SheetHole, sheetHole } from '../report/sheet/sheet-hole.js';

/** Whose holes go on sheets. Areas and packages stand for the positions of lifts and rigs, which layouts do not have yet. */
export type SheetChoice =
  | { readonly package: string }
  | { readonly area: string }
  | { readonly level: string; readonly trade: string };

/** Something to choose, and how many holes it has. */
export interface SheetOption {
  readonly choice: SheetChoice;
  readonly name: string | undefined;
  readonly holes: number;
}

/** The holes of a choice. */
export interface Chosen {
  /** Those to be drilled; the first ones in the order that the package gives. */
  readonly holes: readonly SheetHole[];
  readonly given: number;
  readonly subject: SheetSubject;
}

/**
 * The holes of a choice that are to be drilled, and what the sheets are about.
 *
 * @throws RangeError where the choice names a record that the layout does not have
 */
export function chosen(source: LayoutSource, records: LayoutRecords, choice: SheetChoice): Chosen {
  const about = aboutChoice(records, choice);
  const listed = 'package' in choice ? (records.packages.get(choice.package)?.holes ?? []) : [];
  const place = new Map(listed.map((id, k) => [id, k]));
  const first: SheetHole[] = [];
  const rest: SheetHole[] = [];
  let found = 0;
  const belongs = membershipOf(records, choice);
  for (const hole of source.holes()) {
    const at = place.get(hole.id);
    if (at !== undefined) {
      first[at] = sheetHole(hole, records);
      found++;
    } else if (belongs(hole)) rest.push(sheetHole(hole, records));
  }
  const named = first.filter((hole) => hole !== undefined);
  const given = named.filter(isToBeDrilled);
  const holes = [...given, ...rest.filter(isToBeDrilled)];
  return {
    holes,
    given: given.length,
    subject: {
      ...about,
      isOrderGiven: given.length > 0,
      isRestInRows: given.length > 0 && holes.length > given.length,
      toDrill: holes.length,
      notToDrill: named.length + rest.length - holes.length,
      unknown: place.size - found,
    },
  };
}

function membershipOf({ packages, substrates }: LayoutRecords, choice: SheetChoice): (hole: Hole) => boolean {
  if ('area' in choice) return ({ area }) => area === choice.area;
  if ('package' in choice) {
    const areas = new Set(packages.get(choice.package)?.areas);
    return ({ area }) => area !== undefined && areas.has(area);
  }
  return (hole) => hole.trade === choice.trade && levelOf(hole, substrates) === choice.level;
}

/** Whether a hole is of the choice, also by being named in a package. */
export function belongsTo(records: LayoutRecords, choice: SheetChoice): (hole: Hole) => boolean {
  const isMember = membershipOf(records, choice);
  const named = new Set('package' in choice ? records.packages.get(choice.package)?.holes : []);
  return (hole) => named.has(hole.id) || isMember(hole);
}

/** Number of holes of a choice, whether to be drilled or not; undefined where the layout lacks a record that it names. */
export function holesOfChoice(source: LayoutSource, choice: SheetChoice): number | undefined {
  const records = layoutRecords(source.header);
  const { packages, areas, levels, trades } = records;
  const isThere =
    'package' in choice
      ? packages.has(choice.package)
      : 'area' in choice
        ? areas.has(choice.area)
        : levels.has(choice.level) && trades.has(choice.trade);
  if (!isThere) return undefined;
  const belongs = belongsTo(records, choice);
  let count = 0;
  for (const hole of source.holes()) if (belongs(hole)) count++;
  return count;
}

function levelOf({ level, substrate }: Hole, substrates: LayoutRecords['substrates']): string | undefined {
  return level ?? (substrate === undefined ? undefined : substrates.get(substrate)?.level);
}

type About = Omit<SheetSubject, 'isOrderGiven' | 'isRestInRows' | 'toDrill' | 'notToDrill' | 'unknown'>;

function aboutChoice(records: LayoutRecords, choice: SheetChoice): About {
  if ('package' in choice) {
    const found = need(records.packages, choice.package, 'package');
    const { id, title, date, crew, prerequisite } = found;
    const name = crew === undefined ? undefined : partyInWords(records, crew);
    return { kind: 'package', id, title: title ?? id, date, crew: name, prerequisite };
  }
  if ('area' in choice) {
    const { id, name } = need(records.areas, choice.area, 'area');
    return { kind: 'area', id, title: name };
  }
  const level = need(records.levels, choice.level, 'level');
  const trade = need(records.trades, choice.trade, 'trade');
  return { kind: 'level', id: level.id, title: `${level.name}: ${trade.name}` };
}

function need<T>(records: ReadonlyMap<string, T>, id: string, kind: string): T {
  const found = records.get(id);
  if (found === undefined) throw new RangeError(`the layout has no ${kind} "${id}"`);
  return found;
}

/** What sheets can be made of: packages, areas, and levels by trade, each with a count of its holes. */
export function sheetOptions(source: LayoutSource): SheetOption[] {
  const records = layoutRecords(source.header);
  const packages = [...records.packages.values()].map(({ id, title }) => ({ choice: { package: id }, name: title }));
  const areas = [...records.areas.values()].map(({ id, name }) => ({ choice: { area: id }, name }));
  const named: { choice: SheetChoice; name: string | undefined }[] = [...packages, ...areas];
  const counts = named.map(() => 0);
  const ofPackage = [...records.packages.values()].map((one) => ({
    holes: new Set(one.holes),
    areas: new Set(one.areas),
  }));
  const areaPlace = new Map([...records.areas.keys()].map((id, k) => [id, packages.length + k]));
  const byLevel = new Map<string, SheetOption & { holes: number }>();
  for (const hole of source.holes()) {
    for (const [k, { holes, areas: inAreas }] of ofPackage.entries()) {
      if (holes.has(hole.id) || (hole.area !== undefined && inAreas.has(hole.area))) counts[k]++;
    }
    const area = hole.area === undefined ? undefined : areaPlace.get(hole.area);
    if (area !== undefined) counts[area]++;
    const level = levelOf(hole, records.substrates);
    if (level === undefined || !records.levels.has(level) || !records.trades.has(hole.trade)) continue;
    const key = JSON.stringify([level, hole.trade]);
    const known = byLevel.get(key);
    if (known !== undefined) known.holes++;
    else {
      const name = `${records.levels.get(level)?.name}: ${records.trades.get(hole.trade)?.name}`;
      byLevel.set(key, { choice: { level, trade: hole.trade }, name, holes: 1 });
    }
  }
  return [...named.map((one, k) => ({ ...one, holes: counts[k] })), ...byLevel.values()];
}
