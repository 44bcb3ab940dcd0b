import { type ControlLimit, ControlLimits } from '../control-limits.js';
import { HoleLevels } from '../hole-levels.js';
import { type Kind, kindsOf } from '../kinds.js';
import { hasOneTolerance, planTolerance, TOLERANCE_BROKEN } from '../plan-tolerance.js';
import type { Rule } from '../rule.js';
import type { Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';

/** What is finest among the holes of a type, against its control. */
interface Finest extends ControlLimit {
  tolerance: number;
  hole: number;
}

export const toleranceFinerThanControl: Rule = {
  id: 'tolerance-finer-than-control',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'A position tolerance is finer than the control can give.',
  why: 'Even a hole that is set out, marked and drilled without any error can come out of tolerance, and nobody can show that it did not.',
  mend: 'Ask for better control near these holes, or for a tolerance that the work can keep.',
  accept: 'When the holes only have to fit each other, and are set out from one set-up.',
  needs: 'Control points with `sigmaPlan`, on the level of the hole or on none.',
  data: {
    holeType: 'id of the hole type',
    hole: 'id of the hole that misses by most',
    tolerance: 'its plan tolerance, mm',
    least: 'least tolerance that the control can give, mm',
    point: 'id of the control point with the largest sigma',
  },
  message: ({ holeType, hole, tolerance, least, point }, say) =>
    `The tolerance ${say.length(tolerance)} of hole "${hole}", type "${holeType}", is finer than the ${say.length(least)} within which its control lies in 95 of 100 cases (control point "${point}").`,
  causeMessage: ({ tolerance, least, point }, say) =>
    `Hole types ask for ${say.length(tolerance)}, which is finer than the ${say.length(least)} within which their control lies in 95 of 100 cases (control point "${point}").`,
  example: {
    form: 'members',
    bad: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0], "sigmaPlan": 2 },\n  { "id": "CP-2", "point": [24000, 0, 0], "sigmaPlan": 2 },\n  { "id": "CP-3", "point": [20000, 16000, 0], "sigmaPlan": 2 }\n],\n"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "positionTolerance": { "radius": 4 } }\n]',
    good: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0], "sigmaPlan": 2 },\n  { "id": "CP-2", "point": [24000, 0, 0], "sigmaPlan": 2 },\n  { "id": "CP-3", "point": [20000, 16000, 0], "sigmaPlan": 2 }\n],\n"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "positionTolerance": { "radius": 10 } }\n]',
  },
  checkSite(site, run) {
    const finest = finestByType(site);
    for (const [name, found] of [...finest].sort(([a], [b]) => a - b)) {
      const place = site.types.places[name];
      if (place === undefined) continue;
      if (typeof found === 'string') {
        run.leftOut(found);
        continue;
      }
      run.judged(1);
      const { tolerance, least, hole, point } = found;
      if (tolerance >= least - LENGTH_SLACK_MM) continue;
      const data = { holeType: site.types.id(name), hole: site.holeId(hole), tolerance, least, point };
      run.atRecord(place.part, 'holeTypes', place.index, { data, cause: `${tolerance} ${least}` });
    }
  },
};

/** For each type by which a hole with a plan tolerance is made the worst such hole, or why there is none to judge. */
function finestByType(site: Site): ReadonlyMap<number, Finest | string> {
  const { list, of } = kindsOf(site);
  const limits = new ControlLimits(new HoleLevels(site));
  const ofKind = list.map((kind) => limits.of(kind));
  const finest = new Map<number, Finest | string>();
  const look = (kind: Kind, limit: ControlLimit | undefined, hole: number) => {
    const { holeType } = kind;
    const tolerance = planTolerance(site, kind, hole);
    if (Number.isNaN(tolerance)) return;
    const before = finest.get(holeType);
    if (tolerance === undefined || limit === undefined) {
      const why = tolerance === undefined ? TOLERANCE_BROKEN : 'no control point with a sigma';
      if (before === undefined) finest.set(holeType, why);
      return;
    }
    if (typeof before === 'object') {
      const more = limit.least - tolerance - (before.least - before.tolerance);
      if (more < 0 || (more === 0 && hole > before.hole)) return;
    }
    finest.set(holeType, { ...limit, tolerance, hole });
  };
  for (const [k, kind] of list.entries())
    if (kind.out === undefined && hasOneTolerance(kind)) look(kind, ofKind[k], kind.first);
  if (list.every((kind) => kind.out !== undefined || hasOneTolerance(kind))) return finest;
  for (let i = 0; i < site.holeCount; i++) {
    const kind = list[of[i]];
    if (kind.out === undefined && !hasOneTolerance(kind)) look(kind, ofKind[of[i]], i);
  }
  return finest;
}
