import type { HoleType } from '../../generated/layout.js';
import { type Flutes, flutesOf, ofGuess, placeInFlute } from '../deck-flutes.js';
import { meetsWeb, type Webs, websOf } from '../deck-webs.js';
import { judgeHoles } from '../judge-holes.js';
import type { OfKind } from '../judge-kinds.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import { fluteGuessInWords } from '../side-in-words.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { isToBeMade, TYPE_BROKEN } from '../to-be-made.js';

interface InFlutes extends Flutes {
  type: HoleType;
  limits: NonNullable<HoleType['flutes']>;
  /** Where it is known whether a bit meets a web, which is another rule's fault. */
  webs: Webs | undefined;
}

export const fluteOffset: Rule = {
  id: 'flute-offset',
  class: 'site',
  severity: 'error',
  lessGrave: 'Where the flutes are not surveyed: a warning for drilling, an info for review and close-out.',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole lies in the wrong flute of a metal deck, or too far from its middle.',
  why: 'Anchors in a deck are tested at stated places of the flute. Elsewhere the steel and the thin concrete beside it give less.',
  mend: 'Move the hole to the middle of a flute that its type is for, or have the flutes surveyed and correct `phase`.',
  accept: 'Where the flutes are known from a drawing only, until they are surveyed.',
  needs: 'A composite deck with `lowWidth` and `phase`, and a type with `flutes`.',
  data: {
    holeType: 'id of the hole type',
    substrate: 'id of the substrate',
    flute: '`low` or `high`: the flute that the hole lies in',
    in: 'the flutes that the type is for',
    offset: 'distance of the axis from the middle of its flute, mm',
    maxOffset: 'greatest offset that the type allows, mm; absent: none is given',
    source: 'where the limits come from',
    phaseFrom: 'where the phase of the flutes is known from; absent when nothing is said',
  },
  message: ({ holeType, flute, in: allowed, offset, maxOffset, source, phaseFrom }, say) =>
    isWrong(flute, allowed)
      ? `The hole lies over a ${flute} flute of the deck; type "${holeType}" is for ${allowed} flutes (${source})${fluteGuessInWords(phaseFrom)}.`
      : `The hole lies ${say.length(offset)} from the middle of its ${flute} flute; at most ${say.length(maxOffset)} is allowed (${source})${fluteGuessInWords(phaseFrom)}.`,
  causeMessage: ({ holeType, substrate, flute, in: allowed, maxOffset, source, phaseFrom }, say) =>
    isWrong(flute, allowed)
      ? `Holes lie over ${flute} flutes of substrate "${substrate}"; type "${holeType}" is for ${allowed} flutes (${source})${fluteGuessInWords(phaseFrom)}.`
      : `Holes lie more than ${say.length(maxOffset)} from the middle of their flutes of substrate "${substrate}" (${source})${fluteGuessInWords(phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "flutes": { "in": "low", "maxOffset": 25, "source": "Invented approval 01, figure 3" } }\n],\n"substrates": [{ "id": "S-1", "kind": "composite-deck", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n  "deck": { "run": [1, 0, 0], "pitch": 300, "phase": 100, "phaseFrom": "survey", "lowWidth": 120, "ribDepth": 75, "overRib": 85 } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 130, 3000] }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "flutes": { "in": "low", "maxOffset": 25, "source": "Invented approval 01, figure 3" } }\n],\n"substrates": [{ "id": "S-1", "kind": "composite-deck", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n  "deck": { "run": [1, 0, 0], "pitch": 300, "phase": 100, "phaseFrom": "survey", "lowWidth": 120, "ribDepth": 75, "overRib": 85 } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [1000, 120, 3000] }\n]',
  },
  checkSite(site, run) {
    judgeHoles<InFlutes>(
      site,
      run,
      (kind) => {
        const { type } = kind;
        const flutes = flutesOf(site, kind);
        if (flutes === undefined) return undefined;
        if (type === undefined) return { leftOut: TYPE_BROKEN };
        const limits = type.flutes;
        if (limits === undefined || (limits.in === 'either' && limits.maxOffset === undefined)) return undefined;
        if ('leftOut' in flutes) return flutes;
        const webs = isToBeMade(type) && !run.isOff('flute-web-hit') ? websOf(flutes, kind) : undefined;
        const known = webs !== undefined && 'leftOut' in webs ? undefined : webs;
        return { each: { ...flutes, type, limits, webs: known } };
      },
      (i, flutes) => {
        const w = placeInFlute(flutes.surface, site.point(i));
        if (typeof w !== 'number') return w;
        const said = ofPlace(Math.abs(w), flutes, run);
        const { webs } = flutes;
        return said !== 'passed' && webs !== undefined && meetsWeb(webs, w, site.diameter(i)) ? 'passed' : said;
      },
    );
  },
};

/** @param w distance from the middle of the nearest low flute, mm */
function ofPlace(w: number, { surface, deck, lowWidth, type, limits }: InFlutes, run: SiteRun): OfKind {
  const flute = w <= lowWidth / 2 + LENGTH_SLACK_MM ? 'low' : 'high';
  const offset = flute === 'low' ? w : deck.pitch / 2 - w;
  const { in: allowed, maxOffset, source } = limits;
  const isFarOff = maxOffset !== undefined && offset > maxOffset + LENGTH_SLACK_MM;
  if (!isWrong(flute, allowed) && !isFarOff) return 'passed';
  const { phaseFrom } = deck;
  const { id: substrate } = surface.substrate;
  const limit = { ...(maxOffset !== undefined && { maxOffset }), source, ...(phaseFrom && { phaseFrom }) };
  const data = { holeType: type.id, substrate, flute, in: allowed, offset, ...limit };
  const cause = `${substrate} ${type.id} ${isWrong(flute, allowed) ? flute : 'offset'}`;
  return { finding: { data, cause, ...ofGuess(deck, run) } };
}

function isWrong(flute: unknown, allowed: unknown): boolean {
  return allowed !== 'either' && flute !== allowed;
}
