import { offPlane, type PlaneFrame, planeOf } from '../../geometry/plane-frame.js';
import { planeOfFace, type RecordRing, ringInWords, ringsOf, ringsOfSubstrate } from '../rings-of.js';
import type { Rule } from '../rule.js';
import type { LayoutRun } from '../run.js';
import { BROKEN } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const ringNotFlat: Rule = {
  id: 'ring-not-flat',
  class: 'data',
  severity: 'error',
  lessGrave: 'A warning for outlines, openings and zones, which are projected onto the face.',
  since: '0.1',
  stage: 'records',
  title: 'The points of an outline do not lie in one plane, or not in that of the face.',
  why: 'Either the face or the outline is wrong. The outline is projected onto the face, so that edges may come to lie where none are.',
  mend: 'Correct the heights of the points, or the point and the direction of the face.',
  accept: 'For an outline that was measured on a rough surface. Not for the base of a prism.',
  needs: 'For outlines of substrates: a face.',
  options: {
    limit: {
      what: 'Greatest distance of a point from the plane: our own definition.',
      unit: 'mm',
      default: 1,
      least: 0,
      most: 10_000,
    },
  },
  data: {
    record: 'id of the substrate or keep-out',
    ring: '`outline`, `opening` or `zone` of a substrate, or `base` of a prism',
    offset:
      'distance of the point that lies off the most, mm; off a face positive into the concrete, off a base without a sign',
    limit: 'greatest distance that is allowed, mm',
  },
  message: ({ ring, record, offset }, say) =>
    ring === 'base'
      ? `${ringInWords(ring, record)} is not flat: points lie ${say.length(offset)} off its plane.`
      : `${ringInWords(ring, record)} has a point that lies ${say.length(Math.abs(Number(offset)))} off the plane of the face.`,
  causeMessage: ({ ring, offset }, say) =>
    ring === 'base'
      ? 'Bases of prisms are not flat.'
      : `Outlines have points that lie ${say.length(Math.abs(Number(offset)))} off the planes of their faces.`,
  example: {
    form: 'members',
    bad: '"keepOuts": [{ "id": "K-1", "kind": "embed", "standoff": 0, "knownFrom": "survey",\n  "shape": { "prism": { "base": [[0, 0, 3100], [500, 0, 3100], [500, 500, 3150], [0, 500, 3100]], "extrude": [0, 0, 100] } } }]',
    good: '"keepOuts": [{ "id": "K-1", "kind": "embed", "standoff": 0, "knownFrom": "survey",\n  "shape": { "prism": { "base": [[0, 0, 3100], [500, 0, 3100], [500, 500, 3100], [0, 500, 3100]], "extrude": [0, 0, 100] } } }]',
  },
  checkLayout(run) {
    const { layout } = run;
    layout.collection('substrates').judged.forEach((record, index) => {
      if (record === undefined) {
        run.leftOut(BROKEN);
        return;
      }
      const rings = ringsOfSubstrate(record);
      const plane = planeOfFace(record.face);
      if (plane === undefined) run.leftOut('substrate without a face', rings.length);
      else for (const ring of rings) judge(run, 'substrates', index, ring, plane);
    });
    layout.collection('keepOuts').judged.forEach((record, index) => {
      if (record === undefined) {
        run.leftOut(BROKEN);
        return;
      }
      for (const ring of ringsOf('keepOuts', record)) {
        const plane = planeOf(ring.points);
        if (plane === undefined || judge(run, 'keepOuts', index, ring, plane)) continue;
        if (run.severity === 'error') layout.collection('keepOuts').giveUp(index);
      }
    });
  },
};

/** Judges a ring; tells whether it is flat. */
function judge(
  run: LayoutRun,
  name: 'substrates' | 'keepOuts',
  index: number,
  ring: RecordRing,
  plane: PlaneFrame,
): boolean {
  run.judged(1);
  const limit = run.option('limit');
  const offsets = ring.points.map((point) => offPlane(plane, point));
  const isFlatAt = (height: number) => offsets.every((off) => Math.abs(off - height) <= limit + LENGTH_SLACK_MM);
  if (isFlatAt(0) || (ring.offset !== 0 && isFlatAt(ring.offset))) return true;
  const most = Math.max(...offsets.map(Math.abs));
  // Corners that lie equally far off differ by rounding.
  const worst = offsets.findIndex((off) => Math.abs(off) >= most - LENGTH_SLACK_MM);
  const offset = offsets[worst];
  const isBase = ring.kind === 'base';
  run.atRecord(name, index, {
    member: isBase ? ring.member : `${ring.member}/${worst}`,
    data: { record: run.layout.collection(name).ids[index], ring: ring.kind, offset: isBase ? most : offset, limit },
    // One export sets the outlines of all slabs off by one height.
    cause: isBase ? 'base' : `outline ${offset.toFixed(1)}`,
    ...(!isBase && run.severity === 'error' && { severity: 'warning' as const }),
  });
  return false;
}
