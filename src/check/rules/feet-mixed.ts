import { type FootEvidence, likelyFoot } from '../../fit/round-multiples.js';
import { lengthUnits } from '../../units/length-unit.js';
import { type CoordinateSet, setOfHoles, setsBesideHoles } from '../coordinate-sets.js';
import type { Rule } from '../rule.js';
import type { Site } from '../site.js';
import type { SitePart } from '../site-part.js';
import { LENGTH_SLACK_MM } from '../slack.js';

const { ft, 'us-ft': surveyFt } = lengthUnits;
/** By so much of a length the survey foot is longer. */
const FEET_DIFFER_BY = (surveyFt.numerator * ft.denominator) / (surveyFt.denominator * ft.numerator) - 1;

export const feetMixed: Rule = {
  id: 'feet-mixed',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'Some coordinates are made from international feet, others from US survey feet.',
  why: 'Near the origin nobody sees it. Far from it, as on a state grid, holes and control lie feet apart.',
  mend: 'Ask the survey which foot its sheets are in, and convert both sets with that one: 304.8 mm, or 1200/3937 m.',
  accept: 'When the two sets are never compared on site.',
  needs: 'Two sets of coordinates that are whole parts of a foot, written finely enough to tell which.',
  options: {
    difference: {
      what: 'How far apart the two feet must lie at the farthest coordinate: a definition of AHX, below what is set out.',
      unit: 'mm',
      default: 1,
      least: 0,
      most: 10_000,
    },
  },
  data: {
    international: 'set that is in international feet',
    internationalFit: 'number of its coordinates that are whole multiples of the step, of how many',
    internationalStep: 'the step',
    survey: 'set that is in US survey feet',
    surveyFit: 'number of its coordinates that are whole multiples of the step, of how many',
    surveyStep: 'the step',
    farthest: 'farthest coordinate of the two sets, mm',
    difference: 'how far the two feet lie apart there, mm',
  },
  message: ({ international, internationalFit, internationalStep, survey, surveyFit, surveyStep, difference }, say) =>
    `The ${international} look like international feet (${internationalFit} coordinates are multiples of ${internationalStep}), the ${survey} like US survey feet (${surveyFit} of ${surveyStep}); at the farthest one the two lie ${say.length(difference)} apart.`,
  example: {
    form: 'members',
    bad: '"control": [\n  { "id": "CP-1", "point": [609601219.202438, 213360426.720853] },\n  { "id": "CP-2", "point": [609631775.463551, 213360579.121158] },\n  { "id": "CP-3", "point": [609677458.978918, 213385045.466091] },\n  { "id": "CP-4", "point": [609613536.195072, 213409200.914402] }\n],\n"substrates": [],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [609603048, 213366096] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [609604648.2, 213367163.196875] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "point": [609606248.4, 213368230.39375] },\n  { "id": "H-4", "trade": "FP", "holeType": "HT-1", "point": [609607848.6, 213369297.590625] },\n  { "id": "H-5", "trade": "FP", "holeType": "HT-1", "point": [609609448.8, 213370364.7875] }\n]',
    good: '"control": [\n  { "id": "CP-1", "point": [609600000, 213360000] },\n  { "id": "CP-2", "point": [609630556.2, 213360152.4] },\n  { "id": "CP-3", "point": [609676239.624, 213384618.696] },\n  { "id": "CP-4", "point": [609612316.968, 213408774.096] }\n],\n"substrates": [],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [609603048, 213366096] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [609604648.2, 213367163.196875] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "point": [609606248.4, 213368230.39375] },\n  { "id": "H-4", "trade": "FP", "holeType": "HT-1", "point": [609607848.6, 213369297.590625] },\n  { "id": "H-5", "trade": "FP", "holeType": "HT-1", "point": [609609448.8, 213370364.7875] }\n]',
  },
  checkSite(site, run) {
    for (const part of site.parts) {
      if (run.isInDoubt(part)) continue;
      const sets = setsInFeet(site, part);
      if (sets.length < 2) continue;
      run.judged(1);
      const international = sets.find(({ foot }) => foot === 'international');
      const survey = sets.find(({ foot }) => foot === 'survey');
      if (international === undefined || survey === undefined) continue;
      const farthest = Math.max(farthestOf(international), farthestOf(survey));
      const difference = farthest * FEET_DIFFER_BY;
      if (difference <= run.option('difference') + LENGTH_SLACK_MM) continue;
      const data = {
        international: international.name,
        internationalFit: fitOf(international),
        internationalStep: international.step,
        survey: survey.name,
        surveyFit: fitOf(survey),
        surveyStep: survey.step,
        farthest,
        difference,
      };
      run.atMember(part, 'frame', { data, cause: '' });
    }
  },
};

/** The sets of a layout that say which foot they are made from. */
function setsInFeet(site: Site, part: SitePart): (CoordinateSet & FootEvidence)[] {
  const inFeet = (set: CoordinateSet) => {
    const evidence = likelyFoot(set.values);
    return evidence === undefined ? [] : [{ ...set, ...evidence }];
  };
  const beside = setsBesideHoles(part).flatMap(inFeet);
  // The holes are many; alone they cannot be mixed with anything.
  return beside.length === 0 ? [] : [...inFeet(setOfHoles(site, part)), ...beside];
}

function farthestOf({ values }: CoordinateSet): number {
  let farthest = 0;
  for (const value of values) farthest = Math.max(farthest, Math.abs(value));
  return farthest;
}

function fitOf({ share, count }: FootEvidence): string {
  return `${Math.round(share * count)} of ${count}`;
}
