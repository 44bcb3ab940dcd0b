import type { LayoutModel } from '../model/layout-model.js';
import type { Draft } from './level-draft.js';
import type { PlanCause } from './plan-level.js';

/** A layout that is drawn. */
export interface DrawnLayout {
  readonly layout: LayoutModel;
  /** Reads the tag of a hole from the input once more. Absent: ids take the place of tags. */
  tagOf?(hole: number): string | undefined;
}

/** A cause as a report has it. */
export interface NumberedCause {
  readonly number: number;
  /** Ids of its holes, and the layout among those that are drawn in which they are, from 0. */
  readonly layout: number;
  readonly holes: readonly string[];
}

/** The causes of each level, in their order; each with its holes there. */
export function causesByLevel(
  parts: readonly DrawnLayout[],
  drafts: readonly Draft[],
  causes: readonly NumberedCause[],
): PlanCause[][] {
  // For each layout the level of each hole and its number there.
  const places = parts.map(({ layout }) => ({
    level: new Int32Array(layout.holes.count).fill(-1),
    number: new Int32Array(layout.holes.count),
  }));
  drafts.forEach(({ part, hole }, level) => {
    hole.forEach((index, number) => {
      places[part[number]].level[index] = level;
      places[part[number]].number[index] = number;
    });
  });
  const byLevel: PlanCause[][] = drafts.map(() => []);
  for (const { number, layout, holes } of causes) {
    const found = new Map<number, number[]>();
    for (const id of holes) {
      const index = parts[layout]?.layout.holes.find(id) ?? -1;
      const level = index < 0 ? -1 : places[layout].level[index];
      if (level < 0) continue;
      const here = found.get(level) ?? [];
      found.set(level, here);
      here.push(places[layout].number[index]);
    }
    for (const [level, here] of found) byLevel[level].push({ number, holes: here });
  }
  return byLevel;
}
