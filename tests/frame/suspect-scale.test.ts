import { describe, expect, it } from 'vitest';
import { suspectScale } from '../../src/frame/suspect-scale.js';

const surveyFoot = 1200 / 3937;

describe('suspectScale', () => {
  // checks.md F-16: useful scales, and the sample models that have the inverse.
  it.each([
    ['mm to m', 0.001, 1, 'expected'],
    ['mm to US survey feet, as printed', 0.0032808333333, surveyFoot, 'expected'],
    ['mm to m the other way round', 1000, 1, 'inverted'],
    ['mm to US survey feet the other way round', 1 / 0.0032808333333, surveyFoot, 'inverted'],
    ['a combined grid factor folded in', 0.001 * 0.9996, 1, 'factor'],
    ['metres taken for millimetres', 1, 1, 'other'],
    ['no scale at all', undefined, 1, 'absent'],
    ['no scale on a map in millimetres', undefined, 0.001, 'expected'],
  ] as const)('%s', (_what, scale, mapUnitMetres, kind) => {
    expect(suspectScale({ scale }, mapUnitMetres).kind).toBe(kind);
  });

  it('tells scales apart from a billionth on', () => {
    expect(suspectScale({ scale: 0.001 * (1 + 5e-10) }, 1).kind).toBe('expected');
    expect(suspectScale({ scale: 0.001 * (1 + 5e-9) }, 1).kind).toBe('factor');
    expect(suspectScale({ scale: 0.001 * (1 + 2e-3) }, 1).kind).toBe('other');
  });

  it('gives both numbers', () => {
    expect(suspectScale({ scale: 1000 }, 1)).toEqual({ kind: 'inverted', expected: 0.001, actual: 1000 });
  });
});
