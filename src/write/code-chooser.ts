import type { Assignment, ColumnProfile } from '../generated/column-profile.js';
import type { Hole } from '../generated/layout.js';
import { assignable } from '../model/table-profile.js';
import { sameJson } from './same-json.js';

/** Finds the code of a profile that gives a hole what neither a column nor a constant gives it. */
export class CodeChooser {
  private readonly codes: readonly (readonly [string, Assignment])[];
  private readonly byCode: ReadonlyMap<string, Assignment>;
  private readonly known = new Map<string, readonly string[]>();
  private readonly inColumns: ReadonlySet<string>;

  constructor(profile: ColumnProfile) {
    const { constants, codes } = profile;
    this.byCode = new Map(Object.entries(codes?.map ?? {}));
    this.codes = [...this.byCode].map(([code, members]) => [code, { ...constants, ...members }]);
    this.inColumns = new Set(profile.columns.map(({ field }) => field.replace(/\..*/, '')));
  }

  /**
   * The code that stands for the hole: the one that it carried, if that still does, else the first of
   * the profile. Undefined where none does.
   */
  choose(hole: Hole): string | undefined {
    const key = JSON.stringify(assignable.map((name) => hole[name] ?? null));
    let fitting = this.known.get(key);
    if (fitting === undefined) {
      fitting = this.codes.filter(([, given]) => this.fits(hole, given)).map(([code]) => code);
      this.known.set(key, fitting);
    }
    const own = hole.origin?.code;
    return own !== undefined && fitting.includes(own) ? own : fitting[0];
  }

  /** What a code gives; undefined where the profile has no such code. */
  members(code: string | undefined): Assignment | undefined {
    return code === undefined ? undefined : this.byCode.get(code);
  }

  private fits(hole: Hole, given: Assignment): boolean {
    return assignable.every((name) => {
      const inCell = this.inColumns.has(name) && hole[name] !== undefined;
      return inCell || sameJson(hole[name], given[name]);
    });
  }
}
