import type { PlaneFrame } from '../../geometry/plane-frame.js';
import { cornerNearEdge, isOnLine } from '../../geometry/ring-touch.js';
import { ringFault } from '../../geometry/simple-ring.js';
import type { Substrate } from '../../generated/layout.js';
import { flatRing, planeOfFace, RING_OWNERS, type RecordRing, ringInWords, ringsOf } from '../rings-of.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const ringNotSimple: Rule = {
  id: 'ring-not-simple',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'records',
  title: 'An outline crosses or touches itself, repeats a point or has no area.',
  why: 'Nobody can tell what lies inside of it, so that no hole can be judged by it.',
  mend: 'Give the corners in order, each once, without repeating the first one at the end.',
  data: {
    record: 'id of the substrate, area or keep-out',
    ring: '`outline`, `opening` or `zone` of a substrate, `area`, or `base` of a prism',
    fault: '`crosses`, `touches`, `repeats-point` or `no-area`',
    edge: 'edge that is met, from 0: edge k runs from point k; the first of two points in a row; absent where there is no area',
    other:
      'edge that crosses it, point that touches it, or second of two points in a row; absent where there is no area',
  },
  message: ({ ring, record: id, fault, edge, other }) => {
    const name = ringInWords(ring, id);
    const [first, second] = [Number(edge) + 1, Number(other) + 1];
    if (fault === 'no-area') return `${name} has no area: its points lie on one line.`;
    if (fault === 'repeats-point')
      return `${name} has two points in a row at one place: points ${first} and ${second}.`;
    if (fault === 'touches') return `${name} touches itself: point ${second} lies on the side behind point ${first}.`;
    return `${name} crosses itself: the side behind point ${second} meets the one behind point ${first}.`;
  },
  causeMessage: ({ fault }) => {
    if (fault === 'no-area') return 'Outlines have no area: their points lie on one line.';
    if (fault === 'repeats-point') return 'Outlines have two points in a row at one place.';
    return fault === 'crosses' ? 'Outlines cross themselves.' : 'Outlines touch themselves.';
  },
  example: {
    form: 'members',
    bad: '"areas": [\n  { "id": "A-1", "name": "Pour 1", "outline": [[0, 0], [6000, 4000], [6000, 0], [0, 4000]] }\n]',
    good: '"areas": [\n  { "id": "A-1", "name": "Pour 1", "outline": [[0, 0], [6000, 0], [6000, 4000], [0, 4000]] }\n]',
  },
  checkLayout(run) {
    for (const name of RING_OWNERS) {
      const collection = run.layout.collection(name);
      collection.judged.forEach((record, index) => {
        if (record === undefined) {
          run.leftOut(BROKEN);
          return;
        }
        const plane = name === 'substrates' ? planeOfFace((record as Substrate).face) : PLAN[name];
        for (const ring of ringsOf(name, record)) {
          run.judged(1);
          const found = faultOf(ring, plane);
          if (found === undefined) continue;
          const { point, ...data } = found;
          const member = point === undefined ? ring.member : `${ring.member}/${point}`;
          run.atRecord(name, index, {
            member,
            data: { record: record.id, ring: ring.kind, ...data },
            cause: data.fault,
          });
          const rest = name === 'substrates' ? withoutEdges(record as Substrate, ring) : undefined;
          if (rest === undefined) collection.giveUp(index);
          else run.layout.collection('substrates').reduce(index, rest);
        }
      });
    }
  },
};

/**
 * A substrate as one of which the edges are not known, since its face and thickness are sound; undefined where a zone
 * is at fault, on which the thickness hangs, or where an edge is a movement joint, which must not seem to be none.
 */
function withoutEdges({ outline, openings, ...rest }: Substrate, { kind }: RecordRing): Substrate | undefined {
  return kind === 'zone' || outline?.edges?.includes('movement-joint') ? undefined : rest;
}

interface Fault {
  fault: 'no-area' | 'repeats-point' | 'touches' | 'crosses';
  edge?: number;
  other?: number;
  /** The point where it stands. */
  point?: number;
}

/** Areas are looked at in plan; a prism in the plane of its base. */
const PLAN: Readonly<Record<string, PlaneFrame>> = {
  areas: { origin: [0, 0, 0], normal: [0, 0, 1], u: [1, 0, 0], v: [0, 1, 0] },
};

/** In this order, and each within the slack, a ring has the same fault however it was turned in its frame. */
function faultOf(ring: RecordRing, plane: PlaneFrame | undefined): Fault | undefined {
  const flat = flatRing(ring, plane);
  if (flat === undefined || isOnLine(flat, LENGTH_SLACK_MM)) return { fault: 'no-area' };
  const { u, v } = flat;
  for (let edge = 0; edge < u.length; edge++) {
    const other = (edge + 1) % u.length;
    const isRepeated = Math.hypot(u[edge] - u[other], v[edge] - v[other]) <= LENGTH_SLACK_MM;
    if (isRepeated) return { fault: 'repeats-point', edge, other, point: Math.max(edge, other) };
  }
  const touch = cornerNearEdge(flat, LENGTH_SLACK_MM);
  if (touch !== undefined) return { fault: 'touches', edge: touch.edge, other: touch.corner, point: touch.corner };
  const crossing = ringFault(flat);
  return crossing && { fault: 'crosses', edge: crossing.edge, other: crossing.other, point: crossing.other };
}
