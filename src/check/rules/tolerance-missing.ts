import { type Kind, kindsOf } from '../kinds.js';
import { hasOneTolerance, planTolerance, TOLERANCE_BROKEN } from '../plan-tolerance.js';
import type { Rule } from '../rule.js';

export const toleranceMissing: Rule = {
  id: 'tolerance-missing',
  class: 'data',
  severity: { 'for-review': 'off', 'for-drilling': 'warning', 'for-closeout': 'warning' },
  since: '0.1',
  stage: 'control',
  title: 'Nothing says how exact the place of a hole must be.',
  why: 'The crew cannot know when a hole is off, and nobody can later say whether it was.',
  mend: 'Give the hole type a position tolerance: a radius, or limits along and across its run.',
  accept: 'When the specification sets one tolerance for all holes and the crew has it.',
  data: { holeType: 'id of the hole type' },
  message: ({ holeType }) => `Neither the hole nor its type "${holeType}" has a tolerance of the position in plan.`,
  causeMessage: ({ holeType }) => `Holes of type "${holeType}" have no tolerance of the position in plan.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60 }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "positionTolerance": { "radius": 10 } }\n]',
  },
  checkSite(site, run) {
    const { list, of } = kindsOf(site);
    const ofKind = list.map((kind) => (hasOneTolerance(kind) ? planTolerance(site, kind, kind.first) : undefined));
    const say = (kind: Kind, tolerance: number | undefined, count: number) => {
      const why = kind.out ?? (tolerance === undefined ? TOLERANCE_BROKEN : undefined);
      if (why === undefined) run.judged(count);
      else run.leftOut(why, count);
    };
    for (const [k, kind] of list.entries()) if (hasOneTolerance(kind)) say(kind, ofKind[k], kind.count);
    for (let i = 0; i < site.holeCount; i++) {
      const kind = list[of[i]];
      const isOne = hasOneTolerance(kind);
      const tolerance = isOne ? ofKind[of[i]] : planTolerance(site, kind, i);
      if (!isOne) say(kind, tolerance, 1);
      if (kind.out !== undefined || tolerance === undefined || !Number.isNaN(tolerance)) continue;
      const holeType = site.types.id(kind.holeType);
      run.atHole(i, { data: { holeType }, cause: holeType });
    }
  },
};
