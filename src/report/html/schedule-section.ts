import { LevelGridlines } from '../../frame/grid-dimensions.js';
import { gridDimensionText } from '../../frame/grid-dimension-text.js';
import type { HtmlPhrases } from './html-phrases.js';
import { LevelNames, levelOf } from './level-names.js';
import { html } from './markup.js';
import { displayOf, type HtmlReportParts, lengthsOf, type ReportedLayout, unitName } from './reported-layout.js';
import { row } from './table.js';

/** More holes than this are not listed: nobody reads them on paper, and the layout has them all. */
const MOST_HOLES = 10_000;

/** All holes in a table, level by level as they come. In pieces, since there may be many. */
export function* scheduleSection({ layouts, language }: HtmlReportParts): Generator<string> {
  const total = layouts.reduce((sum, { model }) => sum + model.holes.count, 0);
  if (total === 0) return;
  const { html: words } = language;
  const display = displayOf(layouts);
  const say = lengthsOf(display);
  const datum = layouts.map(({ model }) => model.header.frame?.heightDatum).find(Boolean);
  yield html`<section aria-labelledby="schedule"><h2 id="schedule">${words.schedule.heading}</h2>
<p>${words.schedule.lengths(unitName(display, words), datum)}</p>
`.text;
  const levelNames = new LevelNames(layouts);
  let left = MOST_HOLES;
  for (const layout of layouts) {
    const count = Math.min(left, layout.model.holes.count);
    left -= count;
    if (count > 0) yield* scheduleOf(layout, count, levelNames, say, words);
  }
  const rest = total - MOST_HOLES;
  if (rest > 0) yield html`<p>${words.schedule.more(rest)}</p>\n`.text;
  yield '</section>\n';
}

function* scheduleOf(
  layout: ReportedLayout,
  count: number,
  levelNames: LevelNames,
  say: (mm: number) => string,
  { schedule: words, gridDimensions }: HtmlPhrases,
): Generator<string> {
  const { model } = layout;
  const { holes } = model;
  const [trades, types, substrates] = (['trades', 'holeTypes', 'substrates'] as const).map((name) => {
    const { names, records, indexOf } = withIndex(model, name);
    return (k: number) => (k < 0 ? undefined : (records[indexOf(k)]?.name ?? names.text(k)));
  });
  const gridlines = new Map<number, LevelGridlines>();
  const dimensions = (level: number, i: number) => {
    const known = gridlines.get(level) ?? gridlinesOf(model, level);
    gridlines.set(level, known);
    return gridDimensionText(known.of(holes.x[i], holes.y[i]), say, gridDimensions);
  };
  const order = inLevels(model, count);
  let current: number | undefined;
  for (const i of order) {
    const level = levelOf(model, i);
    if (level !== current) {
      if (current !== undefined) yield '</tbody></table></div>\n';
      current = level;
      const caption = `${model.header.title ?? model.header.id ?? ''}: ${levelNames.of(model, level) ?? words.noLevel}`;
      yield html`<div class="wide" role="group" aria-label="${caption}" tabindex="0"><table class="schedule"><caption>${caption}</caption><thead><tr>${words.heads.map((head) => html`<th scope="col">${head}</th>`)}</tr></thead><tbody>\n`
        .text;
    }
    const id = holes.id(i);
    const z = holes.z[i];
    yield `${
      row([
        layout.tagOf(i) ?? id,
        id,
        trades(holes.referenceOf('trade', i)),
        types(holes.referenceOf('holeType', i)),
        dimensions(level, i),
        say(holes.x[i]),
        say(holes.y[i]),
        Number.isNaN(z) ? words.asFound : say(z),
        substrates(holes.referenceOf('substrate', i)),
      ]).text
    }\n`;
  }
  if (current !== undefined) yield '</tbody></table></div>\n';
}

function withIndex(model: ReportedLayout['model'], name: 'trades' | 'holeTypes' | 'substrates') {
  const collection = model.collection(name);
  const records: readonly ({ name?: string } | undefined)[] = collection.records;
  return { names: collection.names, records, indexOf: (k: number) => collection.indexOf(k) };
}

/** The first holes of the document, sorted by level; within one as they come. */
function inLevels(model: ReportedLayout['model'], count: number): number[] {
  const order = Array.from({ length: count }, (_, i) => i).filter((i) => model.holes.broken[i] !== 1);
  const levels = new Map(order.map((i) => [i, levelOf(model, i)]));
  const rank = (i: number) => ((levels.get(i) ?? -1) < 0 ? Number.POSITIVE_INFINITY : (levels.get(i) ?? 0));
  return order.sort((a, b) => (rank(a) === rank(b) ? a - b : rank(a) - rank(b)));
}

function gridlinesOf(model: ReportedLayout['model'], level: number): LevelGridlines {
  const { records, names } = model.collection('levels');
  const id = level < 0 ? undefined : names.text(level);
  const record = records.find((one) => one !== undefined && one.id === id);
  const grids = model.collection('grids').records.filter((grid) => grid !== undefined);
  return new LevelGridlines(grids, record, model.header.frame ?? {});
}
