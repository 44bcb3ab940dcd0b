import { edgesOf, TOUCH_OPTION } from '../edges-of.js';
import { kindsOf } from '../kinds.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';
import { TOO_MANY_EDGES } from '../touching-outlines.js';

export const edgeKindAssumed: Rule = {
  id: 'edge-kind-assumed',
  class: 'data',
  severity: 'info',
  since: '0.1',
  stage: 'geometry',
  title: 'Edges of a substrate are taken as concrete that goes on, because another substrate touches them.',
  why: 'Where a joint or a gap runs between the two, holes near it are judged as if there were none.',
  mend: 'Give the kind of each edge of the outline.',
  accept: 'When the outlines are cut from one slab, as models do at pours and grid lines.',
  needs: 'A substrate with a face and an outline without kinds of edges, and on it a hole whose type has `minEdge`.',
  options: { touch: TOUCH_OPTION },
  data: {
    substrate: 'id of the substrate',
    edges: 'number of edges of the outline of which a stretch was taken so',
    length: 'length of all such stretches, mm',
    other: 'id of the first substrate that touches it; absent where several do only together',
  },
  message: ({ substrate, edges, length, other }, say) => {
    const others =
      other === undefined
        ? 'others touch'
        : `substrate "${other}"${Number(edges) > 1 ? ' or another one' : ''} touches`;
    return `Nothing is said of the edges of substrate "${substrate}". Where ${others} it, ${say.length(length)} of edge are taken as concrete that goes on.`;
  },
  causeMessage: () =>
    'Substrates touch each other and nothing is said of their edges; where they touch, the concrete is taken to go on.',
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor, 10 mm bit", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minEdge": { "value": 75, "source": "Invented approval 01, table 2" } }\n],\n"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]] } },\n  { "id": "S-2", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[10000, 0, 3000], [20000, 0, 3000], [20000, 10000, 3000], [10000, 10000, 3000]] } }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor, 10 mm bit", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minEdge": { "value": 75, "source": "Invented approval 01, table 2" } }\n],\n"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]],\n      "edges": ["free", "construction-joint", "free", "free"] } },\n  { "id": "S-2", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[10000, 0, 3000], [20000, 0, 3000], [20000, 10000, 3000], [10000, 10000, 3000]],\n      "edges": ["free", "free", "free", "construction-joint"] } }\n]',
  },
  checkSite(site, run) {
    const inUse = new Set<number>();
    for (const { out, type, substrate } of kindsOf(site).list)
      if (out === undefined && type?.minEdge !== undefined && substrate >= 0) inUse.add(substrate);
    if (inUse.size === 0) return;
    const siteEdges = edgesOf(site, run.option('touch'));
    for (const number of [...inUse].sort((a, b) => a - b)) {
      const place = site.substrates.places[number];
      if (site.substrates.records[number] === undefined) run.leftOut(BROKEN);
      const edges = siteEdges.piecesOf(number);
      const isSaid = site.substrates.records[number]?.outline?.edges !== undefined;
      if (place === undefined || edges === undefined || isSaid) continue;
      if (edges.assumed === undefined && siteEdges.isCut(number)) {
        run.leftOut(TOO_MANY_EDGES);
        continue;
      }
      run.judged(1);
      if (edges.assumed === undefined) continue;
      const { other, ...found } = edges.assumed;
      const data = {
        substrate: site.substrates.id(number),
        ...found,
        ...(other >= 0 && { other: site.substrates.id(other) }),
      };
      run.atRecord(place.part, 'substrates', place.index, { member: 'outline', data, cause: 'assumed' });
    }
  },
};
