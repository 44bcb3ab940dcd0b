import { contentText, html, type Markup } from '../html/markup.js';
import type { CrewSheet } from './crew-sheets.js';
import type { SheetContext } from './sheet-context.js';
import type { SheetSubject } from './sheet-head.js';
import { controlOf, controlText } from './sheet-band.js';
import { SHEET_PAPERS, type SheetPaper } from './sheet-paper.js';
import { sheetSvg } from './sheet-svg.js';
import type { SheetRow } from './sheet-row.js';
import type { SheetWords } from './sheet-words.js';

const STYLES = `
html { background: #fff; color: #000; font: 16px/1.4 sans-serif; color-scheme: light; }
body { margin: 0; }
.sheet { break-after: page; break-inside: avoid; overflow: hidden; }
.sheet:last-of-type { break-after: auto; }
.sheet svg { display: block; width: 100%; height: auto; }
.text { max-width: 60rem; margin: 0 auto; padding: 1rem; overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; margin: .5rem 0 1rem; } th, td { border: 1px solid #000; padding: .2rem .4rem; text-align: left; vertical-align: top; }
@media screen { .sheet { max-width: 60rem; margin: 1rem auto; border: 1px solid #000; } }
@media print { .text { display: none; } }
`;

/**
 * Sheets as one HTML file: each one side of the paper, drawn; below them, on screens, the lists as text. No script,
 * nothing from outside, black on white. In pieces, in order.
 */
export function* sheetHtml(
  sheets: readonly CrewSheet[],
  subject: SheetSubject,
  context: SheetContext,
  paper: SheetPaper,
): Generator<string> {
  const { width, height, name } = SHEET_PAPERS[paper];
  // A hair less than the page, so that rounding makes no page of its own.
  const page = `@page { size: ${name} portrait; margin: 0; }\n@media print { .sheet { width: ${width}mm; height: ${height - 0.5}mm; } }\n`;
  yield `<!doctype html>
<html lang="${contentText(context.words.language)}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
${html`<title>${subject.title}</title>`.text}
<style>${STYLES}${page}</style>
</head>
<body><main>
`;
  for (const sheet of sheets) {
    yield `<section class="sheet" aria-label="${contentText(context.words.sheetOf(sheet.number, sheets.length))}">${sheetSvg(sheet)}</section>\n`;
  }
  yield html`<div class="text"><h1>${subject.title}</h1>\n<h2>${context.words.listHead}</h2>\n`.text;
  for (const sheet of sheets) yield textOf(sheet, sheets.length, context).text;
  yield '</div>\n</main></body></html>\n';
}

/** What stands on a sheet, for those who cannot see it and for copying. */
function textOf({ number, rows, texts }: CrewSheet, count: number, context: SheetContext): Markup {
  const { words } = context;
  const { heads, labels } = words;
  const unit = context.lengths.unitBeside;
  const titles = [
    heads.number,
    heads.tag,
    heads.bit,
    words.withUnit(heads.depth, unit),
    words.withUnit(heads.grid, unit),
    labels.substrates,
    labels.move,
    labels.findings,
  ];
  const said: [string, readonly string[]][] = [
    [labels.checkLimit, [...texts.checkLimit, words.checkRule]],
    [labels.findings, texts.findings],
    [labels.changes, texts.changes],
    [labels.height, texts.heights],
    [labels.holds, [texts.holds]],
    [labels.conditions, texts.conditions],
    [labels.control, controlOf(rows, context).map((point) => controlText(point, context))],
    [labels.noDrill, [texts.noDrillHead, ...texts.noDrill]],
    [labels.bores, texts.bores],
    [labels.symbols, texts.symbols],
    [labels.reading, [texts.reading]],
    [labels.order, [texts.order]],
    [labels.call, texts.call],
    [labels.leftOut, texts.leftOut],
    [labels.caution, [words.caution]],
  ];
  const list = rows.map((row) => rowOf(row, words));
  return html`<h3>${words.sheetOf(number, count)}</h3>
<table><thead><tr>${titles.map((title) => html`<th scope="col">${title}</th>`)}</tr></thead><tbody>
${list}</tbody></table>
${said.filter(([, lines]) => lines.length > 0).map(([label, lines]) => html`<p><b>${label}</b>: ${lines.join(' ')}</p>\n`)}`;
}

function rowOf(
  { number, tag, bit, depth, grid, substrateText, moveText, notes, findings, change }: SheetRow,
  words: SheetWords,
): Markup {
  const cells = [tag, bit.filter(Boolean).join(', '), depth.filter(Boolean).join(', '), grid.join(', '), substrateText];
  const found = [
    ...(findings?.state === 'error' ? [words.doNotDrill] : []),
    ...(findings?.lines ?? []),
    ...(change === undefined ? [] : [change.text]),
  ];
  return html`<tr><th scope="row">${number}</th>${cells.map((cell) => html`<td>${cell}</td>`)}<td>${[moveText, ...notes].join(' ')}</td><td>${found.join(' ')}</td></tr>\n`;
}
