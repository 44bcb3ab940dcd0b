import { judgeKinds } from '../judge-kinds.js';
import type { Rule } from '../rule.js';
import { ANGLE_SLACK_DEG, elevationDeg } from '../slant.js';
import { TYPE_BROKEN } from '../to-be-made.js';

/** From this elevation on a hole is drilled up, and down from as much below level. */
const STEEP_DEG = 45;

export const directionNotForType: Rule = {
  id: 'direction-not-for-type',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole is drilled in a direction that its type is not for.',
  why: 'What holds in a floor may run out of a soffit: adhesive drips, and an anchor may be approved for one direction alone.',
  mend: 'Use a type for this direction, or correct the axis or the substrate of the hole.',
  accept: 'When the approval allows the direction; then add it to the type.',
  needs: 'An axis of the hole, or a substrate with a face.',
  data: {
    direction: 'direction in which the hole is drilled: `up`, `down` or `horizontal`',
    directions: 'directions that the type is for',
    elevationDeg: 'elevation of the axis over level, degrees',
  },
  message: ({ direction, directions }) =>
    `The hole is drilled ${inWords(direction)}; its type is for holes drilled ${(directions as string[]).map(inWords).join(' or ')}.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "directions": ["down"] }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "directions": ["down", "up"] }\n]',
  },
  checkSite(site, run) {
    judgeKinds(site, run, ({ axis, type, first }) => {
      if (type === undefined) return { leftOut: TYPE_BROKEN };
      const { directions = [] } = type;
      if (directions.length === 0) return undefined;
      if (axis === undefined) return { leftOut: site.whyNoSurface(first) ?? 'axis not known' };
      const elevation = elevationDeg(axis);
      if (directions.some((direction) => isIn(direction, elevation))) return 'passed';
      const direction = elevation >= STEEP_DEG ? 'up' : elevation <= -STEEP_DEG ? 'down' : 'horizontal';
      const data = { direction, directions, elevationDeg: elevation };
      return { finding: { data, cause: `${type.id} ${direction}` } };
    });
  },
};

function isIn(direction: string, elevation: number): boolean {
  if (direction === 'up') return elevation >= STEEP_DEG - ANGLE_SLACK_DEG;
  if (direction === 'down') return elevation <= ANGLE_SLACK_DEG - STEEP_DEG;
  return Math.abs(elevation) <= STEEP_DEG + ANGLE_SLACK_DEG;
}

function inWords(direction: unknown): string {
  return direction === 'horizontal' ? 'level' : String(direction);
}
