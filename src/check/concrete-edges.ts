import { EdgeGrid } from '../geometry/edge-grid.js';
import type { Ring } from '../geometry/ring.js';
import type { Piece } from './edge-pieces.js';
import { openingAt } from './opening-at.js';
import { isIn, type Surface } from './surface.js';

/** Cells of the grid are told apart by what lies within this of them, mm: more than the slack and any rounding. */
const MARGIN_MM = 0.01;

/** What a cell of the grid is. */
const MIXED = 1;
const ON = 2;
const OFF = 3;

/** The edges that holes of one substrate are judged by, and where its concrete is. Millimetres, in the plane of its face. */
export class ConcreteEdges {
  readonly hasJoint: boolean;
  readonly grid: EdgeGrid;
  /** Distance of the piece that {@link nearest} found last. */
  distance = Number.POSITIVE_INFINITY;
  private readonly pieces: readonly Piece[];
  private readonly own: ReadonlySet<Piece>;
  private readonly joints: readonly Piece[];
  /** For each cell of the grid whether it is on the concrete; 0 where nobody has asked yet. */
  private readonly cells: Uint8Array;
  private readonly isOwnEdge: (piece: number) => boolean;
  private readonly isEdge: (piece: number) => boolean;
  private readonly isJoint: (piece: number) => boolean;

  /**
   * @param own pieces of the edges of the substrate
   * @param beyond pieces of the edges of substrates into which its concrete goes on
   * @param isCut whether so many edges lie at one place that not all were compared: an edge may be wrong or missing
   */
  constructor(
    private readonly surface: Surface,
    private readonly outline: Ring,
    own: readonly Piece[],
    beyond: readonly Piece[],
    readonly isCut: boolean,
  ) {
    const pieces = [...own, ...beyond];
    this.pieces = pieces;
    this.own = new Set(own);
    const column = (k: number) => Float64Array.from(pieces, ({ segment }) => segment[k]);
    this.grid = new EdgeGrid({ fromU: column(0), fromV: column(1), toU: column(2), toV: column(3) }, MARGIN_MM);
    this.cells = new Uint8Array(this.grid.cells);
    this.joints = own.filter(({ kind }) => kind === 'movement-joint');
    this.hasJoint = this.joints.length > 0;
    this.isEdge = (piece) => pieces[piece].kind === 'free' || pieces[piece].kind === 'opening';
    this.isOwnEdge = (piece) => piece < own.length && this.isEdge(piece);
    this.isJoint = (piece) => piece < own.length && pieces[piece].kind === 'movement-joint';
  }

  /** Coordinates of a point of the site in the face. */
  uOf(x: number, y: number, z: number): number {
    const { origin, u } = this.surface;
    return (x - origin[0]) * u[0] + (y - origin[1]) * u[1] + (z - origin[2]) * u[2];
  }

  vOf(x: number, y: number, z: number): number {
    const { origin, v } = this.surface;
    return (x - origin[0]) * v[0] + (y - origin[1]) * v[1] + (z - origin[2]) * v[2];
  }

  /** Whether a point lies in the outline and not in an opening; on an edge counts as on the concrete. Most points cost the look into one cell. */
  isOn(u: number, v: number): boolean {
    const { grid, cells } = this;
    const cell = grid.cellOf(u, v);
    if (cell < 0) return false;
    if (cells[cell] === 0) cells[cell] = !grid.isEmpty(cell) ? MIXED : this.isOnExactly(u, v) ? ON : OFF;
    return cells[cell] === MIXED ? this.isOnExactly(u, v) : cells[cell] === ON;
  }

  /**
   * The nearest edge of the concrete, or movement joint of the substrate, nearer than `within` to a point on
   * the concrete; undefined where there is none. An edge beyond is none where a movement joint of the substrate
   * lies between it and the point. That costs a look at each joint for each edge beyond within reach.
   */
  nearest(what: 'edge' | 'joint', u: number, v: number, within: number): Piece | undefined {
    if (!(within > 0)) return undefined;
    if (what === 'joint') return this.find(u, v, within, this.isJoint);
    const piece = this.find(u, v, within, this.isEdge);
    if (piece === undefined || !this.hasJoint || this.own.has(piece)) return piece;
    const isBefore = (k: number) => this.isOwnEdge(k) || (this.isEdge(k) && !this.isBehindJoint(u, v, k));
    return this.find(u, v, within, isBefore);
  }

  /** Whether the way from a point to the nearest place of a piece goes through a movement joint of the substrate. */
  private isBehindJoint(u: number, v: number, piece: number): boolean {
    const [toU, toV] = nearestPlace(this.pieces[piece].segment, u, v);
    return this.joints.some(({ segment: [aU, aV, bU, bV] }) => {
      const side = (pU: number, pV: number) => (bU - aU) * (pV - aV) - (bV - aV) * (pU - aU);
      const along = (pU: number, pV: number) => (toU - u) * (pV - v) - (toV - v) * (pU - u);
      // Who stands on the joint has not gone through it, wherever the way leads.
      const from = side(u, v);
      return from !== 0 && from * side(toU, toV) <= 0 && along(aU, aV) * along(bU, bV) <= 0;
    });
  }

  private find(u: number, v: number, within: number, accept: (piece: number) => boolean): Piece | undefined {
    const { grid } = this;
    const piece = grid.nearest(u, v, within, accept);
    this.distance = grid.distance;
    return piece >= 0 && grid.distance < within ? this.pieces[piece] : undefined;
  }

  private isOnExactly(u: number, v: number): boolean {
    return isIn(this.outline, u, v) && openingAt(this.surface, u, v) < 0;
  }
}

/** The place of a segment that is nearest to a point. */
function nearestPlace([fromU, fromV, toU, toV]: Piece['segment'], u: number, v: number): [u: number, v: number] {
  const [du, dv] = [toU - fromU, toV - fromV];
  const lengthSq = du * du + dv * dv;
  const t = lengthSq > 0 ? Math.min(1, Math.max(0, ((u - fromU) * du + (v - fromV) * dv) / lengthSq)) : 0;
  return [fromU + t * du, fromV + t * dv];
}
