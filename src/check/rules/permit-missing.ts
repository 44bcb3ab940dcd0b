import type { Area } from '../../generated/layout.js';
import { isMade } from '../hole-quarters.js';
import { kindsOf } from '../kinds.js';
import type { Rule } from '../rule.js';
import type { Site } from '../site.js';
import { type Held, LEVEL_UNKNOWN, SiteAreas } from '../site-areas.js';

/** Kinds of areas that somebody has set a condition for. */
const WITH_CONDITION: ReadonlySet<string> = new Set(['access', 'closed', 'rated', 'clean', 'noise-hours']);

export const permitMissing: Rule = {
  id: 'permit-missing',
  class: 'site',
  severity: { 'for-review': 'off', 'for-drilling': 'warning', 'for-closeout': 'off' },
  since: '0.1',
  stage: 'completeness',
  title: 'An area with a condition cites no permit or rating to look up.',
  why: 'The crew stands before a closed door, or drills through a rated wall or at a forbidden hour, because the paper that says what holds there is not named.',
  mend: 'Cite in `references` of the area the permit, rating or house rule, as people know it.',
  accept: 'When the permit comes with the shift and the condition in words says all that the crew needs.',
  data: { area: 'id of the area', kinds: 'kinds of the area that set a condition, separated by commas' },
  message: ({ area, kinds }) => `Area "${area}" (${kinds}) holds holes to be made and cites no permit or rating.`,
  causeMessage: ({ kinds }) => `Areas (${kinds}) hold holes to be made and cite no permit or rating.`,
  example: {
    form: 'members',
    bad: '"areas": [{ "id": "A-1", "name": "Ward 2", "kinds": ["clean"], "outline": [[0, 0], [9000, 0], [9000, 9000], [0, 9000]] }]',
    good: '"areas": [{ "id": "A-1", "name": "Ward 2", "kinds": ["clean"], "outline": [[0, 0], [9000, 0], [9000, 9000], [0, 9000]],\n  "references": ["Permit P-014"] }]',
  },
  checkSite(site, run) {
    const areas = new SiteAreas(site, (area) => conditionsOf(area).length > 0);
    if (areas.list.length === 0) return;
    for (const [k, held] of heldAreas(site, areas).entries()) {
      if (held === 'perhaps') run.leftOut(LEVEL_UNKNOWN);
      if (held !== 'yes') continue;
      run.judged(1);
      const { area, part, index } = areas.list[k];
      if ((area.references ?? []).length > 0) continue;
      const kinds = conditionsOf(area).join(', ');
      run.atRecord(part, 'areas', index, { data: { area: area.id, kinds }, cause: kinds });
    }
  },
};

function conditionsOf({ kinds = [] }: Area): string[] {
  return [...new Set(kinds)].filter((kind) => WITH_CONDITION.has(kind)).sort();
}

/** Whether each of the areas holds a hole that is to be made. */
function heldAreas(site: Site, areas: SiteAreas): Held[] {
  const isNamed = new Set(kindsOf(site).list.flatMap((kind) => (isMade(kind) ? areas.namedBy(kind) : [])));
  return areas.list.map((_, k) => (isNamed.has(k) ? 'yes' : areas.holdsAny(k)));
}
