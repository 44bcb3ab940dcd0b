import type { FormPhrases } from '../../model/form-phrases.js';
import { counted } from '../counted.js';

/** What the forms of a report say of themselves, in English. Apart from the other sentences, for they are loaded late. */
export const englishForms: FormPhrases = {
  title: 'AHX check',
  input: (number) => `input ${number}`,
  kind: (kind) => kind,
  reason: (english) => english,
  noReason: 'no reason given',
  judgedPart: (reason, judged, of) =>
    judged === undefined || of === undefined ? `judged in part: ${reason}` : `judged ${judged} of ${of}: ${reason}`,
  holesJudged: (judged, of) => `${judged} of ${counted(of, 'hole')} judged`,
  unknownKind: 'it is not known what this is; nothing in it was judged',
  inCauses: (findings, causes) => `${findings} in ${counted(causes, 'cause')}`,
  entry: (number) => `entry ${number} of the baseline`,
  findingsLeftOut: (written, total, listed) =>
    `${written} of ${counted(total, 'finding')} ${written === 1 ? 'is' : 'are'} listed here, the gravest first; the counts in the verdicts cover all.${listed === undefined ? '' : ` The report itself lists ${listed}.`}`,
  annotationsLeftOut: (causes) =>
    `Not shown here: ${counted(causes, 'further cause')}, none graver than those of its severity above. The service shows few annotations of a step; ahx check --format text, json or sarif says more.`,
  otherRecord: (name) => (name === undefined ? 'The other input.' : `The other record, "${name}".`),
  csv: {
    columns: [
      ...(['input', 'rule', 'class', 'severity', 'cause', 'hole id', 'tag', 'pointer'] as const),
      ...(['line', 'column', 'row', 'message', 'accepted', 'accepted by', 'accepted until'] as const),
    ],
    note: 'note',
  },
  markdown: {
    inputHeads: ['input', 'kind', 'revision', 'holes'],
    causeHeads: ['severity', 'cause', 'rule', 'findings', 'first hole', 'first at'],
    moreInputs: (count) => `and ${counted(count, 'more input')}`,
    cause: (id, rule, findings) => `Cause ${id}, ${rule}: ${findings}`,
    unjudged: (notRun, inPart) =>
      [
        ...(notRun > 0 ? [`${counted(notRun, 'rule')} not run`] : []),
        ...(inPart > 0 ? [`${counted(inPart, 'rule')} run in part`] : []),
      ].join(', '),
    moreRules: (count) => `and ${counted(count, 'more rule')}`,
    listed: (listed, total) =>
      `The report lists ${listed} of ${counted(total, 'finding')}; all numbers above are exact.`,
    leftOut: (causes, lists) => {
      const parts = [
        ...(causes > 0 ? [counted(causes, 'further cause')] : []),
        ...(lists > 0 ? [`${counted(lists, 'list')} of findings of the causes above`] : []),
      ];
      return `Left out here: ${parts.join(', ')}. \`ahx check --format json\` gives all.`;
    },
    limits: (findings, bytes) =>
      `A list shows the first ${counted(findings, 'finding')} of a cause; all of this takes at most ${bytes} bytes.`,
  },
};
