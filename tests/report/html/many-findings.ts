import { type RealisticLayout, realisticLayouts } from '../../check/realistic-layout.js';

/** Gridlines every 30 ft in both directions, millimetres. */
const grid = {
  id: 'G',
  lines: Array.from({ length: 24 }, (_, k) => {
    const at = (k >> 1) * 9144;
    return k % 2 === 0
      ? { name: `${(k >> 1) + 1}`, from: [at, 0], to: [at, 100_584] }
      : { name: 'ABCDEFGHIJKL'[k >> 1], from: [0, at], to: [100_584, at] };
  }),
};

/** 10,000 holes of three trades on a grid; every fifth of one trade that has a height lies off its face: some 600 findings. */
export function manyFindings(): RealisticLayout[] {
  const layouts = realisticLayouts(7);
  for (const layout of layouts) layout.grids = [grid];
  const high = layouts[0].holes.filter(({ point }) => point.length === 3);
  for (let k = 0; k < 500; k++) high[k * 5].point[2] += 25 + (k % 7) * 40;
  return layouts;
}
