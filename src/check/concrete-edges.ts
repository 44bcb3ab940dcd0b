import { EdgeGrid } from '../geometry/edge-grid.js';
import { distanceToRing, insideRing, type Ring } from '../geometry/ring.js';
import { gapsBetween, type Stretch } from '../geometry/stretch.js';
import { type Segment2D, uncovered } from '../geometry/touching-edges.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { isIn, type Surface } from './surface.js';
import type { EdgeKind, TouchingEdge } from './touching-outlines.js';

/** What a piece of an edge counts as; the order matters to nothing. */
export type PieceKind = 'free' | 'opening' | 'movement-joint' | 'goes-on';

/** A piece of an edge, in the plane of the face. */
export interface Piece {
  kind: PieceKind;
  segment: Segment2D;
  /** Index of the opening; -1 for the outline. */
  opening: number;
  /** Whether the layout gives the kind of the edge. */
  isGiven: boolean;
}

/** What of an outline was taken as concrete that goes on because nothing is said of its edges. */
export interface Assumed {
  /** Edges of which a stretch was, and the length of all stretches, mm. */
  edges: number;
  length: number;
  /** Number of the first substrate that touches; -1 where several do only together. */
  other: number;
}

/** Cells of the grid are told apart by what lies within this of them, mm: more than the slack and any rounding. */
const MARGIN_MM = 0.01;

const MIXED = 1;
const ON = 2;
const OFF = 3;

/** The edges of one substrate, and where its concrete is. Millimetres, in the plane of the face. */
export class ConcreteEdges {
  readonly pieces: readonly Piece[];
  readonly assumed: Assumed | undefined;
  readonly hasJoint: boolean;
  readonly grid: EdgeGrid;
  /** For each cell of the grid whether it is on the concrete; 0 where nobody has asked yet. */
  private readonly cells: Uint8Array;
  private readonly isEdge: (piece: number) => boolean;
  private readonly isJoint: (piece: number) => boolean;

  /** @param touching the edges of other substrates that touch an edge of the outline */
  constructor(
    private readonly surface: Surface,
    private readonly outline: Ring,
    touching: (edge: number) => readonly TouchingEdge[],
    touchMm: number,
  ) {
    const { substrate, openings } = surface;
    const ofOutline = outlinePieces(outline, substrate.outline?.edges, touching, touchMm);
    this.assumed = ofOutline.assumed;
    const ofOpenings = openings.flatMap((ring, opening) => {
      const kinds = substrate.openings?.[opening].edges;
      return segmentsOf(ring).map((segment, k): Piece => {
        const kind = kinds === undefined ? 'opening' : pieceKind(kinds[k]);
        return { kind, segment, opening, isGiven: kinds !== undefined };
      });
    });
    this.pieces = [...ofOutline.pieces, ...ofOpenings];
    const { pieces } = this;
    const column = (k: number) => Float64Array.from(pieces, ({ segment }) => segment[k]);
    this.grid = new EdgeGrid({ fromU: column(0), fromV: column(1), toU: column(2), toV: column(3) }, MARGIN_MM);
    this.cells = new Uint8Array(this.grid.cells);
    this.hasJoint = pieces.some(({ kind }) => kind === 'movement-joint');
    this.isEdge = (piece) => pieces[piece].kind === 'free' || pieces[piece].kind === 'opening';
    this.isJoint = (piece) => pieces[piece].kind === 'movement-joint';
  }

  /** Whether the layout gives the kinds of the edges of the outline. */
  get isSaid(): boolean {
    return this.surface.substrate.outline?.edges !== undefined;
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

  /** The nearest edge of the concrete, or movement joint, nearer than `within`; undefined where there is none. {@link distance} is its distance. */
  nearest(what: 'edge' | 'joint', u: number, v: number, within: number): Piece | undefined {
    if (!(within > 0)) return undefined;
    const piece = this.grid.nearest(u, v, within, what === 'edge' ? this.isEdge : this.isJoint);
    return piece >= 0 && this.grid.distance < within ? this.pieces[piece] : undefined;
  }

  get distance(): number {
    return this.grid.distance;
  }

  private isOnExactly(u: number, v: number): boolean {
    if (!isIn(this.outline, u, v)) return false;
    return !this.surface.openings.some(
      (ring) => insideRing(ring, u, v) && distanceToRing(ring, u, v) > LENGTH_SLACK_MM,
    );
  }
}

function outlinePieces(
  ring: Ring,
  kinds: readonly EdgeKind[] | undefined,
  touching: (edge: number) => readonly TouchingEdge[],
  touchMm: number,
): { pieces: Piece[]; assumed: Assumed | undefined } {
  let assumed: Assumed | undefined;
  const pieces = segmentsOf(ring).flatMap((segment, k): Piece[] => {
    if (kinds !== undefined) return [{ kind: pieceKind(kinds[k]), segment, opening: -1, isGiven: true }];
    const beside = touching(k);
    const found = stretchesOf(segment, beside, touchMm);
    const length = found.assumed.reduce((sum, [from, to]) => sum + (to - from), 0) * lengthOf(segment);
    if (length > 0) {
      const [edges, before] = [(assumed?.edges ?? 0) + 1, assumed?.length ?? 0];
      assumed = { edges, length: before + length, other: assumed?.other ?? found.other };
    }
    const cut = (kind: PieceKind, stretches: readonly Stretch[]) =>
      stretches.map((stretch): Piece => ({ kind, segment: part(segment, stretch), opening: -1, isGiven: false }));
    return [...cut('free', found.free), ...cut('movement-joint', found.joint), ...cut('goes-on', found.goesOn)];
  });
  return { pieces, assumed };
}

/** What the edges that touch an edge make of it, stretch by stretch. */
function stretchesOf(segment: Segment2D, touching: readonly TouchingEdge[], touchMm: number) {
  const isWall = ({ kind }: TouchingEdge) => kind === 'free' || kind === 'opening';
  const segments = (wanted: (edge: TouchingEdge) => boolean) => touching.filter(wanted).map((edge) => edge.segment);
  const covered = (others: Segment2D[]) =>
    others.length === 0 ? [] : gapsBetween([...uncovered(segment, others, touchMm)]);
  const concrete = touching.filter((edge) => !edge.isOfOpening && !isWall(edge));
  const joint = covered(segments((edge) => !edge.isOfOpening && edge.kind === 'movement-joint'));
  const hollow = covered(segments((edge) => edge.isOfOpening && (edge.kind === undefined || isWall(edge))));
  const beside = concrete.map((edge) => edge.segment);
  const free = [...uncovered(segment, beside, touchMm), ...hollow];
  const rest = (...known: Stretch[]) =>
    gapsBetween(known).filter(([from, to]) => (to - from) * lengthOf(segment) > LENGTH_SLACK_MM);
  const said = covered(segments((edge) => !edge.isOfOpening && edge.kind !== undefined && !isWall(edge)));
  const first = concrete.find(({ kind, segment: own }) => kind === undefined && covered([own]).length > 0);
  return {
    free,
    joint,
    goesOn: rest(...free, ...joint),
    assumed: rest(...free, ...said),
    other: first?.surface ?? -1,
  };
}

function pieceKind(kind: EdgeKind): PieceKind {
  return kind === 'continuous' || kind === 'construction-joint' ? 'goes-on' : kind;
}

function segmentsOf({ u, v }: Ring): Segment2D[] {
  return Array.from(u, (_, k) => {
    const next = (k + 1) % u.length;
    return [u[k], v[k], u[next], v[next]] as const;
  });
}

function part([fromU, fromV, toU, toV]: Segment2D, [from, to]: Stretch): Segment2D {
  const at = (t: number) => [fromU + t * (toU - fromU), fromV + t * (toV - fromV)] as const;
  // An end that is not cut keeps its coordinates to the last bit.
  const end = to === 1 ? ([toU, toV] as const) : at(to);
  return [...at(from), ...end];
}

function lengthOf([fromU, fromV, toU, toV]: Segment2D): number {
  return Math.hypot(toU - fromU, toV - fromV);
}
