/** Members of a layout, by the way to them without indexes, whose absence says what null says: nothing. */
export const NOTHING: ReadonlySet<string> = new Set([
  ...['revision.issued', 'revision.by', 'revision.supersedes', 'revision.note', 'frame.note'],
  ...['project.number', 'project.phase', 'project.place', 'changes.question'],
  ...['submittal.number', 'submittal.transmittal', 'submittal.specSection', 'submittal.preparedBy'],
  ...['submittal.checkedBy', 'parties.person', 'parties.contact', 'parties.ext'],
  ...['sources.revision', 'sources.date', 'sources.from', 'sources.digest', 'sources.ext'],
  ...['control.source', 'control.date', 'control.replacedBy', 'control.note', 'control.ext'],
  ...['areas.condition', 'areas.references', 'areas.ext', 'buildings.ext', 'levels.ext', 'grids.name', 'grids.ext'],
  ...['trades.firm', 'trades.party', 'trades.system', 'trades.symbol', 'trades.ext'],
  ...['holeTypes.cleaning', 'holeTypes.approval', 'holeTypes.note', 'holeTypes.ext', 'holeTypes.bit.standard'],
  ...['holeTypes.approval.edition', 'holeTypes.approval.table', 'holeTypes.approval.source'],
  ...['substrates.name', 'substrates.source', 'substrates.scans', 'substrates.note', 'substrates.ext'],
  ...['keepOuts.name', 'keepOuts.source', 'keepOuts.note', 'keepOuts.ext', 'groups.ext'],
  ...['bores.substrate', 'bores.source', 'bores.note', 'bores.ext'],
  ...['holes.tag', 'holes.area', 'holes.group', 'holes.role', 'holes.substrate', 'holes.replaces', 'holes.note'],
  ...['holes.origin', 'holes.origin.source', 'holes.origin.row', 'holes.origin.element', 'holes.origin.code'],
  ...['holes.ext', 'packages.title', 'packages.date', 'packages.crew', 'packages.prerequisite', 'packages.ext'],
]);

/** The same of geometry, sizes and limits, where no other record's value holds instead. */
export const NO_SIZE: ReadonlySet<string> = new Set([
  ...['holeTypes.depth', 'holeTypes.embedment', 'holeTypes.diameterTolerance', 'holeTypes.depthTolerance'],
  ...['holeTypes.positionTolerance', 'holeTypes.moveAllowance', 'holeTypes.squarenessDeg'],
  ...['substrates.thickness', 'bores.diameter', 'bores.depth'],
]);

/**
 * What it means to leave a member out that is null: nothing, or that a size is not said; undefined where its absence
 * says something that null does not, such as that the value of the hole type holds, or a usual value.
 *
 * @param tokens from the root of the layout
 */
export function meaningLeftOut(tokens: readonly string[]): 'nothing' | 'no size' | undefined {
  const way = tokens.filter((token) => !/^\d+$/.test(token)).join('.');
  if (NOTHING.has(way)) return 'nothing';
  return NO_SIZE.has(way) ? 'no size' : undefined;
}
