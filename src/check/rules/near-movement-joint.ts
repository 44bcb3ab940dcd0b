import { edgesOf, TOUCH_OPTION } from '../edges-of.js';
import { hasLeastEdge, judgeEdges } from '../judge-edges.js';
import type { Rule } from '../rule.js';

export const nearMovementJoint: Rule = {
  id: 'near-movement-joint',
  class: 'site',
  severity: 'warning',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole lies nearer to a movement joint than its hole type allows to an edge.',
  why: 'At a movement joint the concrete ends as it does at an edge, and its filler and cover are in the way of drill and plate.',
  mend: 'Move the hole away from the joint, or ask the designer of the anchor which distance holds there.',
  accept: 'When the designer has said that the joint is no edge for this anchor.',
  needs: 'A hole type with `minEdge`, and a substrate with a face and an outline that has a movement joint.',
  options: { touch: TOUCH_OPTION },
  data: {
    substrate: 'id of the substrate',
    distance: 'distance to the joint in the face, mm',
    limit: 'least distance of the type to an edge, mm',
    source: 'where the limit comes from',
    holeType: 'id of the hole type',
  },
  message: ({ substrate, distance, limit, source }, say) =>
    `The hole lies ${say.length(distance)} from a movement joint of substrate "${substrate}"; to an edge at least ${say.length(limit)} is needed (${source}).`,
  causeMessage: ({ substrate, limit, source, holeType }, say) =>
    `Holes of type "${holeType}" lie nearer than ${say.length(limit)} to a movement joint of substrate "${substrate}" (${source}).`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor, 10 mm bit", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minEdge": { "value": 75, "source": "Invented approval 01, table 2" } }\n],\n"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]],\n      "edges": ["free", "movement-joint", "free", "free"] } }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [9950, 5000, 3000] }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor, 10 mm bit", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minEdge": { "value": 75, "source": "Invented approval 01, table 2" } }\n],\n"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]],\n      "edges": ["free", "movement-joint", "free", "free"] } }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [9920, 5000, 3000] }\n]',
  },
  checkSite(site, run) {
    const hasJoint = site.surfaces.some((surface) => surface?.substrate.outline?.edges?.includes('movement-joint'));
    const inOpening = site.surfaces.some((surface) =>
      surface?.substrate.openings?.some(({ edges }) => edges?.includes('movement-joint')),
    );
    if (!(hasJoint || inOpening) || !hasLeastEdge(site)) return;
    judgeEdges(site, edgesOf(site, run.option('touch')), run, 'joint', (i, { type, surface }, _, distance) => {
      const { id: holeType, minEdge } = type ?? {};
      const substrate = surface?.substrate.id;
      const data = { substrate, distance, limit: minEdge?.value, source: minEdge?.source, holeType };
      run.atHole(i, { member: 'point', data, cause: `${substrate} ${holeType}` });
    });
  },
};
