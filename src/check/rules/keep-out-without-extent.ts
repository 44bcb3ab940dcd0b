import type { KeepOut } from '../../generated/layout.js';
import { subtract } from '../../geometry/vector.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const keepOutWithoutExtent: Rule = {
  id: 'keep-out-without-extent',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'records',
  title: 'A keep-out takes up no room.',
  why: 'Holes go past it or through it and nothing is said, while the thing that is meant is still in the concrete.',
  mend: 'Give the path its second end: mostly the heights of a riser were left out. Give the thing its radius, or the distance to be kept from it.',
  data: {
    keepOut: 'id of the keep-out',
    kind: 'what it is',
    lacks: '`length` of a path whose points are all at one place, or `size` of a thing without radius and standoff',
  },
  message: ({ keepOut, kind, lacks }) =>
    lacks === 'length'
      ? `The path of keep-out "${keepOut}" (${inWords(kind)}) begins and ends at one place.`
      : `Keep-out "${keepOut}" (${inWords(kind)}) has no radius, and no distance is to be kept from it.`,
  causeMessage: ({ lacks }) =>
    lacks === 'length'
      ? 'Paths of keep-outs begin and end at one place.'
      : 'Keep-outs have no radius, and no distance is to be kept from them.',
  example: {
    form: 'members',
    bad: '"keepOuts": [{ "id": "C-1", "kind": "conduit", "standoff": 25, "knownFrom": "scan",\n  "shape": { "path": { "points": [[2000, 1000, 0], [2000, 1000, 0]], "radius": 16 } } }]',
    good: '"keepOuts": [{ "id": "C-1", "kind": "conduit", "standoff": 25, "knownFrom": "scan",\n  "shape": { "path": { "points": [[2000, 1000, 3000], [2000, 1000, 3200]], "radius": 16 } } }]',
  },
  checkLayout(run) {
    const keepOuts = run.layout.collection('keepOuts');
    keepOuts.judged.forEach((record, index) => {
      if (record === undefined) {
        run.leftOut(BROKEN);
        return;
      }
      run.judged(1);
      const found = lacking(record);
      if (found === undefined) return;
      const { member, lacks } = found;
      run.atRecord('keepOuts', index, { member, data: { keepOut: record.id, kind: record.kind, lacks }, cause: lacks });
      if (run.severity === 'error') keepOuts.giveUp(index);
    });
  },
};

/** What a keep-out lacks to take up room; prisms without volume are found with the schema. */
function lacking({ shape: { path, sphere }, standoff }: KeepOut): { member: string; lacks: string } | undefined {
  const first = path?.points[0];
  const isOnePlace = first && path?.points.every((point) => Math.hypot(...subtract(point, first)) <= LENGTH_SLACK_MM);
  if (isOnePlace) return { member: 'shape/path/points', lacks: 'length' };
  if ((path ?? sphere)?.radius !== 0 || standoff !== 0) return undefined;
  return { member: path === undefined ? 'shape/sphere/radius' : 'shape/path/radius', lacks: 'size' };
}

function inWords(kind: unknown): string {
  return String(kind).replace('-', ' ');
}
