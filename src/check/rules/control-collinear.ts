import { lineWidth } from '../../fit/line-width.js';
import { controlOf } from '../control-sets.js';
import { judgeControl } from '../judge-control.js';
import { planPointsOf } from '../plan-points-of.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const controlCollinear: Rule = {
  id: 'control-collinear',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'The control points lie on a line, or nearly so.',
  why: 'Along a line, three points tell little more than two: an error across it turns the whole set-up, and a mirror image fits as well.',
  mend: 'Add a point well off the line.',
  accept: 'In a corridor, when set-ups stand between the points and are checked against something else.',
  options: {
    ratio: {
      what: 'Least distance of one of the points from their best line, as a part of its length.',
      unit: 'ratio',
      default: 0.05,
      least: 0,
      most: 0.5,
    },
  },
  data: {
    width: 'greatest distance of a point from the best line, mm',
    length: 'length of the line between the outermost points, mm',
    level: 'id of the level; absent: all control of the layout',
  },
  message: ({ level, width, length }, say) =>
    `${controlOf(level)} lies along a line of ${say.length(length)}: no point is farther than ${say.length(width)} from it.`,
  causeMessage: ({ width, length }, say) =>
    `Levels have control along a line of ${say.length(length)}: no point is farther than ${say.length(width)} from it.`,
  example: {
    form: 'members',
    bad: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [15000, 300, 0] }\n]',
    good: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [15000, 9000, 0] }\n]',
  },
  checkSite(site, run) {
    const ratio = run.option('ratio');
    judgeControl(site, run, ({ places, level }) => {
      const line = places.length < 3 ? undefined : lineWidth(planPointsOf(places));
      if (line === undefined) return undefined;
      const { greatestDistance: width, length } = line;
      if (width >= ratio * length - LENGTH_SLACK_MM) return 'passed';
      return {
        finding: { data: { width, length, ...(level !== undefined && { level }) }, cause: `${width} ${length}` },
      };
    });
  },
};
