import { kindsOf } from '../kinds.js';
import type { Rule } from '../rule.js';
import { isToBeMade, TYPE_BROKEN } from '../to-be-made.js';

export const throughWithoutAbove: Rule = {
  id: 'through-without-above',
  class: 'site',
  severity: { 'for-review': 'off', 'for-drilling': 'warning', 'for-closeout': 'off' },
  since: '0.1',
  stage: 'completeness',
  title: 'Nobody is named who protects the far side of a through hole.',
  why: 'The bit and pieces of concrete come out where people of another firm may stand, or into a finished floor. The crew below does not see it.',
  mend: 'Agree with those who run the far side who closes it off or watches, and name that party in `above.protectedBy` of the hole.',
  accept: 'When the far side is closed to all for the time of the work, by an arrangement outside of the layout.',
  data: { trade: 'id of the trade of the hole' },
  message: () => 'The hole goes through, and nobody is named who protects the far side.',
  causeMessage: ({ trade }) => `Holes of trade "${trade}" go through, and nobody is named who protects the far side.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Bolt through the slab", "principle": "through-bolt", "form": "through", "diameter": 14 }\n]',
    good: '"parties": [{ "id": "GC", "firm": "Example Builders", "role": "general-contractor" }],\n"holeTypes": [\n  { "id": "HT-1", "name": "Bolt through the slab", "principle": "through-bolt", "form": "through", "diameter": 14 }\n],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [5000, 5000],\n    "above": { "protectedBy": "GC" } }\n]',
  },
  checkSite(site, run) {
    const { list, of } = kindsOf(site);
    const isThrough = list.map(({ type }) => type !== undefined && type.form === 'through' && isToBeMade(type));
    list.forEach(({ out, type, count }, k) => {
      const why = out ?? (type === undefined ? TYPE_BROKEN : undefined);
      if (why !== undefined) run.leftOut(why, count);
      else if (isThrough[k]) run.judged(count);
    });
    if (!isThrough.includes(true)) return;
    for (const { layout, firstHole } of site.parts) {
      const named = layout.holes.reference('above.protectedBy');
      for (let own = 0; own < layout.holes.count; own++) {
        const i = firstHole + own;
        const kind = of[i];
        if (!isThrough[kind] || (own < named.length && named[own] >= 0) || site.out[i] !== 0) continue;
        const { trade } = list[kind];
        run.atHole(i, { data: { trade: site.trades.id(trade) }, cause: `${trade}` });
      }
    }
  },
};
