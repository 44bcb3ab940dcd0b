import { offsetAt, ribAt } from '../face-offset.js';
import { kindsOf } from '../kinds.js';
import { offCauses } from '../off-causes.js';
import { leaveOutHeight } from '../leave-out-height.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import type { Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';

/** Offsets that differ by no more are one, however small the limit. */
const LEAST_SPREAD_MM = 1;

export const offSurface: Rule = {
  id: 'off-surface',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'frame',
  title: 'The height of a hole is not that of the face that is drilled.',
  why: 'Depths, clashes and edges are then judged at a place where no drill ever comes to, and a setting-out from the file misses the concrete.',
  mend: 'Leave the height out, so that the hole lies on the surface as found, or correct it; where the slab is wrong, correct its face.',
  accept: 'When the slab is known to lie off its nominal face there, and the heights are measured ones.',
  needs: 'A height, and a substrate with a face.',
  options: {
    limit: {
      what: 'Greatest distance off the face to either side: the flatness of soffits of raw slabs over 4 m in DIN 18202:2013, table 3, row 5.',
      unit: 'mm',
      default: 15,
      least: 0,
      most: 10_000,
    },
  },
  data: {
    substrate: 'id of the substrate',
    level: 'id of the level of the hole; absent where none is given',
    offset: 'how far it lies off the face, positive into the concrete, mm',
    limit: 'greatest distance that is allowed, mm',
    looksLike: 'height of the layout that the height is; absent where it is none',
    shared: 'how many holes of the level lie off in the same way; absent for holes that are alone in it',
    ofLevel: 'with `shared`: how many holes of the level were judged',
    least: 'with `shared`: least offset of these holes, mm; absent where all are the same to the millimetre',
    most: 'with `least`: greatest offset of these holes, mm',
  },
  message: ({ substrate, offset, looksLike }, say) =>
    `The hole lies ${off(Number(offset), say.length(Math.abs(Number(offset))))} the face of substrate "${substrate}"${looks(looksLike)}.`,
  causeMessage: ({ substrate, level, offset, looksLike, shared, ofLevel, least, most }, say) => {
    if (shared === undefined) return `Holes lie off the face of substrate "${substrate}", by different heights.`;
    const holes = shared === ofLevel ? `All ${shared}` : `${shared} of ${ofLevel}`;
    const of = level === undefined ? 'without a level' : `of level "${level}"`;
    const [near, far] = [least ?? offset, most ?? offset].map((mm) => say.length(Math.abs(Number(mm))));
    const by = off(
      Number(offset),
      least === undefined ? far : Number(offset) > 0 ? `${near} to ${far}` : `${far} to ${near}`,
    );
    return `${holes} holes ${of} lie ${by} the faces of their substrates${looks(looksLike)}.`;
  },
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [5000, 5000, 3200] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [5000, 5000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "substrate": "S-1", "point": [6000, 5000, 3015] }\n]',
  },
  checkSite(site, run) {
    count(site, run);
    const limit = run.option('limit');
    const { holes, offsets } = holesOff(site, limit + LENGTH_SLACK_MM);
    const causes = offCauses(site, holes, offsets, Math.max(limit, LEAST_SPREAD_MM));
    holes.forEach((i, k) => {
      const { cause, ...own } = causes[k];
      const data = { substrate: site.substrates.of(i)?.id, ...own, offset: offsets[k], limit };
      if (run.atHole(i, { member: 'point', data, cause })) run.doubtPlace(i);
    });
  },
  // Only a height that is another one of the layout is known to be none that was meant.
  fix: ({ looksLike }, sight) => (looksLike === undefined ? undefined : leaveOutHeight(sight)),
};

/** A hole without a height is none of the rule's business. */
function count(site: Site, run: SiteRun): void {
  for (const { hasHeight, surface, out, count: holes, first } of kindsOf(site).list) {
    if (!hasHeight) continue;
    const why = out ?? site.whyNoSurface(first);
    if (why === undefined && surface !== undefined) run.judged(holes);
    else run.leftOut(why ?? 'substrate without a face', holes);
  }
}

function holesOff(site: Site, most: number): { holes: number[]; offsets: number[] } {
  const { list, of } = kindsOf(site);
  const { ownHeights, points } = site;
  const faces = list.map(({ hasHeight, surface, out }) => (hasHeight && out === undefined ? surface : undefined));
  const holes: number[] = [];
  const offsets: number[] = [];
  for (let i = 0; i < site.holeCount; i++) {
    const face = faces[of[i]];
    if (face === undefined) continue;
    const offset = offsetAt(face, points.x[i], points.y[i], ownHeights[i]);
    if (offset >= -most && (offset <= most || offset <= most + ribAt(face, site.point(i)))) continue;
    holes.push(i);
    offsets.push(offset);
  }
  return { holes, offsets };
}

function off(offset: number, distance: string): string {
  return offset > 0 ? `${distance} inside` : `${distance} in front of`;
}

function looks(looksLike: unknown): string {
  return looksLike === undefined ? '' : `; the height looks like ${looksLike}`;
}
