import { equalTags } from '../equal-tags.js';
import { kindsOf } from '../kinds.js';
import { nearHoles } from '../near-holes.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import type { Site } from '../site.js';
import { COINCIDENT_REACH_MM } from '../spacing-limits.js';
import { TagScopes } from '../tag-scopes.js';
import { TagTexts } from '../tag-texts.js';

export const tagClash: Rule = {
  id: 'tag-clash',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'Two holes of one trade and level have the same tag.',
  why: 'The tag is what people read on the drawing, spray on the ceiling and say on the radio. Two holes with one tag are taken for one.',
  mend: 'Give each hole of a trade and level its own tag.',
  accept: 'When the tag names what hangs there and not the hole, and nobody calls holes by it.',
  needs: 'A tag, and a level: of the hole, of its substrate, or none in the whole layout.',
  data: {
    tag: 'the tag',
    other: 'id of the first hole with the tag',
    ...OTHER_INPUT,
    trade: 'id of the trade',
    level: 'id of the level; absent in a layout without levels',
  },
  message: ({ tag, other, otherName, trade, level }) =>
    `Hole "${other}"${inInput(otherName)} of trade "${trade}" has the tag "${tag}" too${onLevel(level)}.`,
  causeMessage: ({ trade, level }) => `Holes of trade "${trade}" share their tags${onLevel(level)}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "tag": "101", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "tag": "101", "trade": "FP", "holeType": "HT-1", "point": [2000, 1000, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "tag": "101", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "tag": "102", "trade": "FP", "holeType": "HT-1", "point": [2000, 1000, 3000] }\n]',
  },
  checkSite(site, run) {
    const scopes = new TagScopes(site);
    const texts = new TagTexts(site);
    const { firsts, tagged, unknown } = equalTags(site, scopes.ofKind, (hole, first) => texts.areEqual(hole, first));
    let judged = -unknown;
    tagged.forEach((count, k) => {
      const why = scopes.why[k];
      if (why === undefined) judged += count;
      else run.leftOut(why, count);
    });
    run.judged(judged);
    run.leftOut('more equal tags than are compared letter by letter', unknown);
    for (const [hole, first] of firsts) {
      if (isSaid(site, run, hole, first)) continue;
      const kind = kindsOf(site).at(hole);
      const trade = site.trades.id(kind.trade);
      const level = scopes.levelOf(kind);
      const data = {
        tag: texts.of(first),
        ...site.otherHole(hole, first),
        trade,
        ...(level !== undefined && { level }),
      };
      run.atHole(hole, { member: 'tag', data, cause: `${trade} ${level ?? ''}` });
    }
  },
};

/** Whether holes-coincide speaks of the two already: one is a copy of the other. */
function isSaid(site: Site, run: SiteRun, hole: number, first: number): boolean {
  if (run.isOff('holes-coincide')) return false;
  const { coincident, overlapping } = nearHoles(site, run.isOff('holes-too-close'));
  const other = coincident.found.of(hole);
  if (other < 0 || !coincident.isSameTrade(hole, other)) return false;
  return overlapping.spacing(hole, first) <= COINCIDENT_REACH_MM;
}

function onLevel(level: unknown): string {
  return level === undefined ? '' : ` on level "${level}"`;
}
