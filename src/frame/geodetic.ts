/** Longitude and latitude, WGS 84, degrees. */
export type LonLat = readonly [lon: number, lat: number];

/** A projected reference system that can be turned into longitude and latitude. */
export interface KnownCrs {
  known: true;
  /** Length of one unit of the reference system in metres. */
  unitMetres: number;
  /** What was left out on the way to WGS 84 and how much it is, in plain words. */
  note: string;
  /** Easting and northing to WGS 84, or undefined where the point lies off the projection. */
  toWgs84(easting: number, northing: number): LonLat | undefined;
}

/** A reference system that cannot be built without a register. */
export interface UnknownCrs {
  known: false;
  /** The code as it was given. */
  crs: string;
}

interface Projection {
  projected: string;
  geographic: string;
  note: string;
}

const wgs84Note = 'WGS 84 is a family of frames known to about 2 m; which one the survey used is not recorded.';
const etrs89Note =
  'ETRS89 is taken as WGS 84; they lie within 1 m of each other (EPSG transformation 1149) and drift apart by about 2.5 cm a year.';
const nad83Note = 'NAD83 is taken as WGS 84; they lie 1 to 2 m apart in most of North America and more elsewhere.';

/** Codes that are UTM zones: the first code, the first zone, the number of zones. */
const utmSeries: readonly {
  first: number;
  zone: number;
  zones: number;
  south?: true;
  ellipsoid: string;
  note: string;
}[] = [
  { first: 32601, zone: 1, zones: 60, ellipsoid: 'WGS84', note: wgs84Note },
  { first: 32701, zone: 1, zones: 60, south: true, ellipsoid: 'WGS84', note: wgs84Note },
  { first: 25828, zone: 28, zones: 11, ellipsoid: 'GRS80', note: etrs89Note },
  // 26929 and up are state plane systems, no UTM zones.
  { first: 26901, zone: 1, zones: 23, ellipsoid: 'GRS80', note: nad83Note },
];

const pseudoMercatorCode = 3857;
// The method takes WGS 84 latitude as if it were that of a sphere, both ways.
const pseudoMercatorSphere = '+a=6378137 +b=6378137 +no_defs';

/**
 * Looks a reference system up by its code, `EPSG:` and a number, and loads what is needed to convert
 * from it.
 *
 * Known are UTM on WGS 84 (32601 to 32660, 32701 to 32760), on ETRS89 (25828 to 25838) and on NAD83
 * (26901 to 26923), and pseudo-Mercator (3857): all that need no register. Any other code gives
 * `{ known: false }`; that is an answer, not an error.
 *
 * No datum is shifted: longitude and latitude on ETRS89 or NAD83 are given out as WGS 84, and `note`
 * says how much that is. Heights are not handled at all, because the step from a levelled height to
 * one above the ellipsoid (up to 100 m) needs a geoid model.
 */
export async function loadGeodetic(crs: string): Promise<KnownCrs | UnknownCrs> {
  const projection = projectionOf(crs);
  if (projection === undefined) return { known: false, crs };
  const { default: proj4 } = await import('proj4');
  const convert = proj4(projection.projected, projection.geographic);
  return {
    known: true,
    unitMetres: 1,
    note: projection.note,
    toWgs84(easting, northing) {
      if (!Number.isFinite(easting) || !Number.isFinite(northing)) return undefined;
      const [lon, lat] = convert.forward([easting, northing]);
      return Math.abs(lon) <= 180 && Math.abs(lat) <= 90 ? [lon, lat] : undefined;
    },
  };
}

function projectionOf(crs: string): Projection | undefined {
  const digits = /^EPSG:([1-9][0-9]{3,5})$/.exec(crs)?.[1];
  if (digits === undefined) return undefined;
  const code = Number(digits);
  if (code === pseudoMercatorCode) {
    return {
      projected: `+proj=merc +units=m ${pseudoMercatorSphere}`,
      geographic: `+proj=longlat ${pseudoMercatorSphere}`,
      note: wgs84Note,
    };
  }
  const series = utmSeries.find(({ first, zones }) => code >= first && code < first + zones);
  if (series === undefined) return undefined;
  const zone = series.zone + code - series.first;
  const south = series.south ? ' +south' : '';
  return {
    projected: `+proj=utm +zone=${zone}${south} +ellps=${series.ellipsoid} +units=m +no_defs`,
    geographic: `+proj=longlat +ellps=${series.ellipsoid} +no_defs`,
    note: series.note,
  };
}
