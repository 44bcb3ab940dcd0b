import type { Layout } from '../../../src/generated/layout.js';
import { check } from '../../../src/jobs/check.js';
import type { CheckOptions } from '../../../src/jobs/checker.js';
import { type SheetSet, type SheetSettings, sheetsOf } from '../../../src/jobs/sheet.js';
import type { CrewSheet } from '../../../src/report/sheet/crew-sheets.js';
import type { Primitive } from '../../../src/draw/primitive.js';
import { smallLayout } from '../../jobs/small-layout.js';
import { sheetSource } from './sheet-source.js';

/** The small layout with a package of all its holes, as a file has it. */
export function layoutOf(
  holes: readonly Record<string, unknown>[],
  members: Record<string, unknown> = {},
): Record<string, unknown> {
  return {
    ...smallLayout,
    holes,
    packages: [{ id: 'P', title: 'Monday', holes: holes.map(({ id }) => id) }],
    ...members,
  };
}

/** Sheets of the package of a layout as it is checked for drilling. */
export function checkedSheets(
  layout: Record<string, unknown>,
  { options = {}, ...settings }: SheetSettings & { options?: CheckOptions } = {},
): SheetSet {
  const report = check([{ name: 'own.ahx.json', data: JSON.stringify(layout) }], {
    purpose: 'for-drilling',
    ...options,
  });
  const said = { report, input: 0, together: [], apart: [] };
  return sheetsOf(sheetSource(layout as unknown as Layout), { package: 'P' }, { check: said, ...settings });
}

/** All texts that are drawn on a sheet, in the order in which they are drawn, lines joined. */
export function drawnText({ drawing }: CrewSheet): string {
  const texts = (list: readonly Primitive[]): string[] =>
    list.flatMap((one) =>
      one.kind === 'group' ? texts(one.children) : one.kind === 'text' ? one.items.map(({ text }) => text) : [],
    );
  return texts(drawing.children).join(' ');
}

/** Things of one kind on a sheet, within groups too. */
export function drawn<K extends Primitive['kind']>(sheet: CrewSheet, kind: K): Extract<Primitive, { kind: K }>[] {
  const all = (list: readonly Primitive[]): Primitive[] =>
    list.flatMap((one) => (one.kind === 'group' ? [one, ...all(one.children)] : [one]));
  return all(sheet.drawing.children).filter((one): one is Extract<Primitive, { kind: K }> => one.kind === kind);
}
