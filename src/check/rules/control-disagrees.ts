import { worstDifference } from '../control-difference.js';
import type { UsedPoint } from '../control-sets.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import type { Rule } from '../rule.js';
import { isMirrored, sharedControl } from '../shared-control.js';
import { IN_DOUBT } from '../site.js';

export const controlDisagrees: Rule = {
  id: 'control-disagrees',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'control',
  title: 'A control point has other coordinates in another layout of the same frame.',
  why: 'Holes of the two trades are set out from different points under one name, and lie as far apart from each other as these.',
  mend: 'Look the point up on the control sheet in force and correct the layout that has it wrong.',
  needs: 'A control point with the same id in two layouts of one frame.',
  options: {
    tolerance: {
      what: 'How far a point may differ that has no sigma in both layouts.',
      unit: 'mm',
      default: 1,
      least: 0,
      most: 1000,
    },
  },
  data: {
    point: 'id of the point that differs by most',
    otherInput: OTHER_INPUT.otherInput,
    otherName: OTHER_INPUT.otherName,
    what: 'whether it differs in `plan` or in `height`',
    distance: 'by how much, mm',
    tolerance: 'by how much it may, mm',
    count: 'number of points that differ',
    shared: 'number of points that were compared',
  },
  message: ({ point, otherName, what, distance, tolerance, count, shared }, say) =>
    `Control point "${point}" lies ${say.length(distance)} in ${what} from where it is${inInput(otherName)} (at most ${say.length(tolerance)}); ${count} of ${shared} differ.`,
  example: {
    form: 'layouts',
    bad: '"id": "sprinkler", "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]\n---\n"id": "ducts", "holes": [], "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 25.4, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]',
    good: '"id": "sprinkler", "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]\n---\n"id": "ducts", "holes": [], "control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0.4, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] }\n]',
  },
  checkSite(site, run) {
    const otherwise = run.option('tolerance');
    const compared = new Set<UsedPoint>();
    for (const { earlier, later, points: all } of sharedControl(site.parts)) {
      const points = all.filter((point) => !compared.has(point.later));
      for (const point of points) compared.add(point.later);
      if (points.length === 0) continue;
      const isDoubtful = run.isInDoubt(earlier) || run.isInDoubt(later);
      if (isDoubtful || isMirrored(all, otherwise)) {
        run.leftOut(isDoubtful ? IN_DOUBT : 'control mirrored', points.length);
        continue;
      }
      run.judged(points.length);
      const { worst, count } = worstDifference(points, otherwise);
      if (worst === undefined) continue;
      const { id } = worst.at.later.record;
      const data = {
        point: id,
        otherInput: earlier.input + 1,
        otherName: earlier.name,
        ...worst.difference,
        count,
        shared: points.length,
      };
      run.atRecord(later, 'control', worst.at.later.index, { member: 'point', data, cause: id });
    }
  },
};
