import type { AcceptedFinding, Baseline } from '../generated/baseline.js';
import type { AppliedAcceptance } from '../generated/report.js';
import { isSameFact, lastingFacts } from './lasting-facts.js';

/** A baseline that cannot be applied; the message says why. */
export class BadBaseline extends Error {}

/** What a finding is about: the id of its hole, else collection and id of its record, else its pointer or row. */
export interface About {
  hole?: string;
  record?: string;
  pointer?: string;
  /** Id of the other layout, where it is between two. */
  with?: string;
}

/** What was looked at in a check. */
export interface Looked {
  /** Ids of all layouts that were checked. */
  layouts: ReadonlySet<string>;
  /** Whether nothing of a layout was left out for being broken or in doubt. */
  isWhole(layout: string): boolean;
  /** Whether a rule ran on all that it is about. */
  ranOnAll(rule: string): boolean;
}

interface Accepted {
  entry: number;
  with: string | undefined;
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
        const key = placeKey(rule, layout, finding);
        const known = this.byPlace.get(key) ?? [];
        if (known.length === 0) this.byPlace.set(key, known);
        const data = lastingFacts(finding.data as Record<string, unknown>);
        known.push({ entry, with: finding.with, data, isMet: false });
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
    const met = candidates.filter((one) => !one.isMet && one.with === about.with && isSameFact(one.data, facts));
    const one = met.find(({ entry }) => !this.isExpired[entry]) ?? met.at(0);
    if (one === undefined) return undefined;
    one.isMet = true;
    return this.isExpired[one.entry] ? undefined : one.entry + 1;
  }

  /**
   * What became of each entry.
   *
   * @throws BadBaseline where it is about none of the layouts
   */
  states(looked: Looked): AppliedAcceptance[] {
    const { entries } = this.baseline;
    if (entries.length > 0 && !entries.some(({ layout }) => looked.layouts.has(layout)))
      throw new BadBaseline(
        `The baseline is about ${listed(entries.map(({ layout }) => layout))}; checked was ${listed([...looked.layouts])}.`,
      );
    const matched = new Array<number>(entries.length).fill(0);
    for (const list of this.byPlace.values()) for (const { entry, isMet } of list) matched[entry] += isMet ? 1 : 0;
    return entries.map((entry, k) => {
      const { findings, rule, layout, reason, owner, accepted, expires, question } = entry;
      const isLooked = findings.every((finding) => canBeMissed(rule, layout, finding, looked));
      const state =
        matched[k] === 0 ? (isLooked ? 'stale' : 'not-checked') : this.isExpired[k] ? 'expired' : 'in-force';
      return {
        ...{ rule, layout, reason, owner },
        ...(accepted !== undefined && { accepted }),
        expires,
        ...(question !== undefined && { question }),
        state,
        findings: findings.length,
        matched: matched[k],
      };
    });
  }
}

/** Whether a finding that was not met is gone: all that it hangs on was looked at. */
export function canBeMissed(rule: string, layout: string, finding: AcceptedFinding, looked: Looked): boolean {
  const layouts = [layout, ...(finding.with === undefined ? [] : [finding.with])];
  return looked.ranOnAll(rule) && layouts.every((id) => looked.layouts.has(id) && looked.isWhole(id));
}

function placeKey(rule: string, layout: string, { hole, record, pointer }: About): string {
  const about = hole !== undefined ? ['hole', hole] : record !== undefined ? ['record', record] : ['at', pointer ?? ''];
  return JSON.stringify([rule, layout, ...about]);
}

function listed(names: readonly string[]): string {
  const distinct = [...new Set(names)];
  const shown = distinct.slice(0, 5).map((name) => JSON.stringify(name));
  const rest = distinct.length - shown.length;
  return distinct.length === 0 ? 'no layout' : `${shown.join(', ')}${rest > 0 ? ` and ${rest} more` : ''}`;
}
