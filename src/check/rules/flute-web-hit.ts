import { distanceToWeb } from '../../geometry/deck-web.js';
import { dot } from '../../geometry/vector.js';
import { type Flutes, flutesOf, isGuess, placeInFlute } from '../deck-flutes.js';
import { judgeHoles } from '../judge-holes.js';
import type { OfKind } from '../judge-kinds.js';
import type { Kind } from '../kinds.js';
import type { Rule } from '../rule.js';
import { guessInWords } from '../side-in-words.js';
import type { Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { isInto } from '../surface.js';
import { isToBeMade, TYPE_BROKEN } from '../to-be-made.js';

/** A deck, and how a hole of a kind goes up in it. */
interface InDeck extends Flutes {
  highWidth: number;
  /** How far the axis moves across the run, for each mm that it rises. */
  slantAcross: number;
}

export const fluteWebHit: Rule = {
  id: 'flute-web-hit',
  class: 'site',
  severity: 'error',
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
    `The ${say.length(diameter)} bit meets the web of the deck: the hole lies ${say.length(fromMiddle)} from the middle of a low flute that is ${say.length(lowWidth)} wide at the bottom and ${say.length(highWidth)} at the top${guessInWords(phaseFrom)}.`,
  causeMessage: ({ substrate, phaseFrom }) =>
    `Bits meet the webs of the deck of substrate "${substrate}"${guessInWords(phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"substrates": [{ "id": "S-1", "kind": "composite-deck", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n  "deck": { "run": [1, 0, 0], "pitch": 300, "phase": 100, "phaseFrom": "survey", "lowWidth": 120, "highWidth": 160, "ribDepth": 75, "overRib": 85 } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 170, 3000] }\n]',
    good: '"substrates": [{ "id": "S-1", "kind": "composite-deck", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n  "deck": { "run": [1, 0, 0], "pitch": 300, "phase": 100, "phaseFrom": "survey", "lowWidth": 120, "highWidth": 160, "ribDepth": 75, "overRib": 85 } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 150, 3000] }\n]',
  },
  checkSite(site, run) {
    judgeHoles<InDeck>(
      site,
      run,
      (kind) => {
        const flutes = flutesOf(site, kind);
        if (flutes === undefined) return undefined;
        if (kind.type === undefined) return { leftOut: TYPE_BROKEN };
        if (!isToBeMade(kind.type)) return undefined;
        return 'leftOut' in flutes ? flutes : inDeck(flutes, kind);
      },
      (i, deck) => ofPlace(site, i, deck),
    );
  },
};

function inDeck(flutes: Flutes, { axis }: Kind): { each: InDeck } | OfKind {
  const { surface, deck } = flutes;
  const left = surface.rows?.left;
  if (deck.highWidth === undefined) return { leftOut: 'width of the flutes not known' };
  if (axis === undefined || left === undefined || !isInto(surface, axis))
    return { leftOut: 'axis does not point into the concrete' };
  const slantAcross = axis === surface.inward ? 0 : dot(axis, left) / dot(axis, surface.inward);
  return { each: { ...flutes, highWidth: deck.highWidth, slantAcross } };
}

function ofPlace(site: Site, i: number, { surface, deck, lowWidth, highWidth, slantAcross }: InDeck) {
  const w = placeInFlute(surface, site.point(i));
  if (typeof w !== 'number') return w;
  const shift = slantAcross * deck.ribDepth;
  const distance = distanceToWeb(w, shift, lowWidth / 2, highWidth / 2, deck.pitch);
  const diameter = site.diameter(i);
  const halfWidth = (diameter / 2) * Math.sqrt(1 + slantAcross * slantAcross);
  if (distance >= halfWidth - LENGTH_SLACK_MM) return 'passed';
  const { phaseFrom } = deck;
  const { id: substrate } = surface.substrate;
  const data = { substrate, fromMiddle: Math.abs(w), lowWidth, highWidth, diameter, ...(phaseFrom && { phaseFrom }) };
  return { finding: { data, cause: substrate, ...(isGuess(deck) && { severity: 'info' as const }) } };
}
