import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileUri } from '../../src/report/file-uri.js';
import { HOSTILE } from './synthetic-report.js';

describe('fileUri', () => {
  it.each([
    ['level3.ahx.json', 'level3.ahx.json'],
    ['./plans/level 3 (draft).json', './plans/level%203%20%28draft%29.json'],
    ['/srv/plans/a#1?.json', 'file:///srv/plans/a%231%3F.json'],
    ['C:\\plans\\a b.json', 'file:///C:/plans/a%20b.json'],
    ['a:b', 'a%3Ab'],
    ['größe', 'gr%C3%B6%C3%9Fe'],
    ['\ud800', '%EF%BF%BD'],
  ])('of %j is %j', (name, uri) => {
    expect(fileUri(name)).toBe(uri);
  });

  it('holds only what RFC 3986 allows, and gives the name back', () => {
    const nasty = fc.oneof(fc.constantFrom(...HOSTILE), fc.string({ unit: 'grapheme' }));
    fc.assert(
      fc.property(nasty, (name) => {
        fc.pre(!/^[A-Za-z]:/.test(name));
        const uri = fileUri(name);
        expect(uri).toMatch(/^(file:\/\/\/)?([A-Za-z0-9._~/-]|%[0-9A-F]{2})*$/);
        const back = decodeURIComponent(uri.replace(/^file:\/\//, ''));
        expect(back).toBe(name.replace(/\p{Cs}/gu, '\ufffd'));
      }),
    );
  });
});
