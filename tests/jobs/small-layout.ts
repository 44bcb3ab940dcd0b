/** A slab so large and thick that every hole of the tests lies in it. */
const slab = {
  id: 'S',
  name: 'Slab',
  kind: 'solid-slab',
  face: { point: [0, 0, 0], inward: [0, 0, 1] },
  outline: {
    points: [
      [-1e7, -1e7, 0],
      [1e7, -1e7, 0],
      [1e7, 1e7, 0],
      [-1e7, 1e7, 0],
    ],
  },
  thickness: 1000,
};

/** A small sound layout that every rule of the site can judge; invented. */
export const smallLayout = {
  ahx: '0.1',
  kind: 'layout',
  id: 'T-1',
  revision: { label: 'A' },
  frame: { name: 'Corner', heightDatum: 'floor' },
  trades: [{ id: 'FP', name: 'Sprinkler' }],
  holeTypes: [{ id: 'T', name: 'Type', principle: 'other', form: 'blind', diameter: 12, depth: 60 }],
  substrates: [slab],
  holes: [hole('H-1', [1, 2, 3])],
};

/** The small layout with other members laid over it, as text. */
export function layoutText(members: Record<string, unknown> = {}): string {
  return JSON.stringify({ ...smallLayout, ...members });
}

/** A hole of the small layout. */
export function hole(
  id: string,
  point: readonly number[],
  members: Record<string, unknown> = {},
): Record<string, unknown> {
  return { id, trade: 'FP', holeType: 'T', substrate: 'S', point, ...members };
}

/** The type of the small layout with a least spacing. */
export function typeWithSpacing(value: number): Record<string, unknown> {
  return { ...smallLayout.holeTypes[0], minSpacing: { value, source: 'invented' } };
}
