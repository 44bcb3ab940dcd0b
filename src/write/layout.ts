import type { Hole } from '../generated/layout.js';
import type { LayoutSource } from '../model/layout-source.js';
import { inChunks } from './in-chunks.js';
import { indentedText, lineText, orderedMembers } from './json-text.js';
import { holeForm, layoutForm } from './layout-forms.js';

/**
 * The text of a layout for people and for diffs, in chunks of about 64 KB.
 *
 * Two blanks of indent for all but the holes, which stand one a line; members in the order of the
 * schema, unknown ones after them; a line feed at the end. Nothing is left out. Lengths are written
 * with at most 6 decimals of a millimetre and are rounded to the nearest where they have more; all
 * other numbers keep every digit. The same layout gives the same text byte for byte.
 *
 * The holes are read once, as they are written. Throws a RangeError for a number that is not finite.
 */
export function writeLayout(header: LayoutSource['header'], holes: Iterable<Hole>): Generator<string> {
  return inChunks(layoutPieces(header, holes));
}

function* layoutPieces(header: LayoutSource['header'], holes: Iterable<Hole>): Generator<string> {
  // The empty array only marks the place of the holes among the members.
  const members = orderedMembers({ ...header, holes: [] }, layoutForm);
  let lead = '{\n';
  for (const [name, member, form] of members) {
    yield `${lead}  ${JSON.stringify(name)}: `;
    if (name === 'holes') yield* holePieces(holes);
    else yield indentedText(member, form, '  ');
    lead = ',\n';
  }
  yield '\n}\n';
}

function* holePieces(holes: Iterable<Hole>): Generator<string> {
  let lead = '[\n    ';
  let any = false;
  for (const hole of holes) {
    yield lead + lineText(hole, holeForm);
    lead = ',\n    ';
    any = true;
  }
  yield any ? '\n  ]' : '[]';
}
