import { planeOf, ringOn } from '../../geometry/plane-frame.js';
import { isRingInRing } from '../../geometry/ring-in-ring.js';
import { planeOfFace, ringInWords, ringsOfSubstrate } from '../rings-of.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const openingOutside: Rule = {
  id: 'opening-outside',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'records',
  title: 'An opening or a zone does not lie in the outline of its substrate.',
  why: 'It belongs to another slab or lies in another place than drawn, so that holes are judged against an opening that is not there and not against the one that is.',
  mend: 'Correct its points, give it to the substrate that it lies in, or cut it at the edge.',
  needs: 'An outline.',
  data: {
    ring: '`opening` or `zone`',
    substrate: 'id of the substrate',
  },
  message: ({ ring, substrate }) => `${ringInWords(ring, substrate)} does not lie wholly in its outline.`,
  causeMessage: ({ substrate }) => `Openings or zones of substrate "${substrate}" do not lie in its outline.`,
  example: {
    form: 'members',
    bad: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]] },\n    "openings": [{ "points": [[9000, 6000, 3000], [10500, 6000, 3000], [10500, 8000, 3000], [9000, 8000, 3000]] }] }\n]',
    good: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]] },\n    "openings": [{ "points": [[9000, 6000, 3000], [10000, 6000, 3000], [10000, 8000, 3000], [9000, 8000, 3000]] }] }\n]',
  },
  checkLayout(run) {
    run.layout.collection('substrates').judged.forEach((record, index) => {
      if (record === undefined) {
        run.leftOut(BROKEN);
        return;
      }
      const [first, ...rest] = ringsOfSubstrate(record);
      const inner = first?.kind === 'outline' ? rest : ringsOfSubstrate(record);
      const plane = first && (planeOfFace(record.face) ?? planeOf(first.points));
      if (first?.kind !== 'outline' || plane === undefined) {
        run.leftOut('substrate without an outline', inner.length);
        return;
      }
      const outline = ringOn(plane, first.points);
      for (const { kind, holder, points } of inner) {
        run.judged(1);
        if (isRingInRing(ringOn(plane, points), outline, LENGTH_SLACK_MM)) continue;
        const data = { ring: kind, substrate: record.id };
        run.atRecord('substrates', index, { member: holder, data, cause: record.id });
      }
    });
  },
};
