import type { ClosedInput } from '../jobs/checked-input.js';
import type { LayoutSource } from '../model/layout-source.js';
import { checkFiles } from './check-files.js';
import { WrongUse } from './exit.js';

/**
 * The revisions before, each of which must be of a layout that is checked.
 *
 * @throws WrongUse
 */
export async function readParents(
  { parent, profile }: { parent: readonly string[]; profile?: string },
  inputs: readonly (ClosedInput | undefined)[],
): Promise<LayoutSource[]> {
  const ids = new Set(inputs.map((input) => input?.summary.id));
  const parents: LayoutSource[] = [];
  for (const path of parent) {
    const flags = { config: false as const, profile, severity: [], option: [], quiet: true };
    const before = await checkFiles([path], flags, { manners: { quiet: true, colour: false } });
    const [input] = before.inputs;
    const source = input?.layout();
    if (before.report === undefined || source === undefined || before.report.verdict.format !== 'pass')
      throw new WrongUse(`${path} is no valid layout to hold a revision against; ahx check ${path} says why.`);
    if (!ids.has(source.header.id))
      throw new WrongUse(`${path} is of the layout "${source.header.id}", and none of the files is.`);
    parents.push(source);
  }
  return parents;
}
