import { CONTROL_BROKEN, isControlBroken, usedControl } from '../control-sets.js';
import type { Rule } from '../rule.js';

export const controlMissing: Rule = {
  id: 'control-missing',
  class: 'data',
  severity: { 'for-review': 'off', 'for-drilling': 'warning', 'for-closeout': 'off' },
  since: '0.1',
  stage: 'control',
  title: 'A layout has no control point in use.',
  why: 'Without points of known coordinates the crew measures from walls and columns, and every hole inherits their error.',
  mend: 'Ask the surveyor for the control of the site frame, at least three points a level, and add them.',
  accept: 'When the crew gets the control another way, in the same frame.',
  data: {},
  message: () => 'The layout has no control points to set it out from.',
  example: {
    form: 'members',
    bad: '"control": []',
    good: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]',
  },
  checkSite(site, run) {
    for (const part of site.parts) {
      const { layout } = part;
      if (layout.holes.count === 0) continue;
      const isMissing = usedControl(layout).length === 0;
      if (isMissing && isControlBroken(layout)) {
        run.leftOut(CONTROL_BROKEN);
        continue;
      }
      run.judged(1);
      if (isMissing) run.atMember(part, 'frame', { data: {}, cause: '' });
    }
  },
};
