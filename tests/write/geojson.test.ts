import { describe, expect, it } from 'vitest';
import { siteToWgs84 } from '../../src/frame/site-to-wgs84.js';
import { writeGeoJson } from '../../src/write/geojson.js';
import {
  convert,
  coordinatesOf,
  exampleLayouts,
  featureOf,
  georeference,
  placedLayout,
  sampleLayout,
  sourceOf,
} from './geojson-sample.js';
import { rfc7946Faults, shoelace } from './rfc7946.js';

describe('writeGeoJson', () => {
  it('keeps to RFC 7946 with and without WGS 84', async () => {
    expect(rfc7946Faults(convert(sampleLayout).document)).toEqual([]);
    const wgs84 = await siteToWgs84(georeference);
    const { document } = convert(placedLayout, { wgs84 });
    expect(rfc7946Faults(document)).toEqual([]);
    expect(document.features.filter(({ geometry }) => geometry === null).map(({ id }) => id)).toEqual([
      'area/night',
      'keepOut/K4',
    ]);
  });

  it('is judged by a check that finds a ring turned round and metres in geometry', async () => {
    const { document } = convert(placedLayout, { wgs84: await siteToWgs84(georeference) });
    const slab = coordinatesOf<number[][][]>(featureOf(document, 'substrate/slab').geometry);
    slab[0].reverse();
    Object.assign(featureOf(document, 'hole/H-1').geometry ?? {}, { coordinates: [500000, 100000] });
    expect(rfc7946Faults(document)).toEqual([
      { where: '/features/5', what: 'ring 0 turns the wrong way' },
      { where: '/features/12', what: 'position' },
    ]);
  });

  it('turns every example into RFC 7946', async () => {
    for (const [name, layout] of exampleLayouts()) {
      const given = layout.frame.georeference;
      const { document } = convert(layout, given === undefined ? {} : { wgs84: await siteToWgs84(given) });
      expect({ name, faults: rfc7946Faults(document) }).toEqual({ name, faults: [] });
      expect(document.features.filter(({ featureType }) => featureType === 'hole')).toHaveLength(layout.holes.length);
    }
  });

  it('names the local frame in metres in the root object and nowhere else', () => {
    // OGC JSON-FG 1.0: Engineering3D is right-handed x, y, z with z up in metres, of unknown origin;
    // conformsTo and coordRefSys stand in the root object only (checks.md F-02).
    const { document, text } = convert(sampleLayout);
    expect(document.coordRefSys).toBe('http://www.opengis.net/def/crs/OGC/0/Engineering3D');
    expect(document.conformsTo).toEqual(
      ['core', 'types-schemas', 'prisms', 'polyhedra'].map(
        (name) => `http://www.opengis.net/spec/json-fg-1/1.0/conf/${name}`,
      ),
    );
    expect(text.match(/"conformsTo"|"coordRefSys"/g)).toHaveLength(2);
    expect(convert({ ...sampleLayout, keepOuts: [] }).document.conformsTo).toHaveLength(2);
    expect(document.about).toMatch(/metres/);
    expect(document.caution).toMatch(/^Layout data only\. Not a design, not a permit to drill\./);
  });

  it('writes metres in place, digit for digit, and never in geometry', () => {
    const { text, document } = convert(sampleLayout);
    expect(text).toContain('"place":{"type":"Point","coordinates":[1.2345,-0.678000001,3]}');
    expect(text).toContain('"place":{"type":"Point","coordinates":[0.000396875,0.012]}');
    expect(document.features.every(({ geometry }) => geometry === null)).toBe(true);
  });

  it('gives a hole what its type, trade, level and substrate say', () => {
    const { document } = convert(sampleLayout);
    expect(featureOf(document, 'hole/H-1').properties).toEqual({
      id: 'H-1',
      tag: '1',
      trade: 'S',
      holeType: 'H12',
      substrate: 'slab',
      level: 'G',
      depth: 70,
      note: 'beside the duct',
      tradeName: 'Sprinkler',
      levelName: 'Ground',
      substrateName: 'Slab over ground',
      holeTypeName: '12 mm screw',
      principle: 'screw',
      form: 'blind',
      made: 'drilled',
      purpose: 'permanent',
      effectiveDiameterMm: 12,
      effectiveDepthMm: 70,
      effectiveAxis: [0, 0, 1],
    });
    expect(featureOf(document, 'hole/a/b').properties).toMatchObject({ effectiveDepthMm: 60 });
  });

  it('makes a feature of each record that has a place, in a fixed order', () => {
    expect(convert(sampleLayout).document.features.map(({ id, place }) => [id, place?.type])).toEqual([
      ['control/C1', 'Point'],
      ['gridline/main/1', 'LineString'],
      ['gridline/main/2', 'LineString'],
      ['area/pour 1', 'Polygon'],
      ['area/night', undefined],
      ['substrate/slab', 'Polygon'],
      ['zone/slab/1', 'Polygon'],
      ['substrate/wall', 'MultiLineString'],
      ['keepOut/K1', 'LineString'],
      ['keepOut/K2', 'Point'],
      ['keepOut/K3', 'Prism'],
      ['keepOut/K4', 'Polyhedron'],
      ['hole/H-1', 'Point'],
      ['hole/a/b', 'Point'],
    ]);
  });

  it('turns a clockwise outline round and its edges with it', () => {
    const { place, properties } = featureOf(convert(sampleLayout).document, 'substrate/slab');
    const rings = coordinatesOf<number[][][]>(place);
    expect(rings[0]).toEqual([
      [0, 0, 3],
      [12, 0, 3],
      [12, 8, 3],
      [0, 8, 3],
      [0, 0, 3],
    ]);
    // From (12, 0) to (12, 8) runs the edge that the layout has from (12000, 8000) to (12000, 0).
    expect(properties.edges).toEqual(['construction-joint', 'movement-joint', 'continuous', 'free']);
    expect(shoelace(rings[1])).toBeLessThan(0);
    expect(rings[1]).toEqual([
      [1, 1, 3],
      [2, 2.5, 3],
      [2, 1, 3],
      [1, 1, 3],
    ]);
    expect(properties.openingEdges).toBeUndefined();
  });

  it('writes a level, upright prism as a Prism with its base and its two heights', () => {
    const { place, properties } = featureOf(convert(sampleLayout).document, 'keepOut/K3');
    expect(place).toEqual({
      type: 'Prism',
      base: {
        type: 'Polygon',
        coordinates: [
          [
            [0, 0],
            [0.3, 0],
            [0.3, 0.4],
            [0, 0.4],
            [0, 0],
          ],
        ],
      },
      lower: 3.05,
      upper: 3.2,
    });
    expect(properties).toEqual({
      id: 'K3',
      kind: 'other',
      standoff: 10,
      positionTolerance: 20,
      knownFrom: 'survey',
      shapeKind: 'prism',
    });
  });

  it('writes any other prism as a closed Polyhedron whose faces look outward', () => {
    const { place } = featureOf(convert(sampleLayout).document, 'keepOut/K4');
    const [shell] = coordinatesOf<number[][][][][]>(place);
    expect(shell).toHaveLength(6);
    // Every edge is used once in each direction.
    const edges = shell.flatMap(([ring]) => ring.slice(1).map((corner, i) => `${ring[i]}>${corner}`));
    expect(new Set(edges).size).toBe(edges.length);
    for (const edge of edges) expect(edges).toContain(edge.split('>').reverse().join('>'));
    // Divergence theorem: outward faces of 0.1 by 0.05 by 2 m enclose +0.01 cubic metres.
    const volume = shell.reduce((sum, [ring]) => sum + signedVolume(ring), 0);
    expect(volume).toBeCloseTo(0.01, 12);
  });

  it('says exactly what does not travel', async () => {
    const layout = {
      ...placedLayout,
      parties: [{ id: 'p', firm: 'Example', role: 'other' as const }],
      ext: {},
      colour: 1,
    };
    // With heights: the slab, its zone, the wall, K1 to K3 and H-1.
    expect(convert(layout, { wgs84: await siteToWgs84(georeference) }).losses).toEqual([
      {
        field: 'geometry/height',
        count: 7,
        reason: 'a levelled height is no height above the ellipsoid; place has it',
        recoverable: true,
      },
      { field: 'geometry', count: 1, reason: 'it is a solid that GeoJSON has no geometry for', recoverable: true },
      {
        field: 'levels/elevation',
        count: 1,
        reason: 'only what a hole needs to be recognised travels with it',
        recoverable: false,
      },
      { field: 'levels', count: 1, reason: 'no hole refers to it', recoverable: false },
      {
        field: 'trades/firm',
        count: 1,
        reason: 'only what a hole needs to be recognised travels with it',
        recoverable: false,
      },
      { field: 'trades', count: 1, reason: 'no hole refers to it', recoverable: false },
      {
        field: 'holeTypes/minSpacing',
        count: 1,
        reason: 'only what a hole needs to be recognised travels with it',
        recoverable: false,
      },
      { field: 'groups', count: 1, reason: 'it has no place on a map', recoverable: false },
      { field: 'parties', count: 1, reason: 'it has no place on a map', recoverable: false },
      { field: 'ext', count: 1, reason: 'it has no place on a map', recoverable: false },
      { field: 'colour', count: 1, reason: 'it has no place on a map', recoverable: false },
    ]);
  });

  it('counts a member whose name it needs itself, and members of a geometry that have no room', () => {
    const layout = structuredClone(sampleLayout);
    Object.assign(layout.holes[0], { tradeName: 'mine', later: { x: 1 } });
    Object.assign(layout.keepOuts?.[0].shape.path ?? {}, { taper: 2 });
    Object.assign(layout.substrates?.[0].outline ?? {}, { source: 'S' });
    const { losses, document } = convert(layout);
    expect(featureOf(document, 'hole/H-1').properties).toMatchObject({ tradeName: 'Sprinkler', later: { x: 1 } });
    const fields = losses.map(({ field, count }) => `${field} ${count}`);
    expect(fields).toEqual(
      expect.arrayContaining(['holes/tradeName 1', 'keepOuts/shape/path/taper 1', 'substrates/outline/source 1']),
    );
  });

  it('counts coordinates that have more digits than are written', () => {
    const layout = structuredClone(sampleLayout);
    layout.holes[0].point = [0.1 + 0.2, 0, 0];
    layout.holes[1].point = [1.0000001, 0];
    const rounded = convert(layout).losses.find(({ field }) => field === 'holes/point');
    expect(rounded).toEqual({
      field: 'holes/point',
      count: 2,
      reason: 'rounded to a millionth of a millimetre',
      recoverable: false,
    });
    expect(convert(sampleLayout).losses.map(({ field }) => field)).not.toContain('holes/point');
  });

  it('leaves geometry null and gives the reason where the reference system is not known', async () => {
    const unknown = { ...georeference, crs: 'EPSG:2277' };
    const layout = { ...placedLayout, frame: { ...placedLayout.frame, georeference: unknown } };
    const { losses, document } = convert(layout, { wgs84: await siteToWgs84(unknown) });
    expect(document.features.every(({ geometry }) => geometry === null)).toBe(true);
    // All features but the area without an outline.
    expect(losses.find(({ field }) => field === 'geometry')).toEqual({
      field: 'geometry',
      count: 13,
      reason: 'EPSG:2277 cannot be converted to WGS 84 without a register of reference systems',
      recoverable: true,
    });
    expect(document.layout).toMatchObject({ frame: { georeference: unknown } });
    expect(convert(sampleLayout).losses.map(({ field }) => field)).not.toContain('geometry');
  });

  it('leaves geometry null where it lies off the map or crosses the antimeridian', () => {
    const off = convert(placedLayout, { wgs84: { ok: true, note: '', toWgs84: () => undefined } });
    expect(off.losses.find(({ field }) => field === 'geometry')).toMatchObject({
      count: 12,
      reason: 'it lies off the map projection',
    });
    const dateLine = convert(placedLayout, {
      wgs84: { ok: true, note: '', toWgs84: (x, y) => [x > 100 ? -179.99 : 179.99, y / 1e6] },
    });
    expect(dateLine.losses).toContainEqual(
      expect.objectContaining({ field: 'geometry', reason: 'it crosses the antimeridian' }),
    );
    expect(rfc7946Faults(dateLine.document).filter(({ what }) => !what.startsWith('ring'))).toEqual([]);
  });

  it('has decimals enough that a point of the map is off by less than a tenth of a millimetre', async () => {
    const wgs84 = await siteToWgs84(georeference);
    if (!wgs84.ok) throw new Error(wgs84.reason);
    const { document } = convert(placedLayout, { wgs84 });
    const [lon, lat] = coordinatesOf<number[]>(featureOf(document, 'hole/H-1').geometry);
    const [exactLon, exactLat] = wgs84.toWgs84(1234.5, -678.000001) ?? [];
    // A degree of latitude is 111 km or a little less or more, one of longitude never longer.
    expect(Math.hypot(lon - Number(exactLon), lat - Number(exactLat)) * 111.7e6).toBeLessThan(0.1);
    expect(lon).not.toBe(exactLon);
    const coarse = convert(placedLayout, { wgs84, decimals: 3 });
    expect(featureOf(coarse.document, 'hole/H-1').geometry?.coordinates).toEqual([3, 0.905]);
  });

  it('hands out chunks of moderate size, one feature a line', () => {
    const holes = Array.from({ length: 5000 }, (_, i) => ({ ...sampleLayout.holes[0], id: `N${i}` }));
    const chunks = [...writeGeoJson(sourceOf({ ...sampleLayout, holes }), {}, () => undefined)];
    expect(Math.max(...chunks.map((chunk) => chunk.length))).toBeLessThan(70_000);
    expect(chunks.length).toBeGreaterThan(10);
    expect(
      chunks
        .join('')
        .split('\n')
        .filter((line) => line.startsWith('{"type":"Feature"')),
    ).toHaveLength(5012);
  });
});

/** Six times the signed volume between the origin and a planar ring, divided by six. */
function signedVolume(ring: readonly (readonly number[])[]): number {
  let sum = 0;
  const [a] = ring;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [b, c] = [ring[i], ring[i + 1]];
    sum += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return sum / 6;
}
