import { describe, expect, it } from 'vitest';
import { layoutText } from '../jobs/small-layout.js';
import { ahx, workFolder } from './run-ahx.js';

const { file, path } = workFolder();
const good = file('good.ahx.json', layoutText());
/** Makes a part of the platform fail that reading of ids needs, as a fault of ours would. */
const planted = file('planted.cjs', "String.prototype.normalize = () => { throw new Error('planted fault'); };");
const env = { NODE_OPTIONS: `--require ${JSON.stringify(planted)}` };

describe('a fault of the command itself', () => {
  it('ends with 4, says so, and never becomes a finding about the data', () => {
    const { code, out, err } = ahx(['check', good], { env });
    expect([code, out]).toEqual([4, '']);
    expect(err).toMatch(/^ahx: a fault of ahx itself, not of the data\./);
    expect(err).toContain('planted fault');
  });

  it('is told from an input that cannot be read, and comes before it', () => {
    expect(ahx(['check', path('missing.ahx.json'), good], { env }).code).toBe(4);
    expect(ahx(['check', '-'], { env, input: layoutText() })).toMatchObject({ code: 4, out: '' });
  });

  it('leaves nothing behind a conversion', () => {
    expect(ahx(['convert', good, path('out.geojson')], { env }).code).toBe(4);
    expect(ahx(['convert', good, path('out.geojson')]).code).toBe(0);
  });
});
