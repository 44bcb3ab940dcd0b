import type { Rule } from '../rule.js';

export const unsupportedVersion: Rule = {
  id: 'unsupported-version',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'The document is written in a version of AHX that this software does not know.',
  why: 'Members that it does not know may change what the others mean, so it answers "cannot judge".',
  mend: 'Use newer software, or have the document written in a version that both sides know.',
  data: { found: 'the version of the document', supported: 'the version that this software knows' },
  message: ({ found, supported }) =>
    `The document is written in AHX ${found}; this software knows ${supported} and cannot judge it.`,
  example: {
    form: 'bytes',
    bad: '{ "ahx": "1.0", "kind": "layout", "id": "L-1", "revision": { "label": "A" },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
    good: '{ "ahx": "0.1", "kind": "layout", "id": "L-1", "revision": { "label": "A" },\n  "frame": { "name": "site", "heightDatum": "floor" }, "trades": [], "holeTypes": [], "holes": [] }',
  },
};
