import type { Group, HoleType } from '../generated/layout.js';
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
  /** Groups by the number of their name. */
  private readonly groups: (Group | undefined)[];

  constructor(private readonly site: Site) {
    const groups = site.layout.collection('groups');
    const { judged } = groups;
    this.groups = Array.from({ length: groups.names.count }, (_, name) => judged[groups.indexOf(name)]);
    let largest = 0;
    let before: HoleType | undefined;
    // A type that no hole has must not widen the search of all.
    for (let i = 0; i < site.holeCount; i++) {
      const type = site.holeType(i);
      if (type !== before) largest = Math.max(largest, limitOf(type));
      before = type;
      const group = site.layout.holes.referenceOf('group', i);
      if (group >= 0) largest = Math.max(largest, this.groups[group]?.designSpacing?.value ?? 0);
    }
    this.largest = largest;
  }

  /** 1 for each hole whose type or group is a broken record, so that its limits are not known. */
  unknown(): Uint8Array {
    const { site, groups } = this;
    const { layout, holeCount } = site;
    const unknown = new Uint8Array(holeCount);
    if (!layout.collection('holeTypes').hasBroken && !layout.collection('groups').hasBroken) return unknown;
    for (let i = 0; i < holeCount; i++) {
      const group = layout.holes.referenceOf('group', i);
      if (site.holeType(i) === undefined || (group >= 0 && groups[group] === undefined)) unknown[i] = 1;
    }
    return unknown;
  }

  between(i: number, j: number): SpacingLimit | undefined {
    const { holes } = this.site.layout;
    const group = holes.referenceOf('group', i);
    if (group >= 0 && group === holes.referenceOf('group', j)) {
      const spacing = this.groups[group]?.designSpacing;
      if (spacing !== undefined) return spacing;
    }
    return larger(this.site.holeType(i), this.site.holeType(j));
  }
}

function limitOf(type: HoleType | undefined): number {
  return type?.minSpacing?.value ?? 0;
}

function larger(a: HoleType | undefined, b: HoleType | undefined): SpacingLimit | undefined {
  const first = a?.minSpacing;
  const second = b?.minSpacing;
  if (first === undefined || second === undefined) return first ?? second;
  return second.value > first.value ? second : first;
}
