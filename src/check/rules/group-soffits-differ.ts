import { outerAndInner } from '../group-faces.js';
import { groupsOf } from '../group-members.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const groupSoffitsDiffer: Rule = {
  id: 'group-soffits-differ',
  class: 'site',
  severity: 'info',
  since: '0.1',
  stage: 'geometry',
  title: 'The holes of a group lie on faces of different height.',
  why: 'The rods of one hanger then differ in length, and what is cut alike for all hangers does not hang level.',
  mend: 'Cut the rods to their places, or move the hanger so that all its rods hang from one face.',
  accept: 'When the difference is meant, as where a run passes under a drop.',
  needs: 'A face for each hole of the group.',
  options: {
    step: {
      what: 'Greatest difference of the faces of one group.',
      unit: 'mm',
      default: 1,
      least: 0,
      most: 100_000,
    },
  },
  data: {
    group: 'id of the group',
    member: 'id of the hole on the outer face',
    other: 'id of the hole on the face that lies farther in',
    difference: 'how far the two faces lie apart, mm',
    substrate: 'id of the substrate of the first one',
    otherSubstrate: 'id of the substrate of the other one',
  },
  message: ({ group, member, other, difference, substrate, otherSubstrate }, say) =>
    `The faces of holes "${member}" and "${other}" of group "${group}" lie ${say.length(difference)} apart (${facesOf(substrate, otherSubstrate)}).`,
  causeMessage: ({ substrate, otherSubstrate }) =>
    `Groups lie on faces of different height (${facesOf(substrate, otherSubstrate)}); rods differ in length.`,
  example: {
    form: 'members',
    bad: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] } },\n  { "id": "S-2", "kind": "beam", "face": { "point": [0, 0, 2600], "inward": [0, 0, 1] } }\n],\n"groups": [{ "id": "G-1", "kind": "trapeze" }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "group": "G-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-2", "group": "G-1", "point": [1000, 1600, 2600] }\n]',
    good: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] } }\n],\n"groups": [{ "id": "G-1", "kind": "trapeze" }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "group": "G-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "group": "G-1", "point": [1000, 1600, 3000] }\n]',
  },
  checkSite(site, run) {
    const limit = run.option('step') + LENGTH_SLACK_MM;
    for (const { group, place, members } of groupsOf(site, run, (_, count) => count > 1)) {
      const faces = outerAndInner(site, members);
      if (typeof faces === 'string') {
        run.leftOut(faces);
        continue;
      }
      run.judged(1);
      const [outer, inner] = faces;
      const difference = inner.height - outer.height;
      if (difference <= limit) continue;
      const [substrate, otherSubstrate] = faces.map(({ member }) => site.substrates.id(site.substrates.nameOf(member)));
      const [member, other] = faces.map((face) => site.holeId(face.member));
      const data = { group: group.id, member, other, difference, substrate, otherSubstrate };
      run.atRecord(place.part, 'groups', place.index, { data, cause: `${outer.key} ${inner.key}` });
    }
  },
};

function facesOf(substrate: unknown, other: unknown): string {
  return substrate === other ? `parts of substrate "${substrate}"` : `substrates "${substrate}" and "${other}"`;
}
