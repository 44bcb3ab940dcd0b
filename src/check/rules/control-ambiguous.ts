import { turnsOntoItself } from '../../fit/plan-symmetry.js';
import { controlOf, type UsedPoint } from '../control-sets.js';
import { judgeControl } from '../judge-control.js';
import { planPointsOf } from '../plan-points-of.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';

/** More places than this are left out: the search would take long, and no level has so many. */
const MOST_PLACES = 500;

export const controlAmbiguous: Rule = {
  id: 'control-ambiguous',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'The control fits onto itself when it is turned.',
  why: 'If the labels of the points are swapped by that turn, a set-up from them has no residual, and the whole layout comes out turned.',
  mend: 'Add a point that breaks the symmetry, or move one.',
  accept: 'When each set-up is checked against something that is no control, such as a column or the last set-up.',
  options: {
    tolerance: {
      what: 'How near to each other the turned points fall, where not all of them have a sigma.',
      unit: 'mm',
      default: 10,
      least: 0,
      most: 1000,
    },
  },
  data: {
    turns: 'the turns, degrees',
    tolerance: 'how near the turned points fall, mm',
    count: 'number of places',
    level: 'id of the level; absent: all control of the layout',
  },
  message: ({ level, turns, tolerance, count }, say) =>
    `${controlOf(level)}, ${count} places, falls onto itself within ${say.length(tolerance)} when it is turned by ${inWords(turns as number[])}: labels that are swapped so show in no residual.`,
  causeMessage: ({ turns, tolerance, count }, say) =>
    `Levels have control, ${count} places, that falls onto itself within ${say.length(tolerance)} when it is turned by ${inWords(turns as number[])}: labels that are swapped so show in no residual.`,
  example: {
    form: 'members',
    bad: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [24000, 16000, 0] },\n  { "id": "CP-4", "point": [0, 16000, 0] }\n]',
    good: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [24000, 16000, 0] },\n  { "id": "CP-4", "point": [3000, 16000, 0] }\n]',
  },
  checkSite(site, run) {
    const usual = run.option('tolerance');
    judgeControl(site, run, ({ places, level }) => {
      const count = places.length;
      if (count < 3) return undefined;
      if (count > MOST_PLACES) return { leftOut: `more than ${MOST_PLACES} places` };
      const tolerance = fromSigmas(places) ?? usual;
      const turns = turnsOntoItself(planPointsOf(places), tolerance + LENGTH_SLACK_MM);
      if (turns.length === 0) return 'passed';
      const data = { turns, tolerance, count, ...(level !== undefined && { level }) };
      return { finding: { data, cause: `${turns.join(' ')} ${count} ${tolerance}` } };
    });
  },
};

/** Three standard deviations of the difference of the two worst points; undefined where not all have a sigma. */
function fromSigmas(places: readonly UsedPoint[]): number | undefined {
  const sigmas = places.flatMap(({ record }) => record.sigmaPlan ?? []).sort((a, b) => b - a);
  return sigmas.length < places.length ? undefined : 3 * Math.hypot(sigmas[0], sigmas[1]);
}

const MOST_TURNS_SAID = 3;

function inWords(turns: readonly number[]): string {
  const said = turns.slice(0, MOST_TURNS_SAID).map((turn) => String(Math.round(turn * 100) / 100));
  return `${said.join(', ')}${turns.length > MOST_TURNS_SAID ? ' …' : ''} degrees`;
}
