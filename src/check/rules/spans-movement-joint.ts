import { kindsOf } from '../kinds.js';
import type { Rule } from '../rule.js';
import { BROKEN, type Site } from '../site.js';
import { SiteJoints } from '../site-joints.js';

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
    other: 'id of the first hole of the group that lies on no joint; it is on the other side',
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
    const joints = new SiteJoints(site.surfaces);
    if (joints.count === 0) return;
    const { groups, substrates, holeCount } = site;
    const kinds = kindsOf(site);
    const baseOf = basesOf(site, joints);
    for (let i = 0; i < holeCount; i++) {
      if (!kinds.at(i).hasGroup) continue;
      const base = baseOf[groups.nameOf(i)];
      if (i === base) continue;
      const own = substrates.nameOf(i);
      const ofBase = base < 0 ? -1 : substrates.nameOf(base);
      if (base < 0 || !canBePlaced(site, i)) {
        if (joints.has(own) || joints.has(ofBase)) run.leftOut(whyNot(site, i));
        continue;
      }
      if (own === ofBase && !joints.has(own)) continue;
      const found = joints.between(ofBase, site.point(base), own, site.point(i));
      if (found === 'no joint near') continue;
      if (found === 'too many joints near') {
        run.leftOut(found);
        continue;
      }
      run.judged(1);
      if (found === 'not parted') continue;
      const { substrate, edge } = found;
      // A group belongs to one layout, and so do its holes.
      const data = { group: groups.id(groups.nameOf(i)), other: site.holeId(base), substrate, edge };
      run.atHole(i, { member: 'group', data, cause: `${substrate} ${edge}` });
    }
  },
};

/**
 * The hole of each group with which the others are compared: the first that can be placed and lies on no joint, for
 * one on a joint is on neither side; where all lie on joints, the first that can be placed; else -1.
 */
function basesOf(site: Site, joints: SiteJoints): Int32Array {
  const { groups, substrates, holeCount } = site;
  const kinds = kindsOf(site);
  const baseOf = new Int32Array(groups.count).fill(-1);
  const isOff = new Uint8Array(groups.count);
  for (let i = 0; i < holeCount; i++) {
    if (!kinds.at(i).hasGroup) continue;
    const group = groups.nameOf(i);
    if (isOff[group] !== 0 || !canBePlaced(site, i)) continue;
    isOff[group] = joints.isOn(substrates.nameOf(i), site.point(i)) ? 0 : 1;
    if (isOff[group] !== 0 || baseOf[group] < 0) baseOf[group] = i;
  }
  return baseOf;
}

function canBePlaced(site: Site, i: number): boolean {
  return site.out[i] === 0 && !Number.isNaN(site.points.z[i]);
}

function whyNot(site: Site, i: number): string {
  return site.out[i] === 0 ? 'height not known' : (site.whyOut(i) ?? BROKEN);
}
