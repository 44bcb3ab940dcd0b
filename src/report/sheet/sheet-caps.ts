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
  /** Of each finding. */
  readonly findings: number;
  /** Paragraphs of findings behind the first one. */
  readonly general: number;
  readonly changes: number;
  readonly bores: number;
  readonly notes: number;
  /** Of each thing besides the gravest finding that is said below the cells of a row. */
  readonly rowSaid: number;
  readonly points: number;
  /** Of the lines below the plan. */
  readonly caption: number;
  readonly bandMm: number;
}

export const CAPS: SheetCaps = {
  title: 2,
  about: 2,
  origin: 3,
  move: 3,
  conditions: 3,
  substrate: 2,
  symbol: 5,
  keepOuts: 13,
  call: 3,
  leftOut: 2,
  findings: 3,
  general: 6,
  changes: 3,
  bores: 2,
  notes: 3,
  rowSaid: 2,
  points: 6,
  caption: 5,
  bandMm: 50,
};

/** Where texts are so long that not one hole would find room. */
export const TIGHT_CAPS: SheetCaps = {
  title: 1,
  about: 1,
  origin: 1,
  move: 2,
  conditions: 1,
  substrate: 1,
  symbol: 2,
  keepOuts: 3,
  call: 2,
  leftOut: 1,
  findings: 1,
  general: 1,
  changes: 1,
  bores: 1,
  notes: 1,
  rowSaid: 1,
  points: 1,
  caption: 2,
  bandMm: 46,
};
