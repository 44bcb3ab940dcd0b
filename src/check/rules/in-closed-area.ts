import type { Area } from '../../generated/layout.js';
import { compareInstants } from '../../units/instant.js';
import { type Kind, kindsOf } from '../kinds.js';
import { NO_TIME } from '../no-time.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import type { Site } from '../site.js';
import { AREA_BROKEN, LEVEL_UNKNOWN, SiteAreas } from '../site-areas.js';
import { isToBeMade, TYPE_BROKEN } from '../to-be-made.js';

export const inClosedArea: Rule = {
  id: 'in-closed-area',
  class: 'site',
  severity: { 'for-review': 'info', 'for-drilling': 'error', 'for-closeout': 'off' },
  since: '0.1',
  stage: 'completeness',
  title: 'A hole lies in an area that is closed.',
  why: 'Somebody has closed the area for a reason that the crew does not see from below: work overhead, a fresh pour, a tenant, a live plant.',
  mend: 'Leave the holes out of what is issued, or get the area opened by those who closed it and write down until when it was closed.',
  needs: 'The time that the check is to take as now, for areas whose closure ends.',
  data: { area: 'id of the area', ...OTHER_INPUT },
  message: ({ area, otherName }) => `The hole lies in area "${area}"${inInput(otherName)}, which is closed.`,
  causeMessage: ({ area, otherName }) => `Holes lie in area "${area}"${inInput(otherName)}, which is closed.`,
  example: {
    form: 'members',
    bad: '"areas": [{ "id": "A-1", "name": "Bay 1", "kinds": ["closed"], "validTo": "2026-03-06T18:00:00-05:00",\n  "outline": [[4000, 4000], [6000, 4000], [6000, 6000], [4000, 6000]] }]',
    good: '"areas": [{ "id": "A-1", "name": "Bay 1", "kinds": ["closed"], "validTo": "2026-02-27T18:00:00-05:00",\n  "outline": [[4000, 4000], [6000, 4000], [6000, 6000], [4000, 6000]] }]',
  },
  checkSite(site, run) {
    if (!hasClosedAreas(site)) return;
    const areas = new SiteAreas(site, (area) => isOfKindClosed(area) && mayBeClosed(area, run.asOf));
    const { list, of } = kindsOf(site);
    const closedAt = closedAreas(areas, list, run.asOf);
    const isJudged = list.map((kind) => judgesKind(site, run, kind));
    const unknown = new Map<string, number>();
    let judged = 0;
    for (let i = 0; i < site.holeCount; i++) {
      if (!isJudged[of[i]]) continue;
      const found = closedAt(i, of[i]);
      if (typeof found === 'string') unknown.set(found, (unknown.get(found) ?? 0) + 1);
      else judged++;
      if (typeof found !== 'number' || found < 0) continue;
      const { area, part, name } = areas.list[found];
      const isOther = part !== site.partOf(i);
      const data = { area: area.id, ...(isOther && { otherInput: part.input + 1, otherName: part.name }) };
      run.atHole(i, { data, cause: `${name}` });
    }
    run.judged(judged);
    for (const [reason, count] of unknown) run.leftOut(reason, count);
  },
};

function hasClosedAreas({ parts }: Site): boolean {
  return parts.some(({ layout }) =>
    layout.collection('areas').judged.some((area) => area !== undefined && isOfKindClosed(area)),
  );
}

function isOfKindClosed({ kinds }: Area): boolean {
  return kinds?.includes('closed') === true;
}

/** Counts the holes of a kind that are left out; whether its holes are judged one by one. */
function judgesKind(site: Site, run: SiteRun, { out, type, area, count }: Kind): boolean {
  if (out === undefined && type !== undefined && !isToBeMade(type)) return false;
  const isBroken = area >= 0 && site.areas.records[area] === undefined;
  const why = out ?? (type === undefined ? TYPE_BROKEN : isBroken ? AREA_BROKEN : undefined);
  if (why !== undefined) run.leftOut(why, count);
  return why === undefined;
}

/**
 * Tells for a hole and its kind the index of the closed area that holds it, -1 where none does, or why that is not
 * known: of areas that are known to be closed the one that the hole names, else the first that is about it.
 */
function closedAreas(
  areas: SiteAreas,
  kinds: readonly Kind[],
  asOf: string | undefined,
): (i: number, kind: number) => number | string {
  const isKnown = areas.list.map(({ area }) => asOf !== undefined || area.validTo === undefined);
  const named = kinds.map((kind) => areas.namedBy(kind));
  const closed = areas.firstAbout((index, held) => held === 'yes' && isKnown[index]);
  const perhaps = areas.firstAbout((index, held) => held === 'perhaps' || !isKnown[index]);
  return (i, kind) => {
    const own = named[kind];
    if (own >= 0 && isKnown[own]) return own;
    if (closed[i] >= 0) return closed[i];
    if (own >= 0) return NO_TIME;
    if (perhaps[i] < 0) return -1;
    return isKnown[perhaps[i]] ? LEVEL_UNKNOWN : NO_TIME;
  };
}

/** Whether an area of the kind is closed at a time, or may be where no time is told. */
function mayBeClosed({ validFrom, validTo }: Area, asOf: string | undefined): boolean {
  if (asOf === undefined) return true;
  return (
    (validFrom === undefined || compareInstants(validFrom, asOf) <= 0) &&
    (validTo === undefined || compareInstants(validTo, asOf) >= 0)
  );
}
