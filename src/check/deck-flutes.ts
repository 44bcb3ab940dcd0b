import type { Deck } from '../generated/layout.js';
import type { Vec3 } from '../geometry/vector.js';
import type { Kind } from './kinds.js';
import type { SiteRun } from './run.js';
import { NO_HEIGHT, type Site } from './site.js';
import { fromMiddle, type Surface, zoneAt } from './surface.js';

/** Why holes are not judged. */
export interface LeftOut {
  leftOut: string;
}

/** A composite deck of which it is known where its flutes lie. */
export interface Flutes {
  surface: Surface;
  deck: Deck;
  lowWidth: number;
}

/**
 * The flutes that holes of a kind are drilled into, why that is not known, or undefined where it is known that they
 * are not drilled into a composite deck.
 */
export function flutesOf(site: Site, { surface, substrate, first, hasHeight }: Kind): Flutes | LeftOut | undefined {
  if (substrate < 0) return undefined;
  const record = site.substrates.records[substrate];
  if (record !== undefined && record.kind !== 'composite-deck') return undefined;
  if (surface === undefined) return { leftOut: site.whyNoSurface(first) ?? 'substrate without a face' };
  const { deck } = surface.substrate;
  if (deck?.lowWidth === undefined) return { leftOut: 'width of the flutes not known' };
  if (Math.max(deck.lowWidth, deck.highWidth ?? 0) > deck.pitch) return { leftOut: 'flutes wider than they are apart' };
  if (surface.rows?.left === undefined || surface.rows.phase === undefined)
    return { leftOut: 'where the flutes lie is not known' };
  if (surface.isVertical && !hasHeight) return { leftOut: NO_HEIGHT };
  return { surface, deck, lowWidth: deck.lowWidth };
}

/** A hole in a zone is not in the deck: undefined; else how far it is from the middle of the nearest flute. */
export function placeInFlute(surface: Surface, p: Vec3): number | LeftOut | undefined {
  if (zoneAt(surface, p) !== undefined) return undefined;
  return fromMiddle(surface, p) ?? { leftOut: 'numbers too large or too small to compute with' };
}

/**
 * The severity of a finding about a place in a flute where it differs from that of the rule. Where the flutes lie is a
 * guess unless it was surveyed: no more than a warning for drilling, when a survey is due, and an info before and after.
 */
export function ofGuess({ phaseFrom }: Deck, run: SiteRun): { severity?: 'info' | 'warning' } {
  if (phaseFrom === 'survey') return {};
  return { severity: run.purpose === 'for-drilling' ? 'warning' : 'info' };
}
