import type { Rule } from '../rule.js';

export const notUtf8: Rule = {
  id: 'not-utf8',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'bytes',
  title: 'The text is not UTF-8.',
  why: 'Letters outside ASCII come out wrong or get lost, and two programs may read two different ids.',
  mend: 'Save the file as UTF-8. A single wrong byte mostly comes from text pasted out of a file in another encoding.',
  data: { found: 'the byte that does not fit, or the encoding that the whole file seems to have' },
  message: ({ found }) =>
    String(found).startsWith('0x') || String(found).startsWith('the ')
      ? `The text is not UTF-8 here (${found}).`
      : `The file looks like ${found}; it must be text in UTF-8.`,
  example: {
    form: 'bytes',
    bad: '{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" }, "title": "Niveau é",\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
    good: '{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" }, "title": "Niveau Ã©",\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
  },
};
