import type { Observation, Severity } from './observation.js';

/** An observation with what the collector knows of it. */
export interface Kept extends Observation {
  /** Number of the input, from 0. */
  input: number;
  severity: Severity;
  /** Index into {@link Collector.causes}. */
  causeIndex: number;
}

/** What several observations share. */
export interface KeptCause {
  rule: string;
  severity: Severity;
  input: number;
  /** The first observation; its data speaks for all. */
  first: Observation;
  count: number;
  /** Indexes of the first holes. */
  holes: number[];
  /** Whether it gathers what came when there were too many causes to tell apart. */
  isRest: boolean;
  /** Number of the entry of a baseline that accepts all of it. */
  accepted: number | undefined;
}

/** Severity of a rule where the observation gives none; `off` drops the observation. */
export type SeverityOf = (rule: string) => Severity | 'off';

const MOST_HOLES_OF_A_CAUSE = 20;
/** Beyond this many, further causes of a rule are counted as one, so that no input can exhaust memory. */
const MOST_CAUSES = 10_000;

/**
 * Counts all observations, sorts them into causes, and keeps the first ones of each rule.
 *
 * Counts are exact whatever is kept. As every rule goes through the records in order, the first ones of
 * each rule hold the first ones of all.
 */
export class Collector {
  /** Findings that nothing accepts. */
  readonly counts: Record<Severity, number> = { error: 0, warning: 0, info: 0 };
  readonly acceptedCounts: Record<Severity, number> = { error: 0, warning: 0, info: 0 };
  readonly countOfRule = new Map<string, number>();
  readonly causes: KeptCause[] = [];
  readonly kept: Kept[] = [];
  private readonly keptOfRule = new Map<string, number>();
  private readonly causeIndexes = new Map<string, number>();

  constructor(
    private readonly severityOf: SeverityOf,
    private readonly limit: number,
  ) {}

  /** Takes an observation; tells whether further ones of its rule, cause and severity will only be counted. */
  observe(input: number, observation: Observation): boolean {
    const { rule, at, accepted } = observation;
    const usual = this.severityOf(rule);
    if (usual === 'off') return true;
    const severity = observation.severity ?? usual;
    const { count = 1 } = observation;
    (accepted === undefined ? this.counts : this.acceptedCounts)[severity] += count;
    this.countOfRule.set(rule, (this.countOfRule.get(rule) ?? 0) + count);
    const causeIndex = this.causeIndex(input, observation, severity);
    const cause = this.causes[causeIndex];
    cause.count += count;
    if (at.hole !== undefined && cause.holes.length < MOST_HOLES_OF_A_CAUSE) cause.holes.push(at.hole);
    const key = `${input} ${rule}`;
    const kept = this.keptOfRule.get(key) ?? 0;
    if (kept >= this.limit) return at.hole === undefined || cause.holes.length >= MOST_HOLES_OF_A_CAUSE;
    this.keptOfRule.set(key, kept + 1);
    this.kept.push({ ...observation, input, severity, causeIndex });
    return false;
  }

  get total(): number {
    const { counts, acceptedCounts: accepted } = this;
    return counts.error + counts.warning + counts.info + accepted.error + accepted.warning + accepted.info;
  }

  private causeIndex(input: number, observation: Observation, severity: Severity): number {
    const { rule, cause, accepted } = observation;
    const kind = `${input}\u0000${rule}\u0000${severity}\u0000${accepted ?? ''}\u0000`;
    const known = this.causeIndexes.get(kind + cause);
    if (known !== undefined) return known;
    const isRest = this.causes.length >= MOST_CAUSES;
    // No cause is called so: a control character is in no id and no path.
    const key = kind + (isRest ? '\u0001rest' : cause);
    const gathered = this.causeIndexes.get(key);
    if (gathered !== undefined) return gathered;
    const index =
      this.causes.push({ rule, severity, input, first: observation, count: 0, holes: [], isRest, accepted }) - 1;
    this.causeIndexes.set(key, index);
    return index;
  }
}
