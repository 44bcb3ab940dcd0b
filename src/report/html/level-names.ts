import type { Level } from '../../generated/layout.js';
import type { LayoutModel } from '../../model/layout-model.js';
import { type ReportedLayout, recordsOf } from './reported-layout.js';

/** Level of a hole, its own or that of its substrate, as a number among the names of levels; -1 where there is none. */
export function levelOf(model: LayoutModel, i: number): number {
  const own = model.holes.referenceOf('level', i);
  const substrate = model.holes.referenceOf('substrate', i);
  if (own >= 0 || substrate < 0) return own;
  const substrates = model.collection('substrates');
  const level = substrates.records[substrates.indexOf(substrate)]?.level;
  return level === undefined ? -1 : model.collection('levels').names.find(level);
}

/** The names of all levels, so that no two levels have one: with their building, and with their id where that is alike too. */
export class LevelNames {
  /** For each name the levels that have it. */
  private readonly known = new Map<string, Set<string>>();
  private readonly buildings: ReadonlyMap<string, string>;

  constructor(layouts: readonly ReportedLayout[]) {
    this.buildings = new Map(recordsOf(layouts, 'buildings').map(({ record: { id, name } }) => [id, name]));
    for (const { record } of recordsOf(layouts, 'levels')) {
      const name = this.withBuilding(record);
      this.known.set(name, (this.known.get(name) ?? new Set()).add(record.id));
    }
  }

  /** Name of a level, given as a number among the names of the layout; undefined for -1. */
  of(model: LayoutModel, level: number): string | undefined {
    if (level < 0) return undefined;
    const levels = model.collection('levels');
    const record = levels.records[levels.indexOf(level)];
    if (record === undefined) return levels.names.text(level);
    const name = this.withBuilding(record);
    return (this.known.get(name)?.size ?? 0) > 1 ? `${name} (${record.id})` : name;
  }

  private withBuilding({ name, building }: Level): string {
    return building === undefined ? name : `${name}, ${this.buildings.get(building) ?? building}`;
  }
}
