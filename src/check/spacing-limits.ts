import type { HoleType } from '../generated/layout.js';
import { kindsOf } from './kinds.js';
import type { Site } from './site.js';
import { LENGTH_SLACK_MM } from './slack.js';

/** Two holes this near are one place: no bit makes both. */
export const COINCIDENT_MM = 1;
/** The greatest distance at which two holes still coincide. */
export const COINCIDENT_REACH_MM = COINCIDENT_MM + LENGTH_SLACK_MM;

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
  /** By number of the type's name its least distance; 0 where it has none. */
  private readonly ofType: Float64Array;
  /** By number of the group's name whether it has a spacing of its own, and that; NaN where it has none. */
  private readonly ofGroup: Float64Array;
  private readonly hasGroupSpacing: boolean;

  constructor(private readonly site: Site) {
    const { groups, types, holeCount } = site;
    this.ofType = Float64Array.from(types.records, (type) => type?.minSpacing?.value ?? 0);
    this.ofGroup = Float64Array.from(groups.records, (group) => group?.designSpacing?.value ?? Number.NaN);
    this.hasGroupSpacing = this.ofGroup.some((value) => !Number.isNaN(value));
    let largest = 0;
    // A type that no hole has must not widen the search of all.
    for (const { type } of kindsOf(site).list) largest = Math.max(largest, type?.minSpacing?.value ?? 0);
    for (let i = 0; this.hasGroupSpacing && i < holeCount; i++) {
      const group = groups.nameOf(i);
      if (group >= 0 && this.ofGroup[group] > largest) largest = this.ofGroup[group];
    }
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

  /** Least distance that the type of hole `i` asks for, mm; 0 where it asks for none. */
  ofHole(i: number): number {
    const type = this.site.types.nameOf(i);
    return type < 0 ? 0 : this.ofType[type];
  }

  /** Number of the group of hole `i` if that has a spacing of its own, else -1. */
  spacedGroup(i: number): number {
    const group = this.hasGroupSpacing ? this.site.groups.nameOf(i) : -1;
    return group >= 0 && !Number.isNaN(this.ofGroup[group]) ? group : -1;
  }

  /** Least distance of two holes, mm; 0 where there is none. */
  valueBetween(i: number, j: number): number {
    const group = this.spacedGroup(i);
    if (group >= 0 && group === this.site.groups.nameOf(j)) return this.ofGroup[group];
    return Math.max(this.ofHole(i), this.ofHole(j));
  }

  /** Whether two holes that do not coincide are closer to each other than they may be. */
  areTooClose(i: number, j: number, distance: number): boolean {
    return distance > COINCIDENT_REACH_MM && distance < this.valueBetween(i, j) - LENGTH_SLACK_MM;
  }

  /** Least distance of two holes with its source; undefined where there is none. */
  between(i: number, j: number): SpacingLimit | undefined {
    const { groups, types } = this.site;
    const group = this.spacedGroup(i);
    if (group >= 0 && group === groups.nameOf(j)) return groups.of(i)?.designSpacing;
    return larger(types.of(i), types.of(j));
  }
}

function larger(a: HoleType | undefined, b: HoleType | undefined): SpacingLimit | undefined {
  const first = a?.minSpacing;
  const second = b?.minSpacing;
  if (first === undefined || second === undefined) return first ?? second;
  return second.value > first.value ? second : first;
}
