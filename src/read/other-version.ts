import { SCHEMA_VERSION } from '../generated/schema-tables.js';
import type { Observation } from '../model/observation.js';

/** A version of AHX that this software does not know. */
export interface OtherVersion {
  found: string;
  /** Whether it only adds to the known one, so that most of a document can be judged. */
  isLaterMinor: boolean;
}

/** The version that a document names in `ahx`; undefined for the known one and for what is no version at all. */
export function otherVersion(ahx: unknown): OtherVersion | undefined {
  if (typeof ahx !== 'string' || ahx === SCHEMA_VERSION || !/^(0|[1-9]\d{0,3})\.(0|[1-9]\d{0,3})$/.test(ahx))
    return undefined;
  const [major, minor] = ahx.split('.').map(Number);
  const [ownMajor, ownMinor] = SCHEMA_VERSION.split('.').map(Number);
  return { found: ahx, isLaterMinor: major === ownMajor && minor > ownMinor };
}

/** The finding about a version that is not known; `byte` is where it stands. */
export function unsupportedVersion({ found, isLaterMinor }: OtherVersion, byte: number): Observation {
  const data = { found, supported: SCHEMA_VERSION };
  const at = { pointer: '/ahx', byte };
  return { rule: 'unsupported-version', at, data, cause: found, ...(isLaterMinor && { severity: 'warning' }) };
}

/** Members and choices that a later minor version may have brought are no errors for a reader that does not know it. */
export function leniency(rule: string, version: OtherVersion | undefined): { severity?: 'info' } {
  const mayBeNew = rule === 'unknown-member' || rule === 'not-a-choice';
  return version?.isLaterMinor && mayBeNew ? { severity: 'info' } : {};
}
