import type { Rule } from '../rule.js';

export const loneSurrogate: Rule = {
  id: 'lone-surrogate',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'JSON',
  title: 'A text has half of a surrogate pair.',
  why: 'The text is no Unicode; programs replace it, drop it or refuse the file.',
  mend: 'Write the whole character; a text was most likely cut in the middle of it.',
  data: { codePoint: 'the half that is there' },
  message: ({ codePoint }) => `The text has ${codePoint}, half of a character.`,
  example: { form: 'members', bad: '"title": "Level \\ud83c 3"', good: '"title": "Level 3"' },
};
