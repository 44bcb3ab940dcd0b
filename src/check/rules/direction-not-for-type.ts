import { judgeKinds } from '../judge-kinds.js';
import type { Rule } from '../rule.js';
import { ANGLE_SLACK_DEG, elevationDeg } from '../slant.js';
import { isInto } from '../surface.js';
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
    holeType: 'id of the hole type',
    direction: 'direction in which the hole is drilled: `up`, `down` or `horizontal`',
    directions: 'directions that the type is for',
    elevationDeg: 'elevation of the axis over level, degrees',
  },
  message: ({ holeType, direction, directions }) =>
    `The hole is drilled ${inWords(direction)}; type "${holeType}" is for holes drilled ${(directions as string[]).map(inWords).join(' or ')}.`,
  causeMessage: ({ holeType, direction, directions }) =>
    `Holes are drilled ${inWords(direction)}; type "${holeType}" is for holes drilled ${(directions as string[]).map(inWords).join(' or ')}.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "directions": ["down"] }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "directions": ["down", "up"] }\n]',
  },
  checkSite(site, run) {
    judgeKinds(site, run, ({ axis, surface, type, first }) => {
      if (type === undefined) return { leftOut: TYPE_BROKEN };
      const { directions = [] } = type;
      if (directions.length === 0) return undefined;
      if (axis === undefined) return { leftOut: site.whyNoSurface(first) ?? 'axis not known' };
      // Which way it goes is not known then: axis-out-of-concrete tells of it.
      if (surface !== undefined && !isInto(surface, axis)) return { leftOut: 'axis does not point into the concrete' };
      const elevation = elevationDeg(axis);
      if (directions.some((direction) => isIn(direction, elevation))) return 'passed';
      const direction = elevation >= STEEP_DEG ? 'up' : elevation <= -STEEP_DEG ? 'down' : 'horizontal';
      const data = { holeType: type.id, direction, directions, elevationDeg: elevation };
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
