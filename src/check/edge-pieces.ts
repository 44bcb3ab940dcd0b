import type { Ring } from '../geometry/ring.js';
import { gapsBetween, type Stretch } from '../geometry/stretch.js';
import { type Segment2D, uncovered } from '../geometry/touching-edges.js';
import { LENGTH_SLACK_MM } from './slack.js';
import type { Surface } from './surface.js';
import { type EdgeKind, goesOn, type TouchingEdge } from './touching-outlines.js';

/** What a piece of an edge counts as. */
export type PieceKind = 'free' | 'opening' | 'movement-joint' | 'goes-on';

/** A piece of an edge, in the plane of a face. */
export interface Piece {
  kind: PieceKind;
  segment: Segment2D;
  /** Index of the opening; -1 for the outline. */
  opening: number;
  /** Whether the layout gives the kind of the edge. */
  isGiven: boolean;
  /** Id of the substrate whose edge it is. */
  substrate: string;
}

/** What of an outline was taken as concrete that goes on because nothing is said of its edges. */
export interface Assumed {
  /** Edges of which a stretch was, and the length of all stretches, mm. */
  edges: number;
  length: number;
  /** Number of the first substrate that touches; -1 where several do only together. */
  other: number;
}

/** The edges of one substrate, cut where others begin and end. */
export interface EdgePieces {
  pieces: readonly Piece[];
  assumed: Assumed | undefined;
  /** Numbers of the substrates into which the concrete goes on. */
  beyond: ReadonlySet<number>;
}

/**
 * Cuts the edges of a substrate into pieces. Millimetres, in the plane of its face.
 *
 * @param touching the edges of other substrates that touch an edge of the outline
 * @param touchMm how far off each other edges may lie and still touch
 */
export function edgePieces(
  surface: Surface,
  outline: Ring,
  touching: (edge: number) => readonly TouchingEdge[],
  touchMm: number,
): EdgePieces {
  const { substrate, openings } = surface;
  const kinds = substrate.outline?.edges;
  const beyond = new Set<number>();
  let assumed: Assumed | undefined;
  const ofOutline = segmentsOf(outline).flatMap((segment, k): Piece[] => {
    const found = stretchesOf(segment, touching(k), touchMm);
    const kind = kinds?.[k];
    if (kind === undefined || goesOn(kind)) for (const other of found.beyond) beyond.add(other);
    const piece = (pieceKind: PieceKind, own = segment): Piece => ({
      kind: pieceKind,
      segment: own,
      opening: -1,
      isGiven: kind !== undefined,
      substrate: substrate.id,
    });
    if (kind !== undefined) return [piece(pieceKindOf(kind))];
    const length = found.assumed.reduce((sum, [from, to]) => sum + (to - from), 0) * lengthOf(segment);
    if (length > 0) {
      const [edges, before] = [(assumed?.edges ?? 0) + 1, assumed?.length ?? 0];
      assumed = { edges, length: before + length, other: assumed?.other ?? found.first };
    }
    const cut = (cutKind: PieceKind, stretches: readonly Stretch[]) =>
      stretches.map((stretch) => piece(cutKind, part(segment, stretch)));
    return [...cut('free', found.free), ...cut('movement-joint', found.joint), ...cut('goes-on', found.goesOn)];
  });
  const ofOpenings = openings.flatMap((ring, opening) => {
    const given = substrate.openings?.[opening].edges;
    return segmentsOf(ring).map((segment, k): Piece => {
      const kind = given === undefined ? 'opening' : pieceKindOf(given[k]);
      return { kind, segment, opening, isGiven: given !== undefined, substrate: substrate.id };
    });
  });
  return { pieces: [...ofOutline, ...ofOpenings], assumed, beyond };
}

/** What the edges that touch an edge make of it, stretch by stretch. */
function stretchesOf(segment: Segment2D, touching: readonly TouchingEdge[], touchMm: number) {
  const isWall = ({ kind }: TouchingEdge) => kind === 'free' || kind === 'opening';
  const segments = (wanted: (edge: TouchingEdge) => boolean) => touching.filter(wanted).map((edge) => edge.segment);
  const covered = (others: Segment2D[]) =>
    others.length === 0 ? [] : gapsBetween([...uncovered(segment, others, touchMm)]).filter(isLong);
  const isLong = ([from, to]: Stretch) => (to - from) * lengthOf(segment) > LENGTH_SLACK_MM;
  const rest = (...known: Stretch[]) => gapsBetween(known).filter(isLong);
  const concrete = touching.filter((edge) => !edge.isOfOpening && !isWall(edge));
  const joint = covered(segments((edge) => !edge.isOfOpening && edge.kind === 'movement-joint'));
  const hollow = covered(segments((edge) => edge.isOfOpening && (edge.kind === undefined || isWall(edge))));
  const said = covered(segments((edge) => !edge.isOfOpening && edge.kind !== undefined && !isWall(edge)));
  const beside = concrete.filter(({ kind }) => kind !== 'movement-joint');
  const along = beside.filter(({ segment: own }) => covered([own]).length > 0);
  const free = [
    ...uncovered(
      segment,
      concrete.map((edge) => edge.segment),
      touchMm,
    ),
    ...hollow,
  ];
  return {
    free,
    joint,
    goesOn: rest(...free, ...joint),
    assumed: rest(...free, ...said),
    first: along.reduce((least, { kind, surfaces }) => (kind === undefined ? firstOf(least, surfaces) : least), -1),
    beyond: along.flatMap(({ surfaces }) => surfaces),
  };
}

/** The least number, of those known before and those that come; -1 stands for none. */
function firstOf(known: number, numbers: readonly number[]): number {
  return numbers.reduce((least, number) => (least < 0 || number < least ? number : least), known);
}

function pieceKindOf(kind: EdgeKind): PieceKind {
  return goesOn(kind) ? 'goes-on' : kind;
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
