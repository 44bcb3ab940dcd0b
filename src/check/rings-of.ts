import type { Face, Outline, Substrate } from '../generated/layout.js';
import { type PlaneFrame, planeOf, planeThrough, ringOn } from '../geometry/plane-frame.js';
import type { Ring } from '../geometry/ring.js';
import type { Vec3 } from '../geometry/vector.js';
import type { RecordOf } from '../model/layout-model.js';

export type RingKind = 'outline' | 'opening' | 'zone' | 'area' | 'base';

/** Collections whose records have rings. */
export const RING_OWNERS = ['substrates', 'areas', 'keepOuts'] as const;
export type RingOwner = (typeof RING_OWNERS)[number];

/** A ring of points in a record. Millimetres, site frame. */
export interface RecordRing {
  kind: RingKind;
  /** Tokens from the record to its points, and to the object that holds them. */
  member: string;
  holder: string;
  points: readonly Vec3[];
  edges?: Outline['edges'];
  /** How far the plane of a zone lies beyond the face. */
  offset: number;
}

/** The outline, openings and zones of a substrate. */
export function ringsOfSubstrate({ outline, openings = [], zones = [] }: Substrate): RecordRing[] {
  const ring = (kind: RingKind, holder: string, { points, edges }: Outline, offset = 0): RecordRing => ({
    kind,
    member: `${holder}/points`,
    holder,
    points,
    edges,
    offset,
  });
  return [
    ...(outline === undefined ? [] : [ring('outline', 'outline', outline)]),
    ...openings.map((opening, k) => ring('opening', `openings/${k}`, opening)),
    ...zones.map((zone, k) => ring('zone', `zones/${k}/outline`, zone.outline, zone.offset)),
  ];
}

/** The rings of any record. */
export function ringsOf(owner: RingOwner, record: RecordOf<RingOwner>): RecordRing[] {
  if (owner === 'substrates') return ringsOfSubstrate(record as Substrate);
  if (owner === 'areas') {
    const { outline } = record as RecordOf<'areas'>;
    const points = outline?.map(([x, y]): Vec3 => [x, y, 0]);
    return points === undefined ? [] : [{ kind: 'area', member: 'outline', holder: '', points, offset: 0 }];
  }
  const base = (record as RecordOf<'keepOuts'>).shape.prism?.base;
  return base === undefined
    ? []
    : [{ kind: 'base', member: 'shape/prism/base', holder: 'shape/prism', points: base, offset: 0 }];
}

/** The plane of a face; undefined without one, or where its direction has no length. */
export function planeOfFace(face: Face | undefined): PlaneFrame | undefined {
  return face && planeThrough(face.point, face.inward);
}

/** The ring as it is looked at: in the plane that is given, else in its own; undefined where it has none. */
export function flatRing({ points }: RecordRing, plane: PlaneFrame | undefined): Ring | undefined {
  const own = plane ?? planeOf(points);
  return own && ringOn(own, points);
}

const NAMES: Readonly<Record<RingKind, string>> = {
  outline: 'The outline of substrate',
  opening: 'An opening of substrate',
  zone: 'A zone of substrate',
  area: 'The outline of area',
  base: 'The base of keep-out',
};

/** A ring in words, for the beginning of a sentence. */
export function ringInWords(kind: unknown, record: unknown): string {
  return `${NAMES[kind as RingKind]} "${record}"`;
}
