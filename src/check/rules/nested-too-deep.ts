import type { Rule } from '../rule.js';

export const nestedTooDeep: Rule = {
  id: 'nested-too-deep',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'JSON',
  title: 'Arrays and objects are nested too deep.',
  why: 'Readers limit the depth so that no file can exhaust them; nothing behind this place was judged.',
  mend: 'Flatten what is under `ext`; AHX itself needs fewer than ten levels.',
  data: { limit: 'deepest nesting that is read' },
  message: ({ limit }) =>
    `Arrays and objects are nested more than ${limit} deep here. Nothing behind this place was judged.`,
  example: {
    form: 'bytes',
    bad: '{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" }, "ext": { "urn:example:deep": [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]] },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
    good: '{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" }, "ext": { "urn:example:deep": [[[]]] },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
  },
};
