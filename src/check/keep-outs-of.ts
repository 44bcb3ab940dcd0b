import type { KeepOut } from '../generated/layout.js';
import type { SiteRun } from './run.js';
import { IN_DOUBT, type Site } from './site.js';
import type { SitePart } from './site-part.js';

/** Keep-outs, and the layouts that describe each of them alike. */
export type KnownKeepOuts = ReadonlyMap<KeepOut, readonly SitePart[]>;

/**
 * The keep-outs of all layouts of a site; one that several describe alike is taken once. Those that cannot be
 * judged by are counted: a hole that meets none of the others has not been compared with them.
 */
export function keepOutsOf(site: Site, run: SiteRun): KnownKeepOuts {
  const byKey = new Map<string, KeepOut>();
  const known = new Map<KeepOut, SitePart[]>();
  for (const part of site.parts) {
    const { judged } = part.layout.collection('keepOuts');
    if (part.layout.unreadable.has('keepOuts')) run.leftOut('list of keep-outs that cannot be read');
    if (run.isInDoubt(part)) {
      run.leftOut(IN_DOUBT, judged.length);
      continue;
    }
    for (const keepOut of judged) {
      if (keepOut === undefined) run.leftOut('record of a keep-out broken');
      else known.set(...alike(keepOut, part));
    }
  }
  return known;

  function alike(keepOut: KeepOut, part: SitePart): [KeepOut, SitePart[]] {
    if (site.parts.length === 1) return [keepOut, [part]];
    const { id, kind, shape, standoff, positionTolerance, knownFrom } = keepOut;
    const key = JSON.stringify([id, kind, shape, standoff, positionTolerance, knownFrom]);
    const first = byKey.get(key) ?? keepOut;
    byKey.set(key, first);
    return [first, [...(known.get(first) ?? []), part]];
  }
}
