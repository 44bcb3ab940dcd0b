import { EdgeGrid } from '../geometry/edge-grid.js';
import { distanceToRing, insideRing, type Ring } from '../geometry/ring.js';
import type { Piece } from './edge-pieces.js';
import { LENGTH_SLACK_MM } from './slack.js';
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
  /** For each cell of the grid whether it is on the concrete; 0 where nobody has asked yet. */
  private readonly cells: Uint8Array;
  private readonly isOwnEdge: (piece: number) => boolean;
  private readonly isEdge: (piece: number) => boolean;
  private readonly isJoint: (piece: number) => boolean;

  /**
   * @param own pieces of the edges of the substrate
   * @param beyond pieces of the edges of substrates into which its concrete goes on
   */
  constructor(
    private readonly surface: Surface,
    private readonly outline: Ring,
    own: readonly Piece[],
    beyond: readonly Piece[],
  ) {
    const pieces = [...own, ...beyond];
    this.pieces = pieces;
    this.own = new Set(own);
    const column = (k: number) => Float64Array.from(pieces, ({ segment }) => segment[k]);
    this.grid = new EdgeGrid({ fromU: column(0), fromV: column(1), toU: column(2), toV: column(3) }, MARGIN_MM);
    this.cells = new Uint8Array(this.grid.cells);
    this.hasJoint = own.some(({ kind }) => kind === 'movement-joint');
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
   * the concrete; undefined where there is none. An edge beyond a nearer movement joint is none.
   */
  nearest(what: 'edge' | 'joint', u: number, v: number, within: number): Piece | undefined {
    if (!(within > 0)) return undefined;
    if (what === 'joint') return this.find(u, v, within, this.isJoint);
    const piece = this.find(u, v, within, this.isEdge);
    if (piece === undefined || !this.hasJoint || this.own.has(piece)) return piece;
    const { distance } = this;
    if (this.find(u, v, distance, this.isJoint) !== undefined) return this.find(u, v, within, this.isOwnEdge);
    this.distance = distance;
    return piece;
  }

  private find(u: number, v: number, within: number, accept: (piece: number) => boolean): Piece | undefined {
    const { grid } = this;
    const piece = grid.nearest(u, v, within, accept);
    this.distance = grid.distance;
    return piece >= 0 && grid.distance < within ? this.pieces[piece] : undefined;
  }

  private isOnExactly(u: number, v: number): boolean {
    if (!isIn(this.outline, u, v)) return false;
    return !this.surface.openings.some(
      (ring) => insideRing(ring, u, v) && distanceToRing(ring, u, v) > LENGTH_SLACK_MM,
    );
  }
}
