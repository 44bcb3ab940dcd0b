import { describe, expect, it } from 'vitest';
import { check } from '../../src/jobs/check.js';
import { hole, layoutText, smallLayout, typeWithSpacing } from './small-layout.js';

const sprinkler = { id: 'sprinkler', holeTypes: [typeWithSpacing(80)] };
const ducts = {
  id: 'ducts',
  trades: [{ id: 'HV', name: 'Ducts' }],
  holeTypes: [typeWithSpacing(100)],
};
const ofDucts = (id: string, point: readonly number[]) => hole(id, point, { trade: 'HV' });

function findings(...inputs: Record<string, unknown>[]) {
  const report = check(inputs.map((members, k) => ({ name: `file ${k + 1}`, data: layoutText(members) })));
  return report.findings
    .filter(({ rule }) => rule.startsWith('holes-'))
    .map(({ rule, severity, input, id, data }) => ({
      rule,
      severity,
      input,
      id,
      other: data.other,
      in: data.otherInput,
    }));
}

describe('layouts of one frame', () => {
  it('are compared with each other, the larger least distance ruling', () => {
    const a = { ...sprinkler, holes: [hole('H-1', [0, 0, 0]), hole('H-2', [500, 0, 0])] };
    const b = { ...ducts, holes: [ofDucts('H-1', [90, 0, 0]), ofDucts('H-2', [600, 0, 0])] };
    expect(findings(a, b)).toEqual([
      { rule: 'holes-too-close', severity: 'error', input: 1, id: 'H-1', other: 'H-1', in: 2 },
      { rule: 'holes-too-close', severity: 'error', input: 2, id: 'H-1', other: 'H-1', in: 1 },
    ]);
  });

  it('are asked for one owner where holes of two trades coincide, and of one trade it is an error', () => {
    const a = { ...sprinkler, holes: [hole('A', [0, 0, 0]), hole('B', [500, 0, 0])] };
    const b = {
      ...ducts,
      trades: [...ducts.trades, ...smallLayout.trades],
      holes: [ofDucts('C', [0, 0, 0]), hole('D', [500, 0, 0])],
    };
    expect(findings(a, b)).toEqual([
      { rule: 'holes-coincide', severity: 'warning', input: 2, id: 'C', other: 'A', in: 1 },
      { rule: 'holes-coincide', severity: 'error', input: 2, id: 'D', other: 'B', in: 1 },
    ]);
  });

  it('know a trade by its id, name and firm', () => {
    const a = { ...sprinkler, holes: [hole('A', [0, 0, 0])] };
    const b = { ...ducts, trades: [{ id: 'FP', name: 'Sprinkler', firm: 'Another' }], holes: [hole('B', [0, 0, 0])] };
    expect(findings(a, b).map(({ severity }) => severity)).toEqual(['warning']);
  });

  it('are compared in plan where a height is not known and the substrate is the same', () => {
    const a = { ...sprinkler, holes: [hole('A', [0, 0])] };
    const b = { ...ducts, holes: [ofDucts('B', [99, 0])] };
    expect(findings(a, b)).toHaveLength(2);
    const elsewhere = [{ ...smallLayout.substrates[0], face: { point: [0, 0, 4000], inward: [0, 0, 1] } }];
    expect(findings(a, { ...b, substrates: elsewhere })).toEqual([]);
  });

  it('give the same findings in another order of inputs', () => {
    const a = { ...sprinkler, holes: [hole('H-1', [0, 0, 0])] };
    const b = { ...ducts, holes: [ofDucts('H-2', [90, 0, 0])] };
    const turned = findings(b, a).map((found) => ({ ...found, input: 3 - found.input, in: 3 - Number(found.in) }));
    expect(turned.reverse()).toEqual(findings(a, b));
  });

  it('count every hole once in the coverage', () => {
    const inputs = [sprinkler, ducts].map((members, k) => ({
      name: `file ${k + 1}`,
      data: layoutText({ ...members, holes: k === 0 ? [hole('A', [0, 0, 0])] : [ofDucts('B', [0, 500, 0])] }),
    }));
    const row = check(inputs).coverage.find(({ rule }) => rule === 'holes-coincide');
    expect(row).toMatchObject({ outcome: 'passed', judged: 2, of: 2 });
  });
});

describe('layouts that cannot be compared', () => {
  const a = { ...sprinkler, holes: [hole('A', [0, 0, 0])] };
  const b = { ...ducts, holes: [ofDucts('B', [0, 0, 0])] };

  it.each([
    ['frames of another name', { frame: { ...smallLayout.frame, name: 'Another' } }],
    ['frames of another height datum', { frame: { ...smallLayout.frame, heightDatum: 'sea' } }],
    ['the id of another: two revisions of one layout', { id: 'sprinkler' }],
  ])('are judged each by itself: %s', (_, members) => {
    expect(findings(a, { ...b, ...members })).toEqual([]);
  });

  const at = (members: Record<string, unknown>) => ({
    frame: {
      ...smallLayout.frame,
      georeference: { crs: 'EPSG:25832', eastings: 1, northings: 0, height: 0, scale: 0.001, ...members },
    },
  });

  it.each([
    { eastings: 2 },
    { northings: 2 },
    { height: 2 },
    { scale: 0.0009996 },
    { crs: 'EPSG:25833' },
    { xAxisAbscissa: 1, xAxisOrdinate: 0.001 },
  ])('are frames of one name at two places on the map: %j', (members) => {
    expect(findings({ ...a, ...at({}) }, { ...b, ...at(members) })).toEqual([]);
  });

  it('are not frames of one name at one place, or of which one has none', () => {
    expect(findings({ ...a, ...at({}) }, { ...b, ...at({}) })).toHaveLength(1);
    expect(findings({ ...a, ...at({}) }, { ...b, ...at({ xAxisAbscissa: 2, xAxisOrdinate: 0 }) })).toHaveLength(1);
    expect(findings({ ...a, ...at({}) }, b)).toHaveLength(1);
  });
});
