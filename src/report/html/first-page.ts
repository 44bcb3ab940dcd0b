import { clip } from '../clip.js';
import { verdictLines } from '../text.js';
import { type Content, html, type Markup } from './markup.js';
import { displayOf, type HtmlReportParts, partyName, type ReportedLayout, unitName } from './reported-layout.js';
import { facts, section, table } from './table.js';

const PURPOSES: Readonly<Record<string, string>> = {
  'for-review': 'Checked for review',
  'for-drilling': 'Checked for drilling',
  'for-closeout': 'Checked for close-out',
};

/** Title of the report: the project, else what was checked. */
export function reportTitle({ report, layouts }: HtmlReportParts): string {
  const project = layouts.map(({ model }) => model.header.project?.name).find((name) => name !== undefined);
  return clip(project ?? report.inputs.map(({ name }) => name).join(', '), 200);
}

/** Who hands what over to whom, and what the check says in two lines. */
export function firstPage(parts: HtmlReportParts): Markup {
  const { report, layouts } = parts;
  const project = layouts.map(({ model }) => model.header.project).find((one) => one !== undefined);
  const display = displayOf(layouts);
  return html`<header><p class="kind">Anchor hole layout: report of a check</p><h1>${reportTitle(parts)}</h1>
${facts([
  ['Project number', project?.number],
  ['Phase', project?.phase],
  ['Place', project?.place],
  ['Purpose of the check', PURPOSES[report.purpose]],
  ['As of', report.asOf],
  ['Lengths', `${unitName(display)}${display === undefined ? ' (no layout says how the project reads them)' : ''}`],
  ['Checked with', `${report.tool.name} ${report.tool.version}, AHX ${report.ahx}`],
])}</header>
${section('verdict', 'What the check says', verdicts(parts))}${section('documents', 'What was checked', documents(parts))}`;
}

function verdicts({ report, phrases }: HtmlReportParts): Content[] {
  const [format, site] = verdictLines(report, phrases);
  const says = (verdict: string) =>
    ({ pass: 'no error', fail: 'errors', 'cannot-judge': 'not judged to its end' })[verdict];
  return [
    html`<p class="verdict verdict-${report.verdict.format}"><b>Form of the files: ${says(report.verdict.format)}.</b> ${format}</p>
<p class="verdict verdict-${report.verdict.site}"><b>Site: ${says(report.verdict.site)}.</b> ${site}</p>
<p class="caution">${report.caution}</p>
`,
  ];
}

function documents({ report, layouts }: HtmlReportParts): Content[] {
  const blocks = report.inputs.map((input, index) => {
    const layout = layouts.find((one) => one.input === index);
    const { title = input.id ?? input.name } = layout?.model.header ?? {};
    return html`<article><h3>${title}</h3>
${layout && facts(aboutLayout(layout))}${facts([
  ['File', input.name],
  ['Kind', input.kind],
  ['Size', `${input.bytes} bytes`],
  ['Digest of the file', input.digest],
  ['Holes', input.holes],
  ['Holes judged further', input.judged !== input.holes && input.judged],
])}</article>
`;
  });
  return blocks;
}

function aboutLayout(layout: ReportedLayout): [string, Content][] {
  const { id, revision, parent, submittal } = layout.model.header;
  return [
    ['Layout', id],
    ['Revision', revision && html`<strong class="revision">${revision.label}</strong>`],
    ['Supersedes', revision?.supersedes],
    ['Made from', parent && `revision ${parent.revision} of ${parent.layout}`],
    ['Issued', revision?.issued],
    ['Issued by', partyName(layout, revision?.by)],
    ['Note to the revision', revision?.note],
    ['Submittal', submittal?.number],
    ['Transmittal', submittal?.transmittal],
    ['Spec section', submittal?.specSection],
    ['Handed over for', submittal?.purpose],
    ['Prepared by', partyName(layout, submittal?.preparedBy)],
    ['Checked by', partyName(layout, submittal?.checkedBy)],
  ];
}

/** Files, firms and people that the layouts name. */
export function partiesAndSources({ layouts }: HtmlReportParts): Markup | undefined {
  const sources = layouts.flatMap((layout) =>
    layout.model
      .collection('sources')
      .records.flatMap((source) =>
        source === undefined
          ? []
          : [
              [
                source.title,
                source.kind.replaceAll('-', ' '),
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
        party === undefined ? [] : [[party.firm, party.person, party.role.replaceAll('-', ' '), party.contact]],
      ),
  );
  return section(
    'sources',
    'Sources and parties',
    table(
      'Documents that the layouts were made from',
      ['Title', 'Kind', 'Revision', 'Date', 'From', 'Digest'],
      distinct(sources),
    ),
    table('Parties', ['Firm', 'Person', 'Role', 'Contact'], distinct(parties)),
  );
}

/** Rows that are alike, once. */
export function distinct<T extends readonly Content[]>(rows: readonly T[]): T[] {
  return [...new Map(rows.map((row) => [JSON.stringify(row), row])).values()];
}
