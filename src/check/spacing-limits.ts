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
  /** The largest of all limits; 0 where there is none. */
  readonly largest: number;
  private readonly groups: (Group | undefined)[];

  constructor(private readonly site: Site) {
    const types = site.layout.collection('holeTypes').records;
    const groups = site.layout.collection('groups');
    this.groups = Array.from({ length: groups.names.count }, (_, name) => groups.records[groups.indexOf(name)]);
    this.largest = Math.max(
      0,
      ...types.map((type) => type?.minSpacing?.value ?? 0),
      ...new Set(this.groups.map((group) => group?.designSpacing?.value ?? 0)),
    );
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

function larger(a: HoleType | undefined, b: HoleType | undefined): SpacingLimit | undefined {
  const first = a?.minSpacing;
  const second = b?.minSpacing;
  if (first === undefined || second === undefined) return first ?? second;
  return second.value > first.value ? second : first;
}
