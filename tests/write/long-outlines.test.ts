import { describe, expect, it } from 'vitest';
import { siteToWgs84 } from '../../src/frame/site-to-wgs84.js';
import { outlineGeometry } from '../../src/write/site-geometry.js';

describe('an outline', () => {
  it('may have more corners than a call takes arguments', () => {
    const count = 300_000;
    const points = Array.from({ length: count }, (_, k) => {
      const angle = (2 * Math.PI * k) / count;
      return [10_000 * Math.cos(angle), 10_000 * Math.sin(angle)];
    });
    expect(outlineGeometry({ points }, []).geometry.type).toBe('Polygon');
  });
});

describe('a georeference', () => {
  it('whose x axis has no direction gives a reason and no exception', async () => {
    const georeference = { crs: 'EPSG:32632', eastings: 0, northings: 0, height: 0, scale: 0.001 };
    expect(await siteToWgs84({ ...georeference, xAxisAbscissa: 0, xAxisOrdinate: 0 })).toEqual({
      ok: false,
      reason: 'the x axis (0, 0) of the georeference has no direction',
    });
    expect(await siteToWgs84({ ...georeference, xAxisAbscissa: 0 })).toMatchObject({ ok: false });
    expect(await siteToWgs84({ ...georeference, xAxisAbscissa: 0, xAxisOrdinate: -1 })).toMatchObject({ ok: true });
  });
});
