import { describe, expect, it } from 'vitest';
import { lengthAtStart } from '../../src/units/length-at-start.js';

describe('the length at the start of a text', () => {
  // One inch is 25.4 mm exactly (NIST and NGS notice, 85 FR 62698).
  it.each([
    ['3/8 in', 9.525],
    ['3/8"', 9.525],
    ['3/8\u2033', 9.525],
    ['1/2 in.', 12.7],
    ['1-1/8 inch', 28.575],
    ['1 1/4" x 6"', 31.75],
    ['3/8"-16 rod', 9.525],
    ['0.375 in', 9.525],
    ['\u00bd"', 12.7],
    ['10 mm', 10],
    ['10mm', 10],
    ['9.5 mm, worn', 9.5],
    ['12 mm threaded rod', 12],
    ['1.2 cm', 12],
  ])('of %s is %d mm', (text, mm) => {
    expect(lengthAtStart(text)).toBe(mm);
  });

  it.each([
    '10',
    '3/8',
    '#3',
    'M10',
    'SDS 10 mm',
    '9,5 mm',
    '10 mmx160',
    '10 metres',
    '0 mm',
    '-10 mm',
    '10 x 160 mm',
    '1/3 in',
    'in',
    'half an inch',
    '',
  ])('is not known for "%s"', (text) => {
    expect(lengthAtStart(text)).toBeUndefined();
  });
});
