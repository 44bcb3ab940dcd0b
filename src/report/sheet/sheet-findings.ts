import type { Hole } from '../../generated/layout.js';
import type { Cause, Finding, Place, Report } from '../../generated/report.js';
import type { Severity } from '../../model/observation.js';
import { clip } from '../clip.js';
import { printable } from '../../model/printable.js';
import { verdictLines } from '../text.js';
import { oneLine } from './one-line.js';
import type { SheetWords } from './sheet-words.js';

/** What a check said, and which of its inputs the sheets are of, from 0. */
export interface SheetCheck {
  readonly report: Report;
  readonly input: number;
  /** Other layouts that were looked at, and those that were not since their frame is another one. Names. */
  readonly together: readonly string[];
  readonly apart: readonly string[];
}

/** What a row says of the findings of its hole. */
export interface RowFindings {
  /** The gravest finding that is not accepted; `accepted`: all of them are. */
  readonly state: 'error' | 'warning' | 'accepted';
  /** Printable. */
  readonly lines: readonly string[];
}

/** A row as far as its findings go. */
interface MarkedRow {
  readonly number: number;
  readonly findings: RowFindings | undefined;
  readonly hidden: readonly Finding[];
}

/** Rules that say of one hole what is wrong between it and another. */
const BETWEEN_HOLES: ReadonlySet<string> = new Set(['bores-overlap', 'holes-coincide', 'holes-too-close', 'tag-clash']);

/** A hole by its id and the group that it belongs to. */
type KnownHole = Pick<Hole, 'id' | 'group'>;

const ofHole = (id: string) => `hole ${id}`;
const ofGroup = (id: string) => `group ${id}`;

/** Index of the group that a place is in; undefined where it is in none. */
function groupIndex({ place: { pointer } }: { place: Place }): number | undefined {
  const index = /^\/groups\/(\d+)(?:\/|$)/.exec(pointer ?? '')?.[1];
  return index === undefined ? undefined : Number(index);
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, info: 2 };
/** More findings that name no hole than this are counted. */
const MOST_GENERAL = 4;
/** Longer messages end in an ellipsis: a row has two lines for them. */
const LONGEST_MESSAGE = 220;

/** The findings of a check as sheets show them: by hole, and those that name none. */
export class SheetFindings {
  private readonly byPlace = new Map<string, Finding[]>();
  private readonly general: readonly Cause[];

  constructor(
    private readonly check: SheetCheck | undefined,
    private readonly words: SheetWords,
    groups: readonly { readonly id: string }[],
  ) {
    const own = <T extends { input: number }>(list: readonly T[]) =>
      check === undefined ? [] : list.filter(({ input }) => input === check.input + 1);
    for (const finding of own(check?.report.findings ?? [])) {
      const group = groups[groupIndex(finding) ?? -1]?.id;
      const key = finding.id === undefined ? (group === undefined ? undefined : ofGroup(group)) : ofHole(finding.id);
      if (key !== undefined) this.note(key, finding);
    }
    for (const finding of check?.report.findings ?? []) this.noteAtOther(finding, (check?.input ?? 0) + 1);
    this.general = own(check?.report.causes ?? []).filter(
      (cause) => cause.holes.length === 0 && groups[groupIndex(cause) ?? -1] === undefined,
    );
  }

  private note(key: string, finding: Finding): void {
    const known = this.byPlace.get(key);
    if (known === undefined) this.byPlace.set(key, [finding]);
    else known.push(finding);
  }

  /** A finding between two holes that stands at one of them, here or in another layout, is one of the other hole too. */
  private noteAtOther(finding: Finding, own: number): void {
    const { rule, id, tag, input, data, message } = finding;
    const { other, otherInput = input } = data;
    if (!BETWEEN_HOLES.has(rule) || typeof other !== 'string' || otherInput !== own) return;
    const key = ofHole(other);
    if (this.byPlace.get(key)?.some((known) => known.rule === rule)) return;
    this.note(key, { ...finding, message: this.words.findingAtOther(printable(tag ?? id ?? ''), message) });
  }

  private allOf({ id, group }: KnownHole): Finding[] {
    const ofItsGroup = group === undefined ? [] : (this.byPlace.get(ofGroup(group)) ?? []);
    return [...(this.byPlace.get(ofHole(id)) ?? []), ...ofItsGroup];
  }

  /** What is said of a hole, or of its group as a whole; undefined without an error, a warning or an accepted one. */
  ofHole(hole: KnownHole): RowFindings | undefined {
    const { first, accepted } = this.shownOf(hole);
    const lines = [
      ...(first === undefined ? [] : [this.words.finding(first.severity, this.messageOf(first))]),
      ...(accepted === undefined ? [] : [this.acceptedLine(accepted)]),
    ];
    if (lines.length === 0) return undefined;
    const state = first === undefined ? 'accepted' : first.severity === 'error' ? 'error' : 'warning';
    return { state, lines };
  }

  /** Findings of a hole that no line of its row shows. */
  hiddenOf(hole: KnownHole): Finding[] {
    const { first, accepted } = this.shownOf(hole);
    return this.allOf(hole).filter((finding) => finding !== first && finding !== accepted);
  }

  /** The gravest finding that is not accepted, and the first one that is; those that are there to be known only left aside. */
  private shownOf(hole: KnownHole): { first: Finding | undefined; accepted: Finding | undefined } {
    const all = this.allOf(hole).filter(({ severity }) => severity !== 'info');
    const [first] = all.filter(isOpen).sort((a, b) => RANK[a.severity] - RANK[b.severity]);
    return { first, accepted: all.find((one) => !isOpen(one)) };
  }

  /** What the band of a sheet says: verdict, what was looked at, which holes are marked; then what names no hole. */
  ofSheet(rows: readonly MarkedRow[]): string[] {
    const { check, words } = this;
    if (check === undefined) return [words.notChecked];
    const { report } = check;
    return [
      `${printable(verdictLines(report, words.phrases)[1])} ${this.scopeOf(check)} ${this.holesInWords(rows)}`,
      ...this.generalInWords(),
      ...(report.sample.listed < report.sample.total
        ? [words.notKept(report.sample.total - report.sample.listed)]
        : []),
    ];
  }

  private scopeOf({ together, apart }: SheetCheck): string {
    const { words } = this;
    const looked = together.length === 0 ? words.checkedAlone : words.checkedWith(together.map(fileName).join(', '));
    return apart.length === 0 ? looked : `${looked} ${words.notLookedAt(apart.map(fileName).join(', '))}`;
  }

  private holesInWords(rows: readonly MarkedRow[]): string {
    const { words } = this;
    const of = (state: RowFindings['state']) =>
      rows.filter(({ findings }) => findings?.state === state).map(({ number }) => number);
    const [errors, warnings, accepted] = [of('error'), of('warning'), of('accepted')];
    // A finding about a group is one, whichever of its holes are here.
    const notShown = new Set(rows.flatMap(({ hidden }) => hidden)).size;
    return [
      words.holesWithFindings(errors.length + warnings.length + accepted.length, rows.length),
      ...(errors.length > 0 ? [words.holesWithErrors(errors.join(', '))] : []),
      ...(warnings.length > 0 ? [words.holesWithWarnings(warnings.join(', '))] : []),
      ...(accepted.length > 0 ? [words.holesAccepted(accepted.join(', '))] : []),
      ...(notShown > 0 ? [words.findingsNotShown(notShown)] : []),
    ].join(' ');
  }

  private generalInWords(): string[] {
    const { words, general } = this;
    const told = general
      .filter(({ severity }) => severity !== 'info')
      .sort((a, b) => Number(!isOpen(a)) - Number(!isOpen(b)) || RANK[a.severity] - RANK[b.severity]);
    const lines = told
      .slice(0, MOST_GENERAL)
      .map((one) => (isOpen(one) ? words.finding(one.severity, this.messageOf(one)) : this.acceptedLine(one)));
    const rest = general.length - lines.length;
    return rest > 0 ? [...lines, words.moreGeneral(rest)] : lines;
  }

  private messageOf({ message }: { message: string }): string {
    return oneLine(clip(message, LONGEST_MESSAGE));
  }

  private acceptedLine(one: Finding | Cause): string {
    const entry = this.check?.report.baseline?.entries[(one.accepted ?? 0) - 1];
    const owner = printable(entry?.owner ?? '');
    return this.words.acceptedFinding(owner, printable(entry?.expires ?? ''), this.messageOf(one));
  }
}

/** Without the folders, which say nothing on paper. */
function fileName(path: string): string {
  return printable(path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1));
}

function isOpen({ accepted }: { accepted?: number }): boolean {
  return accepted === undefined;
}
