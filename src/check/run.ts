import type { Collection } from '../generated/schema-tables.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { Observation, Observe, Severity } from '../model/observation.js';
import type { Purpose, RuleInfo } from '../model/rule.js';
import type { Doubts } from './doubts.js';
import type { Site } from './site.js';
import type { InputLayout, SitePart } from './site-part.js';

/** What became of a rule. */
export interface Coverage {
  /** Records that the rule is about. */
  of: number;
  /** Records that it judged. */
  judged: number;
  /** Why records were left out, with their number. */
  leftOut: Map<string, number>;
}

/** What the caller of a check has set. */
export interface Settings {
  purpose: Purpose;
  /** The time that is taken as now, RFC 3339; absent: nothing can be said to have run out. */
  asOf?: string;
  severityOf(rule: string): Severity | 'off';
  /** Options of rules that are set, by rule and name. */
  ruleOptions?: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

/** What a rule says about a record. */
export interface Said {
  /** Tokens inside the record, joined by slashes; absent: the record itself. */
  member?: string;
  /** The facts, or what makes them: where a million findings share a cause they are wanted for the first ones only. */
  data: Record<string, unknown> | (() => Record<string, unknown>);
  /** What findings with the same cause share. */
  cause: string;
  /** Where the rule's own severity does not fit this case. */
  severity?: Severity;
}

type RecordCollection = Exclude<Collection, 'holes'>;

/** The side of a check that a rule talks to: it counts what it judged. */
class RuleRun {
  readonly coverage: Coverage = { of: 0, judged: 0, leftOut: new Map() };

  constructor(
    protected readonly rule: RuleInfo,
    private readonly settings: Settings,
  ) {}

  get asOf(): string | undefined {
    return this.settings.asOf;
  }

  get purpose(): Purpose {
    return this.settings.purpose;
  }

  /** Severity of the rule where a finding names none. */
  get severity(): Severity {
    const severity = this.settings.severityOf(this.rule.id);
    if (severity === 'off') throw new Error(`rule ${this.rule.id} is off and ran`);
    return severity;
  }

  /** Whether another rule does not run. */
  isOff(rule: string): boolean {
    return this.settings.severityOf(rule) === 'off';
  }

  /** Value of an option of the rule. */
  option(name: string): number {
    const option = this.rule.options?.[name];
    if (option === undefined) throw new Error(`rule ${this.rule.id} has no option ${name}`);
    return this.settings.ruleOptions?.[this.rule.id]?.[name] ?? option.default;
  }

  judged(count: number): void {
    this.coverage.of += count;
    this.coverage.judged += count;
  }

  leftOut(reason: string, count = 1): void {
    if (count === 0) return;
    this.coverage.of += count;
    this.coverage.leftOut.set(reason, (this.coverage.leftOut.get(reason) ?? 0) + count);
  }

  protected observation(record: string, recordByte: number, said: Said, hole?: number): Observation {
    const { member, data, cause, severity } = said;
    const within = member === undefined ? '' : `/${member}`;
    const at = { pointer: record + within, recordByte, within, hole };
    const facts = typeof data === 'function' ? data() : data;
    return { rule: this.rule.id, at, data: facts, cause, ...(severity && { severity }) };
  }

  /** Returns whether the finding stands, that is, nobody has accepted it. */
  protected observe(observe: Observe, record: string, recordByte: number, said: Said, hole?: number): boolean {
    return observe(this.observation(record, recordByte, said, hole)) !== 'accepted';
  }
}

/** A rule on one layout. */
export class LayoutRun extends RuleRun {
  constructor(
    rule: RuleInfo,
    settings: Settings,
    readonly layout: LayoutModel,
    private readonly observeLayout: Observe,
  ) {
    super(rule, settings);
  }

  atHole(i: number, said: Said): void {
    this.observe(this.observeLayout, `/holes/${i}`, this.layout.holes.byte[i], said, i);
  }

  atRecord(name: RecordCollection, index: number, said: Said): void {
    this.observe(this.observeLayout, `/${name}/${index}`, this.layout.collection(name).bytes[index], said);
  }

  /** @param pointer of the record from the root, such as `/frame` or `/sources/0` */
  atPointer(pointer: string, byte: number, said: Said): void {
    this.observe(this.observeLayout, pointer, byte, said);
  }
}

/** A rule on several layouts. */
export class InputsRun extends RuleRun {
  /** @param index of the record in its collection of the part's layout */
  atRecord({ layout, observe }: InputLayout, name: RecordCollection, index: number, said: Said): void {
    this.observe(observe, `/${name}/${index}`, layout.collection(name).bytes[index], said);
  }

  /** At a member of the root of a layout that is no collection, such as `frame`. Returns whether the finding stands, not being accepted. */
  atMember({ layout, observe }: InputLayout, name: string, said: Said): boolean {
    const byte = layout.memberBytes.get(name);
    return this.observe(observe, byte === undefined ? '' : `/${name}`, byte ?? 0, said);
  }
}

/** Findings of one cause that are only counted from now on. */
interface Tally {
  part: SitePart;
  severity: Severity | undefined;
  observation: Observation;
  count: number;
}

/** A rule on the layouts of one site. */
export class SiteRun extends InputsRun {
  private readonly tallies = new Map<string, Tally>();

  /** @param doubts of earlier rules, to which the rule may add its own */
  constructor(
    rule: RuleInfo,
    settings: Settings,
    private readonly site: Site,
    private readonly doubts: Doubts,
  ) {
    super(rule, settings);
  }

  /** Whether an earlier rule of the stage frame has called the numbers of the layout in doubt. */
  isInDoubt({ layout }: InputLayout): boolean {
    return this.doubts.layouts.has(layout);
  }

  /**
   * Calls the unit or frame of a layout in doubt: no later stage judges its holes. Only where the finding is
   * an error and stands; who has made it less, or accepted it, has looked at it.
   */
  doubt({ layout }: InputLayout): void {
    if (this.severity === 'error') this.doubts.doubtLayout(layout);
  }

  /** Calls the place of hole `i` in doubt, because it does not lie on its face; only where that is an error. */
  doubtPlace(i: number): void {
    if (this.severity === 'error') this.doubts.doubtPlace(i);
  }

  /**
   * @param i number of the hole among those of all layouts
   * @returns whether the finding stands, not being accepted
   */
  atHole(i: number, said: Said): boolean {
    const { cause, severity } = said;
    const part = this.site.partOf(i);
    const tally = this.tallies.get(cause);
    if (tally !== undefined && tally.part === part && tally.severity === severity) {
      tally.count++;
      return true;
    }
    const own = i - part.firstHole;
    const observation = this.observation(`/holes/${own}`, part.layout.holes.byte[own], said, own);
    const answer = part.observe(observation);
    if (answer !== true) return answer !== 'accepted';
    if (tally !== undefined) this.tell(tally);
    this.tallies.set(cause, { part, severity, observation, count: 0 });
    return true;
  }

  /** Tells the findings that were only counted; to be called when the rule is done. */
  end(): void {
    for (const tally of this.tallies.values()) this.tell(tally);
    this.tallies.clear();
  }

  private tell({ part, observation, count }: Tally): void {
    if (count > 0) part.observe({ ...observation, count });
  }
}
