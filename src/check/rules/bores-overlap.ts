import { nearHoles } from '../near-holes.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import { PairCauses } from '../pair-causes.js';
import type { Rule } from '../rule.js';

export const boresOverlap: Rule = {
  id: 'bores-overlap',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'Two holes run into each other inside the concrete.',
  why: 'The second bit breaks into the first hole: it jams or wanders, and neither anchor has the concrete around it that it needs. Where an anchor is set already, the bit meets steel.',
  mend: 'Move one of the holes, make it shorter, or turn its axis so that concrete stays between the two.',
  accept: 'When the two are meant to meet, such as a through hole that is drilled from both sides.',
  needs: 'A depth, a diameter, an axis or a face, and a height or a face that is not vertical.',
  data: {
    other: 'id of the hole that it runs into the farthest',
    ...OTHER_INPUT,
    trade: 'id of the trade of this hole',
    otherTrade: 'id of the trade of the other hole',
    overlap: 'how far the two walls lie in each other, mm',
  },
  message: ({ other, otherName, trade, otherTrade, overlap }, say) =>
    `The hole runs into hole "${other}"${inInput(otherName)}${trade === otherTrade ? '' : ` of trade "${otherTrade}"`} inside the concrete: their walls lie ${say.length(overlap)} in each other.`,
  causeMessage: ({ otherName, trade, otherTrade }) =>
    trade === otherTrade
      ? `Holes of trade "${trade}" run into each other${otherName === undefined ? '' : `, across to ${otherName},`} inside the concrete.`
      : `Holes of trade "${trade}" run into holes of trade "${otherTrade}"${inInput(otherName)} inside the concrete.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "axis": [0, 0, 1] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [900, 1000, 3040], "axis": [1, 0, 0], "depth": 95 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "axis": [0, 0, 1] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [900, 1000, 3040], "axis": [1, 0, 0], "depth": 80 }\n]',
  },
  checkSite(site, run) {
    const { overlapping } = nearHoles(site, run.isOff('holes-too-close'));
    let judged = 0;
    for (let i = 0; i < site.holeCount; i++) {
      const why = overlapping.whyOut(i);
      if (why === undefined) judged++;
      else run.leftOut(why);
    }
    run.judged(judged);
    const causes = new PairCauses(site);
    const tradeOf = (hole: number) => site.trades.id(site.trades.nameOf(hole));
    overlapping.found.forEach((i, other, clear) => {
      const data = () => {
        const [trade, otherTrade] = [tradeOf(i), tradeOf(other)];
        return { ...site.otherHole(i, other), trade, otherTrade, overlap: -clear };
      };
      const causeOf = () => `${[tradeOf(i), tradeOf(other)].sort().join(' ')} ${site.partOf(other).input}`;
      run.atHole(i, { data, cause: causes.of(i, other, causeOf) });
    });
  },
};
