import { clip } from '../clip.js';
import { verdictLines } from '../text.js';
import type { HtmlPhrases } from './html-phrases.js';
import { type Content, html, type Markup } from './markup.js';
import {
  displayOf,
  type HtmlReportParts,
  partyName,
  type ReportedLayout,
  toldIn,
  unitName,
} from './reported-layout.js';
import { facts, section, table } from './table.js';
import { unsaidBox } from './unsaid-box.js';

/** Title of the report: the project, else what was checked. */
export function reportTitle({ report, layouts }: HtmlReportParts): string {
  const project = layouts.map(({ model }) => model.header.project?.name).find((name) => name !== undefined);
  return clip(project ?? report.inputs.map(({ name }) => name).join(', '), 200);
}

/** Who hands what over to whom, and what the check says in two lines. */
export function firstPage(parts: HtmlReportParts): Markup {
  const { report, layouts, language } = parts;
  const { first: words } = language.html;
  const project = layouts.map(({ model }) => model.header.project).find((one) => one !== undefined);
  const display = displayOf(layouts);
  return html`<header><p class="kind">${words.kind}</p><h1>${reportTitle(parts)}</h1>
${facts([
  [words.projectNumber, project?.number],
  [words.phase, project?.phase],
  [words.place, project?.place],
  [words.purpose, words.purposes[report.purpose]],
  [words.asOf, report.asOf],
  [words.lengths, `${unitName(display, language.html)}${display === undefined ? ` ${words.unitNotGiven}` : ''}`],
  [words.checkedWith, `${report.tool.name} ${report.tool.version}, AHX ${report.ahx}`],
])}</header>
${section('documents', words.documentsHeading, documents(parts))}${section('verdict', words.verdictHeading, verdicts(parts), unsaidBox(parts))}`;
}

function verdicts(parts: HtmlReportParts): Content[] {
  const { report, language } = parts;
  const { first: words } = language.html;
  const [format, site] = verdictLines(report, language.phrases);
  return [
    html`<p class="verdict verdict-${report.verdict.format}"><b>${words.formOfFiles(report.verdict.format)}</b> ${format}</p>
<p class="verdict verdict-${report.verdict.site}"><b>${words.site(report.verdict.site)}</b> ${site}</p>
<p class="caution">${toldIn(parts, report.caution)}</p>
`,
  ];
}

function documents({ report, layouts, language: { html: phrases } }: HtmlReportParts): Content[] {
  const words = phrases.first;
  return report.inputs.map((input, index) => {
    const layout = layouts.find((one) => one.input === index);
    const { title = input.id ?? input.name } = layout?.model.header ?? {};
    return html`<article><h3>${title}</h3>
${layout && facts(aboutLayout(layout, phrases))}${facts([
  [words.file, input.name],
  [words.documentKind, phrases.choice(input.kind)],
  [words.size, words.bytes(input.bytes)],
  [words.fileDigest, input.digest],
  [words.holes, input.holes],
  [words.judgedHoles, input.judged !== input.holes && input.judged],
])}</article>
`;
  });
}

function aboutLayout(layout: ReportedLayout, { layout: words, choice }: HtmlPhrases): [string, Content][] {
  const { id, revision, parent, submittal } = layout.model.header;
  return [
    [words.layout, id],
    [words.revision, revision && html`<strong class="revision">${revision.label}</strong>`],
    [words.supersedes, revision?.supersedes],
    [words.madeFrom, parent && words.revisionOf(parent.revision, parent.layout)],
    [words.issued, revision?.issued],
    [words.issuedBy, partyName(layout, revision?.by)],
    [words.revisionNote, revision?.note],
    [words.submittal, submittal?.number],
    [words.transmittal, submittal?.transmittal],
    [words.specSection, submittal?.specSection],
    [words.handedOverFor, submittal?.purpose && choice(submittal.purpose)],
    [words.preparedBy, partyName(layout, submittal?.preparedBy)],
    [words.checkedBy, partyName(layout, submittal?.checkedBy)],
  ];
}

/** Files, firms and people that the layouts name. */
export function partiesAndSources({ layouts, language }: HtmlReportParts): Markup | undefined {
  const { sources: words, choice } = language.html;
  const sources = layouts.flatMap((layout) =>
    layout.model
      .collection('sources')
      .records.flatMap((source) =>
        source === undefined
          ? []
          : [
              [
                source.title,
                choice(source.kind),
                source.revision,
                source.date,
                partyName(layout, source.from),
                source.digest,
              ],
            ],
      ),
  );
  const parties = layouts.flatMap(({ model }) =>
    model
      .collection('parties')
      .records.flatMap((party) =>
        party === undefined ? [] : [[party.firm, party.person, choice(party.role), party.contact]],
      ),
  );
  return section(
    'sources',
    words.heading,
    table(words.documents, words.documentHeads, distinct(sources)),
    table(words.parties, words.partyHeads, distinct(parties)),
  );
}

/** Rows that are alike, once. */
export function distinct<T extends readonly Content[]>(rows: readonly T[]): T[] {
  return [...new Map(rows.map((row) => [JSON.stringify(row), row])).values()];
}
