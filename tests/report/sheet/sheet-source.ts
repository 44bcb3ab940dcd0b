import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Layout } from '../../../src/generated/layout.js';
import type { LayoutSource } from '../../../src/model/layout-source.js';
import { hole, smallLayout } from '../../jobs/small-layout.js';

/** A layout as sheets read it. */
export function sheetSource(layout: unknown): LayoutSource {
  const { holes, ...header } = layout as Layout;
  return { header, holeCount: holes.length, holes: () => holes };
}

/** The small layout with a package of all its holes, and other members laid over it. */
export function packaged(
  holes: readonly Record<string, unknown>[],
  members: Record<string, unknown> = {},
): LayoutSource {
  const packages = [{ id: 'P', title: 'Monday', holes: holes.map(({ id }) => id) }];
  return sheetSource({ ...smallLayout, holes, packages, ...members });
}

export function exampleSource(path: string): LayoutSource {
  return sheetSource(JSON.parse(readFileSync(join(import.meta.dirname, '../../../examples', path), 'utf8')));
}

/** Holes in a square of so many, 600 mm apart. */
export function holesInSquare(count: number, members: Record<string, unknown> = {}): Record<string, unknown>[] {
  const side = Math.ceil(Math.sqrt(count));
  return Array.from({ length: count }, (_, k) =>
    hole(`H-${k}`, [(k % side) * 600, Math.floor(k / side) * 600, 0], members),
  );
}
