import { type ScaleVerdict, suspectScale } from '../../frame/suspect-scale.js';
import { lengthUnits } from '../../units/length-unit.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';

/** Units of reference systems, with their length in metres. */
const UNITS = [
  { unit: 'metres', metres: 1 },
  { unit: 'US survey feet', metres: inMetres('us-ft') },
  { unit: 'feet', metres: inMetres('ft') },
];
/** A scale of 1 within this part of it is none. */
const SAME = 1e-9;

export const mapScaleSuspect: Rule = {
  id: 'map-scale-suspect',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'The scale of the georeference is not that of millimetres.',
  why: 'On the map, and in every file that is placed by it, the building has another size or lies elsewhere.',
  mend: 'Write what one millimetre is in units of the reference system: 0.001 where it is in metres. Ask the survey whether a combined factor is meant.',
  accept: 'When the scale has the combined factor of the survey in it and all who use the file know.',
  data: {
    scale: 'the scale',
    looksLike: '`inverted`, `no scale`, `factor` or `other`',
    expected: 'the scale that it should be or is near to; absent with `other`',
    unit: 'unit of the reference system for which that holds; absent with `other`',
    ratio: 'with `factor`: the scale divided by the one that it is near to',
  },
  message: ({ scale, looksLike, expected, unit, ratio }) => {
    if (looksLike === 'inverted')
      return `The scale ${scale} looks inverted: one millimetre is ${short(expected)} where the reference system is in ${unit}.`;
    if (looksLike === 'factor')
      return `The scale ${scale} is ${short(ratio)} times the ${short(expected)} of ${unit}; it may have the combined factor of the survey in it.`;
    if (looksLike === 'no scale')
      return `The scale is 1; one millimetre is ${short(expected)} where the reference system is in ${unit}.`;
    return `The scale ${scale} is neither that of a reference system in metres, 0.001, nor of one in feet.`;
  },
  example: {
    form: 'members',
    bad: '"frame": {\n  "name": "Site grid", "heightDatum": "Top of the ground slab",\n  "georeference": { "crs": "EPSG:32633", "eastings": 500000, "northings": 5400000, "height": 210, "scale": 1000 }\n}',
    good: '"frame": {\n  "name": "Site grid", "heightDatum": "Top of the ground slab",\n  "georeference": { "crs": "EPSG:32633", "eastings": 500000, "northings": 5400000, "height": 210, "scale": 0.001 }\n}',
  },
  checkInputs(layouts, run) {
    for (const part of layouts) {
      const { header, present } = part.layout;
      if (header.frame === undefined) {
        if (present.has('frame')) run.leftOut(BROKEN);
        continue;
      }
      const scale = header.frame.georeference?.scale;
      if (scale === undefined) continue;
      run.judged(1);
      const found = lookAt(scale);
      if (found === undefined) continue;
      const { looksLike } = found;
      const severity = looksLike === 'inverted' ? 'error' : 'warning';
      run.atMember(part, 'frame', { member: 'georeference/scale', data: { scale, ...found }, cause: '', severity });
    }
  },
};

interface Look {
  looksLike: 'inverted' | 'no scale' | 'factor' | 'other';
  expected?: number;
  unit?: string;
  ratio?: number;
}

/** What a scale looks like; undefined where it is that of one of the units. */
function lookAt(scale: number): Look | undefined {
  const verdicts = UNITS.map(({ unit, metres }) => ({ unit, ...suspectScale({ scale }, metres) }));
  const of = (kind: ScaleVerdict['kind']) => verdicts.filter((verdict) => verdict.kind === kind);
  if (of('expected').length > 0) return undefined;
  const [inverted] = of('inverted');
  if (inverted !== undefined) return { looksLike: 'inverted', expected: inverted.expected, unit: inverted.unit };
  if (Math.abs(scale - 1) <= SAME)
    return { looksLike: 'no scale', expected: verdicts[0].expected, unit: verdicts[0].unit };
  // The two feet are so alike that a factor is near to both; the nearer one is named.
  const [near] = of('factor').sort((a, b) => Math.abs(scale - a.expected) - Math.abs(scale - b.expected));
  if (near === undefined) return { looksLike: 'other' };
  return { looksLike: 'factor', expected: near.expected, unit: near.unit, ratio: scale / near.expected };
}

function inMetres(unit: 'ft' | 'us-ft'): number {
  const { numerator, denominator } = lengthUnits[unit];
  return numerator / denominator / 1000;
}

function short(value: unknown): number {
  return Number(Number(value).toPrecision(10));
}
