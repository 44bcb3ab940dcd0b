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

/** A string that means harm in HTML, XML, styles and terminals. */
const HOSTILE = `</text></svg><script>alert(1)</script>"'&--><style>*{}</style>\u202e${'W'.repeat(150)}`;

/** A layout in which every text means harm, is long, and of which there is too much of everything. */
export function hostileLayout(): unknown {
  const h = HOSTILE.slice(0, 200);
  const ids = (name: string) => `${name}${h.slice(0, 100)}`;
  return {
    ...smallLayout,
    id: ids('l'),
    revision: { label: h, supersedes: h },
    project: { name: h },
    parties: Array.from({ length: 40 }, (_, k) => ({ id: `${k}`, firm: h, person: h, role: 'foreman', contact: h })),
    display: { length: 'ft-in', fraction: 64 },
    frame: { name: h, heightDatum: h, trueNorthDeg: 12, projectNorthDeg: 3 },
    levels: [{ id: ids('L'), name: h }],
    grids: [
      {
        id: 'g',
        lines: [
          { name: h, from: [0, -9000], to: [0, 9000] },
          { name: `${h}2`, from: [-9000, 0], to: [9000, 0] },
        ],
      },
    ],
    control: Array.from({ length: 20 }, (_, k) => ({ id: ids(`c${k}`), point: [k * 1e8, 1, 2] })),
    areas: [{ id: ids('a'), name: h, condition: h.repeat(20), kinds: ['rated'] }],
    trades: [{ id: 'FP', name: h, symbol: { text: h, shape: h, colour: h } }],
    holeTypes: [{ ...smallLayout.holeTypes[0], form: 'through', bit: { nominal: h } }],
    substrates: [
      {
        ...smallLayout.substrates[0],
        name: h,
        finishes: Array.from({ length: 30 }, () => ({ kind: 'plaster', thickness: 1 })),
      },
    ],
    keepOuts: Array.from({ length: 50 }, (_, k) => ({
      id: ids(`k${k}`),
      name: h,
      kind: 'other',
      shape: { sphere: { centre: [k, 0, 50], radius: 5 } },
      standoff: 50,
      knownFrom: 'scan',
    })),
    packages: [{ id: 'P', title: h, prerequisite: h.repeat(20), areas: [ids('a')] }],
    holes: [0, 1].map((k) => ({
      ...hole(ids(`h${k}`), [k * 1000, 0, 0], { tag: h, level: ids('L'), area: ids('a'), note: h.repeat(20) }),
      above: { protection: h.repeat(20), firestop: h },
    })),
  };
}
