import type { Hole } from '../generated/layout.js';
import type { LayoutSource } from '../model/layout-source.js';
import { inChunks } from './in-chunks.js';
import { countRounded, indentedText, lineText, orderedMembers } from './json-text.js';
import { holeForm, layoutForm } from './layout-forms.js';
import { type Lose, LossTally } from './loss.js';

/**
 * The text of a layout for people and for diffs, in chunks of about 64 KB.
 *
 * Two blanks of indent for all but the holes, which stand one a line; members in the order of the
 * schema, unknown ones after them; a line feed at the end. Nothing is left out. Lengths are written
 * with at most 6 decimals of a millimetre and are rounded to the nearest where they have more; a size
 * above 0 that would become 0 and all other numbers keep every digit. The same layout gives the same text
 * byte for byte.
 *
 * The holes are read once, as they are written. When the text is complete, `lose` is told how many
 * lengths were rounded, by member. Throws a RangeError for a number that is not finite.
 */
export function writeLayout(
  header: LayoutSource['header'],
  holes: Iterable<Hole>,
  lose: Lose = () => {},
): Generator<string> {
  return inChunks(layoutPieces(header, holes, lose));
}

function* layoutPieces(header: LayoutSource['header'], holes: Iterable<Hole>, lose: Lose): Generator<string> {
  const tally = new LossTally();
  // The empty array only marks the place of the holes among the members.
  const members = orderedMembers({ ...header, holes: [] }, layoutForm);
  let lead = '{\n';
  for (const [name, member, form] of members) {
    yield `${lead}  ${JSON.stringify(name)}: `;
    if (name === 'holes') yield* holePieces(holes, tally);
    else {
      countRounded(member, form, name, tally);
      yield indentedText(member, form, '  ');
    }
    lead = ',\n';
  }
  yield '\n}\n';
  tally.report(lose);
}

function* holePieces(holes: Iterable<Hole>, tally: LossTally): Generator<string> {
  let lead = '[\n    ';
  let any = false;
  for (const hole of holes) {
    countRounded(hole, holeForm, 'holes', tally);
    yield lead + lineText(hole, holeForm);
    lead = ',\n    ';
    any = true;
  }
  yield any ? '\n  ]' : '[]';
}
