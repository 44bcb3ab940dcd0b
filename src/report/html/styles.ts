import type { HtmlPhrases } from './html-phrases.js';

/**
 * The looks of the HTML report: for the screen in light and dark, for paper in black on white. Colours of text have a
 * contrast of at least 7 to 1 with the page, and severities are told by words as well.
 *
 * @param words what stands before the number of a page on paper, and between it and the number of pages
 * @param footer what else stands at the foot of each page, line by line
 */
export function styles([before, between]: HtmlPhrases['page'], footer: readonly string[]): string {
  const numbers = `"${quoted(before)} " counter(page) " ${quoted(between)} " counter(pages)`;
  return `${LOOKS}@page { margin: 15mm 15mm 18mm; @bottom-right { content: ${numbers}; font: 8pt sans-serif; width: 25mm; text-align: right; } }
@page { @bottom-left { content: "${footer.map(quoted).join('\\a ')}"; white-space: pre-wrap; font: 7pt/1.3 sans-serif; width: 150mm; text-align: left; } }
`;
}

/** A text within quotes of a style, in which it can end neither these nor the style. */
function quoted(text: string): string {
  return text.replaceAll(/[^\p{L}\p{N} ]/gu, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `);
}

/** Columns of the hole schedule, per cent: by their content alone, one long tag would leave no room for the others. */
const SCHEDULE_WIDTHS = [8.5, 8.5, 10.5, 16.5, 20, 8, 8, 7, 13];

const LOOKS = `
:root { color-scheme: light dark; --page: #fff; --ink: #1a1a1a; --soft: #4a4a4a; --line: #b8b8b8; --band: #f3f3f1;
  --error: #8f1013; --warning: #6b4300; --info: #1c4a7d; --plan-paper: #fff; --plan-mark: #8f1013; }
@media (prefers-color-scheme: dark) { :root { --page: #16181a; --ink: #ececea; --soft: #bdbdb9; --line: #55585a; --band: #212426;
  --error: #ffaca6; --warning: #f1c77f; --info: #a9cdf6; --plan-paper: #16181a; --plan-mark: #ffaca6; } }
* { box-sizing: border-box; }
html { background: var(--page); color: var(--ink); font: 15px/1.45 system-ui, sans-serif; }
body { max-width: 72rem; margin: 0 auto; padding: 1.5rem; overflow-wrap: break-word; }
h1 { font-size: 1.9rem; line-height: 1.2; margin: 0 0 .6rem; }
h2 { font-size: 1.3rem; border-bottom: 2px solid var(--ink); padding-bottom: .2rem; margin: 2.2rem 0 .8rem; }
h3 { font-size: 1.05rem; margin: 1.1rem 0 .3rem; }
.kind { color: var(--soft); letter-spacing: .04em; margin: 0; }
.revision { font-size: 1.5rem; line-height: 1; }
dl { display: grid; grid-template-columns: repeat(auto-fill, minmax(15rem, 1fr)); gap: .5rem 1.5rem; margin: .4rem 0 .8rem; }
dt { color: var(--soft); font-size: .85rem; } dd { margin: 0; overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; margin: .6rem 0 1.4rem; font-size: .88rem; }
caption { text-align: left; color: var(--soft); padding-bottom: .3rem; }
th, td { border: 1px solid var(--line); padding: .22rem .45rem; text-align: left; vertical-align: top; overflow-wrap: break-word; }
td:last-child { overflow-wrap: anywhere; }
thead th { background: var(--band); } tbody th { font-weight: 500; min-width: 7em; overflow-wrap: anywhere; }
.schedule { font-size: .78rem; } .schedule td, .schedule th { padding: .1rem .3rem; font-variant-numeric: tabular-nums; }
.schedule { min-width: 46rem; } .schedule td, .schedule th { overflow-wrap: anywhere; min-width: 0; }
.schedule :is(td, th):nth-child(n + 6):nth-child(-n + 8) { overflow-wrap: normal; }
${SCHEDULE_WIDTHS.map((width, k) => `.schedule th:nth-child(${k + 1}) { width: ${width}%; }`).join(' ')}
.wide { overflow-x: auto; }
.verdict { border-left: .4rem solid var(--ink); background: var(--band); padding: .5rem .8rem; margin: .5rem 0; }
.verdict-fail { border-color: var(--error); } .verdict-cannot-judge { border-color: var(--warning); }
.caution { border: 1px solid var(--ink); padding: .5rem .8rem; font-size: .9rem; }
.unsaid { border: 1px solid var(--line); padding: .5rem .8rem; margin: .8rem 0; } .unsaid h3 { margin: 0 0 .3rem; }
.unsaid ul { margin: 0; padding-left: 1.2rem; }
.cause { border-top: 1px solid var(--line); } .cause .number { display: inline-block; min-width: 1.6em; text-align: center;
  border: 1.5px solid var(--ink); border-radius: 1em; padding: 0 .3em; }
.severity { font-size: .85rem; text-transform: uppercase; letter-spacing: .03em; }
.error { color: var(--error); } .warning { color: var(--warning); } .info { color: var(--info); }
.where { color: var(--soft); margin: .1rem 0; font-size: .88rem; overflow-wrap: anywhere; }
.cause p, .cause ul { margin: .25rem 0; } .cause ul { padding-left: 1.3rem; }
figure { margin: 1rem 0 2rem; } .unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; } figure svg { max-width: 100%; height: auto; }
.boxes { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: .4rem 1.6rem; }
.box { display: inline-block; width: 1em; height: 1em; border: 1.5px solid var(--ink); margin-right: .5em; vertical-align: -.12em; }
.review td { height: 2.4rem; }
@media print {
  :root { color-scheme: light; --page: #fff; --ink: #000; --soft: #333; --line: #888; --band: #f0f0f0;
    --error: #000; --warning: #000; --info: #000; --plan-paper: #fff; --plan-mark: #000; }
  html { font-size: 9.5pt; line-height: 1.35; } body { max-width: none; padding: 0; } .wide { overflow: visible; }
  dl { grid-template-columns: repeat(4, 1fr); gap: .2rem .9rem; margin: .2rem 0 .4rem; } dd { line-height: 1.25; }
  h1 { font-size: 1.6rem; margin-bottom: .3rem; } h3 { margin: .6rem 0 .2rem; } .revision { font-size: 1.3rem; }
  .verdict { padding: .3rem .6rem; margin: .3rem 0; } .caution, .unsaid { padding: .3rem .6rem; margin: .4rem 0; }
  .caution { font-size: .82rem; }
  table { font-size: 7.5pt; } .schedule { font-size: 7pt; min-width: 0; } th, td { padding: .1rem .22rem; } tbody th { min-width: 5em; }
  h2, h3, caption { break-after: avoid; } tr, .cause, figure, .together, .unsaid, .caution, .review, .wide:not(:has(tr:nth-child(20))) { break-inside: avoid; } thead { display: table-header-group; }
  figure { break-before: page; } .together figure { break-before: auto; }
  h2 { margin: 1.1rem 0 .5rem; }
}
`;
