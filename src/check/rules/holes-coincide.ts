import { CROWDED } from '../hole-points.js';
import { nearHoles } from '../near-holes.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import { PairCauses } from '../pair-causes.js';
import type { Rule } from '../rule.js';

export const holesCoincide: Rule = {
  id: 'holes-coincide',
  class: 'site',
  severity: 'error',
  lessGrave: 'A warning where the two holes are of different trades.',
  since: '0.1',
  stage: 'geometry',
  title: 'Two holes lie at one place.',
  why: 'Only one hole can be made there. Of one trade it is a copy; of two trades nobody knows whose anchor goes in.',
  mend: 'Remove one of the two. Where trades share a hanger, name one owner and let the other use it.',
  accept: 'Across trades, when the owner is agreed and the other hole is about to go.',
  data: {
    other: 'id of the nearest earlier hole at the place',
    ...OTHER_INPUT,
    sameTrade: 'whether both are of one trade',
    distance: 'distance of the two points, mm',
    trade: 'id of the trade of this hole',
    otherTrade: 'id of the trade of the other hole',
  },
  message: ({ other, otherName, distance, trade, otherTrade, sameTrade }, say) =>
    sameTrade === true
      ? `The hole lies at the place of hole "${other}"${inInput(otherName)} of the same trade (${say.length(distance)} apart).`
      : `The hole of trade "${trade}" lies at the place of hole "${other}"${inInput(otherName)} of trade "${otherTrade}" (${say.length(distance)} apart). Name one owner.`,
  causeMessage: ({ otherName, trade, otherTrade, sameTrade }) =>
    sameTrade === true
      ? `Holes of trade "${trade}" lie at the place of others${inInput(otherName)} of the same trade.`
      : `Holes of trade "${trade}" lie at the place of holes of trade "${otherTrade}"${inInput(otherName)}. Name one owner for each.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000.4, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [1000, 1400, 3000] }\n]',
  },
  checkSite(site, run) {
    const { coincident, count, leftOut } = nearHoles(site, run.isOff('holes-too-close'));
    run.judged(count - coincident.givenUp.size);
    for (const [reason, holes] of leftOut) run.leftOut(reason, holes);
    run.leftOut(CROWDED, coincident.givenUp.size);
    const causes = new PairCauses(site);
    const tradeOf = (hole: number) => site.trades.id(site.trades.nameOf(hole));
    coincident.found.forEach((i, other, distance) => {
      const sameTrade = coincident.isSameTrade(i, other);
      const data = () => {
        const [trade, otherTrade] = [tradeOf(i), tradeOf(other)];
        return { ...site.otherHole(i, other), distance, trade, otherTrade, sameTrade };
      };
      const cause = causes.of(i, other, () => `${tradeOf(i)} ${tradeOf(other)} ${site.partOf(other).input}`);
      run.atHole(i, { member: 'point', data, cause, severity: sameTrade ? 'error' : 'warning' });
    });
  },
};
