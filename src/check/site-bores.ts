import type { Bore } from '../generated/layout.js';
import { unit, type Vec3 } from '../geometry/vector.js';
import type { SiteRun } from './run.js';
import { IN_DOUBT, type Site } from './site.js';
import type { SitePart } from './site-part.js';
import { heightAt } from './surface.js';

/** A bore of a site, with what its substrate says of it. Millimetres, site frame. */
export interface SiteBore {
  bore: Bore;
  part: SitePart;
  /** Its point; a height that the layout does not give is taken from the face. */
  point: Vec3;
  /** Whether the layout gives its height. */
  hasHeight: boolean;
  /** Number of the substrate on which it is compared in plan with holes; -1 where there is none. */
  planSubstrate: number;
  /** Unit vector into the concrete; undefined where nothing tells it. */
  axis: Vec3 | undefined;
}

/**
 * The bores of all layouts of a site that have a place; one that two layouts describe alike is taken once. Those
 * that cannot be judged by are counted: a hole that meets none of the others has not been compared with them.
 */
export function siteBores(site: Site, run: SiteRun): SiteBore[] {
  const list: SiteBore[] = [];
  const known = new Set<string>();
  for (const part of site.parts) {
    const { judged } = part.layout.collection('bores');
    if (part.layout.unreadable.has('bores')) run.leftOut('list of bores that cannot be read');
    if (run.isInDoubt(part)) {
      run.leftOut(`bore: ${IN_DOUBT}`, judged.length);
      continue;
    }
    for (const bore of judged) {
      const found = bore && placed(site, part, bore);
      if (bore !== undefined && site.parts.length > 1) {
        const { id, point, axis, diameter, depth, end, filled } = bore;
        const key = JSON.stringify([id, point, axis, diameter, depth, end, filled, found?.planSubstrate]);
        if (known.size === known.add(key).size) continue;
      }
      if (found !== undefined) list.push(found);
      else run.leftOut(bore ? 'bore: height not known, and no face that gives it' : 'bore: record broken');
    }
  }
  return list;
}

function placed(site: Site, part: SitePart, bore: Bore): SiteBore | undefined {
  const { substrates } = site;
  const name = bore.substrate === undefined ? -1 : substrates.numberOf(part, bore.substrate);
  const surface = name < 0 ? undefined : site.surfaces[name];
  const planSubstrate = site.planOfSubstrate(name);
  const [x, y, z] = bore.point;
  const hasHeight = z !== undefined;
  if (!hasHeight && (surface === undefined || surface.isVertical)) return undefined;
  const height = z ?? heightAt(surface as NonNullable<typeof surface>, x, y);
  const axis = bore.axis === undefined ? surface?.inward : unit(bore.axis);
  return { bore, part, point: [x, y, height], hasHeight, planSubstrate, axis };
}
