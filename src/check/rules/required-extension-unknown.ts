import type { Rule } from '../rule.js';

export const requiredExtensionUnknown: Rule = {
  id: 'required-extension-unknown',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'schema',
  title: 'The document needs an extension that this software does not know.',
  why: 'Its author says that the document cannot be understood without the extension, so this software answers "cannot judge".',
  mend: 'Use software that knows the extension, or ask the author for a document without it.',
  data: { extension: 'URI of the extension' },
  message: ({ extension }) =>
    `The document needs the extension ${extension}, which this software does not know; it cannot judge the document.`,
  example: {
    form: 'members',
    bad: '"extensionsRequired": ["https://example.org/ahx/vacuum-log"]',
    good: '"extensionsRequired": []',
  },
};
