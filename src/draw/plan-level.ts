import type { Bore, Display, Frame, Gridline, KeepOut, Substrate, Trade } from '../generated/layout.js';
import type { Vec3 } from '../geometry/vector.js';

/** What a plan of one level shows, of one or several layouts of one frame. Millimetres, site frame. */
export interface PlanLevel {
  /** Absent: what has no level. */
  readonly name?: string;
  readonly building?: string;
  readonly frame: Pick<Frame, 'trueNorthDeg' | 'projectNorthDeg'>;
  readonly display?: Display;
  readonly gridlines: readonly Gridline[];
  readonly substrates: readonly Substrate[];
  readonly keepOuts: readonly KeepOut[];
  readonly bores: readonly Bore[];
  readonly trades: readonly Pick<Trade, 'id' | 'name' | 'symbol'>[];
  readonly holes: PlanHoles;
  /** Outlines of all levels of the building, for the key plan. */
  readonly around: readonly (readonly Vec3[])[];
  readonly leftOut: PlanLeftOut;
}

/** The holes of a level in columns; a hole is known by its number, from 0. */
export interface PlanHoles {
  readonly count: number;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  /** Index of the trade. */
  readonly trade: ArrayLike<number>;
  /** Number of the group, or -1; holes of one group have one number. */
  readonly group: ArrayLike<number>;
  /** Tag, or id where it has none. May take time; asked once at most, and for few holes of a crowded level. */
  tag(hole: number): string;
}

/** What belongs to no level as far as is known, or cannot be drawn. */
export interface PlanLeftOut {
  readonly keepOuts: number;
  readonly bores: number;
  /** Holes without a place that can be read. */
  readonly holes: number;
}

/** A cause that is pointed out at some holes of a level. */
export interface PlanCause {
  /** Number that the report gives it. */
  readonly number: number;
  /** Numbers of holes of the level, the first ones first. */
  readonly holes: readonly number[];
}
