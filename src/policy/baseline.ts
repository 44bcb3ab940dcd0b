import type { AcceptedFinding, Baseline } from '../generated/baseline.js';
import type { AppliedAcceptance } from '../generated/report.js';

/** A baseline that cannot be applied; the message says why. */
export class BadBaseline extends Error {}

/** Numbers that differ by no more are the same fact: a layout is written with six decimals of a millimetre. */
const SAME = 0.0005;

/** Facts that hang on the day of the check or on which inputs it was given, not on what was accepted. */
const PASSING: ReadonlySet<string> = new Set(['day', 'input', 'otherInput', 'otherName']);

/** What a finding is about: the id of its hole, else its pointer or row. */
export type About = { hole: string } | { pointer: string };

/** The facts of a finding that decide whether it is the one that was accepted. */
export function lastingFacts(data: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(data).filter(([key, value]) => !PASSING.has(key) && value !== undefined));
}

/** Whether two facts are the same: numbers within 0.0005, all else equal. */
export function isSameFact(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) <= SAME || Object.is(a, b);
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && isSameFact(a[key as keyof typeof a], b[key as keyof typeof b]))
  );
}

interface Accepted {
  entry: number;
  data: Record<string, unknown>;
  isMet: boolean;
}

/**
 * A baseline at work: says of each finding whether it was accepted, and in the end what became of its entries.
 *
 * A finding is accepted if an entry of its rule and layout that has not run out names what it is about, with the
 * same facts. One acceptance holds for one finding at a time: a second hole of the same id is not covered.
 */
export class AppliedBaseline {
  private readonly byPlace = new Map<string, Accepted[]>();
  private readonly isExpired: boolean[];
  private readonly rules: ReadonlySet<string>;

  /**
   * @param asOf time that is taken as now, RFC 3339
   * @throws BadBaseline where entries have to be held against a day and none was given
   */
  constructor(
    private readonly baseline: Baseline,
    asOf: string | undefined,
  ) {
    if (asOf === undefined && baseline.entries.length > 0)
      throw new BadBaseline('What a baseline accepts ends on a day; the check needs to be told the time (asOf).');
    const day = asOf?.slice(0, 'YYYY-MM-DD'.length) ?? '';
    // Dates of four, two and two digits come in the order of their texts.
    this.isExpired = baseline.entries.map(({ expires }) => expires < day);
    this.rules = new Set(baseline.entries.map(({ rule }) => rule));
    baseline.entries.forEach(({ rule, layout, findings }, entry) => {
      for (const finding of findings) {
        const key = placeKey(rule, layout, aboutOf(finding));
        const known = this.byPlace.get(key) ?? [];
        if (known.length === 0) this.byPlace.set(key, known);
        known.push({ entry, data: lastingFacts(finding.data as Record<string, unknown>), isMet: false });
      }
    });
  }

  /** Whether findings of a rule have to be asked about one by one. */
  concerns(rule: string): boolean {
    return this.rules.has(rule);
  }

  /** Number from 1 of the entry that accepts a finding; undefined where none does. */
  entryFor(rule: string, layout: string, about: About, data: Readonly<Record<string, unknown>>): number | undefined {
    const candidates = this.byPlace.get(placeKey(rule, layout, about));
    if (candidates === undefined) return undefined;
    const facts = lastingFacts(data);
    // What has run out is met too, so that it is told from what is gone; one that is in force comes first.
    const met = candidates.filter((one) => !one.isMet && isSameFact(one.data, facts));
    const one = met.find(({ entry }) => !this.isExpired[entry]) ?? met.at(0);
    if (one === undefined) return undefined;
    one.isMet = true;
    return this.isExpired[one.entry] ? undefined : one.entry + 1;
  }

  /**
   * What became of each entry.
   *
   * @param layouts ids of the layouts that were checked
   * @param ran whether a rule ran
   * @throws BadBaseline where it is about none of the layouts
   */
  states(layouts: ReadonlySet<string>, ran: (rule: string) => boolean): AppliedAcceptance[] {
    const { entries } = this.baseline;
    if (entries.length > 0 && !entries.some(({ layout }) => layouts.has(layout)))
      throw new BadBaseline(
        `The baseline is about ${listed(entries.map(({ layout }) => layout))}; checked was ${listed([...layouts])}.`,
      );
    const matched = new Array<number>(entries.length).fill(0);
    for (const list of this.byPlace.values()) for (const { entry, isMet } of list) matched[entry] += isMet ? 1 : 0;
    return entries.map(({ findings, rule, layout, reason, owner, accepted, expires, question }, k) => ({
      ...{ rule, layout, reason, owner },
      ...(accepted !== undefined && { accepted }),
      expires,
      ...(question !== undefined && { question }),
      state: this.stateOf(k, matched[k], layouts.has(layout) && ran(rule)),
      findings: findings.length,
      matched: matched[k],
    }));
  }

  private stateOf(entry: number, matched: number, isChecked: boolean) {
    if (!isChecked) return 'not-checked';
    if (matched === 0) return 'stale';
    return this.isExpired[entry] ? 'expired' : 'in-force';
  }
}

function aboutOf({ hole, pointer = '' }: AcceptedFinding): About {
  return hole === undefined ? { pointer } : { hole };
}

function placeKey(rule: string, layout: string, about: About): string {
  return JSON.stringify([rule, layout, 'hole' in about, 'hole' in about ? about.hole : about.pointer]);
}

function listed(names: readonly string[]): string {
  const distinct = [...new Set(names)];
  const shown = distinct.slice(0, 5).map((name) => JSON.stringify(name));
  const rest = distinct.length - shown.length;
  return distinct.length === 0 ? 'no layout' : `${shown.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}
