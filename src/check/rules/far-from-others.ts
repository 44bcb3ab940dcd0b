import { FewFarFinder } from '../../fit/few-far.js';
import type { Level } from '../../generated/layout.js';
import { HoleLevels } from '../hole-levels.js';
import { kindsOf } from '../kinds.js';
import { canBePlaced } from '../places-on-faces.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';

/** On a level with fewer holes nobody can say which of them are the others. */
const LEAST_HOLES = 50;
const MOST_FAR = 5;
const MOST_PART = 0.01;

interface Floor {
  level: Level;
  count: number;
  finder: FewFarFinder;
}

export const farFromOthers: Rule = {
  id: 'far-from-others',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'A few holes lie far from all others of their level.',
  why: 'Mostly a digit slipped: the hole is drilled nowhere, or where it stands on the list and not where it is needed.',
  mend: 'Compare the coordinates with the drawing, digit by digit; look for a missing minus and a misplaced point.',
  accept: 'When something of the building really lies there.',
  needs: 'A level with at least 50 holes.',
  data: {
    level: 'id of the level',
    distance: 'distance in plan to the box around the others, mm',
    length: 'longer side of that box, mm',
    others: 'number of the others',
  },
  message: ({ level, distance, length, others }, say) =>
    `The hole lies ${say.length(distance)} from the other ${others} holes of level "${level}", which lie within ${say.length(length)}.`,
  causeMessage: ({ level, length, others }, say) =>
    `A few holes lie far from the other ${others} holes of level "${level}", which lie within ${say.length(length)}.`,
  example: {
    form: 'members',
    bad: membersWith(90_000),
    good: membersWith(9000),
  },
  checkSite(site, run) {
    const { list, of } = kindsOf(site);
    const { x, y } = site.points;
    const levels = new HoleLevels(site);
    const floors = new Map<string, Floor>();
    const ofKind = list.map((kind) => {
      const level = levels.of(kind)?.record;
      if (level === undefined) return undefined;
      const key = JSON.stringify([level.id, level.name, level.building]);
      const finder = new FewFarFinder(x, y, MOST_FAR, LENGTH_SLACK_MM);
      const floor = floors.get(key) ?? { level, count: 0, finder };
      floors.set(key, floor);
      if (kind.out === undefined) floor.count += kind.count;
      return floor;
    });
    let levelless = 0;
    list.forEach((kind, k) => {
      // Where an outline judges a hole it says more.
      if (canBePlaced(kind)) return;
      if (ofKind[k] === undefined) levelless += kind.count;
      else if (isSmall(ofKind[k])) return;
      else if (kind.out !== undefined) run.leftOut(kind.out, kind.count);
      else run.judged(kind.count);
    });
    if (levelless >= LEAST_HOLES) run.leftOut('no level that can be read', levelless);
    const wanted = new Set(list.flatMap((kind, k) => (canBePlaced(kind) || isSmall(ofKind[k]) ? [] : [ofKind[k]])));
    const finders = ofKind.map((floor, k) =>
      wanted.has(floor) && list[k].out === undefined ? floor?.finder : undefined,
    );
    if (wanted.size === 0) return;
    for (let i = 0; i < site.holeCount; i++) finders[of[i]]?.add(i);
    const found = [...wanted].flatMap((floor) => (floor === undefined ? [] : farOf(floor)));
    for (const { i, box, level, others } of found.sort((a, b) => a.i - b.i)) {
      if (canBePlaced(list[of[i]])) continue;
      const data = { level: level.id, distance: box.distanceTo(x[i], y[i]), length: box.longerSide, others };
      run.atHole(i, { member: 'point', data, cause: level.id });
    }
  },
};

function isSmall(floor: Floor | undefined): boolean {
  return floor === undefined || floor.count < LEAST_HOLES;
}

function farOf({ level, finder }: Floor) {
  const found = finder.find(Math.min(MOST_FAR, Math.ceil(finder.count * MOST_PART)));
  return (found?.far ?? []).map((i) => ({
    i,
    level,
    box: found?.box as NonNullable<typeof found>['box'],
    others: finder.count - (found?.far.length ?? 0),
  }));
}

/** Fifty holes of a level, the last one at an x of its own. */
function membersWith(xOfLast: number): string {
  const holes = Array.from({ length: 50 }, (_, k) => {
    const x = k === 49 ? xOfLast : 1000 * (k % 10);
    return `  { "id": "H-${k + 1}", "trade": "FP", "holeType": "HT-1", "level": "L1", "point": [${x}, ${1000 * Math.floor(k / 10)}] }`;
  });
  return `"levels": [\n  { "id": "L1", "name": "Level 1" }\n],\n"substrates": [],\n"holes": [\n${holes.join(',\n')}\n]`;
}
