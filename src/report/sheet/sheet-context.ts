import type { PlanLevel } from '../../draw/plan-level.js';
import { unitSystemOf } from '../../draw/scale.js';
import type { Bore, Grid, KeepOut, Level } from '../../generated/layout.js';
import { LevelGridlines } from '../../frame/grid-dimensions.js';
import { heightsOfKeepOut, isNear, emptyRange, stretch, stretchOver } from '../../draw/height-ranges.js';
import type { Vec3 } from '../../geometry/vector.js';
import { printable } from '../../model/printable.js';
import { ROW_MM } from './drilling-order.js';
import type { LayoutRecords } from './layout-records.js';
import { NearKeepOuts, type NearKeepOut } from './near-keep-outs.js';
import { NO_OTHERS, type OtherHole, type OtherLayouts, tradesOf } from './other-layouts.js';
import { SheetChanges, type SheetParent } from './sheet-changes.js';
import { type SheetCheck, SheetFindings } from './sheet-findings.js';
import { sheetLengths, type SheetLengths } from './sheet-lengths.js';
import type { SheetHole } from './sheet-hole.js';
import type { RowContext, SheetRow } from './sheet-row.js';
import type { SheetWords } from './sheet-words.js';

/** Keep-outs nearer than this to the axis of a hole are listed: 1 m, and 3 ft where the project reads feet or inches. A definition of ours. */
const NEAR_MM = { metric: 1000, imperial: 914.4 };

/** What sheets show besides the layout. */
export interface SheetAdditions {
  /** Absent: the sheets say that nothing was checked. */
  readonly check?: SheetCheck;
  /** The revision before; absent: nothing is said of changes. */
  readonly parent?: SheetParent;
  readonly others?: OtherLayouts;
}

/** All that the sheets of one choice share. */
export class SheetContext implements RowContext {
  readonly lengths: SheetLengths;
  readonly nearMm: number;
  /** Depth of the rows of the order. */
  readonly rowMm: number;
  readonly others: OtherLayouts;
  /** Number of holes of each other trade, by its name; counted once, since sheets are tried out in many sizes. */
  readonly otherTrades: ReadonlyMap<string, number>;
  /** Of all layouts. */
  readonly keepOuts: readonly KeepOut[];
  readonly bores: readonly Bore[];
  readonly findings: SheetFindings;
  readonly changes: SheetChanges | undefined;
  private readonly ownKeepOuts: number;
  private readonly near: NearKeepOuts;
  private readonly nearOf = new Map<SheetHole, NearKeepOut[]>();
  private readonly gridlines = new Map<string | undefined, LevelGridlines>();

  constructor(
    readonly records: LayoutRecords,
    readonly words: SheetWords,
    { check, parent, others = NO_OTHERS }: SheetAdditions = {},
  ) {
    const { display, keepOuts = [], bores = [] } = records.header;
    this.lengths = sheetLengths(display);
    const system = unitSystemOf(display);
    this.nearMm = NEAR_MM[system];
    this.rowMm = ROW_MM[system];
    this.others = others;
    this.otherTrades = tradesOf(others.holes);
    this.ownKeepOuts = keepOuts.length;
    this.keepOuts = [...keepOuts, ...others.keepOuts];
    this.bores = [...bores, ...others.bores];
    this.near = new NearKeepOuts(this.keepOuts, this.nearMm);
    this.findings = new SheetFindings(check, words, records.header.groups ?? []);
    this.changes = parent && new SheetChanges(parent, words, this.lengths);
  }

  gridlinesOf(level: string | undefined): LevelGridlines {
    const known = this.gridlines.get(level);
    if (known !== undefined) return known;
    const { grids = [], frame } = this.records.header;
    const made = new LevelGridlines(grids, this.levelRecord(level), frame);
    this.gridlines.set(level, made);
    return made;
  }

  /** Keep-outs near a hole; computed once for each. */
  keepOutsNear(hole: SheetHole): readonly NearKeepOut[] {
    const known = this.nearOf.get(hole);
    if (known !== undefined) return known;
    const found = this.near.of(hole);
    this.nearOf.set(hole, found);
    return found;
  }

  /** Name of a level, printable; undefined for none. */
  levelName(level: string | undefined): string | undefined {
    return level === undefined ? undefined : printable(this.records.levels.get(level)?.name ?? level);
  }

  private levelRecord(level: string | undefined): Pick<Level, 'id' | 'building'> | undefined {
    return level === undefined ? undefined : (this.records.levels.get(level) ?? { id: level });
  }

  /** What the plan of a sheet shows; its rows are of one level. */
  planLevel(rows: readonly SheetRow[]): PlanLevel & { otherHoles: readonly OtherHole[] } {
    const { header } = this.records;
    const level = rows[0].hole.level;
    const substrates = (header.substrates ?? []).filter(
      (one) => rows.some(({ hole }) => hole.substrate === one) || (level !== undefined && one.level === level),
    );
    const heights = emptyRange();
    for (const substrate of substrates) stretchOver(heights, substrate);
    for (const { hole } of rows) if (hole.hole.point.length === 3) stretch(heights, hole.hole.point[2]);
    const ids = new Set(substrates.map(({ id }) => id));
    const isAlso = new Set(rows.flatMap(({ hole }) => this.keepOutsNear(hole).map(({ index }) => index)));
    const keepOuts = this.keepOuts.filter(
      (one, k) =>
        isAlso.has(k) ||
        // Ids of substrates are those of the own layout.
        (one.substrate === undefined || k >= this.ownKeepOuts
          ? isNear(heights, heightsOfKeepOut(one))
          : ids.has(one.substrate)),
    );
    const own = (header.bores ?? []).filter(({ substrate }) => substrate === undefined || ids.has(substrate));
    const isAtHeight = (z: number | undefined) => z === undefined || isNear(heights, { low: z, high: z });
    const bores = [...own, ...this.others.bores.filter(({ point }) => isAtHeight(point[2]))];
    const otherHoles = this.others.holes.filter(({ z }) => isAtHeight(z));
    const { around, grids } = this.buildingOf(level);
    return {
      name: this.levelName(level),
      frame: header.frame,
      display: header.display,
      gridlines: grids.flatMap(({ lines }) => lines.map((line) => ({ ...line, name: printable(line.name) }))),
      substrates,
      keepOuts,
      bores,
      otherHoles,
      trades: [],
      holes: { count: 0, x: [], y: [], trade: [], group: [], tag: () => '' },
      around,
      leftOut: { keepOuts: 0, bores: 0, holes: 0 },
    };
  }

  /** Outlines and gridlines of the building of a level; all of them where it has none. */
  private buildingOf(level: string | undefined): { around: (readonly Vec3[])[]; grids: Grid[] } {
    const { records } = this;
    const { header } = records;
    const building = level === undefined ? undefined : records.levels.get(level)?.building;
    const around = (header.substrates ?? [])
      .filter(
        (one) =>
          building === undefined || one.level === undefined || records.levels.get(one.level)?.building === building,
      )
      .flatMap(({ outline }) => (outline === undefined ? [] : [outline.points as readonly Vec3[]]));
    const grids = (header.grids ?? []).filter(
      (grid) =>
        (grid.levels === undefined || (level !== undefined && grid.levels.includes(level))) &&
        (grid.building === undefined || building === undefined || grid.building === building),
    );
    return { around, grids };
  }
}
