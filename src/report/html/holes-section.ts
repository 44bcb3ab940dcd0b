import type { HoleType } from '../../generated/layout.js';
import type { LayoutModel } from '../../model/layout-model.js';
import type { HtmlPhrases } from './html-phrases.js';
import { LevelNames, levelOf } from './level-names.js';
import { type Content, html, type Markup } from './markup.js';
import {
  displayOf,
  type HtmlReportParts,
  lengthsOf,
  type ReportedLayout,
  recordsOf,
  unitName,
} from './reported-layout.js';
import { section, table } from './table.js';

/** More spacings of groups, and more ids of groups with one spacing, are counted. */
const MOST_SPACINGS = 100;
const IDS_OF_SPACING = 8;

type Path = 'trade' | 'area' | 'holeType';
const COLLECTIONS = { trade: 'trades', area: 'areas', holeType: 'holeTypes' } as const;

/** How many holes there are, of what, where and for whom. */
export function holesSection({ layouts, language }: HtmlReportParts): Markup | undefined {
  const { html: words } = language;
  const { holes } = words;
  const display = displayOf(layouts);
  return section(
    'holes',
    holes.heading,
    table(holes.byLevel, holes.levelHeads, byLevel(layouts, holes.noLevel)),
    table(holes.byArea, holes.areaHeads, byArea(layouts, holes.noArea)),
    table(holes.byTrade, holes.tradeHeads, byTrade(layouts, holes.noTrade)),
    table(holes.types(unitName(display, words)), holes.typeHeads, types(layouts, lengthsOf(display), words)),
    groupSpacings(layouts, words, lengthsOf(display), unitName(display, words)),
  );
}

/** Spacings that were designed for groups: pairs in them are judged by these and not by their type. */
function groupSpacings(
  layouts: readonly ReportedLayout[],
  { holes: words, choice }: HtmlPhrases,
  say: (mm: number) => string,
  unit: string,
): Content[] {
  const alike = new Map<string, { kind: string; spacing: string; source: string; ids: string[] }>();
  for (const { record } of recordsOf(layouts, 'groups')) {
    if (record.designSpacing === undefined) continue;
    const { value, source } = record.designSpacing;
    const key = JSON.stringify([record.kind, value, source]);
    const known = alike.get(key) ?? { kind: record.kind, spacing: say(value), source, ids: [] };
    alike.set(key, known);
    known.ids.push(record.id);
  }
  const rows = [...alike.values()].map(({ kind, spacing, source, ids }) => [
    choice(kind),
    ids.length,
    spacing,
    source,
    `${ids.slice(0, IDS_OF_SPACING).join(', ')}${ids.length > IDS_OF_SPACING ? ', …' : ''}`,
  ]);
  const rest = rows.splice(MOST_SPACINGS).length;
  return [
    table(words.groupSpacings(unit), words.groupHeads, rows),
    rest > 0 && html`<p>${words.moreSpacings(rest)}</p>\n`,
  ];
}

/** Number of holes for each name that a reference has, the names in the order of the layouts. */
function counts(model: LayoutModel, path: Path): Map<string | undefined, number> {
  const { names } = model.collection(COLLECTIONS[path]);
  const ofName = countsOf(model, (i) => model.holes.referenceOf(path, i));
  return new Map([...ofName].map(([name, n]) => [name < 0 ? undefined : names.text(name), n]));
}

/** Number of holes for each number that they have, in the order of the numbers; -1 last. */
function countsOf({ holes }: LayoutModel, numberOf: (hole: number) => number): [number, number][] {
  const ofName = new Map<number, number>();
  for (let i = 0; i < holes.count; i++) {
    const name = numberOf(i);
    ofName.set(name, (ofName.get(name) ?? 0) + 1);
  }
  return [...ofName].sort(([a], [b]) => order(a) - order(b));
}

/** What has no name comes last. */
function order(name: number): number {
  return name < 0 ? Number.POSITIVE_INFINITY : name;
}

/** Holes by level, that of the substrate where they have none of their own. */
function byLevel(layouts: readonly ReportedLayout[], nameless: string): [string, number][] {
  const levelNames = new LevelNames(layouts);
  return summed(
    layouts.flatMap(({ model }) =>
      countsOf(model, (i) => levelOf(model, i)).map(([level, n]) => [levelNames.of(model, level), n] as const),
    ),
    nameless,
  );
}

function byArea(layouts: readonly ReportedLayout[], nameless: string): [string, number][] {
  return summed(
    layouts.flatMap(({ model }) => {
      const areas = model.collection('areas').records;
      return [...counts(model, 'area')].map(
        ([id, n]) => [areas.find((one) => one !== undefined && one.id === id)?.name ?? id, n] as const,
      );
    }),
    nameless,
  );
}

/** Counts of one name together, what has no name last; nothing where nothing has one. */
function summed(list: readonly (readonly [string | undefined, number])[], nameless: string): [string, number][] {
  const total = new Map<string | undefined, number>();
  for (const [name, n] of list) total.set(name, (total.get(name) ?? 0) + n);
  const without = total.get(undefined) ?? 0;
  total.delete(undefined);
  if (total.size === 0) return [];
  const named = [...total] as [string, number][];
  return without > 0 ? [...named, [nameless, without]] : named;
}

function byTrade(layouts: readonly ReportedLayout[], nameless: string): [string, string | undefined, number][] {
  const total = new Map<string, [string, string | undefined, number]>();
  for (const { model } of layouts) {
    const trades = model.collection('trades').records;
    for (const [id, n] of counts(model, 'trade')) {
      const trade = trades.find((one) => one !== undefined && one.id === id);
      const named = [trade?.name ?? id ?? nameless, trade?.firm] as const;
      const known = total.get(JSON.stringify(named));
      total.set(JSON.stringify(named), [...named, (known?.[2] ?? 0) + n]);
    }
  }
  return [...total.values()];
}

function types(layouts: readonly ReportedLayout[], say: (mm: number) => string, { choice, holes: words }: HtmlPhrases) {
  const length = (mm: number | undefined) => (mm === undefined ? undefined : say(mm));
  const numbers = new Map(layouts.map((layout) => [layout, counts(layout.model, 'holeType')]));
  return recordsOf(layouts, 'holeTypes').map(({ record: type, layout }) => [
    `${type.name} (${type.id})`,
    numbers.get(layout)?.get(type.id) ?? 0,
    [...[type.principle, type.form, type.made ?? 'drilled'].map(choice), ...(type.rod ? [type.rod] : [])].join(', '),
    length(type.diameter),
    length(type.depth),
    length(type.embedment),
    ...[type.minSpacing, type.minEdge, type.minThickness].map((limit) => length(limit?.value)),
    sources(type).join('; '),
    approval(type, words),
  ]);
}

/** Where the least values come from, each once. */
function sources({ minSpacing, minEdge, minThickness }: HoleType): string[] {
  return [...new Set([minSpacing, minEdge, minThickness].flatMap((limit) => limit?.source ?? []))];
}

function approval({ approval: given }: HoleType, words: HtmlPhrases['holes']): string | undefined {
  if (given === undefined) return undefined;
  const { number, edition, expires, table: place } = given;
  return [number, edition && words.edition(edition), place, expires && words.validUntil(expires)]
    .filter(Boolean)
    .join(', ');
}
