import { describe, expect, it } from 'vitest';
import { isPlainSlip, misspelling } from '../../src/model/misspelling.js';

describe('a misspelling', () => {
  const names = ['holeType', 'depth', 'diameter', 'diameterTolerance', 'note', 'above', 'in', 'id'];

  it.each([
    ['hole_type', 'holeType'],
    ['HoleType', 'holeType'],
    ['hole type', 'holeType'],
    ['depht', 'depth'],
    ['edpth', 'depth'],
    ['dept', 'depth'],
    ['diametre', 'diameter'],
    ['diamiterr', 'diameter'],
    ['ID', 'id'],
  ])('%s can only be %s', (word, meant) => {
    expect(misspelling(word, names)).toBe(meant);
  });

  it.each([
    ['width', 'is too far from all'],
    ['vote', 'begins with another letter'],
    ['iin', 'is too short'],
    ['on', 'is too short'],
    ['x'.repeat(200), 'is too long'],
    ['', 'is nothing'],
    ['diameter2', 'has a digit more'],
    ['depth_1', 'has a digit more'],
  ])('%s is none: it %s', (word) => {
    expect(misspelling(word, names)).toBeUndefined();
  });

  it('is none where two candidates are as near, or differ in case only', () => {
    expect(misspelling('slot', ['slat', 'slit'])).toBeUndefined();
    expect(misspelling('AB-1', ['ab-1', 'Ab-1'])).toBeUndefined();
    expect(misspelling('depth', [])).toBeUndefined();
  });
});

describe('a plain slip', () => {
  it.each([
    ['DEPTH', 'depth'],
    ['hole_type', 'holeType'],
    ['depht', 'depth'],
    ['edpth', 'depth'],
    ['diamter', 'diameter'],
    ['dpth', 'depth'],
    ['deepth', 'depth'],
    ['depthh', 'depth'],
    ['diametre', 'diameter'],
  ])('makes %s of %s', (word, meant) => {
    expect(isPlainSlip(word, meant)).toBe(true);
  });

  it.each([
    ['axes', 'axis'],
    ['points', 'point'],
    ['dept', 'depth'],
    ['diamiter', 'diameter'],
    ['epth', 'width'],
    ['dpht', 'depth'],
    ['', 'depth'],
    ['depth', ''],
  ])('does not make %s of %s', (word, meant) => {
    expect(isPlainSlip(word, meant)).toBe(false);
  });
});
