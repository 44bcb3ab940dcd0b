import { HoleLevels } from '../hole-levels.js';
import { kindsOf } from '../kinds.js';
import { leaveOutHeight } from '../leave-out-height.js';
import type { Rule } from '../rule.js';
import { floorsOf, standInsIn } from '../stand-ins.js';

export const heightStandIn: Rule = {
  id: 'height-stand-in',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'Holes that are drilled upward have the height of a floor.',
  why: 'The height was filled in where none was known. Who sets out from it, or compares it with ducts and slabs, is wrong by a storey.',
  mend: 'Leave the height out, so that the hole lies on the surface as found, or write the height of the soffit.',
  accept: 'When they really begin at that height, such as on the underside of a stair.',
  needs: 'A height, an axis of the hole, a level with heights, and no substrate with a face.',
  data: {
    level: 'id of the level',
    standIn: 'which height it is: `the finished floor`, `the structural top`, `the datum of the level` or `zero`',
    height: 'that height, mm',
    holes: 'how many holes of the level have it',
  },
  message: ({ level, standIn, height }, say) =>
    `The hole is drilled upward and its height ${say.length(height)} is ${nameOf(standIn, level)}.`,
  causeMessage: ({ level, standIn, height, holes }, say) =>
    `${holes} holes are drilled upward and their height ${say.length(height)} is ${nameOf(standIn, level)}.`,
  example: {
    form: 'members',
    bad: '"levels": [\n  { "id": "L1", "name": "Level 1", "elevation": 4000, "finishedFloor": 4060, "soffits": [7000] }\n],\n"substrates": [],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "level": "L1", "point": [1000, 1000, 4060], "axis": [0, 0, 1] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "level": "L1", "point": [2000, 1000, 4060], "axis": [0, 0, 1] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "level": "L1", "point": [3000, 1000, 4060], "axis": [0, 0, 1] }\n]',
    good: '"levels": [\n  { "id": "L1", "name": "Level 1", "elevation": 4000, "finishedFloor": 4060, "soffits": [7000] }\n],\n"substrates": [],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "level": "L1", "point": [1000, 1000, 7000], "axis": [0, 0, 1] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "level": "L1", "point": [2000, 1000, 7000], "axis": [0, 0, 1] },\n  { "id": "H-3", "trade": "FP", "holeType": "HT-1", "level": "L1", "point": [3000, 1000, 7000], "axis": [0, 0, 1] }\n]',
  },
  checkSite(site, run) {
    const levels = new HoleLevels(site);
    for (const kind of kindsOf(site).list) {
      const level = floorsOf(site, kind, levels);
      if (typeof level === 'string') run.leftOut(level, kind.count);
      else if (level !== undefined) run.judged(kind.count);
    }
    for (const [i, { level, name, height, count }] of standInsIn(site)) {
      const data = { level, standIn: name, height, holes: count };
      run.atHole(i, { member: 'point', data, cause: `${level} ${name}` });
    }
  },
  fix: (_data, sight) => leaveOutHeight(sight),
};

function nameOf(standIn: unknown, level: unknown): string {
  if (standIn === 'zero') return `zero, where level "${level}" has neither floor nor soffit`;
  return standIn === 'the datum of the level' ? `the datum of level "${level}"` : `${standIn} of level "${level}"`;
}
