import { controlOf } from '../control-sets.js';
import { judgeControl } from '../judge-control.js';
import type { Rule } from '../rule.js';

const LEAST_PLACES = 3;

export const controlTooFew: Rule = {
  id: 'control-too-few',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'There are fewer than three control points to set up from.',
  why: 'From one point there is no bearing. From two there is nothing to check it by: swapped labels, a mirror image and an error across their line show in no residual.',
  mend: 'Add a third point, well off the line of the other two.',
  accept: 'When the crew sees control of another level or layout from its set-ups.',
  data: {
    count: 'places of control, at most 2; points within 1 mm in plan are one',
    level: 'id of the level; absent: all control of the layout',
  },
  message: ({ count, level }) =>
    count === 1
      ? `${controlOf(level)} is one place: a set-up gets no bearing from it. Add two points.`
      : `${controlOf(level)} is two places: swapped labels, a mirror image and an error across their line would not show. Add a third point, off that line.`,
  causeMessage: ({ count }) =>
    count === 1
      ? 'Levels have control at one place only: a set-up gets no bearing from it. Add two points on each.'
      : 'Levels have control at two places only: swapped labels, a mirror image and an error across their line would not show. Add a third point on each, off that line.',
  example: {
    form: 'members',
    bad: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] }\n]',
    good: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]',
  },
  checkSite(site, run) {
    judgeControl(site, run, ({ level, places: { length: count } }) => {
      if (count >= LEAST_PLACES) return 'passed';
      const data = { count, ...(level !== undefined && { level }) };
      return { finding: { data, cause: String(count) } };
    });
  },
};
