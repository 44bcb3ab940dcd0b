import type { Georeference } from '../generated/layout.js';
import type { LayoutModel } from '../model/layout-model.js';
import type { InputLayout } from './site-part.js';

/** Sorts layouts into sites: each goes to the first site with which it can be compared. */
export function sitesOf(layouts: readonly InputLayout[]): InputLayout[][] {
  const sites: InputLayout[][] = [];
  for (const part of layouts) {
    const site = sites.find((parts) => parts.every(({ layout }) => whyApart(layout, part.layout) === undefined));
    if (site === undefined) sites.push([part]);
    else site.push(part);
  }
  return sites;
}

/**
 * Why two layouts are not judged together: they are one layout twice, such as two revisions of it, or
 * their coordinates are of different frames.
 */
export function whyApart(
  a: LayoutModel,
  b: LayoutModel,
): 'same layout' | 'name' | 'height datum' | 'georeference' | undefined {
  if (a.header.id !== undefined && a.header.id === b.header.id) return 'same layout';
  const { frame } = a.header;
  const other = b.header.frame;
  // A frame that broke the schema is nobody's; the header is then broken and the verdict cannot be a pass.
  if (frame === undefined || other === undefined || frame.name !== other.name) return 'name';
  if (frame.heightDatum !== other.heightDatum) return 'height datum';
  return isSamePlace(frame.georeference, other.georeference) ? undefined : 'georeference';
}

/** Turns of two x axes that differ by no more than this, in radians, are one: over 1000 km it moves nothing by a micrometre. */
const SAME_TURN = 1e-13;

/** Where only one is georeferenced, nothing speaks against the name. */
function isSamePlace(a: Georeference | undefined, b: Georeference | undefined): boolean {
  if (a === undefined || b === undefined) return true;
  const turnOf = ({ xAxisAbscissa = 1, xAxisOrdinate = 0 }: Georeference) => Math.atan2(xAxisOrdinate, xAxisAbscissa);
  return (
    a.crs === b.crs &&
    a.eastings === b.eastings &&
    a.northings === b.northings &&
    a.height === b.height &&
    a.scale === b.scale &&
    // The pair needs no unit length, so that one direction has many spellings.
    Math.abs(turnOf(a) - turnOf(b)) <= SAME_TURN
  );
}
