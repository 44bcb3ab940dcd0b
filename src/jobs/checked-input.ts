import type { Covered } from '../check/check-layout.js';
import type { Rule } from '../check/rule.js';
import type { Display } from '../generated/layout.js';
import type { Place, Report } from '../generated/report.js';
import type { Fix } from '../model/fix.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { LayoutSource } from '../model/layout-source.js';
import type { Observation, Observe, Spot } from '../model/observation.js';

export type InputSummary = Report['inputs'][number];

/** A hole as people know it, and the row of the table that it came from. */
export interface HoleIdentity {
  id: string;
  tag?: string;
  row?: number;
}

/** What stands in the way of judging an input to its end. */
export type Hindrance = 'text' | 'version' | 'extension' | 'table' | 'kind' | 'unreadable';

/** An input that was read to its end. */
export interface ClosedInput {
  summary: InputSummary;
  /** The layout for writers, read anew from the input each time; undefined where there is none that is sound. */
  layout(): LayoutSource | undefined;
  /** The layout as it was read, sound or not; absent where the input is none. @internal */
  model?: LayoutModel;
  /** What people call a hole; read anew from the input each time. */
  hole(index: number): HoleIdentity;
}

/** An input that was checked, with all that the report needs of it. */
export interface CheckedInput extends ClosedInput {
  /** How people on the project read lengths. */
  display: Display | undefined;
  hindrances: ReadonlySet<Hindrance>;
  /** Whether a record was left out because it was broken. */
  hasBrokenRecords: boolean;
  /** Records in it, for the coverage of the rules of the first stages. */
  records: number;
  /** The layout for the later stages, and what the rules judged that look at one alone; absent where they are not to run. */
  judged?: { layout: LayoutModel; observe: Observe; covered: Covered };
  /** Where the spots are, in the order given. */
  places(spots: readonly Spot[]): Place[];
  /** The one right answer to what a rule has observed, if there is one; absent for tables. */
  fix?(rule: Rule, observation: Observation): Fix | undefined;
}
