import { usedControl } from './control-sets.js';
import type { HoleLevels } from './hole-levels.js';
import type { Kind } from './kinds.js';
import type { SitePart } from './site-part.js';

/**
 * 95 per cent of a circular normal error lie within so many standard deviations: the root of 5.9915, the
 * 95 per cent point of chi-square with 2 degrees of freedom. The root is 2.447747; the rounded factor is that of
 * FGDC-STD-007.3-1998 (from memory).
 */
const IN_95_PER_CENT = 2.4477;

/** What control can give. */
export interface ControlLimit {
  /** Least plan tolerance that it can give, millimetres. */
  least: number;
  /** Id of the control point with the largest sigma. */
  point: string;
}

/** What the control of holes can give: the points of their level and of none, or all where they have no level. */
export class ControlLimits {
  private readonly known = new Map<SitePart, Map<string | undefined, ControlLimit | undefined>>();

  constructor(private readonly levels: HoleLevels) {}

  /** Undefined where no point has a sigma. */
  of(kind: Kind): ControlLimit | undefined {
    const id = this.levels.of(kind)?.id;
    const ofPart = this.known.get(kind.part) ?? new Map<string | undefined, ControlLimit | undefined>();
    this.known.set(kind.part, ofPart);
    if (!ofPart.has(id)) ofPart.set(id, worst(kind.part, id));
    return ofPart.get(id);
  }
}

function worst({ layout }: SitePart, level: string | undefined): ControlLimit | undefined {
  let found: ControlLimit | undefined;
  for (const { record } of usedControl(layout)) {
    const isSeen = level === undefined || record.level === undefined || record.level === level;
    if (!isSeen || record.sigmaPlan === undefined) continue;
    const least = IN_95_PER_CENT * record.sigmaPlan;
    if (found === undefined || least > found.least) found = { least, point: record.id };
  }
  return found;
}
