import { orient2d } from 'robust-predicates';
import { insideRing, type Ring } from './ring.js';

/** Whether a ring goes through a box, has it inside or lies beside it. */
export type RingAtBox = 'cuts' | 'holds' | 'beside';

/** How a ring lies to a box, exactly. A ring all of which is in the box cuts it, and so does one that touches it. */
export function ringAtBox(ring: Ring, uLow: number, vLow: number, uHigh: number, vHigh: number): RingAtBox {
  const { u, v } = ring;
  for (let k = 0, j = u.length - 1; k < u.length; j = k++) {
    const [au, av, bu, bv] = [u[j], v[j], u[k], v[k]];
    // Neither a side of the box nor the line of the edge keeps them apart.
    if ((au < uLow && bu < uLow) || (au > uHigh && bu > uHigh)) continue;
    if ((av < vLow && bv < vLow) || (av > vHigh && bv > vHigh)) continue;
    const side = Math.sign(orient2d(au, av, bu, bv, uLow, vLow));
    const isApart =
      side !== 0 &&
      side === Math.sign(orient2d(au, av, bu, bv, uHigh, vLow)) &&
      side === Math.sign(orient2d(au, av, bu, bv, uHigh, vHigh)) &&
      side === Math.sign(orient2d(au, av, bu, bv, uLow, vHigh));
    if (!isApart) return 'cuts';
  }
  return insideRing(ring, uLow, vLow) ? 'holds' : 'beside';
}
