import { ringInWords, ringsOfSubstrate } from '../rings-of.js';
import type { Rule } from '../rule.js';

export const edgeCount: Rule = {
  id: 'edge-count',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'records',
  title: 'An outline does not say of each of its edges of what kind it is.',
  why: 'The kinds stand in the order of the edges: behind one that is missing, each edge gets the kind of its neighbour, and a free edge passes for concrete that goes on.',
  mend: 'Write one kind for each point: that of the edge from this point to the next, the last one back to the first.',
  data: {
    substrate: 'id of the substrate',
    ring: '`outline`, `opening` or `zone`',
    expected: 'number of points, and so of edges',
    found: 'number of kinds',
  },
  message: ({ ring, substrate, expected, found }) =>
    `${ringInWords(ring, substrate)} has ${expected} edges and gives ${found === 0 ? 'no kind' : found === 1 ? 'the kind of 1' : `the kinds of ${found}`}.`,
  causeMessage: () => 'Outlines do not give a kind for each of their edges.',
  example: {
    form: 'members',
    bad: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]],\n      "edges": ["free", "free", "continuous"] } }\n]',
    good: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]],\n      "edges": ["free", "free", "continuous", "free"] } }\n]',
  },
  checkLayout(run) {
    const substrates = run.layout.collection('substrates');
    substrates.judged.forEach((record, index) => {
      for (const { kind, holder, points, edges } of record === undefined ? [] : ringsOfSubstrate(record)) {
        if (edges === undefined) continue;
        run.judged(1);
        if (edges.length === points.length) continue;
        const data = { substrate: record?.id, ring: kind, expected: points.length, found: edges.length };
        run.atRecord('substrates', index, { member: `${holder}/edges`, data, cause: 'edges' });
        substrates.giveUp(index);
      }
    });
  },
};
