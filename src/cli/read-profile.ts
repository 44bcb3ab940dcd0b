import { readFileSync } from 'node:fs';
import type { ColumnProfile } from '../generated/column-profile.js';
import { check } from '../jobs/check.js';
import { UnreadableInput } from '../node/input-file.js';
import { textReport } from '../report/text.js';
import { WrongUse } from './exit.js';
import { STANDARD_INPUT } from './feed.js';

/**
 * Reads a column profile from a file, or from standard input where none of the inputs comes from there.
 *
 * @throws UnreadableInput, and WrongUse with the findings where the file is no valid profile
 */
export function readProfile(path: string, inputs: readonly string[]): ColumnProfile {
  const isPiped = path === STANDARD_INPUT;
  if (isPiped && inputs.includes(STANDARD_INPUT)) {
    throw new WrongUse('Standard input cannot be the profile and an input at once.');
  }
  const name = isPiped ? 'standard input' : path;
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(isPiped ? 0 : path);
  } catch (error) {
    throw new UnreadableInput(name, error);
  }
  const report = check([{ name, data: bytes }]);
  if (report.inputs[0].kind !== 'column-profile') {
    throw new WrongUse(`${name} is no column profile; it needs "kind": "column-profile".`);
  }
  if (report.verdict.format !== 'pass') {
    throw new WrongUse(
      `${name} is no valid column profile.\n\n${textReport(report, { colour: false, findingsOfCause: 5 })}`,
    );
  }
  return JSON.parse(new TextDecoder().decode(bytes)) as ColumnProfile;
}

/** Whether a file is taken for a table by the ending of its name. */
export function isTableName(path: string): boolean {
  return /\.(csv|tsv|txt|asc|xyz|pts|pnt)$/i.test(path);
}
