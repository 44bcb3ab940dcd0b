import type { Observe, Severity } from '../model/observation.js';

/** What became of a rule. */
export interface Coverage {
  /** Records that the rule is about. */
  of: number;
  /** Records that it judged. */
  judged: number;
  /** Why records were left out, with their number. */
  leftOut: Map<string, number>;
}

/** What a rule says about one record. */
export interface Verdict {
  /** JSON Pointer of the record, such as `/holes/12`. */
  record: string;
  /** Offset of the record in the input. */
  byte: number;
  /** Tokens inside the record, joined by slashes; absent: the record itself. */
  member?: string;
  /** Index of the hole, where the record is one. */
  hole?: number;
  data: Record<string, unknown>;
  /** What findings with the same cause share. */
  cause: string;
  severity?: Severity;
}

/** The side of a check that a rule talks to: it counts what it judged and says what it found. */
export class RuleRun {
  readonly coverage: Coverage = { of: 0, judged: 0, leftOut: new Map() };

  constructor(
    private readonly rule: string,
    private readonly observe: Observe,
  ) {}

  judged(count: number): void {
    this.coverage.of += count;
    this.coverage.judged += count;
  }

  leftOut(reason: string, count = 1): void {
    if (count === 0) return;
    this.coverage.of += count;
    this.coverage.leftOut.set(reason, (this.coverage.leftOut.get(reason) ?? 0) + count);
  }

  finding({ record, byte, member, hole, data, cause, severity }: Verdict): void {
    const within = member === undefined ? '' : `/${member}`;
    const at = { pointer: record + within, recordByte: byte, within, hole };
    this.observe({ rule: this.rule, at, data, cause, ...(severity && { severity }) });
  }
}
