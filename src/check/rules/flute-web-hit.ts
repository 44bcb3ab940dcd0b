import { flutesOf, ofGuess, placeInFlute } from '../deck-flutes.js';
import { meetsWeb, type Webs, websOf } from '../deck-webs.js';
import { judgeHoles } from '../judge-holes.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import { fluteGuessInWords } from '../side-in-words.js';
import type { Site } from '../site.js';
import { isToBeMade, TYPE_BROKEN } from '../to-be-made.js';

export const fluteWebHit: Rule = {
  id: 'flute-web-hit',
  class: 'site',
  severity: 'error',
  lessGrave: 'Where the flutes are not surveyed: a warning for drilling, an info for review and close-out.',
  since: '0.1',
  stage: 'geometry',
  title: 'A bit meets the sloping web of a metal deck.',
  why: 'The bit slides along the steel and the hole comes out crooked, or the anchor sits between steel and a thin wedge of concrete.',
  mend: 'Move the hole to the flat of a flute, or have the flutes surveyed and correct `phase`.',
  accept: 'Where the flutes are known from a drawing only, until they are surveyed.',
  needs: 'A composite deck with `lowWidth`, `highWidth` and `phase`.',
  data: {
    substrate: 'id of the substrate',
    fromMiddle: 'distance of the axis at the face from the middle of the nearest low flute, mm',
    lowWidth: 'width of the low flute at the face, mm',
    highWidth: 'width of the low flute at the top of the rib, mm',
    diameter: 'diameter of the hole, mm',
    phaseFrom: 'where the phase of the flutes is known from; absent when nothing is said',
  },
  message: ({ fromMiddle, lowWidth, highWidth, diameter, phaseFrom }, say) =>
    `The ${say.length(diameter)} bit meets the web of the deck: the hole lies ${say.length(fromMiddle)} from the middle of a low flute that is ${say.length(lowWidth)} wide at the bottom and ${say.length(highWidth)} at the top${fluteGuessInWords(phaseFrom)}.`,
  causeMessage: ({ substrate, phaseFrom }) =>
    `Bits meet the webs of the deck of substrate "${substrate}"${fluteGuessInWords(phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"substrates": [{ "id": "S-1", "kind": "composite-deck", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n  "deck": { "run": [1, 0, 0], "pitch": 300, "phase": 100, "phaseFrom": "survey", "lowWidth": 120, "highWidth": 160, "ribDepth": 75, "overRib": 85 } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 170, 3000] }\n]',
    good: '"substrates": [{ "id": "S-1", "kind": "composite-deck", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n  "deck": { "run": [1, 0, 0], "pitch": 300, "phase": 100, "phaseFrom": "survey", "lowWidth": 120, "highWidth": 160, "ribDepth": 75, "overRib": 85 } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 150, 3000] }\n]',
  },
  checkSite(site, run) {
    judgeHoles<Webs>(
      site,
      run,
      (kind) => {
        const flutes = flutesOf(site, kind);
        if (flutes === undefined) return undefined;
        if (kind.type === undefined) return { leftOut: TYPE_BROKEN };
        if (!isToBeMade(kind.type)) return undefined;
        const webs = 'leftOut' in flutes ? flutes : websOf(flutes, kind);
        return 'leftOut' in webs ? webs : { each: webs };
      },
      (i, webs) => ofPlace(site, run, i, webs),
    );
  },
};

function ofPlace(site: Site, run: SiteRun, i: number, webs: Webs) {
  const { surface, deck, lowWidth, highWidth } = webs;
  const w = placeInFlute(surface, site.point(i));
  if (typeof w !== 'number') return w;
  const diameter = site.diameter(i);
  if (!meetsWeb(webs, w, diameter)) return 'passed';
  const { phaseFrom } = deck;
  const { id: substrate } = surface.substrate;
  const data = { substrate, fromMiddle: Math.abs(w), lowWidth, highWidth, diameter, ...(phaseFrom && { phaseFrom }) };
  return { finding: { data, cause: substrate, ...ofGuess(deck, run) } };
}
