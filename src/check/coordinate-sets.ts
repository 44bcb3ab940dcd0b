import type { LayoutModel } from '../model/layout-model.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';

/** Plan coordinates of a layout that come from one source, mm. */
export interface CoordinateSet {
  name: string;
  /** x and y of all points; may be gone through more than once. */
  values: Iterable<number>;
}

/** x and y of the control points, of the outlines and openings of substrates, and of the ends of gridlines. */
export function setsBesideHoles({ layout }: SitePart): CoordinateSet[] {
  return [
    { name: 'control points', values: judgedOf(layout, 'control').flatMap(({ point }) => [point[0], point[1]]) },
    {
      name: 'outlines',
      values: judgedOf(layout, 'substrates').flatMap(({ outline, openings = [] }) =>
        [...(outline === undefined ? [] : [outline]), ...openings].flatMap(({ points }) =>
          points.flatMap((point) => [point[0], point[1]]),
        ),
      ),
    },
    {
      name: 'gridlines',
      values: judgedOf(layout, 'grids').flatMap(({ lines }) => lines.flatMap(({ from, to }) => [...from, ...to])),
    },
  ];
}

/** x and y of the holes of a layout that are not broken. */
export function setOfHoles(site: Site, { firstHole, layout: { holes } }: SitePart): CoordinateSet {
  function* values(): Generator<number> {
    for (let own = 0; own < holes.count; own++) {
      if (site.out[firstHole + own] !== 0) continue;
      yield holes.x[own];
      yield holes.y[own];
    }
  }
  return { name: 'holes', values: { [Symbol.iterator]: values } };
}

function judgedOf<K extends 'control' | 'substrates' | 'grids'>(layout: LayoutModel, name: K) {
  return layout.collection(name).judged.flatMap((record) => (record === undefined ? [] : [record]));
}
