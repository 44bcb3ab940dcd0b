import { distanceToWeb } from '../geometry/deck-web.js';
import { dot } from '../geometry/vector.js';
import type { Flutes, LeftOut } from './deck-flutes.js';
import type { Kind } from './kinds.js';
import { LENGTH_SLACK_MM } from './slack.js';
import { isInto } from './surface.js';

/** A deck of which it is known where its webs stand, and how a hole of a kind goes up in it. */
export interface Webs extends Flutes {
  highWidth: number;
  /** How far the axis moves across the run, for each mm that it rises. */
  slantAcross: number;
}

/** The webs that holes of a kind may meet, or why that is not known. */
export function websOf(flutes: Flutes, { axis }: Kind): Webs | LeftOut {
  const { surface, deck } = flutes;
  const left = surface.rows?.left;
  if (deck.highWidth === undefined) return { leftOut: 'width of the flutes not known' };
  if (axis === undefined || left === undefined || !isInto(surface, axis))
    return { leftOut: 'axis does not point into the concrete' };
  const slantAcross = axis === surface.inward ? 0 : dot(axis, left) / dot(axis, surface.inward);
  return { ...flutes, highWidth: deck.highWidth, slantAcross };
}

/**
 * Whether a bit meets a web anywhere between the face and the top of the rib.
 *
 * @param w place of the axis at the face, mm from the middle of the nearest low flute
 * @param diameter of the hole, mm
 */
export function meetsWeb({ deck, lowWidth, highWidth, slantAcross }: Webs, w: number, diameter: number): boolean {
  const shift = slantAcross * deck.ribDepth;
  const distance = distanceToWeb(w, shift, lowWidth / 2, highWidth / 2, deck.pitch);
  const halfWidth = (diameter / 2) * Math.sqrt(1 + slantAcross * slantAcross);
  return distance < halfWidth - LENGTH_SLACK_MM;
}
