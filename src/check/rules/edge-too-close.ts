import { edgesOf, TOUCH_OPTION } from '../edges-of.js';
import { hasLeastEdge, judgeEdges } from '../judge-edges.js';
import type { Rule } from '../rule.js';

export const edgeTooClose: Rule = {
  id: 'edge-too-close',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole lies nearer to an edge of the concrete than its hole type allows.',
  why: 'Near an edge the concrete breaks out sideways, while drilling or later under the load.',
  mend: 'Move the hole away from the edge, or use a type that may stand so near. Where the concrete goes on beyond the edge, say so in the kinds of the edges.',
  accept: 'When the designer of the anchors has agreed to the distance in writing.',
  needs: 'A hole type with `minEdge`, and a substrate with a face and an outline.',
  options: { touch: TOUCH_OPTION },
  data: {
    substrate: 'id of the substrate',
    edge: '`free` or `opening`: what the nearest edge counts as',
    isGiven:
      'whether the layout gives the kind of that edge; where not, one of an outline is free, one of an opening an opening',
    opening: 'index of the opening from 0; only of one',
    beyond: 'id of the substrate that has the edge, where that is another one into which the concrete goes on',
    distance: 'distance to the edge in the face, mm',
    limit: 'least distance, mm',
    source: 'where the limit comes from',
    holeType: 'id of the hole type',
  },
  message: ({ substrate, beyond = substrate, edge, isGiven, opening, distance, limit, source }, say) =>
    `The hole lies ${say.length(distance)} from ${edgeInWords(edge, isGiven, opening)} of substrate "${beyond}"; at least ${say.length(limit)} is needed (${source}).${takenAs(edge, isGiven)}`,
  causeMessage: ({ substrate, beyond = substrate, edge, isGiven, opening, limit, source, holeType }, say) =>
    `Holes of type "${holeType}" lie nearer than ${say.length(limit)} to ${edgeInWords(edge, isGiven, opening)} of substrate "${beyond}" (${source}).${takenAs(edge, isGiven)}`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor, 10 mm bit", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minEdge": { "value": 75, "source": "Invented approval 01, table 2" } }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [74.9, 5000, 3000] }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor, 10 mm bit", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minEdge": { "value": 75, "source": "Invented approval 01, table 2" } }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [75, 5000, 3000] }\n]',
  },
  checkSite(site, run) {
    if (!hasLeastEdge(site)) return;
    judgeEdges(site, edgesOf(site, run.option('touch')), run, 'edge', (i, { type, surface }, nearest, distance) => {
      const { kind: edge, isGiven, opening, substrate: beyond } = nearest;
      const substrate = surface?.substrate.id;
      const data = {
        substrate,
        edge,
        isGiven,
        ...(opening >= 0 && { opening }),
        ...(beyond !== substrate && { beyond }),
        distance,
        limit: type?.minEdge?.value,
        source: type?.minEdge?.source,
        holeType: type?.id,
      };
      run.atHole(i, { member: 'point', data, cause: `${beyond} ${data.holeType} ${edge} ${isGiven}` });
    });
  },
};

function edgeInWords(edge: unknown, isGiven: unknown, opening: unknown): string {
  if (edge === 'opening') return opening === undefined ? 'an edge at an opening' : 'an opening';
  return isGiven ? 'a free edge' : 'an edge';
}

function takenAs(edge: unknown, isGiven: unknown): string {
  return edge === 'free' && !isGiven ? ' The kind of the edge is not given; it is taken as free.' : '';
}
