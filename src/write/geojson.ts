import type { SiteToWgs84 } from '../frame/site-to-wgs84.js';
import { SHORT_CAUTION } from '../model/caution.js';
import type { LayoutSource } from '../model/layout-source.js';
import { otherMembers, type SiteFeature, siteFeatures } from './geojson-features.js';
import { hasHeight, isFinerThanWritten, type NoGeometry, placeText, wgs84Text } from './geometry-text.js';
import { inChunks } from './in-chunks.js';
import { type Lose, LossTally } from './loss.js';
import { keepOutGeometry, type SiteGeometry } from './site-geometry.js';

/** How a layout becomes GeoJSON. */
export interface GeoJsonOptions {
  /** The way to WGS 84 for `geometry`, or why there is none; absent: `geometry` is null. */
  wgs84?: SiteToWgs84;
  /**
   * Decimals of a degree in `geometry`. Absent: 9, of which the last is 0.11 mm on the ground, so that
   * a point is off by less than 0.08 mm.
   */
  decimals?: number;
}

const DECIMALS = 9;
const CONFORMANCE = 'http://www.opengis.net/spec/json-fg-1/1.0/conf/';
/** Right-handed Cartesian x, y, z with z up, in metres, from an origin that is not known. */
const LOCAL_CRS = 'http://www.opengis.net/def/crs/OGC/0/Engineering3D';
const MEANING =
  'place is in the site frame, in metres: x and y plan coordinates, z up, and no z where the height is not given. properties are members of the layout: lengths in millimetres, angles in degrees, directions in the site frame.';

/** Members of the header that stand in the root object as they are. */
const carried = ['ahx', 'id', 'title', 'revision', 'project', 'submittal', 'frame'] as const;
/** Members that become features, or that a GeoJSON file has no use for. */
const drawnOrConstant = ['$schema', 'kind', 'control', 'grids', 'areas', 'substrates', 'keepOuts'];
/** Definitions of which a hole carries a part: the members that travel with it. */
const withHoles = {
  trades: ['id', 'name'],
  holeTypes: ['id', 'name', 'principle', 'form', 'made', 'purpose', 'diameter', 'depth'],
  levels: ['id', 'name'],
} as const;

const noGeometryReasons: Readonly<Record<NoGeometry, string>> = {
  'off-the-map': 'it lies off the map projection',
  'crosses-antimeridian': 'it crosses the antimeridian',
  'no-plan-shape': 'it is a solid that GeoJSON has no geometry for',
};

const noHeight = 'a levelled height is no height above the ellipsoid; place has it';

/** How features get their `geometry`. */
interface WayToMap {
  /** Undefined where the layout has no georeference: then nothing is missing. */
  wgs84: SiteToWgs84 | undefined;
  readonly decimals: number;
  readonly tally: LossTally;
}

/**
 * A layout as a feature collection that is GeoJSON (RFC 7946) and JSON-FG 1.0 at once, as text in
 * chunks of about 64 KB, one feature a line.
 *
 * `place` holds the geometry in the site frame in metres, exact to a millionth of a millimetre; it is
 * never in `geometry`, which is WGS 84 longitude and latitude without height, or null. Features are
 * control points, gridlines, areas, substrates, their zones, keep-outs and holes; an id is the kind and
 * the id of the record, and unique where the ids of the layout are. `properties` are the members of
 * the record under their own names. Over HTTP such a file with geometries is
 * `application/fg+json;compatibility=geojson`.
 *
 * When the text is complete, `lose` is told each kind of thing that did not travel. The holes are read
 * once. Throws a RangeError for a coordinate that is not finite.
 */
export function writeGeoJson(source: LayoutSource, options: GeoJsonOptions, lose: Lose): Generator<string> {
  return inChunks(geoJsonPieces(source, options, lose));
}

function* geoJsonPieces(source: LayoutSource, options: GeoJsonOptions, lose: Lose): Generator<string> {
  const tally = new LossTally();
  const used = { trades: new Set<string>(), holeTypes: new Set<string>(), levels: new Set<string>() };
  const way: WayToMap = { wgs84: options.wgs84, decimals: options.decimals ?? DECIMALS, tally };
  if (way.wgs84 === undefined && source.header.frame.georeference !== undefined) {
    way.wgs84 = { ok: false, reason: 'no way to WGS 84 was given' };
  }
  yield rootText(source.header, options);
  let lead = '\n';
  for (const feature of siteFeatures({ source, tally, used })) {
    yield lead + featureText(feature, way);
    lead = ',\n';
  }
  yield '\n]\n}\n';
  countHeader(source.header, used, tally);
  tally.report(lose);
}

function rootText(header: LayoutSource['header'], { wgs84 }: GeoJsonOptions): string {
  const layout = Object.fromEntries(carried.map((name) => [name, header[name]]));
  const about = wgs84?.ok ? `${MEANING} geometry is WGS 84 without height. ${wgs84.note}` : MEANING;
  const members = {
    type: 'FeatureCollection',
    conformsTo: conformsTo(header),
    coordRefSys: LOCAL_CRS,
    about,
    caution: SHORT_CAUTION,
    layout,
  };
  const lines = Object.entries(members).map(([name, value]) => `"${name}": ${JSON.stringify(value)},\n`);
  return `{\n${lines.join('')}"features": [`;
}

/** The conformance classes that the features need. */
function conformsTo(header: LayoutSource['header']): string[] {
  const types = new Set((header.keepOuts ?? []).map((keepOut) => keepOutGeometry(keepOut)?.type));
  const classes = ['core', 'types-schemas'];
  if (types.has('Prism')) classes.push('prisms');
  if (types.has('Polyhedron')) classes.push('polyhedra');
  return classes.map((name) => CONFORMANCE + name);
}

function featureText(feature: SiteFeature, way: WayToMap): string {
  const { geometry } = feature;
  if (isFinerThanWritten(feature.drawn)) {
    way.tally.add(feature.field, 'rounded to a millionth of a millimetre', false);
  }
  const properties = [...feature.properties].map(([name, value]) => `${JSON.stringify(name)}:${JSON.stringify(value)}`);
  return (
    `{"type":"Feature","id":${JSON.stringify(feature.id)},"featureType":"${feature.featureType}",` +
    `"geometry":${geometry === undefined ? 'null' : geometryText(geometry, way)},` +
    `"place":${geometry === undefined ? 'null' : placeText(geometry)},` +
    `"properties":{${properties.join(',')}}}`
  );
}

function geometryText(geometry: SiteGeometry, { wgs84, decimals, tally }: WayToMap): string {
  if (wgs84 === undefined) return 'null';
  if (!wgs84.ok) {
    tally.add('geometry', wgs84.reason, true);
    return 'null';
  }
  const answer = wgs84Text(geometry, wgs84.toWgs84, decimals);
  if ('none' in answer) {
    tally.add('geometry', noGeometryReasons[answer.none], true);
    return 'null';
  }
  if (hasHeight(geometry)) tally.add('geometry/height', noHeight, true);
  return answer.text;
}

/** What of the header does not travel. */
function countHeader(
  header: LayoutSource['header'],
  used: Readonly<Record<keyof typeof withHoles, ReadonlySet<string>>>,
  tally: LossTally,
): void {
  for (const [name, value] of Object.entries(header)) {
    if (value === undefined || drawnOrConstant.includes(name) || isOneOf(carried, name)) continue;
    if (name === 'trades' || name === 'holeTypes' || name === 'levels') {
      countDefinitions(name, header[name] ?? [], used[name], tally);
    } else {
      tally.add(name, 'it has no place on a map', false, Array.isArray(value) ? value.length : 1);
    }
  }
}

function countDefinitions(
  collection: keyof typeof withHoles,
  records: readonly { id: string }[],
  used: ReadonlySet<string>,
  tally: LossTally,
): void {
  for (const record of records) {
    if (!used.has(record.id)) tally.add(collection, 'no hole refers to it', false);
    else {
      for (const name of otherMembers(record, withHoles[collection])) {
        tally.add(`${collection}/${name}`, 'only what a hole needs to be recognised travels with it', false);
      }
    }
  }
}

function isOneOf(names: readonly string[], name: string): boolean {
  return names.includes(name);
}
