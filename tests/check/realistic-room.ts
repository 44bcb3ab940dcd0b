import {
  ABANDONED,
  BEAM_WIDE,
  BEAMS_X,
  DEEP,
  FEEDER,
  FOOT,
  INCH,
  type Line,
  LINES,
  PIECES,
  type Piece,
  pieceAt,
  SLAB,
  type Spot,
  STRETCH,
  WALL,
  WIDE,
} from './realistic-structure.js';

/** What a hole asks of its place, sixteenths of an inch. */
export interface Size {
  diameter: number;
  /** Absent: through. */
  depth?: number;
  spacing: number;
  edge: number;
}

export interface Made {
  level: Piece['level'];
  size: Size;
  spot: Spot;
}

/** Everything keeps this much more than it must. */
const MORE = 10;
const CELL = 2 * FOOT;

/** Where there is room for a hole in the invented building, as one who draws it would look: in plan, with something to spare. */
export class Room {
  private readonly cells = new Map<string, Made[]>();

  take(made: Made): void {
    const key = this.key(made.level, made.spot[0], made.spot[1]);
    this.cells.set(key, [...(this.cells.get(key) ?? []), made]);
  }

  has(made: Made): boolean {
    const { level, spot, size } = made;
    const [x, y] = spot;
    if (x < 0 || y < 0 || x > WIDE || y > DEEP) return false;
    const piece = pieceAt(level, x, y);
    const margin = size.edge + MORE;
    const rings = PIECES.filter((own) => own.level === level).flatMap((own) => [
      ...ringEdges(own.outline).filter((_, k) =>
        own.edges ? ['free', 'movement-joint'].includes(own.edges[k]) : isRim(own.outline, k),
      ),
      ...ringEdges(own.opening),
    ]);
    if (rings.some(([a, b]) => distance(spot, a, b) < margin) || isInside(piece.opening, spot)) return false;
    if (cutOff(spot)) return false;
    if (!this.isFarFromOthers(made)) return false;
    return level === 'L2' || (isClearOfBelow(spot) && isClearInside(piece, made));
  }

  /** Whether the members of a group keep their distance from each other. */
  isTogether(made: readonly Made[], designSpacing: number | undefined): boolean {
    return made.every((one, k) =>
      made.slice(k + 1).every((other) => between(one.spot, other.spot) >= (designSpacing ?? one.size.spacing + MORE)),
    );
  }

  /** The zone of a place; of several the last one. */
  static zoneAt(piece: Piece, spot: Spot): Piece['zones'][number] | undefined {
    return piece.zones.findLast(({ outline }) => isInside(outline, spot));
  }

  private isFarFromOthers({ level, spot: [x, y], size }: Made): boolean {
    for (const dx of [-CELL, 0, CELL]) {
      for (const dy of [-CELL, 0, CELL]) {
        for (const other of this.cells.get(this.key(level, x + dx, y + dy)) ?? []) {
          if (between([x, y], other.spot) < Math.max(size.spacing, other.size.spacing) + MORE) return false;
        }
      }
    }
    return true;
  }

  private key(level: string, x: number, y: number): string {
    return `${level} ${Math.floor(x / CELL)} ${Math.floor(y / CELL)}`;
  }
}

const between = (a: Spot, b: Spot) => Math.hypot(a[0] - b[0], a[1] - b[1]);
const ringEdges = (ring: readonly Spot[]) => ring.map((from, k): [Spot, Spot] => [from, ring[(k + 1) % ring.length]]);

/** Whether an edge of an outline without kinds lies on the rim of the building. */
function isRim(outline: readonly Spot[], k: number): boolean {
  const [[x0, y0], [x1, y1]] = ringEdges(outline)[k];
  return (x0 === x1 && (x0 === 0 || x0 === WIDE)) || (y0 === y1 && (y0 === 0 || y0 === DEEP));
}

/** Beyond the corner that is cut off. */
function cutOff([x, y]: Spot): boolean {
  return x + y > WIDE + DEEP - 31 * FOOT;
}

function isInside(box: readonly Spot[], [x, y]: Spot): boolean {
  return x >= box[0][0] && x <= box[2][0] && y >= box[0][1] && y <= box[2][1];
}

function distance([x, y]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const [ux, uy] = [bx - ax, by - ay];
  const t = Math.max(0, Math.min(1, ((x - ax) * ux + (y - ay) * uy) / (ux * ux + uy * uy)));
  return Math.hypot(x - ax - t * ux, y - ay - t * uy);
}

/** Neither under a beam nor at the wall, where the slab cannot be drilled. */
function isClearOfBelow([x, y]: Spot): boolean {
  const isAtWall = x > WALL.x0 - FOOT && x < WALL.x1 + FOOT && y > WALL.y - FOOT && y < WALL.y + WALL.thick + FOOT;
  return !isAtWall && BEAMS_X.every((beam) => Math.abs(x - beam) > BEAM_WIDE / 2 + 6 * INCH);
}

/** Clear of what lies in the slab, of old bores, and not too deep for it. */
function isClearInside(piece: Piece, { spot, size }: Made): boolean {
  const zone = Room.zoneAt(piece, spot);
  const thickness = zone?.thickness ?? SLAB;
  if (size.depth !== undefined && size.depth + 24 + MORE > thickness) return false;
  // How far the hole reaches over the underside of the slab, a drop left aside, which only makes it less.
  const reach = size.depth ?? 2 * SLAB;
  const [x, y] = spot;
  const nearFeeder = x > FEEDER.x0 - FOOT && x < FEEDER.x1 + FOOT && y > FEEDER.y0 - FOOT && y < FEEDER.y1 + FOOT;
  if (nearFeeder || ABANDONED.some((old) => between(old, spot) < 5 * INCH + MORE)) return false;
  return LINES.every((line) => line.kind === 'bar' || isClearOf(line, spot, size, reach));
}

function isClearOf(line: Line, [x, y]: Spot, { diameter }: Size, reach: number): boolean {
  const [across, along] = line.x === undefined ? [y - (line.y ?? 0), x] : [x - line.x, y];
  const need = diameter / 2 + line.radius + line.standoff + MORE;
  if (along < line.from - need || along > line.to + need || Math.abs(across) > need) return true;
  const lowest = Math.min(
    ...[-STRETCH, 0, STRETCH].map((step) => line.rise(Math.max(line.from, Math.min(line.to, along + step)))),
  );
  return lowest - need > reach;
}
