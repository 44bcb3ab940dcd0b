import { describe, expect, it } from 'vitest';
import { fateOf } from './system-part.js';

describe('tests that need a system part', () => {
  it('run where it is there, required or not', () => {
    expect(fateOf('gdal', true, '')).toBe('run');
    expect(fateOf('gdal', true, 'gdal')).toBe('run');
  });

  it('are skipped where it is missing and nobody requires it', () => {
    expect(fateOf('gdal', false, '')).toBe('skip');
    expect(fateOf('gdal', false, 'chromium gdal-data')).toBe('skip');
  });

  it('fail where it is missing but required', () => {
    expect(fateOf('gdal', false, 'gdal')).toBe('fail');
    expect(fateOf('gdal', false, 'chromium, gdal')).toBe('fail');
  });
});
