import { PlanBox } from '../../geometry/plan-box.js';
import { isOff, LEAST_PLACES, type PlacesOnFaces, placesOf } from '../places-on-faces.js';
import type { Rule } from '../rule.js';
import type { SitePart } from '../site-part.js';
import type { Surface } from '../surface.js';
import { suspectSizes } from '../suspect-sizes.js';

const UNITS = [
  { reading: 'inches', factor: 25.4 },
  { reading: 'feet', factor: 304.8 },
  { reading: 'metres', factor: 1000 },
  { reading: 'centimetres', factor: 10 },
] as const;

export const unitsSuspect: Rule = {
  id: 'units-suspect',
  class: 'data',
  severity: 'error',
  since: '0.1',
  stage: 'frame',
  title: 'The numbers look like another unit than millimetres.',
  why: 'Everything that is computed from them is wrong by one factor, and no other check of these holes means anything.',
  mend: 'Find out in which unit the numbers were exported, and export again in millimetres. Where they are millimetres, correct the substrates that the holes name.',
  needs: 'A hole type that is drilled or cored, or 5 holes whose substrates have a face and an outline.',
  data: {
    what: 'whose numbers look so: `sizes`, `holes` or `substrates`',
    reading: 'the unit that they look like',
    factor: 'millimetres in that unit',
    sizes: 'with `sizes`: which ones, such as `diameter, depth`',
    asRead: 'number of sizes that make sense, or holes that lie on their substrates, when read so',
    asWritten: 'number of those that do as millimetres',
    of: 'number of all that were looked at',
  },
  message: ({ what, reading, sizes, asRead, asWritten, of }) =>
    what === 'sizes'
      ? `${asRead} of ${of} sizes (${sizes}) make sense when they are read as ${reading}, ${asWritten || 'none'} as millimetres.`
      : `${asRead} of ${of} holes lie on their substrates when the coordinates of the ${what} are read as ${reading}, ${asWritten || 'none'} as millimetres.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 0.375, "depth": 2.5, "bit": { "nominal": "3/8 in" } }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 9.525, "depth": 63.5, "bit": { "nominal": "3/8 in" } }\n]',
  },
  checkSite(site, run) {
    for (const part of site.parts) {
      const types = part.layout
        .collection('holeTypes')
        .judged.flatMap((type) => (type === undefined || type.made === 'cast-in' ? [] : [type]));
      const places = placesOf(site, part);
      if (types.length === 0 && places.of < LEAST_PLACES) continue;
      run.judged(1);
      const data = ofSizes(part, types) ?? ofPlaces(places);
      if (data === undefined) continue;
      if (run.atMember(part, 'frame', { data, cause: '' })) run.doubt(part);
    }
  },
};

function ofSizes({ layout }: SitePart, types: Parameters<typeof suspectSizes>[0]): Record<string, unknown> | undefined {
  const substrates = layout.collection('substrates').judged.flatMap((record) => record ?? []);
  const found = suspectSizes(types, substrates);
  if (found === undefined) return undefined;
  const { reading, factor, kinds, of } = found;
  return { what: 'sizes', reading, factor, sizes: kinds.join(', '), asRead: of, asWritten: 0, of };
}

function ofPlaces(places: PlacesOnFaces): Record<string, unknown> | undefined {
  if (!places.isOff) return undefined;
  const readings = (['holes', 'substrates'] as const).flatMap((what) => UNITS.map((unit) => ({ what, ...unit })));
  const tried = readings.flatMap(({ what, reading, factor }) => {
    const scale = what === 'holes' ? factor : 1 / factor;
    const asRead = places.explainedBy({ xx: scale, xy: 0, yx: 0, yy: scale, zz: scale });
    return asRead === undefined || !isPlain(places, scale) ? [] : [{ what, reading, factor, asRead }];
  });
  const best = tried.sort((a, b) => b.asRead - a.asRead)[0];
  return best && { ...best, asWritten: places.asWritten, of: places.of };
}

/** Whether heights speak for a factor, or the holes fill their substrates under it: any few holes shrink into some outline. */
function isPlain(places: PlacesOnFaces, factor: number): boolean {
  const holes = new PlanBox();
  let isOffCount = 0;
  places.forEach((x, y, z, face) => {
    holes.add(x, y);
    if (!Number.isNaN(z) && isOff(face, x, y, z)) isOffCount++;
  });
  if (isOffCount * 5 >= places.of * 4) return true;
  const outlines = new PlanBox();
  for (const face of new Set<Surface>(places.placed().map(({ face: one }) => one)))
    for (const [x, y] of face.substrate.outline?.points ?? []) outlines.add(x, y);
  return holes.diagonal * factor * 2 >= outlines.diagonal;
}
