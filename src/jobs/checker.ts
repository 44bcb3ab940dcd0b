import type { Covered } from '../check/check-layout.js';
import { checkSites } from '../check/check-sites.js';
import { rules } from '../check/list.js';
import type { Settings } from '../check/run.js';
import type { Baseline } from '../generated/baseline.js';
import type { ColumnProfile } from '../generated/column-profile.js';
import { PACKAGE_VERSION } from '../generated/package-version.js';
import type { Coverage as CoverageRow, Finding, Place, Report } from '../generated/report.js';
import type { ByteSource } from '../model/byte-source.js';
import { Collector, type KeptCause } from '../model/collector.js';
import type { Language } from '../model/language.js';
import type { Observation, Severity } from '../model/observation.js';
import { type Purpose, severityFor } from '../model/rule.js';
import { buildReport } from '../report/build-report.js';
import { english } from '../report/languages/en.js';
import { sayAs } from '../report/say.js';
import { Acceptances } from './acceptances.js';
import type { CheckedInput, ClosedInput, HoleIdentity } from './checked-input.js';
import { coverageOf, verdictOf } from './conclude.js';
import { causeMessage, inOrder, newFinding, ruleOf } from './findings.js';
import { JsonInput } from './json-input.js';
import { checkRuleOptions } from './rule-options.js';
import { checkSeverities } from './severities.js';
import { TableInput } from './table-input.js';

/** A running digest, such as SHA-256. */
export interface Hasher {
  update(bytes: Uint8Array): void;
  /** The digest in lower-case hexadecimal digits. */
  hex(): string;
}

/** What a check is asked to do. */
export interface CheckOptions {
  /** What the inputs are checked for. Absent: for review. */
  purpose?: Purpose;
  /** Most findings listed in the report; counts are exact all the same. Absent: 1000. */
  sampleLimit?: number;
  /** Time that the check takes as now, RFC 3339; goes into the report. */
  asOf?: string;
  /** Severity of single rules in every case, `off` for those not wanted. */
  severities?: Readonly<Record<string, Severity | 'off'>>;
  /** Options of rules that differ from their defaults, by rule and name; see the catalogue of rules. */
  ruleOptions?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  /** Findings that the project has accepted for a time; needs `asOf`. */
  baseline?: Baseline;
  /** URIs of extensions that the caller understands. */
  extensions?: readonly string[];
  /**
   * Language of the messages, such as `es` from `anchor-hole-exchange/languages/es`. What it lacks words for is
   * said in English. Absent: English.
   */
  language?: Language;
  /** Makes a SHA-256; absent: inputs have no digest in the report. */
  sha256?: () => Hasher;
}

/** What is said about an input when it is opened. */
export interface OpenOptions {
  /** Profile to read a table with; absent: the input is JSON. */
  profile?: ColumnProfile;
  /** The same bytes, to look at again for lines and columns; absent: the checker keeps them. */
  source?: ByteSource;
}

export const DEFAULT_SAMPLE_LIMIT = 1000;
const DEFAULT_PURPOSE: Purpose = 'for-review';

/**
 * Checks inputs whose bytes are pushed in, one input after the other.
 *
 * `open`, `write` and `close` for each input, then `end` for the report; `write` and `end` do for a single one. It does no input or output, asks
 * no clock, and gives the same report for the same bytes, however they were cut into chunks.
 */
export class Checker {
  private readonly collector: Collector;
  private readonly checked: CheckedInput[] = [];
  private readonly findings: Finding[] = [];
  private readonly causePlaces: Place[] = [];
  private readonly causeHoles: HoleIdentity[][] = [];
  private current: JsonInput | TableInput | undefined;
  private hasher: Hasher | undefined;
  private readonly acceptances: Acceptances | undefined;
  /** Fixes of more operations than this are left out of the report. */
  protected readonly mostOperations: number = 1000;

  /** @throws BadSeverity, BadRuleOption, BadBaseline */
  constructor(private readonly options: CheckOptions = {}) {
    checkSeverities(options.severities ?? {});
    checkRuleOptions(options.ruleOptions ?? {});
    this.acceptances = options.baseline && new Acceptances(options.baseline, options.asOf, this.checked);
    this.collector = new Collector((rule) => this.severityOf(rule), this.limit);
  }

  /** Begins an input. */
  open(name: string, { profile, source }: OpenOptions = {}): void {
    if (this.current !== undefined) throw new Error('The input before is still open.');
    const input = this.checked.length;
    const inputOptions = {
      name,
      source,
      extensions: new Set(this.options.extensions),
      observe: (observation: Observation) => this.observe(input, observation),
      settings: this.settings,
    };
    this.hasher = this.options.sha256?.();
    this.current = profile === undefined ? new JsonInput(inputOptions) : new TableInput(profile, inputOptions);
  }

  /** Takes the next bytes of the open input; opens one where none is. */
  write(bytes: Uint8Array): void {
    if (this.current === undefined) this.open(`input ${this.checked.length + 1}`);
    this.hasher?.update(bytes);
    this.current?.write(bytes);
  }

  /** Ends the open input and judges it. */
  close(): ClosedInput {
    if (this.current === undefined) throw new Error('No input is open.');
    const input = this.current.close();
    if (this.hasher !== undefined) input.summary.digest = `sha256:${this.hasher.hex()}`;
    this.current = undefined;
    this.checked.push(input);
    for (const observation of this.acceptances?.takeWaiting() ?? []) this.take(this.checked.length - 1, observation);
    return input;
  }

  /** Takes note of an input that cannot be read, or not to its end: nothing that is said of it can be a pass. */
  unreadable(name: string): void {
    if (this.current !== undefined) this.close();
    else this.checked.push(unreadableInput(name));
    this.checked[this.checked.length - 1] = {
      ...this.checked[this.checked.length - 1],
      hindrances: new Set(['unreadable']),
    };
  }

  /** Ends the check. Inputs that were opened with a source are looked at once more for places and names. */
  end(): Report {
    if (this.current !== undefined) this.close();
    const { collector, options, checked } = this;
    const covered = this.judgeTogether();
    checked.forEach((input, index) => {
      this.settle(input, index);
    });
    const findings = this.findings.slice(0, this.limit);
    const verdict = verdictOf(collector.causes, checked);
    const coverage = rules.map((rule): CoverageRow => {
      const found = collector.countOfRule.get(rule.id) ?? 0;
      return coverageOf(rule, found, this.severityOf(rule.id) === 'off', checked, covered);
    });
    return buildReport({
      tool: { name: 'anchor-hole-exchange', version: PACKAGE_VERSION },
      asOf: options.asOf,
      purpose: options.purpose ?? DEFAULT_PURPOSE,
      language: options.language?.tag,
      caution: (options.language?.phrases ?? english).caution,
      settings: settingsOf(options),
      inputs: checked.map(({ summary }) => summary),
      verdict,
      counts: collector.counts,
      baseline: this.acceptances?.states(verdict, coverage, collector.acceptedCounts),
      coverage,
      causes: collector.causes.map((cause, index) => this.cause(cause, index)),
      findings,
      limit: this.limit,
      total: collector.total,
    });
  }

  /** The stages that look at several layouts together. */
  private judgeTogether(): Covered[] {
    const judged = this.checked.flatMap((input, index) =>
      input.judged === undefined
        ? []
        : [
            {
              input: index,
              name: input.summary.name,
              ...input.judged,
              tagOf: (hole: number) => input.hole(hole).tag,
            },
          ],
    );
    if (judged.length === 0) return [];
    const { covered, inDoubt } = checkSites(judged, this.settings);
    for (const { input, layout } of judged) if (inDoubt.has(layout)) this.checked[input].summary.judged = 0;
    return [...judged.map((one) => one.covered), ...covered];
  }

  private observe(input: number, observation: Observation): boolean | 'accepted' {
    const { acceptances } = this;
    if (acceptances?.concerns(observation.rule) !== true) return this.take(input, observation);
    if (input >= this.checked.length) acceptances.wait(observation);
    else if (this.take(input, observation) === 'accepted') return 'accepted';
    // Each of them has to be asked about, so that none may be counted only.
    return false;
  }

  /** A severity that the caller has set holds in every case. */
  private take(input: number, observation: Observation): boolean | 'accepted' {
    const { rule, severity } = observation;
    const isSet = this.options.severities?.[rule] !== undefined;
    const accepted = this.acceptances?.entryFor(input, observation);
    if (accepted === undefined && !isSet) return this.collector.observe(input, observation);
    const isFull = this.collector.observe(input, { ...observation, severity: isSet ? undefined : severity, accepted });
    return accepted === undefined ? isFull : 'accepted';
  }

  private get limit(): number {
    return this.options.sampleLimit ?? DEFAULT_SAMPLE_LIMIT;
  }

  private get settings(): Settings {
    const { purpose = DEFAULT_PURPOSE, asOf, ruleOptions } = this.options;
    return { purpose, asOf, ruleOptions, severityOf: (rule) => this.severityOf(rule) };
  }

  private severityOf(rule: string): Severity | 'off' {
    const { severities, purpose = DEFAULT_PURPOSE } = this.options;
    return severities?.[rule] ?? severityFor(ruleOf(rule), purpose);
  }

  /** Gives the findings of an input their places and names. */
  private settle(input: CheckedInput, index: number): void {
    const { collector } = this;
    const ofInput = collector.kept.filter((kept) => kept.input === index);
    const kept = ofInput.sort(inOrder).slice(0, this.limit);
    const causes = collector.causes.map((cause, k) => ({ ...cause, k })).filter((cause) => cause.input === index);
    const places = input.places([...kept, ...causes.map(({ first }) => first)].map(({ at }) => at));
    const holes = new Map<number, HoleIdentity>();
    const hole = (index: number): HoleIdentity => {
      const known = holes.get(index) ?? input.hole(index);
      holes.set(index, known);
      return known;
    };
    const said = { language: this.options.language, mostOperations: this.mostOperations };
    kept.forEach((observation, k) => {
      this.findings.push(newFinding(observation, places[k], input, hole, said));
    });
    causes.forEach(({ k, holes: indexes }, n) => {
      this.causePlaces[k] = places[kept.length + n];
      this.causeHoles[k] = indexes.map(hole);
    });
  }

  private cause(cause: KeptCause, index: number) {
    const { rule, severity, input, count, accepted } = cause;
    const info = ruleOf(rule);
    const message = causeMessage(info, cause, sayAs(this.checked[input].display), this.options.language);
    return {
      rule,
      class: info.class,
      severity,
      message,
      input: input + 1,
      place: this.causePlaces[index],
      findings: count,
      holes: this.causeHoles[index].map(({ id, tag }) => ({ id, ...(tag !== undefined && { tag }) })),
      ...(accepted !== undefined && { accepted }),
    };
  }
}

/** What was set, in the order of names, so that the report does not hang on how it was written. */
function settingsOf({ severities = {}, ruleOptions = {} }: CheckOptions): Report['settings'] {
  const settings = {
    ...(Object.keys(severities).length > 0 && { severities: inNameOrder(severities) }),
    ...(Object.keys(ruleOptions).length > 0 && { ruleOptions: inNameOrder(ruleOptions) }),
  };
  return Object.keys(settings).length === 0 ? undefined : settings;
}

function inNameOrder<T extends object>(members: T): T {
  return Object.fromEntries(Object.entries(members).sort(([a], [b]) => (a < b ? -1 : 1))) as T;
}

function unreadableInput(name: string): CheckedInput {
  return {
    summary: { name, kind: 'unknown', format: 'json', bytes: 0 },
    display: undefined,
    hindrances: new Set(),
    hasBrokenRecords: true,
    records: 0,
    places: () => [],
    hole: (index) => ({ id: String(index) }),
    layout: () => undefined,
  };
}
