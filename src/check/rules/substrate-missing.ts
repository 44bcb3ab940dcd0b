import { judgeKinds } from '../judge-kinds.js';
import type { Rule } from '../rule.js';

export const substrateMissing: Rule = {
  id: 'substrate-missing',
  class: 'data',
  severity: { 'for-review': 'off', 'for-drilling': 'warning', 'for-closeout': 'warning' },
  since: '0.1',
  stage: 'completeness',
  title: 'A hole does not say what it is drilled into.',
  why: 'Slab, beam and deck want another depth, another place and sometimes another anchor. What the hole lies in, how thick it is and where it ends cannot be checked.',
  mend: 'Describe the slabs, beams and walls that are drilled as substrates, and name one in each hole.',
  accept: 'When the crew gets the drawings of the structure with the holes, and somebody has compared the two.',
  data: {},
  message: () => 'The hole does not say which concrete it is drilled into.',
  causeMessage: () => 'Holes do not say which concrete they are drilled into.',
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [5000, 5000, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [5000, 5000, 3000] }\n]',
  },
  checkSite(site, run) {
    judgeKinds(site, run, ({ substrate }) => (substrate < 0 ? { finding: { data: {}, cause: '' } } : 'passed'));
  },
};
