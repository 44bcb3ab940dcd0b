import { LEAST_PLACES, placesOf, TOO_FEW_PLACES } from '../places-on-faces.js';
import type { Rule } from '../rule.js';
import { IN_DOUBT } from '../site.js';

export const axesSwapped: Rule = {
  id: 'axes-swapped',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'frame',
  title: 'The holes look as if x and y were exchanged.',
  why: 'The holes would be drilled in another part of the building. Lists with northing before easting are the usual way there.',
  mend: 'Look up which column of the list was easting and which northing, and export again. Where the coordinates are right, correct the substrates that the holes name.',
  needs: '5 holes whose substrates have a face and an outline.',
  data: {
    asRead: 'number of holes that lie on their substrates when x and y are exchanged',
    asWritten: 'number of holes that do as written',
    of: 'number of holes whose place can be compared',
  },
  message: ({ asRead, asWritten, of }) =>
    `${asRead} of ${of} holes lie on their substrates when x and y are exchanged, ${asWritten || 'none'} as written.`,
  example: {
    form: 'members',
    bad: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 2000, 3000], [0, 2000, 3000]] } }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 3500] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 5000] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 6500] },\n  { "id": "H-4", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 8000] },\n  { "id": "H-5", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 9500] }\n]',
    good: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 2000, 3000], [0, 2000, 3000]] } }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [3500, 1000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [5000, 1000] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [6500, 1000] },\n  { "id": "H-4", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [8000, 1000] },\n  { "id": "H-5", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [9500, 1000] }\n]',
  },
  checkSite(site, run) {
    for (const part of site.parts) {
      const places = placesOf(site, part);
      if (places.named < LEAST_PLACES) continue;
      if (places.of < LEAST_PLACES || run.isInDoubt(part)) {
        run.leftOut(run.isInDoubt(part) ? IN_DOUBT : TOO_FEW_PLACES);
        continue;
      }
      run.judged(1);
      if (!places.isOff) continue;
      const asRead = places.explainedBy({ xx: 0, xy: 1, yx: 1, yy: 0, zz: 1 });
      if (asRead === undefined) continue;
      const data = { asRead, asWritten: places.asWritten, of: places.of };
      if (run.atMember(part, 'frame', { data, cause: '' })) run.doubt(part);
    }
  },
};
