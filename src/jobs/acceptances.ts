import { rules } from '../check/list.js';
import type { Baseline } from '../generated/baseline.js';
import type { Coverage, Report } from '../generated/report.js';
import type { Observation, Severity } from '../model/observation.js';
import { lookedAt } from '../policy/accept.js';
import { AppliedBaseline, BadBaseline } from '../policy/baseline.js';
import type { CheckedInput } from './checked-input.js';
import { recordName } from './record-name.js';

/** A baseline over the inputs of a check: finds out what an observation is about, and whether that was accepted. */
export class Acceptances {
  private readonly baseline: AppliedBaseline;
  private waiting: Observation[] = [];

  /**
   * @param checked the inputs that are closed; grows while the check goes on
   * @throws BadBaseline where an entry is about no rule, or about the form of files, or where no time was given
   */
  constructor(
    baseline: Baseline,
    asOf: string | undefined,
    private readonly checked: readonly CheckedInput[],
  ) {
    for (const { rule } of baseline.entries) {
      const known = rules.find(({ id }) => id === rule);
      if (known === undefined) throw new BadBaseline(`The baseline names the rule "${rule}", which there is not.`);
      if (known.class === 'format')
        throw new BadBaseline(
          `The rule "${rule}" is about the form of a file; what breaks it is mended, not accepted.`,
        );
    }
    this.baseline = new AppliedBaseline(baseline, asOf);
  }

  /** Whether findings of a rule have to be asked about one by one. */
  concerns(rule: string): boolean {
    return this.baseline.concerns(rule);
  }

  /** Keeps an observation of the open input: whom it is about is known when that is closed. */
  wait(observation: Observation): void {
    this.waiting.push(observation);
  }

  takeWaiting(): readonly Observation[] {
    const { waiting } = this;
    this.waiting = [];
    return waiting;
  }

  /** Number from 1 of the entry that accepts an observation of a closed input; undefined where none does. */
  entryFor(input: number, { rule, at, data }: Observation): number | undefined {
    if (!this.baseline.concerns(rule)) return undefined;
    const own = this.checked[input];
    const other = typeof data.otherInput === 'number' ? this.checked[data.otherInput - 1] : undefined;
    const between = other && { with: nameOf(other) };
    return this.baseline.entryFor(rule, nameOf(own), { ...aboutOf(own, at), ...between }, data);
  }

  /** What became of the baseline. */
  states(
    { format }: Report['verdict'],
    coverage: readonly Coverage[],
    counts: Readonly<Record<Severity, number>>,
  ): NonNullable<Report['baseline']> {
    const inputs = this.checked.map(({ summary }) => summary);
    return { entries: this.baseline.states(lookedAt(inputs, format, coverage)), counts };
  }
}

function aboutOf({ hole, model }: CheckedInput, at: Observation['at']) {
  if (at.hole !== undefined) return { hole: hole(at.hole).id };
  const record = recordName(model, at.pointer);
  return record === undefined ? { pointer: at.pointer ?? `row ${at.row ?? 0}` } : { record };
}

function nameOf({ summary: { id, name } }: CheckedInput): string {
  return id ?? name;
}
