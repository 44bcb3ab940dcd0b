import type { HoleType } from '../generated/layout.js';
import { kindsOf } from './kinds.js';
import type { Site } from './site.js';

/** Two holes this near are one place: no bit makes both. */
export const COINCIDENT_MM = 1;

/** A least distance and where it comes from. */
export interface SpacingLimit {
  /** Millimetres. */
  value: number;
  source: string;
}

/** The least distance of each pair of holes: the group's own inside a group, else the larger one of the types. */
export class SpacingLimits {
  /** The largest limit of any type or group that a hole has; 0 where there is none. */
  readonly largest: number;
  constructor(private readonly site: Site) {
    let largest = 0;
    // A type that no hole has must not widen the search of all.
    for (const { type } of kindsOf(site).list) largest = Math.max(largest, type?.minSpacing?.value ?? 0);
    for (let i = 0; i < site.holeCount; i++) largest = Math.max(largest, site.groups.of(i)?.designSpacing?.value ?? 0);
    this.largest = largest;
  }

  /** 1 for each hole whose type or group is a broken record, so that its limits are not known. */
  unknown(): Uint8Array {
    const { types, groups, holeCount } = this.site;
    const unknown = new Uint8Array(holeCount);
    if (!types.records.includes(undefined) && !groups.records.includes(undefined)) return unknown;
    for (let i = 0; i < holeCount; i++) {
      if (types.of(i) === undefined || (groups.nameOf(i) >= 0 && groups.of(i) === undefined)) unknown[i] = 1;
    }
    return unknown;
  }

  between(i: number, j: number): SpacingLimit | undefined {
    const { groups, types } = this.site;
    const group = groups.nameOf(i);
    if (group >= 0 && group === groups.nameOf(j)) {
      const spacing = groups.of(i)?.designSpacing;
      if (spacing !== undefined) return spacing;
    }
    return larger(types.of(i), types.of(j));
  }
}

function larger(a: HoleType | undefined, b: HoleType | undefined): SpacingLimit | undefined {
  const first = a?.minSpacing;
  const second = b?.minSpacing;
  if (first === undefined || second === undefined) return first ?? second;
  return second.value > first.value ? second : first;
}
