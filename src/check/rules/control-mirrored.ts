import { inInput, OTHER_INPUT } from '../other-input.js';
import type { Rule } from '../rule.js';
import { isMirrored, sharedControl } from '../shared-control.js';
import type { InputLayout } from '../site-part.js';
import { whyApart } from '../sites-of.js';

export const controlMirrored: Rule = {
  id: 'control-mirrored',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'control',
  title: 'The control of one layout is the mirror image of that of another.',
  why: 'One of the two was drawn as seen from below and the other from above. Every hole of one of them is set out on the wrong side.',
  mend: 'Find out which of the two is turned over, by the control sheet, and have it exported anew.',
  needs: 'At least three control points with the same ids in both layouts.',
  data: {
    otherInput: OTHER_INPUT.otherInput,
    otherName: OTHER_INPUT.otherName,
    shared: 'number of points with the same ids',
  },
  message: ({ otherName, shared }) =>
    `The ${shared} control points that are${inInput(otherName)} too fit those only as a mirror image.`,
  example: {
    form: 'layouts',
    bad: '"id": "sprinkler", "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]\n---\n"id": "ducts", "holes": [], "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [-24000, 0, 0] },\n  { "id": "CP-3", "point": [-20000, 16000, 0] }\n]',
    good: '"id": "sprinkler", "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]\n---\n"id": "ducts", "holes": [], "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]',
  },
  options: {
    tolerance: {
      what: 'How far a point may miss that has no sigma in both layouts.',
      unit: 'mm',
      default: 1,
      least: 0,
      most: 1000,
    },
  },
  checkInputs(layouts, run) {
    const tolerance = run.option('tolerance');
    const compared = new Set<InputLayout>();
    for (const { earlier, later, points } of sharedControl(layouts)) {
      // One comparison tells: a layout that agrees with the first would be told of each one that does not.
      if (points.length < 3 || compared.has(later)) continue;
      if (whyApart(earlier.layout, later.layout) === 'same layout') continue;
      compared.add(later);
      run.judged(1);
      if (!isMirrored(points, tolerance)) continue;
      const data = { otherInput: earlier.input + 1, otherName: earlier.name, shared: points.length };
      run.atRecord(later, 'control', points[0].later.index, { data, cause: '' });
    }
  },
};
