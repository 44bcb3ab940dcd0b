import type { Georeference } from '../generated/layout.js';

/** Coordinates on the map in units of its reference system: easting, northing, height. */
export type MapPoint = readonly [easting: number, northing: number, height: number];

/** Coordinates in the site frame in millimetres. */
export type SitePoint = readonly [xSite: number, ySite: number, zSite: number];

/** The way between the site frame and the map, both directions. */
export interface MapConversion {
  /** Site frame (millimetres) to map (units of the reference system). */
  toMap(xSite: number, ySite: number, zSite: number): MapPoint;
  /** Map (units of the reference system) to site frame (millimetres). */
  toSite(easting: number, northing: number, height: number): SitePoint;
}

/** What a map conversion needs of a georeference. */
export type MapConversionValues = Pick<
  Georeference,
  'eastings' | 'northings' | 'height' | 'xAxisAbscissa' | 'xAxisOrdinate' | 'scale'
>;

/**
 * The map conversion of a georeference, after IfcMapConversion of IFC 4.3: scale x, y and z, turn
 * anticlockwise about z by atan2(xAxisOrdinate, xAxisAbscissa), then shift.
 *
 * The pair of the x axis needs no unit length; a member that is absent counts as 1 for the abscissa
 * and 0 for the ordinate, as in IFC. The angle itself is never formed: sine and cosine are the pair
 * divided by its length, which keeps exact pairs exact.
 *
 * Throws a RangeError where the scale is not a positive number or the pair has no direction.
 */
export function createMapConversion(values: MapConversionValues): MapConversion {
  const { eastings, northings, height, scale } = values;
  const abscissa = values.xAxisAbscissa ?? 1;
  const ordinate = values.xAxisOrdinate ?? 0;
  const length = Math.hypot(abscissa, ordinate);
  if (!(scale > 0 && Number.isFinite(scale))) {
    throw new RangeError(`The scale of a map conversion is positive, not ${scale}.`);
  }
  if (!(length > 0 && Number.isFinite(length))) {
    throw new RangeError(`The x axis (${abscissa}, ${ordinate}) has no direction.`);
  }
  const cos = abscissa / length;
  const sin = ordinate / length;
  return {
    toMap(xSite, ySite, zSite) {
      const x = xSite * scale;
      const y = ySite * scale;
      return [x * cos - y * sin + eastings, x * sin + y * cos + northings, zSite * scale + height];
    },
    toSite(easting, northing, mapHeight) {
      const e = easting - eastings;
      const n = northing - northings;
      return [(e * cos + n * sin) / scale, (n * cos - e * sin) / scale, (mapHeight - height) / scale];
    },
  };
}
