import type { Fix, Sight } from '../model/fix.js';

/** Leaves the height of a hole out, so that it lies on the surface as found; the finding stands at its point. */
export function leaveOutHeight({ pointer, value }: Sight): Fix | undefined {
  if (!Array.isArray(value) || value.length !== 3) return undefined;
  return { patch: [{ op: 'remove', path: `${pointer}/2` }], geometry: true };
}
