import { CROWDED } from '../hole-points.js';
import { nearHoles } from '../near-holes.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import { PairCauses } from '../pair-causes.js';
import type { Rule } from '../rule.js';
import type { SpacingLimit } from '../spacing-limits.js';

export const holesTooClose: Rule = {
  id: 'holes-too-close',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'Two holes lie closer together than their hole types allow.',
  why: 'Anchors too close to each other share one piece of concrete and hold less than each alone, and the concrete between the holes may break while drilling.',
  mend: 'Move one of the holes, or have the designer give the spacing inside their group with its source.',
  accept: 'When the designer of the anchors has agreed to the distance in writing.',
  data: {
    other: 'id of the nearest hole that is too close',
    ...OTHER_INPUT,
    trade: 'id of the trade of this hole',
    otherTrade: 'id of the trade of the other hole',
    distance: 'distance of the two points, mm',
    limit: 'least distance, mm',
    source: 'where the limit comes from',
    holeType: 'id of the hole type of this hole',
    otherType: 'id of the hole type of the other hole',
  },
  message: ({ other, otherName, distance, limit, source, trade, otherTrade }, say) =>
    `The hole lies ${say.length(distance)} from hole "${other}"${inInput(otherName)}${trade === otherTrade ? '' : ` of trade "${otherTrade}"`}; at least ${say.length(limit)} is needed (${source}).`,
  causeMessage: ({ holeType, otherType, otherName, trade, otherTrade, limit, source }, say) =>
    trade === otherTrade
      ? `Holes of type "${holeType}" lie closer than ${say.length(limit)} to holes of type "${otherType}"${inInput(otherName)} (${source}).`
      : `Holes of trade "${trade}" and type "${holeType}" lie closer than ${say.length(limit)} to holes of trade "${otherTrade}" and type "${otherType}"${inInput(otherName)} (${source}).`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [1000, 1079.9, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [1000, 1080, 3000] }\n]',
  },
  checkSite(site, run) {
    const { limits, tooClose, count, leftOut, isLeftOut } = nearHoles(site);
    const { isUnknown, givenUp, found } = tooClose;
    if (limits.largest === 0 && !isUnknown.includes(1)) return;
    let unknown = 0;
    for (let i = 0; i < site.holeCount; i++) if (isUnknown[i] > isLeftOut[i]) unknown++;
    run.judged(count - unknown - givenUp.size);
    run.leftOut('record of its hole type or group broken', unknown);
    run.leftOut(CROWDED, givenUp.size);
    for (const [reason, holes] of leftOut) run.leftOut(reason, holes);
    const causes = new PairCauses(site);
    found.forEach((i, other, distance) => {
      const dataOf = () => {
        const [trade, otherTrade] = [i, other].map((hole) => site.trades.id(site.trades.nameOf(hole)));
        const [holeType, otherType] = [i, other].map((hole) => site.types.of(hole)?.id ?? '');
        const { value: limit, source } = limits.between(i, other) as SpacingLimit;
        return { ...site.otherHole(i, other), distance, limit, source, holeType, otherType, trade, otherTrade };
      };
      const causeOf = () => {
        const { trade, holeType, otherTrade, otherType, limit } = dataOf();
        const sides = [`${trade} ${holeType}`, `${otherTrade} ${otherType}`].sort();
        return `${sides.join(' ')} ${limit} ${site.partOf(other).input}`;
      };
      const isOfGroup = limits.spacedGroup(i) >= 0;
      const cause = isOfGroup ? causeOf() : causes.of(i, other, causeOf);
      run.atHole(i, { member: 'point', data: dataOf, cause });
    });
  },
};
