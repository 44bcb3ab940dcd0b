/** A small sound layout with other members laid over it, as text; invented. */
export function layoutText(members: Record<string, unknown> = {}): string {
  return JSON.stringify({ ...smallLayout, ...members });
}

export const smallLayout = {
  ahx: '0.1',
  kind: 'layout',
  id: 'T-1',
  revision: { label: 'A' },
  frame: { name: 'Corner', heightDatum: 'floor' },
  trades: [{ id: 'FP', name: 'Sprinkler' }],
  holeTypes: [{ id: 'T', name: 'Type', principle: 'other', form: 'blind', diameter: 12, depth: 60 }],
  holes: [{ id: 'H-1', trade: 'FP', holeType: 'T', point: [1, 2, 3] }],
};

/** A hole of the small layout. */
export function hole(
  id: string,
  point: readonly number[],
  members: Record<string, unknown> = {},
): Record<string, unknown> {
  return { id, trade: 'FP', holeType: 'T', point, ...members };
}

/** The type of the small layout with a least spacing. */
export function typeWithSpacing(value: number): Record<string, unknown> {
  return { ...smallLayout.holeTypes[0], minSpacing: { value, source: 'invented' } };
}
