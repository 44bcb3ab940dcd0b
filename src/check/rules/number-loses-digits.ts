import type { Rule } from '../rule.js';

/** Whole numbers below are kept to the last digit. */
const KEPT = 1e15;

export const numberLosesDigits: Rule = {
  id: 'number-loses-digits',
  class: 'format',
  severity: 'warning',
  since: '0.1',
  stage: 'JSON',
  title: 'A number has more digits than a double keeps.',
  why: 'The value that programs compute with differs from the one that is written.',
  mend: 'Write lengths in millimetres with at most 6 decimals, and long identifiers as text.',
  accept: 'When the digits that get lost mean nothing.',
  data: { written: 'the number as written', read: 'the number as read' },
  message: ({ written, read }) => `The number ${written} has more digits than programs keep; it is read as ${read}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 60.00000000000000001234 }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "depth": 60.000001 }\n]',
  },
  fix(_data, { tokens, pointer: path, value }) {
    // Digits before the decimal point may belong to an identifier, and what an addition means nobody here knows.
    if (typeof value !== 'number' || Math.abs(value) >= KEPT || tokens.includes('ext')) return undefined;
    return { patch: [{ op: 'replace', path, value }] };
  },
};
