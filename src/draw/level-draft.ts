import type { Bore, KeepOut, Level, Substrate } from '../generated/layout.js';
import { emptyRange, type HeightRange } from './height-ranges.js';
import type { PlanLevel } from './plan-level.js';

/** One level while it is put together. */
export interface Draft {
  level: Pick<Level, 'id' | 'name' | 'building'> | undefined;
  /** For each hole its layout and its number there. */
  part: number[];
  hole: number[];
  trade: number[];
  group: number[];
  substrates: Map<string, Substrate>;
  keepOuts: Map<string, KeepOut>;
  bores: Map<string, Bore>;
  gridlines: Map<string, PlanLevel['gridlines'][number]>;
  heights: HeightRange;
}

export function newDraft(level: Draft['level']): Draft {
  return {
    level,
    part: [],
    hole: [],
    trade: [],
    group: [],
    substrates: new Map(),
    keepOuts: new Map(),
    bores: new Map(),
    gridlines: new Map(),
    heights: emptyRange(),
  };
}
