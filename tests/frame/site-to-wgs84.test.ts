import { describe, expect, it } from 'vitest';
import { siteToWgs84 } from '../../src/frame/site-to-wgs84.js';
import { transverseMercator } from './transverse-mercator.js';

const { easting, northing } = transverseMercator(9.1, 48.7, 9);
const georeference = {
  crs: 'EPSG:32632',
  eastings: easting,
  northings: northing,
  height: 400,
  xAxisAbscissa: 0,
  xAxisOrdinate: 1,
  scale: 0.001,
};

describe('siteToWgs84', () => {
  it('ties map conversion and projection together', async () => {
    const answer = await siteToWgs84(georeference);
    if (!answer.ok) throw new Error(answer.reason);
    const [lon, lat] = answer.toWgs84(0, 0) ?? [];
    expect(lon).toBeCloseTo(9.1, 9);
    expect(lat).toBeCloseTo(48.7, 9);
    // The site x axis points north: 111.2 m along it are a thousandth of a degree of latitude.
    const [, further] = answer.toWgs84(111_200, 0) ?? [];
    expect(further).toBeCloseTo(48.701, 5);
  });

  it('answers with a reason where the reference system needs a register', async () => {
    expect(await siteToWgs84({ ...georeference, crs: 'EPSG:2277' })).toEqual({
      ok: false,
      reason: 'EPSG:2277 cannot be converted to WGS 84 without a register of reference systems',
    });
  });

  it('answers with a reason where the scale cannot be meant, and guesses nothing', async () => {
    const inverted = await siteToWgs84({ ...georeference, scale: 1000 });
    expect(inverted).toMatchObject({ ok: false, reason: expect.stringContaining('inverted') });
    expect((await siteToWgs84({ ...georeference, scale: 1 })).ok).toBe(false);
  });

  it('takes a scale with a grid factor in it', async () => {
    expect((await siteToWgs84({ ...georeference, scale: 0.0009996 })).ok).toBe(true);
  });
});
