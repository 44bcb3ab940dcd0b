/** Most lines of the parts of a sheet whose texts come from the layout, so that a sheet stays one side of paper. */
export interface SheetCaps {
  readonly title: number;
  readonly about: number;
  readonly origin: number;
  readonly move: number;
  readonly conditions: number;
  readonly substrate: number;
  readonly symbol: number;
  readonly keepOuts: number;
  readonly call: number;
  readonly leftOut: number;
  readonly notes: number;
  readonly points: number;
  readonly bandMm: number;
}

export const CAPS: SheetCaps = {
  title: 2,
  about: 2,
  origin: 3,
  move: 3,
  conditions: 3,
  substrate: 2,
  symbol: 3,
  keepOuts: 13,
  call: 3,
  leftOut: 2,
  notes: 3,
  points: 6,
  bandMm: 54,
};

/** Where texts are so long that not one hole would find room. */
export const TIGHT_CAPS: SheetCaps = {
  title: 1,
  about: 1,
  origin: 1,
  move: 2,
  conditions: 2,
  substrate: 1,
  symbol: 2,
  keepOuts: 5,
  call: 2,
  leftOut: 1,
  notes: 2,
  points: 1,
  bandMm: 46,
};
