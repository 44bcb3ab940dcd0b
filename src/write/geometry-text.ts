import type { LonLat } from '../frame/geodetic.js';
import { formatDecimal, formatMm } from '../units/format-mm.js';
import type { Position, SiteGeometry } from './site-geometry.js';

/** Arrays in arrays, with positions at the bottom. */
type Nested = Position | readonly Nested[];

/** Site frame, millimetres, to WGS 84, degrees; undefined where the point lies off the map. */
export type ToWgs84 = (xSite: number, ySite: number) => LonLat | undefined;

/**
 * A geometry of JSON-FG in metres.
 *
 * Each number is the text of its millimetres, at most 6 decimals, with the point three digits further
 * left: nothing is rounded on the way from millimetres to metres.
 */
export function placeText(geometry: SiteGeometry): string {
  if (geometry.type !== 'Prism') {
    return `{"type":"${geometry.type}","coordinates":${nestedText(geometry.coordinates, metresPosition)}}`;
  }
  const { base, lower, upper } = geometry;
  return `{"type":"Prism","base":${placeText(base)},"lower":${metresText(lower)},"upper":${metresText(upper)}}`;
}

/** Millimetres as the text of metres. */
export function metresText(mm: number): string {
  const text = formatMm(mm);
  const sign = text.startsWith('-') ? '-' : '';
  const [whole, decimals = ''] = text.slice(sign.length).split('.');
  const digits = whole.padStart(4, '0');
  const fraction = (digits.slice(-3) + decimals).replace(/0+$/, '');
  return sign + digits.slice(0, -3) + (fraction === '' ? '' : `.${fraction}`);
}

/** Why a geometry has no WGS 84 counterpart. */
export type NoGeometry = 'off-the-map' | 'crosses-antimeridian' | 'no-plan-shape';

/**
 * A geometry of RFC 7946 in WGS 84 longitude and latitude, or why there is none. Heights are left
 * out; a Prism gives its base; straight lines stay straight between their corners.
 */
export function wgs84Text(
  geometry: SiteGeometry,
  toWgs84: ToWgs84,
  decimals: number,
): { text: string } | { none: NoGeometry } {
  if (geometry.type === 'Polyhedron') return { none: 'no-plan-shape' };
  if (geometry.type === 'Prism') return wgs84Text(geometry.base, toWgs84, decimals);
  let west = Number.POSITIVE_INFINITY;
  let east = Number.NEGATIVE_INFINITY;
  let isOff = false;
  const text = nestedText(geometry.coordinates, (position) => {
    const [lon, lat] = toWgs84(position[0], position[1]) ?? [Number.NaN, Number.NaN];
    if (!(Math.abs(lon) <= 180 && Math.abs(lat) <= 90)) {
      isOff = true;
      return '';
    }
    west = Math.min(west, lon);
    east = Math.max(east, lon);
    return `[${formatDecimal(lon, decimals)},${formatDecimal(lat, decimals)}]`;
  });
  if (isOff) return { none: 'off-the-map' };
  if (east - west > 180) return { none: 'crosses-antimeridian' };
  return { text: `{"type":"${geometry.type}","coordinates":${text}}` };
}

/** Whether the positions of a geometry have heights. */
export function hasHeight(geometry: SiteGeometry): boolean {
  if (geometry.type === 'Prism') return true;
  let nested: Nested = geometry.coordinates;
  while (!isPosition(nested)) nested = nested[0];
  return nested.length > 2;
}

/** Whether any number in a value has more than the 6 decimals of a millimetre that are written. */
export function isFinerThanWritten(value: unknown): boolean {
  if (typeof value === 'number') return Number(formatMm(value)) !== value;
  if (typeof value !== 'object' || value === null) return false;
  return Object.values(value).some(isFinerThanWritten);
}

function metresPosition(position: Position): string {
  return `[${position.map(metresText).join(',')}]`;
}

function nestedText(nested: Nested, positionText: (position: Position) => string): string {
  if (isPosition(nested)) return positionText(nested);
  return `[${nested.map((inner) => nestedText(inner, positionText)).join(',')}]`;
}

function isPosition(nested: Nested): nested is Position {
  return typeof nested[0] === 'number';
}
