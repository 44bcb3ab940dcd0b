import { judgeReach } from '../judge-reach.js';
import { leastThickness } from '../least-thickness.js';
import type { Rule } from '../rule.js';
import { SIDE, sideData, sideInWords } from '../side-in-words.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const breaksThrough: Rule = {
  id: 'breaks-through',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A blind hole comes out on the far side of the concrete, or too near to it.',
  why: 'Concrete breaks out above, onto people, floors and services, and the anchor has too little concrete to hold in.',
  mend: 'Use a type with a shorter hole, move the hole to thicker concrete, or make it a through hole with its far side protected.',
  data: {
    substrate: 'id of the substrate',
    reach: 'depth square to the face and the concrete that must be left beyond, mm',
    thickness: 'thickness of the concrete at the hole, mm',
    at: '`point` or `end`: where along the hole the thickness was taken',
    backing: 'concrete that must be left beyond the hole, mm',
    ...SIDE,
  },
  message: ({ substrate, reach, thickness, at, backing, side, phaseFrom }, say) => {
    const needs =
      Number(backing) > 0
        ? `${say.length(reach)} with the ${say.length(backing)} that must be left`
        : say.length(reach);
    const where = at === 'end' ? `where the hole ends${side === undefined ? '' : ','}` : 'there';
    return `The hole needs ${needs}; substrate "${substrate}" is ${say.length(thickness)} thick ${where}${sideInWords(side, phaseFrom)}.`;
  },
  causeMessage: ({ substrate, thickness, side, phaseFrom }, say) =>
    `Holes need more concrete than the ${say.length(thickness)} of substrate "${substrate}"${sideInWords(side, phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "depth": 180.1 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 1000, 3000], "depth": 180 }\n]',
  },
  checkSite(site, run) {
    judgeReach(site, run, {
      isMeant: (type) => type.form !== 'through',
      leastAt: leastThickness,
      judge({ kind, surface }, depth, { thickness, at }) {
        const backing = kind.type?.backing?.value ?? 0;
        const reach = depth + backing;
        if (reach <= thickness.mm + LENGTH_SLACK_MM) return 'passed';
        const { id: substrate } = surface.substrate;
        const data = { substrate, reach, thickness: thickness.mm, at, backing, ...sideData(thickness, surface) };
        return { finding: { data, cause: `${substrate} ${kind.type?.id} ${thickness.mm} ${thickness.side ?? ''}` } };
      },
    });
  },
};
