import { controlByLevel, type UsedPoint } from './control-sets.js';
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

/** The limits of a layout: of the points of each level or of none, and of all points. */
interface LimitsOfLayout {
  ofLevel: ReadonlyMap<string | undefined, IndexedLimit | undefined>;
  ofAll: IndexedLimit | undefined;
}

/** A limit with the index of its point in `control`. */
interface IndexedLimit extends ControlLimit {
  index: number;
}

/** What the control of holes can give: the points of their level and of none, or all where they have no level. */
export class ControlLimits {
  private readonly known = new Map<SitePart, LimitsOfLayout>();

  constructor(private readonly levels: HoleLevels) {}

  /** Undefined where no point has a sigma. */
  of(kind: Kind): ControlLimit | undefined {
    const id = this.levels.of(kind)?.id;
    const { ofLevel, ofAll } = this.known.get(kind.part) ?? this.newLimits(kind.part);
    const found = id === undefined ? ofAll : worse(ofLevel.get(id), ofLevel.get(undefined));
    return found && { least: found.least, point: found.point };
  }

  private newLimits(part: SitePart): LimitsOfLayout {
    const ofLevel = new Map([...controlByLevel(part.layout)].map(([level, points]) => [level, worst(points)] as const));
    const limits = { ofLevel, ofAll: [...ofLevel.values()].reduce(worse, undefined) };
    this.known.set(part, limits);
    return limits;
  }
}

function worst(points: readonly UsedPoint[]): IndexedLimit | undefined {
  let found: IndexedLimit | undefined;
  for (const { record, index } of points)
    if (record.sigmaPlan !== undefined)
      found = worse(found, { least: IN_95_PER_CENT * record.sigmaPlan, point: record.id, index });
  return found;
}

/** Of two that are alike that of the first point of the document. */
function worse(a: IndexedLimit | undefined, b: IndexedLimit | undefined): IndexedLimit | undefined {
  if (a === undefined || b === undefined) return a ?? b;
  if (a.least !== b.least) return a.least > b.least ? a : b;
  return a.index < b.index ? a : b;
}
