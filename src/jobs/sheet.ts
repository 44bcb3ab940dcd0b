import { unitSystemOf } from '../draw/scale.js';
import type { Hole } from '../generated/layout.js';
import type { LayoutSource } from '../model/layout-source.js';
import { type CrewSheet, crewSheets } from '../report/sheet/crew-sheets.js';
import { ENGLISH_SHEET_WORDS } from '../report/sheet/english-sheet-words.js';
import { drillingOrder } from '../report/sheet/drilling-order.js';
import { type LayoutRecords, layoutRecords, partyInWords } from '../report/sheet/layout-records.js';
import { SheetContext } from '../report/sheet/sheet-context.js';
import type { SheetSubject } from '../report/sheet/sheet-head.js';
import { isToBeDrilled, type SheetHole, sheetHole } from '../report/sheet/sheet-hole.js';
import { sheetHtml } from '../report/sheet/sheet-html.js';
import type { SheetPaper } from '../report/sheet/sheet-paper.js';
import { sheetRow } from '../report/sheet/sheet-row.js';
import { sheetSvg } from '../report/sheet/sheet-svg.js';
import type { SheetWords } from '../report/sheet/sheet-words.js';

export type { SheetPaper } from '../report/sheet/sheet-paper.js';

/** Whose holes go on sheets. Areas and packages stand for the positions of lifts and rigs, which layouts do not have yet. */
export type SheetChoice =
  | { readonly package: string }
  | { readonly area: string }
  | { readonly level: string; readonly trade: string };

/** The sheets of one choice. */
export interface SheetSet {
  readonly sheets: readonly CrewSheet[];
  /** Holes on them. */
  readonly holeCount: number;
  /** Holes of the choice with nothing to drill: cast in, or there already. */
  readonly notToDrill: number;
  readonly paper: SheetPaper;
  /** One HTML file, in pieces. */
  html(): Iterable<string>;
  /** Each sheet as an SVG file of its own. */
  svg(): string[];
}

/** Something to choose, and how many holes it has. */
export interface SheetOption {
  readonly choice: SheetChoice;
  readonly name: string | undefined;
  readonly holes: number;
}

/** Letter where the project reads feet or inches, else A4. */
export function usualPaper({ header: { display } }: LayoutSource): SheetPaper {
  return unitSystemOf(display) === 'metric' ? 'a4' : 'letter';
}

/**
 * Crew sheets of a sound layout: each is one side of paper, as many as the holes need. The same layout and choice give
 * the same text. Without a hole to drill there is no sheet.
 *
 * @throws RangeError where the choice names a record that the layout does not have
 */
export function sheetsOf(
  source: LayoutSource,
  choice: SheetChoice,
  paper: SheetPaper = usualPaper(source),
  words: SheetWords = ENGLISH_SHEET_WORDS,
): SheetSet {
  const records = layoutRecords(source.header);
  const { holes, given, subject } = chosen(source, records, choice);
  const context = new SheetContext(records, words);
  const levels = [...new Set(holes.map(({ level }) => level))];
  // Levels come as the layout has them; where the package gives an order, as it names them first.
  const order = given > 0 ? levels : [...records.levels.keys()];
  const toDrill = drillingOrder(holes, given, context.rowMm, order, source.header.frame);
  const rows = toDrill.map((hole) => sheetRow(hole, context));
  const sheets = crewSheets(rows, subject, context, paper);
  return {
    sheets,
    holeCount: rows.length,
    notToDrill: subject.notToDrill,
    paper,
    html: () => sheetHtml(sheets, subject, context, paper),
    svg: () => sheets.map(sheetSvg),
  };
}

interface Chosen {
  /** Those to be drilled; the first ones in the order that the package gives. */
  readonly holes: readonly SheetHole[];
  readonly given: number;
  readonly subject: SheetSubject;
}

function chosen(source: LayoutSource, records: LayoutRecords, choice: SheetChoice): Chosen {
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

function levelOf({ level, substrate }: Hole, substrates: LayoutRecords['substrates']): string | undefined {
  return level ?? (substrate === undefined ? undefined : substrates.get(substrate)?.level);
}

type About = Omit<SheetSubject, 'isOrderGiven' | 'notToDrill' | 'unknown'>;

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
