import type { Rule } from '../rule.js';

export const jsonSyntax: Rule = {
  id: 'json-syntax',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'JSON',
  title: 'The text is not JSON.',
  why: 'Nothing behind this place can be read, so nothing behind it was judged.',
  mend: 'Mend the text at the place given; often a comma is missing or too many, or the file was cut off.',
  data: { expected: 'what may stand at the place', found: 'what stands there' },
  message: ({ expected, found }) =>
    `The text is not JSON here: ${expected} expected, ${found} found. Nothing behind this place was judged.`,
  example: {
    form: 'bytes',
    bad: '{ "ahx": "0.1", "kind": "layout" "id": "L-1", "revision": { "label": "A" },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
    good: '{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
  },
};
