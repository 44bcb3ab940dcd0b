import { nearHoles } from '../near-holes.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { COINCIDENT_MM } from '../spacing-limits.js';

export const holesCoincide: Rule = {
  id: 'holes-coincide',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'Two holes lie at one place.',
  why: 'Only one hole can be made there. Of one trade it is a copy; of two trades nobody knows whose anchor goes in.',
  mend: 'Remove one of the two. Where trades share a hanger, name one owner and let the other use it.',
  accept: 'Across trades, when the owner is agreed and the other hole is about to go.',
  data: {
    other: 'id of the nearest earlier hole at the place',
    distance: 'distance of the two points, mm',
    trade: 'id of the trade of this hole',
    otherTrade: 'id of the trade of the other hole',
  },
  message: ({ other, distance, trade, otherTrade }, say) =>
    trade === otherTrade
      ? `The hole lies at the place of hole "${other}" of the same trade (${say.length(distance)} apart).`
      : `The hole of trade "${trade}" lies at the place of hole "${other}" of trade "${otherTrade}" (${say.length(distance)} apart). Name one owner.`,
  causeMessage: ({ trade, otherTrade }) =>
    trade === otherTrade
      ? `Holes of trade "${trade}" lie at the place of others of the same trade.`
      : `Holes of trade "${trade}" lie at the place of holes of trade "${otherTrade}". Name one owner for each.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000.4, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [1000, 1400, 3000] }\n]',
  },
  checkSite(site, run) {
    const { holes } = site.layout;
    // Of several at one place an equal trade weighs more than a smaller distance: it is the error.
    const worst = new Map<number, { other: number; distance: number; isSameTrade: boolean }>();
    const judged = nearHoles(site, COINCIDENT_MM + LENGTH_SLACK_MM, (i, j, distance) => {
      const isSameTrade = site.tradeName(i) === site.tradeName(j);
      const before = worst.get(i);
      const isWorse =
        before === undefined ||
        (isSameTrade && !before.isSameTrade) ||
        (isSameTrade === before.isSameTrade &&
          (distance < before.distance || (distance === before.distance && j < before.other)));
      if (isWorse) worst.set(i, { other: j, distance, isSameTrade });
    });
    judged.leaderOf?.forEach((leader, i) => {
      if (leader < 0) return;
      const first = worst.get(leader);
      const isSame = first?.isSameTrade === true && first.distance === 0;
      worst.set(i, { other: isSame ? first.other : leader, distance: 0, isSameTrade: true });
    });
    run.judged(judged.count);
    for (const [reason, count] of judged.leftOut) run.leftOut(reason, count);
    const { names } = site.layout.collection('trades');
    for (const [i, { other, distance, isSameTrade }] of [...worst].sort(([a], [b]) => a - b)) {
      const data = {
        other: holes.id(other),
        distance,
        trade: names.text(site.tradeName(i)),
        otherTrade: names.text(site.tradeName(other)),
      };
      run.finding({
        record: `/holes/${i}`,
        byte: holes.byte[i],
        member: 'point',
        hole: i,
        data,
        cause: `${data.trade} ${data.otherTrade}`,
        severity: isSameTrade ? 'error' : 'warning',
      });
    }
  },
};
