import type { Hole, Layout } from '../../src/generated/layout.js';
import type { LayoutSource } from '../../src/model/layout-source.js';

/** An invented layout with two trades; members may be replaced. */
export function layout(holes: Hole[], members: Partial<Layout> = {}): Layout {
  return {
    ahx: '0.1',
    kind: 'layout',
    id: 'L-1',
    revision: { label: 'A' },
    frame: { name: 'site', heightDatum: 'level 0' },
    levels: [
      { id: 'E1', name: 'Level 1', building: 'B' },
      { id: 'E2', name: 'Level 2', building: 'B' },
    ],
    buildings: [{ id: 'B', name: 'Building' }],
    trades: [
      { id: 'FP', name: 'Fire protection' },
      { id: 'EL', name: 'Electrical' },
    ],
    holeTypes: [
      { id: 'T10', name: 'Ten', principle: 'screw', form: 'blind', diameter: 10, depth: 60 },
      { id: 'T12', name: 'Twelve', principle: 'screw', form: 'blind', diameter: 12, depth: 70 },
    ],
    substrates: [{ id: 'S', kind: 'solid-slab', face: { point: [0, 0, 3000], inward: [0, 0, 1] } }],
    holes,
    ...members,
  };
}

/** An invented hole. */
export function hole(id: string, members: Partial<Hole> = {}): Hole {
  return { id, trade: 'FP', holeType: 'T10', substrate: 'S', level: 'E1', point: [1000, 2000, 3000], ...members };
}

/** The layout as a source; what is given need not be sound. */
export function source(whole: unknown): LayoutSource {
  const { holes, ...header } = whole as Layout;
  return { header, holeCount: holes.length, holes: () => holes };
}
