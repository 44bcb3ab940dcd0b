import { kindsOf } from '../kinds.js';
import { type Joint, jointsOf } from '../movement-joints.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import { BROKEN, type Site } from '../site.js';

export const spansMovementJoint: Rule = {
  id: 'spans-movement-joint',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'Holes of one group lie on both sides of a movement joint.',
  why: 'The two sides move against each other; what is fixed to both holds them together until it or the concrete gives way.',
  mend: 'Keep the group on one side of the joint, or split it.',
  accept: 'When what the group carries can take the movement, and its designer says so in writing.',
  needs: 'Points with a height, of the hole or from a face, and a movement joint in the outline of a substrate.',
  data: {
    group: 'id of the group',
    other: 'id of the first hole of the group, on the other side',
    substrate: 'id of the substrate whose edge is the joint',
    edge: 'index of that edge from 0',
  },
  message: ({ group, other, substrate }) =>
    `A movement joint of substrate "${substrate}" runs between the hole and hole "${other}" of the same group "${group}".`,
  causeMessage: ({ substrate }) => `A movement joint of substrate "${substrate}" runs between holes of one group.`,
  example: {
    form: 'members',
    bad: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]],\n      "edges": ["free", "movement-joint", "free", "free"] } },\n  { "id": "S-2", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[10030, 0, 3000], [20000, 0, 3000], [20000, 10000, 3000], [10030, 10000, 3000]] } }\n],\n"groups": [{ "id": "G-1", "kind": "trapeze" }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "group": "G-1", "point": [9700, 5000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-2", "group": "G-1", "point": [10300, 5000, 3000] }\n]',
    good: '"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "thickness": 200, "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] },\n    "outline": { "points": [[0, 0, 3000], [10000, 0, 3000], [10000, 10000, 3000], [0, 10000, 3000]],\n      "edges": ["free", "movement-joint", "free", "free"] } }\n],\n"groups": [{ "id": "G-1", "kind": "trapeze" }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "group": "G-1", "point": [9100, 5000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "group": "G-1", "point": [9700, 5000, 3000] }\n]',
  },
  checkSite(site, run) {
    const joints = site.surfaces.map(jointsOf);
    if (joints.every((joint) => joint === undefined)) return;
    const { groups, substrates, holeCount, out, points } = site;
    const kinds = kindsOf(site);
    // The first hole of each group that can be placed; the others are compared with it.
    const firstOf = new Int32Array(groups.count).fill(-1);
    for (let i = 0; i < holeCount; i++) {
      if (!kinds.at(i).hasGroup) continue;
      const group = groups.nameOf(i);
      const first = firstOf[group];
      const canBePlaced = out[i] === 0 && !Number.isNaN(points.z[i]);
      if (first < 0) {
        if (canBePlaced) firstOf[group] = i;
        else if (jointAt(joints, substrates.nameOf(i)) !== undefined) run.leftOut(whyNot(site, i));
        continue;
      }
      const own = jointAt(joints, substrates.nameOf(i));
      const ofFirst = jointAt(joints, substrates.nameOf(first));
      if (own === undefined && ofFirst === undefined) continue;
      if (!canBePlaced) {
        run.leftOut(whyNot(site, i));
        continue;
      }
      run.judged(1);
      for (const joint of own === ofFirst ? [own] : [own, ofFirst])
        if (joint && spans(site, run, joint, first, i)) break;
    }
  },
};

function jointAt(joints: readonly (Joint | undefined)[], substrate: number): Joint | undefined {
  return substrate < 0 ? undefined : joints[substrate];
}

function whyNot(site: Site, i: number): string {
  return site.out[i] === 0 ? 'height not known' : (site.whyOut(i) ?? BROKEN);
}

/** Tells, and reports, whether a joint runs between hole `i` and the first hole of its group. */
function spans(site: Site, run: SiteRun, joint: Joint, first: number, i: number): boolean {
  const edge = joint.between(site.point(first), site.point(i));
  if (edge < 0) return false;
  const group = site.groups.id(site.groups.nameOf(i));
  const { substrate } = joint;
  // A group belongs to one layout, and so do its holes.
  const other = site.holeId(first);
  run.atHole(i, { member: 'group', data: { group, other, substrate, edge }, cause: `${substrate} ${edge}` });
  return true;
}
