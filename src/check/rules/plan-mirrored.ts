import { handsOfGroups } from '../hands-of-groups.js';
import { LEAST_PLACES, type PlacesOnFaces, placesOf, TOO_FEW_PLACES } from '../places-on-faces.js';
import { holdsMirrorImage, mirrorsOf } from '../plan-mirrors.js';
import type { Rule } from '../rule.js';
import { IN_DOUBT } from '../site.js';
import type { SitePart } from '../site-part.js';

/** Fewer groups show nothing. */
const LEAST_GROUPS = 3;
const TOO_FEW = `${TOO_FEW_PLACES}, and fewer than 3 groups whose pattern differs from its mirror image`;

export const planMirrored: Rule = {
  id: 'plan-mirrored',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'frame',
  title: 'The plan of the holes looks mirrored.',
  why: 'A ceiling plan that was drawn as one sees it from below puts every hole on the wrong side of the building.',
  mend: 'Export the plan in the orientation of the floor plan. Where the coordinates are right, correct the substrates that the holes name, or the run and the pattern of the groups.',
  needs:
    '5 holes whose substrates have a face and an outline, or 3 groups whose pattern differs from its mirror image.',
  data: {
    evidence: '`places` of the holes or patterns of `groups`',
    axis: 'with `places`: the axis that is turned over, `x` or `y`',
    about: 'with `places`: about which place: the `origin`, or the `middle` of the outlines of each level',
    asRead: 'number of holes or groups that fit when mirrored',
    asWritten: 'number of those that fit as written',
    of: 'number of those that can be compared',
  },
  message: ({ evidence, axis, about, asRead, asWritten, of }) =>
    evidence === 'groups'
      ? `${asRead} of ${of} groups fit their pattern only when it is mirrored, ${asWritten || 'none'} as declared.`
      : `${asRead} of ${of} holes lie on their substrates when ${axis} is turned over about the ${about === 'origin' ? 'origin' : 'middle of the outlines'}, ${asWritten || 'none'} as written.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [-1500, 1000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [-3000, 1000] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [-4500, 1000] },\n  { "id": "H-4", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [-6000, 1000] },\n  { "id": "H-5", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [-7500, 1000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1500, 1000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [3000, 1000] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [4500, 1000] },\n  { "id": "H-4", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [6000, 1000] },\n  { "id": "H-5", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [7500, 1000] }\n]',
  },
  checkSite(site, run) {
    for (const part of site.parts) {
      const places = placesOf(site, part);
      const isInDoubt = run.isInDoubt(part);
      const hands = isInDoubt ? [] : handsOfGroups(site, part);
      if (isInDoubt || (places.of < LEAST_PLACES && hands.length < LEAST_GROUPS)) {
        const groups = part.layout.collection('groups').ids.length;
        if (places.named >= LEAST_PLACES || groups >= LEAST_GROUPS) run.leftOut(isInDoubt ? IN_DOUBT : TOO_FEW);
        continue;
      }
      run.judged(1);
      const data = ofPlaces(places, part) ?? ofGroups(hands, places, part);
      if (data === undefined) continue;
      if (run.atMember(part, 'frame', { data, cause: '' })) run.doubt(part);
    }
  },
};

function ofPlaces(places: PlacesOnFaces, part: SitePart): Record<string, unknown> | undefined {
  if (!places.isOff) return undefined;
  const tried = mirrorsOf(places, part).flatMap(({ axis, about, reading }) => {
    const asRead = places.explainedBy(reading);
    return asRead === undefined ? [] : [{ evidence: 'places', axis, about, asRead }];
  });
  const best = tried.sort((a, b) => b.asRead - a.asRead)[0];
  return best && { ...best, asWritten: places.asWritten, of: places.of };
}

function ofGroups(
  hands: ReturnType<typeof handsOfGroups>,
  places: PlacesOnFaces,
  part: SitePart,
): Record<string, unknown> | undefined {
  const mirrored = hands.filter((hand) => hand === 'mirrored').length;
  const declared = hands.filter((hand) => hand === 'declared' || hand === 'both').length;
  if (hands.length < LEAST_GROUPS || declared > 0 || mirrored * 5 < hands.length * 4) return undefined;
  // Outlines that no mirror image fits say that the plan is right and the patterns are not.
  const isContradicted = places.of >= LEAST_PLACES && !holdsMirrorImage(places, part);
  return isContradicted ? undefined : { evidence: 'groups', asRead: mirrored, asWritten: declared, of: hands.length };
}
