import type { PlanWords } from '../../draw/plan-words.js';
import type { GridDimensionWords } from '../../frame/grid-dimension-text.js';
import type { Display } from '../../generated/layout.js';
import type { AppliedAcceptance, Report } from '../../generated/report.js';
import type { Language } from '../../model/language.js';

/**
 * All fixed words of the report for people; messages, verdicts and places are those of {@link Language}. What is
 * handed in is text as it stands in the layouts, and what comes back is escaped by the page. Heads of tables are in
 * the order of their columns.
 */
export interface HtmlPhrases {
  /** Words of the plans. */
  readonly plan: PlanWords;
  readonly gridDimensions: GridDimensionWords;
  /** A choice of the format, such as `trade-contractor`, as people read it; one that is not known as it is. */
  choice(value: string): string;
  /** Why something was not judged, from the English text of the report. */
  reason(english: string): string;
  /** Units of lengths, for headings. */
  readonly units: Readonly<Record<NonNullable<Display['length']>, string>>;
  /** Where the texts of the rules are to be had, which are English. Absent: the language is English, and they are given. */
  readonly rulesElsewhere?: string;
  title(name: string): string;
  /** What stands before the number of a page on paper, and between it and the number of pages. */
  readonly page: readonly [before: string, between: string];
  readonly first: FirstPagePhrases;
  readonly unsaid: UnsaidPhrases;
  readonly layout: LayoutPhrases;
  readonly sources: SourcesPhrases;
  readonly frame: FramePhrases;
  readonly holes: HolesPhrases;
  readonly changes: ChangesPhrases;
  readonly unjudged: UnjudgedPhrases;
  readonly causes: CausesPhrases;
  readonly accepted: AcceptedPhrases;
  readonly trades: TradesPhrases;
  readonly plans: PlansPhrases;
  readonly schedule: SchedulePhrases;
  readonly review: ReviewPhrases;
}

/** A language that has the words of the report for people too. */
export interface HtmlLanguage extends Language {
  readonly html: HtmlPhrases;
}

export interface FirstPagePhrases {
  readonly kind: string;
  readonly projectNumber: string;
  readonly phase: string;
  readonly place: string;
  readonly purpose: string;
  readonly purposes: Readonly<Record<Report['purpose'], string>>;
  readonly asOf: string;
  readonly lengths: string;
  /** Behind the unit where no layout says which. */
  readonly unitNotGiven: string;
  readonly checkedWith: string;
  readonly verdictHeading: string;
  formOfFiles(verdict: Report['verdict']['format']): string;
  site(verdict: Report['verdict']['site']): string;
  readonly documentsHeading: string;
  readonly file: string;
  readonly documentKind: string;
  readonly size: string;
  bytes(count: number): string;
  readonly fileDigest: string;
  readonly holes: string;
  readonly judgedHoles: string;
}

/** What the first page says besides the verdicts. */
export interface UnsaidPhrases {
  readonly heading: string;
  /** Findings by severity, those left aside that are accepted. */
  found(counts: Report['counts'] & { accepted: number }): string;
  unjudged(notRun: number, inPart: number): string;
  readonly noKeepOuts: string;
  keepOuts(count: number): string;
  keepOutsUnjudged(count: number): string;
  readonly scansOff: string;
  otherUnit(file: string, unit: string, unitOfPage: string): string;
}

/** Names of what the header of a layout says. */
export interface LayoutPhrases {
  readonly layout: string;
  readonly revision: string;
  readonly supersedes: string;
  readonly madeFrom: string;
  revisionOf(revision: string, layout: string): string;
  readonly issued: string;
  readonly issuedBy: string;
  readonly revisionNote: string;
  readonly submittal: string;
  readonly transmittal: string;
  readonly specSection: string;
  readonly handedOverFor: string;
  readonly preparedBy: string;
  readonly checkedBy: string;
}

export interface SourcesPhrases {
  readonly heading: string;
  readonly documents: string;
  readonly documentHeads: readonly [
    title: string,
    kind: string,
    revision: string,
    date: string,
    from: string,
    digest: string,
  ];
  readonly parties: string;
  readonly partyHeads: readonly [firm: string, person: string, role: string, contact: string];
}

export interface FramePhrases {
  readonly heading: string;
  levels(unit: string): string;
  readonly levelHeads: readonly [
    level: string,
    building: string,
    datum: string,
    finishedFloor: string,
    structuralTop: string,
    soffits: string,
  ];
  control(unit: string): string;
  readonly controlHeads: readonly [
    point: string,
    x: string,
    y: string,
    height: string,
    pointClass: string,
    sigmaPlan: string,
    sigmaHeight: string,
    source: string,
    verified: string,
    replacedBy: string,
  ];
  readonly heightNotGiven: string;
  readonly siteFrame: string;
  aboutAxes(frame: string): string;
  readonly heightsFrom: string;
  readonly trueNorth: string;
  readonly projectNorth: string;
  turned(degrees: number): string;
  readonly map: string;
  georeference(crs: string, eastings: number, northings: number): string;
  readonly note: string;
}

export interface HolesPhrases {
  readonly heading: string;
  readonly byLevel: string;
  readonly levelHeads: readonly [level: string, holes: string];
  readonly noLevel: string;
  readonly byArea: string;
  readonly areaHeads: readonly [area: string, holes: string];
  readonly noArea: string;
  readonly byTrade: string;
  readonly tradeHeads: readonly [trade: string, firm: string, holes: string];
  readonly noTrade: string;
  types(unit: string): string;
  /** Long words with soft hyphens, since the table is wide. */
  readonly typeHeads: readonly [
    type: string,
    holes: string,
    anchor: string,
    diameter: string,
    depth: string,
    embedment: string,
    spacing: string,
    edge: string,
    thickness: string,
    valuesFrom: string,
    approval: string,
  ];
  /** Groups with a spacing of their own, which takes the place of that of the type. */
  groupSpacings(unit: string): string;
  readonly groupHeads: readonly [kind: string, groups: string, spacing: string, source: string, ids: string];
  moreSpacings(count: number): string;
  edition(name: string): string;
  validUntil(date: string): string;
}

export interface ChangesPhrases {
  readonly heading: string;
  readonly declaredOnly: string;
  /** The same for layouts that could not be read to their end, of which the revision before is at hand. */
  readonly declaredUnread: string;
  readonly declaredHeads: readonly [layout: string, kind: string, holes: string, reason: string, question: string];
  /** For the first page: so many differences that no declared change names. */
  undeclared(layout: string, before: string, count: number): string;
  otherParent(layout: string, before: string): string;
  /** Two revisions of one label are not alike. */
  oneLabel(layout: string, label: string): string;
  /** A layout that could not be read to its end is not held against the revision before. */
  uncompared(layout: string): string;
  readonly declared: string;
  readonly declaredHereHeads: readonly [change: string, kind: string, holes: string, reason: string, question: string];
  revisions(layout: string, before: string, after: string): string;
  numbers(before: number, after: number, paired: number, unchanged: number): string;
  /** Whether the later layout names the earlier one as its parent. */
  readonly parent: Readonly<Record<'matches' | 'differs' | 'absent', string>>;
  newIds(trades: string): string;
  knownAgain(byPlace: number, byId: number): string;
  moved(unit: string): string;
  /** The last column of this and the next tables: whether it was declared. */
  readonly movedHeads: readonly [
    hole: string,
    from: string,
    to: string,
    by: string,
    distance: string,
    isDeclared: string,
  ];
  readonly added: string;
  readonly addedHeads: readonly [hole: string, replaces: string, isDeclared: string];
  readonly removed: string;
  readonly removedHeads: readonly [hole: string, replacedBy: string, isDeclared: string];
  respecified(unit: string): string;
  readonly reassigned: string;
  readonly memberHeads: readonly [hole: string, what: string, isDeclared: string];
  readonly renumbered: string;
  readonly renumberedHeads: readonly [hole: string, from: string, to: string, isDeclared: string];
  redefined(unit: string): string;
  readonly redefinedHeads: readonly [
    definition: string,
    state: string,
    what: string,
    holes: string,
    isDeclared: string,
  ];
  readonly states: Readonly<Record<'added' | 'removed' | 'changed', string>>;
  readonly header: string;
  readonly headerHeads: readonly [member: string, what: string];
  readonly notFound: string;
  readonly notFoundHeads: readonly [change: string, kind: string, holes: string];
  change(number: number): string;
  readonly isDeclared: Readonly<Record<'for-all' | 'for-some' | 'for-none', string>>;
  more(count: number): string;
  /** Behind a list of ids. */
  moreIds(count: number): string;
  was(name: string, before: string): string;
  /** Behind a position without a height. */
  readonly asFound: string;
  readonly noValue: string;
}

export interface UnjudgedPhrases {
  readonly heading: string;
  off(rules: string): string;
  readonly rules: string;
  readonly ruleHeads: readonly [rule: string, about: string, judged: string, why: string];
  readonly notRun: string;
  judged(judged: number, of: number): string;
  readonly settings: string;
  readonly settingHeads: readonly [rule: string, setTo: string];
  severity(severity: string): string;
}

export interface CausesPhrases {
  readonly heading: string;
  readonly nothing: string;
  /** In place of `nothing` where all findings are accepted. */
  onlyAccepted(count: number): string;
  more(count: number): string;
  kept(listed: number, total: number): string;
  rule(id: string): string;
  readonly holes: string;
  readonly why: string;
  readonly mend: string;
  readonly accept: string;
}

export interface AcceptedPhrases {
  readonly heading: string;
  readonly caption: string;
  readonly heads: readonly [
    rule: string,
    what: string,
    holes: string,
    thereNow: string,
    reason: string,
    question: string,
    owner: string,
    since: string,
    until: string,
    state: string,
  ];
  matched(now: number, accepted: number): string;
  readonly states: Readonly<Record<AppliedAcceptance['state'], string>>;
}

export interface TradesPhrases {
  readonly heading: string;
  caption(isPart: boolean): string;
  /** Before the table where not all findings were kept, and where it is left out for that. */
  kept(listed: number, total: number): string;
  readonly heads: readonly [between: string, and: string, rule: string, findings: string, example: string];
}

export interface PlansPhrases {
  readonly heading: string;
  readonly numbers: string;
  moreLevels(count: number): string;
}

export interface SchedulePhrases {
  readonly heading: string;
  /** @param datum name of what heights count from; undefined where the layouts have none */
  lengths(unit: string, datum: string | undefined): string;
  readonly heads: readonly [
    tag: string,
    id: string,
    trade: string,
    type: string,
    dimensions: string,
    x: string,
    y: string,
    height: string,
    substrate: string,
  ];
  readonly noLevel: string;
  readonly asFound: string;
  more(count: number): string;
}

export interface ReviewPhrases {
  readonly heading: string;
  readonly byHand: string;
  readonly outcomes: readonly string[];
  readonly signatures: string;
  readonly heads: readonly [role: string, firm: string, name: string, date: string, signature: string];
  readonly roles: readonly string[];
}
