import { judgeReach } from '../judge-reach.js';
import { throughThickness } from '../least-thickness.js';
import type { Rule } from '../rule.js';
import { SIDE, sideData, sideInWords } from '../side-in-words.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const stopsShort: Rule = {
  id: 'stops-short',
  class: 'site',
  severity: 'warning',
  since: '0.1',
  stage: 'geometry',
  title: 'A through hole has a depth that does not bring it out on the far side.',
  why: 'Whoever drills by the depth stops inside the slab, and the rod or bolt that goes through cannot be set. Whoever drills through has an unguarded far side if nobody expected it.',
  mend: 'Leave the depth of the through hole out, give the one that is needed, or make it a blind hole.',
  data: {
    substrate: 'id of the substrate',
    reach: 'depth square to the face, mm',
    thickness: 'thickness of the concrete at the hole, mm',
    at: '`point` or `end`: where along the hole the thickness was taken',
    side: 'on a composite deck: what the thickness was taken over',
    phaseFrom: SIDE.phaseFrom,
  },
  message: ({ substrate, reach, thickness, side, phaseFrom }, say) =>
    `The through hole is given ${say.length(reach)} deep; substrate "${substrate}" is ${say.length(thickness)} thick there${sideInWords(side, phaseFrom)}.`,
  causeMessage: ({ substrate, thickness, side, phaseFrom }, say) =>
    `Through holes are given less depth than the ${say.length(thickness)} of substrate "${substrate}"${sideInWords(side, phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [{ "id": "HT-1", "name": "Through bolt", "principle": "through-bolt", "form": "through", "diameter": 18 }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "depth": 150 }\n]',
    good: '"holeTypes": [{ "id": "HT-1", "name": "Through bolt", "principle": "through-bolt", "form": "through", "diameter": 18 }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000] }\n]',
  },
  checkSite(site, run) {
    judgeReach(site, run, {
      // A through hole without a depth goes as far as it needs.
      isMeant: ({ form, depth }, kind) => form === 'through' && (kind.hasDepth || depth !== undefined),
      leastAt: throughThickness,
      judge({ kind, surface }, reach, { thickness, at, most = thickness.mm }) {
        if (reach >= most - LENGTH_SLACK_MM) return 'passed';
        if (reach >= thickness.mm - LENGTH_SLACK_MM) return { leftOut: 'where the flutes lie is not known' };
        const { id: substrate } = surface.substrate;
        const data = { substrate, reach, thickness: thickness.mm, at, ...sideData(thickness, surface) };
        return { finding: { data, cause: `${substrate} ${kind.type?.id} ${thickness.mm} ${thickness.side ?? ''}` } };
      },
    });
  },
};
