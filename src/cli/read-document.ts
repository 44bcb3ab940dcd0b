import { readFileSync } from 'node:fs';
import type { Baseline } from '../generated/baseline.js';
import type { ColumnProfile } from '../generated/column-profile.js';
import type { Config } from '../generated/config.js';
import { check } from '../jobs/check.js';
import { UnreadableInput } from '../node/input-file.js';
import { textReport } from '../report/text.js';
import { WrongUse } from './exit.js';
import { STANDARD_INPUT } from './feed.js';

/** Documents that tell the command what to do, by their kind. */
interface Documents {
  'column-profile': ColumnProfile;
  config: Config;
  baseline: Baseline;
}

const NAMES: Readonly<Record<keyof Documents, string>> = {
  'column-profile': 'column profile',
  config: 'config',
  baseline: 'baseline',
};

/**
 * Reads a document of a kind from a file, or from standard input where none of the inputs comes from there.
 *
 * @throws UnreadableInput, and WrongUse with the findings where the file is no valid document of the kind
 */
export function readDocument<K extends keyof Documents>(
  kind: K,
  path: string,
  inputs: readonly string[] = [],
): Documents[K] {
  const isPiped = path === STANDARD_INPUT;
  if (isPiped && inputs.includes(STANDARD_INPUT)) {
    throw new WrongUse(`Standard input cannot be the ${NAMES[kind].replace('column ', '')} and an input at once.`);
  }
  const name = isPiped ? 'standard input' : path;
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(isPiped ? 0 : path);
  } catch (error) {
    throw new UnreadableInput(name, error);
  }
  const report = check([{ name, data: bytes }]);
  if (report.inputs[0].kind !== kind) {
    throw new WrongUse(`${name} is no ${NAMES[kind]}; it needs "kind": "${kind}".`);
  }
  if (report.verdict.format !== 'pass') {
    throw new WrongUse(
      `${name} is no valid ${NAMES[kind]}.\n\n${textReport(report, { colour: false, findingsOfCause: 5 })}`,
    );
  }
  return JSON.parse(new TextDecoder().decode(bytes)) as Documents[K];
}

/** Whether a file is taken for a table by the ending of its name. */
export function isTableName(path: string): boolean {
  return /\.(csv|tsv|txt|asc|xyz|pts|pnt)$/i.test(path);
}
