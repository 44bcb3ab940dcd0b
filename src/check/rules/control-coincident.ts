import { CoincidentControl } from '../coincident-control.js';
import { usedControl } from '../control-sets.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';

export const controlCoincident: Rule = {
  id: 'control-coincident',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'control',
  title: 'Two control points lie at one place.',
  why: 'One of the two has wrong coordinates or is there twice. A set-up that takes both for two points is worth less than it looks.',
  mend: 'Look both up on the control sheet. Correct one, remove it, or let it say by which point it is replaced.',
  data: {
    point: 'id of the control point',
    other: 'id of the first control point at the place',
    distance: 'distance of the two in plan, mm',
  },
  message: ({ point, other, distance }, say) =>
    `Control point "${point}" lies at the place of "${other}" (${say.length(distance)} apart in plan).`,
  causeMessage: ({ other }) => `Control points lie at the place of "${other}".`,
  example: {
    form: 'members',
    bad: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] },\n  { "id": "CP-4", "point": [24000, 0.2, 0] }\n]',
    good: '"control": [\n  { "id": "CP-1", "point": [0, 0, 0] },\n  { "id": "CP-2", "point": [24000, 0, 0] },\n  { "id": "CP-3", "point": [20000, 16000, 0] },\n  { "id": "CP-4", "point": [24000, 0.2, 0], "replacedBy": "CP-2" }\n]',
  },
  checkSite(site, run) {
    for (const part of site.parts) {
      const before = new CoincidentControl();
      run.leftOut(BROKEN, part.layout.collection('control').judged.filter((record) => record === undefined).length);
      for (const point of usedControl(part.layout)) {
        run.judged(1);
        const other = before.add(point);
        if (other === undefined) continue;
        const distance = Math.hypot(other.x - point.x, other.y - point.y);
        const data = { point: point.record.id, other: other.record.id, distance };
        run.atRecord(part, 'control', point.index, { member: 'point', data, cause: data.other });
      }
    }
  },
};
