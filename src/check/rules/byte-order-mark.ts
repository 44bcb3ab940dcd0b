import type { Rule } from '../rule.js';

export const byteOrderMark: Rule = {
  id: 'byte-order-mark',
  class: 'format',
  severity: 'warning',
  since: '0.1',
  stage: 'bytes',
  title: 'The text begins with a byte order mark.',
  why: 'Some JSON parsers refuse the file; the mark has no meaning in UTF-8.',
  mend: 'Save the file as UTF-8 without byte order mark.',
  accept: 'When every program on the way is known to skip it.',
  data: {},
  message: () => 'The file begins with a byte order mark; it was skipped.',
  example: {
    form: 'bytes',
    bad: 'ï»¿{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
    good: '{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
  },
  fix: () => ({ byteOrderMark: 'remove' }),
};
