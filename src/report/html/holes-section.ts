import type { HoleType } from '../../generated/layout.js';
import type { LayoutModel } from '../../model/layout-model.js';
import type { HtmlPhrases } from './html-phrases.js';
import type { Markup } from './markup.js';
import {
  displayOf,
  type HtmlReportParts,
  lengthsOf,
  type ReportedLayout,
  recordsOf,
  unitName,
} from './reported-layout.js';
import { section, table } from './table.js';

type Path = 'trade' | 'level' | 'area' | 'holeType';
const COLLECTIONS = { trade: 'trades', level: 'levels', area: 'areas', holeType: 'holeTypes' } as const;

/** How many holes there are, of what, where and for whom. */
export function holesSection({ layouts, language }: HtmlReportParts): Markup | undefined {
  const { html: words } = language;
  const { holes } = words;
  const display = displayOf(layouts);
  return section(
    'holes',
    holes.heading,
    table(holes.byLevel, holes.levelHeads, countsBy(layouts, 'level', holes.noLevel)),
    table(holes.byArea, holes.areaHeads, countsBy(layouts, 'area', holes.noArea)),
    table(holes.byTrade, holes.tradeHeads, byTrade(layouts, holes.noTrade)),
    table(holes.types(unitName(display, words)), holes.typeHeads, types(layouts, lengthsOf(display), words)),
  );
}

/** Number of holes for each name that a reference has, the names in the order of the layouts. */
function counts(model: LayoutModel, path: Path): Map<string | undefined, number> {
  const { holes } = model;
  const { names } = model.collection(COLLECTIONS[path]);
  const ofName = new Map<number, number>();
  for (let i = 0; i < holes.count; i++) {
    const name = holes.referenceOf(path, i);
    ofName.set(name, (ofName.get(name) ?? 0) + 1);
  }
  return new Map(
    [...ofName]
      .sort(([a], [b]) => order(a) - order(b))
      .map(([name, n]) => [name < 0 ? undefined : names.text(name), n]),
  );
}

/** What has no name comes last. */
function order(name: number): number {
  return name < 0 ? Number.POSITIVE_INFINITY : name;
}

function countsBy(layouts: readonly ReportedLayout[], path: 'level' | 'area', nameless: string): [string, number][] {
  const total = new Map<string, number>();
  let without = 0;
  for (const { model } of layouts) {
    const records: readonly ({ id: string; name: string } | undefined)[] = model.collection(COLLECTIONS[path]).records;
    for (const [id, n] of counts(model, path)) {
      const record = records.find((one) => one !== undefined && one.id === id);
      if (id === undefined) without += n;
      else total.set(record?.name ?? id, (total.get(record?.name ?? id) ?? 0) + n);
    }
  }
  if (total.size === 0) return [];
  return [...total, ...(without > 0 ? [[nameless, without] as [string, number]] : [])];
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
