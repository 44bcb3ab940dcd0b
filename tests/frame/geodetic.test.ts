import { describe, expect, it } from 'vitest';
import { type KnownCrs, loadGeodetic } from '../../src/frame/geodetic.js';
import { transverseMercator } from './transverse-mercator.js';

/** Degrees of a hundredth of a millimetre on the ground. */
const hundredthMm = 1e-5 / 111_000;

async function known(crs: string): Promise<KnownCrs> {
  const answer = await loadGeodetic(crs);
  if (!answer.known) throw new Error(`${crs} is not known.`);
  return answer;
}

function expectNear(actual: readonly number[] | undefined, expected: readonly number[], toleranceDeg: number): void {
  expect(actual).toBeDefined();
  expected.forEach((value, i) => expect(Math.abs((actual?.[i] ?? Number.NaN) - value)).toBeLessThan(toleranceDeg));
}

const degrees = (d: number, m: number, s: number): number => d + m / 60 + s / 3600;

describe('loadGeodetic', () => {
  // PROJ, test/gie/builtins.gie, section UTM: `+proj=utm +ellps=GRS80 +zone=30`, tolerance 0.1 mm,
  // and `+proj=utm +zone=32`, tolerance 0.001 mm.
  it.each([
    ['EPSG:25830', 611263.812278905, 110547.105696804, -2, 1],
    ['EPSG:25830', 1057002.405491298, 110955.141175949, 2, 1],
    ['EPSG:25832', 687071.43910944, 6210141.32674801, 12, 56],
  ])('%s gives the longitude and latitude that PROJ tests', async (crs, easting, northing, lon, lat) => {
    expectNear((await known(crs)).toWgs84(easting, northing), [lon, lat], 10 * hundredthMm);
  });

  it('uses the same projection for NAD83, 72 degrees further west', async () => {
    // The first PROJ vector above: a UTM zone differs from another in its middle meridian only.
    expectNear((await known('EPSG:26918')).toWgs84(611263.812278905, 110547.105696804), [-74, 1], 10 * hundredthMm);
  });

  it('counts southern northings from 10 000 000 at the equator', async () => {
    // PROJ, as above, (-2, -1); WGS 84 and GRS 80 differ by less than the tolerance here.
    const crs = await known('EPSG:32730');
    expectNear(crs.toWgs84(611263.812278905, 10_000_000 - 110547.105696804), [-2, -1], 10 * hundredthMm);
  });

  it('agrees with the Krueger series to a hundredth of a millimetre', async () => {
    const crs = await known('EPSG:32632');
    for (const [lon, lat] of [
      [9, 48],
      [6.2, 51.5],
      [11.9, 70.25],
      [8.41, 0.3],
    ] as const) {
      const { easting, northing } = transverseMercator(lon, lat, 9);
      expectNear(crs.toWgs84(easting, northing), [lon, lat], hundredthMm);
    }
  });

  it('gives the pseudo-Mercator examples of EPSG guidance note 7-2', async () => {
    const crs = await known('EPSG:3857');
    // Method 1024, forward and reverse example; printed to 0.01 m and 0.001", 0.03 m.
    const lon = -degrees(100, 20, 0);
    expectNear(crs.toWgs84(-11169055.58, 2800000), [lon, degrees(24, 22, 54.433)], 3e-7);
    expectNear(crs.toWgs84(-11169055.58, 2810000), [lon, degrees(24, 27, 48.889)], 3e-7);
  });

  it.each([
    'EPSG:32601',
    'EPSG:32660',
    'EPSG:32701',
    'EPSG:32760',
    'EPSG:25828',
    'EPSG:25838',
    'EPSG:26901',
    'EPSG:26923',
    'EPSG:3857',
  ])('%s is known', async (crs) => {
    expect((await loadGeodetic(crs)).known).toBe(true);
  });

  it.each([
    'EPSG:32600',
    'EPSG:32661',
    'EPSG:32700',
    'EPSG:25839',
    'EPSG:26929',
    'EPSG:2277',
    'EPSG:4326',
    'ESRI:32632',
    'epsg:32632',
    '',
  ])('"%s" is answered as unknown, not thrown', async (crs) => {
    expect(await loadGeodetic(crs)).toEqual({ known: false, crs });
  });

  it('has no longitude and latitude for what is no point on the map', async () => {
    const crs = await known('EPSG:32632');
    expect(crs.toWgs84(Number.NaN, 0)).toBeUndefined();
    expect(crs.toWgs84(Number.POSITIVE_INFINITY, 0)).toBeUndefined();
    expect(crs.toWgs84(4.5e8, 5.4e9)).toBeUndefined();
  });

  it('says which datum difference it leaves out', async () => {
    expect((await known('EPSG:25832')).note).toMatch(/ETRS89.*1 m/);
    expect((await known('EPSG:26918')).note).toMatch(/NAD83.*1 to 2 m/);
    expect((await known('EPSG:32632')).note).toMatch(/about 2 m/);
  });
});
