import type { Substrate, Trade } from '../generated/layout.js';
import type { Vec3 } from '../geometry/vector.js';
import { HoleColumns } from '../model/hole-columns.js';
import type { LayoutModel, RecordOf } from '../model/layout-model.js';
import { causesByLevel, type DrawnLayout, type NumberedCause } from './causes-by-level.js';
import { type HeightRange, heightOfBore, heightsOfKeepOut, isNear, stretch, stretchOver } from './height-ranges.js';
import { type Draft, newDraft } from './level-draft.js';
import type { PlanCause, PlanLevel } from './plan-level.js';

export type { DrawnLayout, NumberedCause } from './causes-by-level.js';

/** The plans of all levels that have holes, in the order of the levels; what has no level comes last. */
export interface SitePlan {
  readonly levels: readonly PlanLevel[];
  /** For each level what is pointed out on it, in the order of the causes. A cause may be on several levels. */
  causesByLevel(causes: readonly NumberedCause[]): PlanCause[][];
}

/**
 * Puts the plans of layouts of one frame together. What several layouts describe alike is drawn once; levels of
 * one id, name and building are one. A substrate is drawn on its level and on those of its holes; a keep-out or bore
 * on the levels of its substrate, and without one where its height is that of the concrete or the holes.
 * Holes whose record cannot be read are left out and counted.
 */
export function sitePlan(parts: readonly DrawnLayout[]): SitePlan {
  return new Composer(parts).compose();
}

class Composer {
  private readonly drafts = new Map<string, Draft>();
  private readonly trades = new Map<string, number>();
  private readonly tradeRecords: Pick<Trade, 'id' | 'name' | 'symbol'>[] = [];
  private groups = 0;
  private readonly leftOut = { keepOuts: 0, bores: 0, holes: 0 };

  constructor(private readonly parts: readonly DrawnLayout[]) {}

  compose(): SitePlan {
    const { parts } = this;
    for (const { layout } of parts) for (const level of present(layout, 'levels')) this.draft(level);
    const levelsOf = parts.map((_, part) => this.addHoles(part));
    const drafts = [...this.drafts.values()]
      .filter(({ hole }) => hole.length > 0)
      .sort((a, b) => Number(a.level === undefined) - Number(b.level === undefined));
    for (const part of parts.keys()) this.addSubstrates(part, levelsOf[part], drafts);
    for (const part of parts.keys()) this.addRest(part, levelsOf[part], drafts);
    const levels = drafts.map((draft) => this.level(draft, drafts));
    return { levels, causesByLevel: (causes) => causesByLevel(this.parts, drafts, causes) };
  }

  /** Adds the holes of a layout to their levels; gives for each name of a substrate the levels of its holes. */
  private addHoles(part: number): Map<string, Set<Draft>> {
    const { layout } = this.parts[part];
    const { holes } = layout;
    const [levels, substrates, trades] = [
      layout.collection('levels'),
      layout.collection('substrates'),
      layout.collection('trades'),
    ];
    const bySubstrate: Set<Draft>[] = [];
    const draftOf = remember((name) =>
      this.draft(levels.records[levels.indexOf(name)] ?? nameless(levels.names.text(name))),
    );
    const tradeOf = remember((name) =>
      this.trade(trades.records[trades.indexOf(name)] ?? nameless(trades.names.text(name))),
    );
    const levelOf = remember((name) => substrates.records[substrates.indexOf(name)]?.level);
    for (let i = 0; i < holes.count; i++) {
      if (holes.broken[i] === HoleColumns.BROKEN_RECORD || !Number.isFinite(holes.x[i] + holes.y[i])) {
        this.leftOut.holes++;
        continue;
      }
      const [level, substrate, group] = [
        holes.referenceOf('level', i),
        holes.referenceOf('substrate', i),
        holes.referenceOf('group', i),
      ];
      const ofFace = level < 0 && substrate >= 0 ? levelOf(substrate) : undefined;
      const own = level >= 0 ? level : ofFace === undefined ? -1 : levels.names.find(ofFace);
      const draft = own >= 0 ? draftOf(own) : this.draft(undefined);
      const trade = holes.referenceOf('trade', i);
      draft.part.push(part);
      draft.hole.push(i);
      draft.trade.push(trade >= 0 ? tradeOf(trade) : this.trade(nameless('')));
      draft.group.push(group < 0 ? -1 : this.groups + group);
      stretch(draft.heights, holes.z[i]);
      if (substrate < 0) continue;
      bySubstrate[substrate] ??= new Set();
      bySubstrate[substrate].add(draft);
    }
    this.groups += layout.collection('groups').names.count;
    return new Map(bySubstrate.flatMap((set, name) => (set === undefined ? [] : [[substrates.names.text(name), set]])));
  }

  private addSubstrates(part: number, levelsOf: Map<string, Set<Draft>>, drafts: readonly Draft[]): void {
    const { layout } = this.parts[part];
    for (const substrate of present(layout, 'substrates')) {
      const found = levelsOf.get(substrate.id) ?? new Set();
      const own = substrate.level === undefined ? undefined : this.levelOfId(layout, substrate.level);
      if (own !== undefined) found.add(own);
      if (found.size === 0 && drafts.length === 1 && substrate.level === undefined) found.add(drafts[0]);
      levelsOf.set(substrate.id, found);
      const key = JSON.stringify([
        substrate.id,
        substrate.face,
        substrate.outline,
        substrate.openings,
        substrate.zones,
      ]);
      for (const draft of found) {
        draft.substrates.set(key, substrate);
        stretchOver(draft.heights, substrate);
      }
    }
  }

  private addRest(part: number, levelsOf: Map<string, Set<Draft>>, drafts: readonly Draft[]): void {
    const { layout } = this.parts[part];
    const levelsAt = (substrate: string | undefined, heights: HeightRange): Iterable<Draft> => {
      const found = substrate === undefined ? undefined : levelsOf.get(substrate);
      if (found !== undefined && found.size > 0) return found;
      return drafts.length === 1 ? drafts : drafts.filter((draft) => isNear(draft.heights, heights));
    };
    for (const keepOut of present(layout, 'keepOuts')) {
      const found = [...levelsAt(keepOut.substrate, heightsOfKeepOut(keepOut))];
      if (found.length === 0) this.leftOut.keepOuts++;
      const key = JSON.stringify([
        keepOut.id,
        keepOut.kind,
        keepOut.shape,
        keepOut.standoff,
        keepOut.positionTolerance,
      ]);
      for (const draft of found) draft.keepOuts.set(key, keepOut);
    }
    for (const bore of present(layout, 'bores')) {
      const found = [...levelsAt(bore.substrate, heightOfBore(bore))];
      if (found.length === 0) this.leftOut.bores++;
      for (const draft of found) draft.bores.set(JSON.stringify([bore.id, bore.point, bore.end]), bore);
    }
    for (const { building, levels, lines } of present(layout, 'grids')) {
      for (const draft of drafts) {
        const { level } = draft;
        if (levels !== undefined && (level === undefined || !levels.includes(level.id))) continue;
        if (building !== undefined && level?.building !== undefined && building !== level.building) continue;
        for (const line of lines) draft.gridlines.set(JSON.stringify(line), line);
      }
    }
  }

  private level(draft: Draft, drafts: readonly Draft[]): PlanLevel {
    const { parts } = this;
    const { part, hole, level } = draft;
    const holesOf = (i: number) => parts[part[i]].layout.holes;
    const isHere = (other: Draft) => level?.building === undefined || other.level?.building === level.building;
    const frame = parts.find(({ layout }) => layout.header.frame !== undefined)?.layout.header.frame;
    return {
      name: level?.name,
      building: this.buildingName(level?.building),
      frame: { trueNorthDeg: frame?.trueNorthDeg, projectNorthDeg: frame?.projectNorthDeg },
      display: parts.map(({ layout }) => layout.header.display).find((display) => display !== undefined),
      gridlines: [...draft.gridlines.values()],
      substrates: [...draft.substrates.values()],
      keepOuts: [...draft.keepOuts.values()],
      bores: [...draft.bores.values()],
      trades: this.tradeRecords,
      holes: {
        count: hole.length,
        x: Float64Array.from(hole, (index, i) => holesOf(i).x[index]),
        y: Float64Array.from(hole, (index, i) => holesOf(i).y[index]),
        trade: draft.trade,
        group: draft.group,
        tag: (i) => parts[part[i]].tagOf?.(hole[i]) ?? holesOf(i).id(hole[i]),
      },
      around: drafts.filter(isHere).flatMap(({ substrates }) => outlinesOf(substrates.values())),
      leftOut: this.leftOut,
    };
  }

  private draft(level: Draft['level']): Draft {
    const key = level === undefined ? '' : JSON.stringify([level.id, level.name, level.building]);
    const known = this.drafts.get(key);
    if (known !== undefined) return known;
    const draft = newDraft(level);
    this.drafts.set(key, draft);
    return draft;
  }

  private levelOfId(layout: LayoutModel, id: string): Draft {
    const levels = layout.collection('levels');
    return this.draft(levels.records[levels.indexOf(levels.names.find(id))] ?? nameless(id));
  }

  private trade({ id, name, symbol }: Pick<Trade, 'id' | 'name' | 'symbol'>): number {
    const key = JSON.stringify([id, name, symbol]);
    const known = this.trades.get(key);
    if (known !== undefined) return known;
    this.trades.set(key, this.tradeRecords.length);
    return this.tradeRecords.push({ id, name, symbol }) - 1;
  }

  private buildingName(id: string | undefined): string | undefined {
    for (const { layout } of this.parts) {
      const found = id === undefined ? undefined : present(layout, 'buildings').find((building) => building.id === id);
      if (found !== undefined) return found.name;
    }
    return id;
  }
}

function nameless(id: string): { id: string; name: string } {
  return { id, name: id };
}

/** The records of a collection that could be read. */
function present<K extends 'levels' | 'substrates' | 'keepOuts' | 'bores' | 'grids' | 'buildings'>(
  layout: LayoutModel,
  name: K,
): RecordOf<K>[] {
  return layout.collection(name).records.filter((record) => record !== undefined);
}

function outlinesOf(substrates: Iterable<Substrate>): (readonly Vec3[])[] {
  return [...substrates].flatMap(({ outline }) => (outline === undefined ? [] : [outline.points]));
}

/** A function of small numbers that computes each value once. */
function remember<T>(compute: (key: number) => T): (key: number) => T {
  const known: T[] = [];
  return (key) => {
    if (!(key in known)) known[key] = compute(key);
    return known[key];
  };
}
