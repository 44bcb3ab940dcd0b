import type { Display, Party } from '../../generated/layout.js';
import type { LayoutChanges } from '../../events/layout-changes.js';
import type { LayoutModel, RecordOf } from '../../model/layout-model.js';
import type { RuleInfo } from '../../model/rule.js';
import { formatFeetInches } from '../../units/format-feet-inches.js';
import { formatLength } from '../../units/format-length.js';
import type { Report } from '../../generated/report.js';
import type { HtmlLanguage, HtmlPhrases } from './html-phrases.js';
import { type Content, html } from './markup.js';
import type { LengthForm } from './said-values.js';

/** A layout that a report is about. */
export interface ReportedLayout {
  /** Index of its input in the report, from 0. */
  readonly input: number;
  readonly model: LayoutModel;
  /** Reads the tag of a hole from the input once more. */
  tagOf(hole: number): string | undefined;
}

/** What the HTML report is made from. */
export interface HtmlReportParts {
  readonly report: Report;
  readonly layouts: readonly ReportedLayout[];
  /** What a rule says of itself; undefined for one that is not known. */
  ruleOf(id: string): RuleInfo | undefined;
  /** What differs from the revisions before, for the layouts of which one is at hand. */
  readonly changes?: readonly LayoutChanges[];
  /** Ids of layouts of which the revision before is at hand, and that could not be read to be held against it. */
  readonly uncompared?: readonly string[];
  /** Which members of a layout are lengths. */
  readonly lengthForm: LengthForm;
  /** Language of the page; messages and caution are in that of the report, which should be the same. */
  readonly language: HtmlLanguage;
}

/** A text of the report, marked where its language is not that of the page. */
export function toldIn({ report, language }: HtmlReportParts, text: string): Content {
  const tag = report.language ?? 'en';
  return tag === language.tag ? text : html`<span lang="${tag}">${text}</span>`;
}

/** The sound records of a collection of all layouts, with the layout of each. */
export function recordsOf<K extends Parameters<LayoutModel['collection']>[0]>(
  layouts: readonly ReportedLayout[],
  name: K,
): { record: RecordOf<K>; layout: ReportedLayout }[] {
  return layouts.flatMap((layout) =>
    layout.model
      .collection(name)
      .records.filter((record) => record !== undefined)
      .map((record) => ({ record: record as RecordOf<K>, layout })),
  );
}

/** The same, those that several layouts write alike once. */
export function distinctRecords<K extends Parameters<LayoutModel['collection']>[0]>(
  layouts: readonly ReportedLayout[],
  name: K,
): RecordOf<K>[] {
  const known = new Map(recordsOf(layouts, name).map(({ record }) => [JSON.stringify(record), record]));
  return [...known.values()];
}

/** How the project reads lengths: the first layout that says so. */
export function displayOf(layouts: readonly ReportedLayout[]): Display | undefined {
  return layouts.map(({ model }) => model.header.display).find((display) => display !== undefined);
}

/** Unit of lengths for a heading. */
export function unitName(display: Display | undefined, { units }: HtmlPhrases): string {
  return units[display?.length ?? 'mm'];
}

/** Writes lengths, millimetres, in the unit of the project alone: for tables whose heading names the unit. */
export function lengthsOf(display: Display | undefined): (mm: number) => string {
  const unit = display?.length ?? 'mm';
  // A fraction on the next line would be read as another length.
  if (unit === 'ft-in') return (mm) => formatFeetInches(mm, display?.fraction ?? 64).replace(' ', '\u00a0');
  const decimals = display?.decimals ?? { mm: 1, m: 4, ft: 3, in: 3 }[unit];
  return (mm) => formatLength(mm, { unit, decimals });
}

/** A party as people name it: the person and the firm. */
export function partyName(layout: ReportedLayout, id: string | undefined): string | undefined {
  if (id === undefined) return undefined;
  const party: Party | undefined = layout.model.collection('parties').records.find((one) => one?.id === id);
  if (party === undefined) return id;
  return party.person === undefined ? party.firm : `${party.person}, ${party.firm}`;
}
