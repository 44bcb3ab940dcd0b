/** What of RFC 7946 can be checked without any library: the text's own structure, from memory. */
export interface GeoJsonFault {
  where: string;
  what: string;
}

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };

const depthOf: Readonly<Record<string, number>> = {
  Point: 0,
  MultiPoint: 1,
  LineString: 1,
  MultiLineString: 2,
  Polygon: 2,
  MultiPolygon: 3,
};

/** Faults of a FeatureCollection: types, members, positions, closed rings, the right-hand rule. */
export function rfc7946Faults(document: unknown): GeoJsonFault[] {
  const faults: GeoJsonFault[] = [];
  const root = document as { [name: string]: Json };
  if (root.type !== 'FeatureCollection') faults.push({ where: '', what: 'type' });
  // Section 7.1: members of other GeoJSON objects have no place here. Section 4: no `crs`.
  for (const name of ['coordinates', 'geometries', 'geometry', 'properties', 'crs']) {
    if (name in root) faults.push({ where: '', what: `has ${name}` });
  }
  const features = root.features as { [name: string]: Json }[];
  const ids = new Set<Json>();
  for (const [i, feature] of features.entries()) {
    const where = `/features/${i}`;
    if (feature.type !== 'Feature') faults.push({ where, what: 'type' });
    if (!('geometry' in feature) || !('properties' in feature)) faults.push({ where, what: 'member missing' });
    if (typeof feature.properties !== 'object' || Array.isArray(feature.properties))
      faults.push({ where, what: 'properties' });
    if (ids.has(feature.id)) faults.push({ where, what: `id ${String(feature.id)} twice` });
    ids.add(feature.id);
    if (feature.geometry !== null) geometryFaults(feature.geometry as { [name: string]: Json }, where, faults);
  }
  return faults;
}

function geometryFaults(geometry: { [name: string]: Json }, where: string, faults: GeoJsonFault[]): void {
  const depth = depthOf[String(geometry.type)];
  if (depth === undefined) {
    faults.push({ where, what: `geometry type ${String(geometry.type)}` });
    return;
  }
  for (const position of flat(geometry.coordinates, depth)) {
    const [lon, lat] = position as number[];
    const isPosition = Array.isArray(position) && position.length >= 2 && position.length <= 3;
    if (!isPosition || !(Math.abs(lon) <= 180) || !(Math.abs(lat) <= 90)) faults.push({ where, what: 'position' });
  }
  if (geometry.type === 'LineString' && (geometry.coordinates as Json[]).length < 2)
    faults.push({ where, what: 'line' });
  if (geometry.type !== 'Polygon') return;
  for (const [i, ring] of (geometry.coordinates as number[][][]).entries()) {
    if (ring.length < 4 || JSON.stringify(ring[0]) !== JSON.stringify(ring.at(-1)))
      faults.push({ where, what: `ring ${i} open` });
    if (shoelace(ring) > 0 !== (i === 0)) faults.push({ where, what: `ring ${i} turns the wrong way` });
  }
}

function flat(coordinates: Json, depth: number): Json[] {
  return depth === 0 ? [coordinates] : (coordinates as Json[]).flatMap((inner) => flat(inner, depth - 1));
}

/** Twice the signed area of a closed ring, anticlockwise positive. */
export function shoelace(ring: readonly (readonly number[])[]): number {
  const [ox, oy] = ring[0];
  let sum = 0;
  for (let i = 1; i < ring.length; i++) {
    sum += (ring[i - 1][0] - ox) * (ring[i][1] - oy) - (ring[i][0] - ox) * (ring[i - 1][1] - oy);
  }
  return sum;
}
