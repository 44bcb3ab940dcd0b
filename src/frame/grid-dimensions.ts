import type { Frame, Grid, Level } from '../generated/layout.js';

/** Side of a line by project north, clockwise. */
const COMPASS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;

/**
 * On which side of a gridline a point lies: one of eight compass points by project north; where the frame gives
 * none, the plan axis that the way from the line to the point follows most (`+x`, `−x`, `+y`, `−y`); or `on` the line.
 */
export type GridSide = (typeof COMPASS)[number] | '+x' | '−x' | '+y' | '−y' | 'on';

/** A distance from one gridline. */
export interface GridDimension {
  /** Name of the line; with the name of its grid where another line of the level has the same one. */
  line: string;
  /** Distance square to the line, millimetres; never negative. */
  distanceMm: number;
  side: GridSide;
  /** Whether the line would have to be lengthened to measure square to it. */
  isBeyondEnd: boolean;
}

/** What a plan point is measured from. */
export interface GridDimensions {
  /** None, one or two; the one that is measured more east and west (without project north: along x) comes first. */
  lines: readonly GridDimension[];
  /** Angle between the two lines, 0 to 90 degrees. */
  angleDeg?: number;
  /**
   * - `square`: two lines at right angles.
   * - `skewed`: two lines at an angle of at least 30 degrees.
   * - `narrow`: two lines at less than that, because there are no others: a small error becomes a large one.
   * - `one-family`: all lines are parallel; the place along them is not given.
   * - `no-grid`: nothing to measure from.
   */
  basis: 'square' | 'skewed' | 'narrow' | 'one-family' | 'no-grid';
}

/** Lines at less than this angle are one family: gridlines are surveyed, not computed. */
const PARALLEL_DEG = 0.5;
const LEAST_ANGLE_DEG = 30;
/** Two distances that differ by less are equal, and the earlier line is taken. */
const SLACK_MM = 0.0005;
/** Lines that are looked at for each point. */
const MOST_LINES = 2000;

interface Line {
  name: string;
  x: number;
  y: number;
  /** Unit vector along the line, and its length. */
  dx: number;
  dy: number;
  length: number;
  family: Family;
}

interface Family {
  dx: number;
  dy: number;
  size: number;
}

const NONE: GridDimensions = { lines: [], basis: 'no-grid' };

/**
 * The gridlines of one level, made ready to measure plan points from. Millimetres, site frame.
 *
 * First comes the nearest line, by its distance between its ends; lines without a parallel one count only where
 * there are no others, so that a single line askew does not take the place of the grid. Then comes the nearest line
 * square to it. Where there is none, or the first line has no parallel one (a radial grid), it is the nearest line at
 * 30 degrees or more, else the nearest that is not parallel. Of lines at one distance the earlier one is taken.
 */
export class LevelGridlines {
  /** Gridlines beyond the number that is looked at. */
  readonly leftOut: number;
  private readonly lines: readonly Line[];
  private readonly firstLines: readonly Line[];
  private readonly northDeg: number | undefined;

  constructor(
    grids: readonly Grid[],
    level: Pick<Level, 'id' | 'building'> | undefined,
    frame: Pick<Frame, 'projectNorthDeg'>,
  ) {
    const { lines, leftOut } = linesOf(grids.filter((grid) => holdsFor(grid, level)));
    this.lines = lines;
    this.leftOut = leftOut;
    const inFamilies = this.lines.filter(({ family }) => family.size > 1);
    this.firstLines = inFamilies.length > 0 ? inFamilies : this.lines;
    this.northDeg = frame.projectNorthDeg;
  }

  /** The dimensions of a plan point; looks at each line of the level twice. */
  of(x: number, y: number): GridDimensions {
    if (!Number.isFinite(x) || !Number.isFinite(y)) return NONE;
    const first = nearest(this.firstLines, x, y, () => true);
    if (first === undefined) return NONE;
    const second = this.secondOf(first, x, y);
    if (second === undefined) return { lines: [this.dimension(first, x, y)], basis: 'one-family' };
    const angleDeg = angleBetween(first, second);
    const basis = angleDeg >= 90 - PARALLEL_DEG ? 'square' : angleDeg >= LEAST_ANGLE_DEG ? 'skewed' : 'narrow';
    const isSecondFirst = this.eastness(second) > this.eastness(first);
    const lines = isSecondFirst ? [second, first] : [first, second];
    return { lines: lines.map((line) => this.dimension(line, x, y)), angleDeg, basis };
  }

  private secondOf(first: Line, x: number, y: number): Line | undefined {
    const at = (leastDeg: number) => nearest(this.lines, x, y, (line) => angleBetween(first, line) >= leastDeg);
    const square = first.family.size > 1 ? at(90 - PARALLEL_DEG) : undefined;
    return square ?? at(LEAST_ANGLE_DEG) ?? at(PARALLEL_DEG);
  }

  private dimension(line: Line, x: number, y: number): GridDimension {
    const aside = asideOf(line, x, y);
    const along = alongOf(line, x, y);
    return {
      line: line.name,
      distanceMm: Math.abs(aside),
      side: Math.abs(aside) <= SLACK_MM ? 'on' : this.sideOf(Math.sign(aside) * -line.dy, Math.sign(aside) * line.dx),
      isBeyondEnd: along < -SLACK_MM || along > line.length + SLACK_MM,
    };
  }

  /** @param nx ny direction from the line to the point */
  private sideOf(nx: number, ny: number): GridSide {
    if (this.northDeg === undefined) {
      if (Math.abs(nx) >= Math.abs(ny) - 1e-9) return nx > 0 ? '+x' : '−x';
      return ny > 0 ? '+y' : '−y';
    }
    const bearingDeg = (Math.atan2(nx, ny) * 180) / Math.PI - this.northDeg;
    // The addend keeps the two sides of a line opposite where the bearing is half-way between two points.
    const eighth = Math.floor(bearingDeg / 45 + 0.5 + 1e-9);
    return COMPASS[((eighth % 8) + 8) % 8];
  }

  /** How much a distance from the line is measured east and west, 0 to 1. */
  private eastness({ dx, dy }: Line): number {
    const north = ((this.northDeg ?? 0) * Math.PI) / 180;
    return Math.abs(dx * Math.sin(north) + dy * Math.cos(north));
  }
}

/** Left of the line positive. */
function asideOf({ x, y, dx, dy }: Line, px: number, py: number): number {
  return dx * (py - y) - dy * (px - x);
}

function alongOf({ x, y, dx, dy }: Line, px: number, py: number): number {
  return dx * (px - x) + dy * (py - y);
}

function nearest(lines: readonly Line[], x: number, y: number, mayBe: (line: Line) => boolean): Line | undefined {
  let best: Line | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const line of lines) {
    const along = alongOf(line, x, y);
    const distance = Math.hypot(asideOf(line, x, y), Math.max(-along, 0, along - line.length));
    if (distance < least - SLACK_MM && mayBe(line)) {
      best = line;
      least = distance;
    }
  }
  return best;
}

/** 0 to 90 degrees. */
function angleBetween(a: { dx: number; dy: number }, b: { dx: number; dy: number }): number {
  const sine = Math.abs(a.dx * b.dy - a.dy * b.dx);
  return (Math.atan2(sine, Math.abs(a.dx * b.dx + a.dy * b.dy)) * 180) / Math.PI;
}

function holdsFor({ building, levels }: Grid, level: Pick<Level, 'id' | 'building'> | undefined): boolean {
  if (level === undefined) return levels === undefined;
  if (levels !== undefined && !levels.includes(level.id)) return false;
  return building === undefined || level.building === undefined || building === level.building;
}

function linesOf(grids: readonly Grid[]): { lines: Line[]; leftOut: number } {
  const seen = new Map<string, number>();
  for (const { lines } of grids) for (const { name } of lines) seen.set(name, (seen.get(name) ?? 0) + 1);
  const families: Family[] = [];
  const lines: Line[] = [];
  let leftOut = 0;
  for (const grid of grids) {
    for (const { name, from, to } of grid.lines) {
      const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
      if (!(length > SLACK_MM) || !Number.isFinite(length)) continue;
      if (lines.length === MOST_LINES) {
        leftOut++;
        continue;
      }
      const [dx, dy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
      const isShared = (seen.get(name) ?? 0) > 1 && grids.length > 1;
      const full = isShared ? `${name} (${grid.name ?? grid.id})` : name;
      lines.push({ name: full, x: from[0], y: from[1], dx, dy, length, family: familyOf(families, dx, dy) });
    }
  }
  return { lines, leftOut };
}

function familyOf(families: Family[], dx: number, dy: number): Family {
  let family = families.find((other) => angleBetween(other, { dx, dy }) < PARALLEL_DEG);
  if (family === undefined) {
    family = { dx, dy, size: 0 };
    families.push(family);
  }
  family.size++;
  return family;
}
