import type { Rule } from '../rule.js';

export const noncharacter: Rule = {
  id: 'noncharacter',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'JSON',
  title: 'A text has a Unicode noncharacter.',
  why: 'It has no meaning and no glyph; programs replace it or refuse the file.',
  mend: 'Remove it; it mostly comes from a fault of the program that wrote the file.',
  data: { codePoint: 'the noncharacter' },
  message: ({ codePoint }) => `The text has ${codePoint}, which is no character.`,
  example: { form: 'members', bad: '"title": "Level \\uffff 3"', good: '"title": "Level 3"' },
};
