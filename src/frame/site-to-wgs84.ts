import type { Georeference } from '../generated/layout.js';
import { type LonLat, loadGeodetic } from './geodetic.js';
import { createMapConversion } from './map-conversion.js';
import { suspectScale } from './suspect-scale.js';

/** The way from the site frame to longitude and latitude, or why there is none. */
export type SiteToWgs84 =
  | {
      ok: true;
      /** Site frame, millimetres, to WGS 84, degrees; undefined where the point lies off the map. */
      toWgs84(xSite: number, ySite: number): LonLat | undefined;
      /** What was left out on the way and how much it is, in plain words. */
      note: string;
    }
  | {
      ok: false;
      /** Why not, in plain words. */
      reason: string;
    };

/**
 * Builds the way from the site frame to WGS 84 for a georeference.
 *
 * A code that needs a register, a scale that cannot be meant and an x axis without direction are answers
 * with a reason; a scale is never guessed.
 */
export async function siteToWgs84(georeference: Georeference): Promise<SiteToWgs84> {
  const crs = await loadGeodetic(georeference.crs);
  if (!crs.known) {
    return {
      ok: false,
      reason: `${georeference.crs} cannot be converted to WGS 84 without a register of reference systems`,
    };
  }
  const scale = suspectScale(georeference, crs.unitMetres);
  if (scale.kind !== 'expected' && scale.kind !== 'factor') {
    const hint = scale.kind === 'inverted' ? ', it looks inverted' : '';
    return {
      ok: false,
      reason: `the scale ${scale.actual} of the georeference is not near ${scale.expected}${hint}`,
    };
  }
  const { xAxisAbscissa = 1, xAxisOrdinate = 0 } = georeference;
  if (xAxisAbscissa === 0 && xAxisOrdinate === 0) {
    return { ok: false, reason: 'the x axis (0, 0) of the georeference has no direction' };
  }
  const map = createMapConversion(georeference);
  return {
    ok: true,
    note: crs.note,
    toWgs84(xSite, ySite) {
      const [easting, northing] = map.toMap(xSite, ySite, 0);
      return crs.toWgs84(easting, northing);
    },
  };
}
