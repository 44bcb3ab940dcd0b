import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';

export const revisionUnissued: Rule = {
  id: 'revision-unissued',
  class: 'data',
  severity: { 'for-review': 'off', 'for-drilling': 'warning', 'for-closeout': 'off' },
  since: '0.1',
  stage: 'completeness',
  title: 'The revision does not say when and by whom it was issued.',
  why: 'Two files of one layout come to site sooner or later. Without a day and a name nobody can say which one the crew should hold.',
  mend: 'Let the party that issues the layout write the time and its own name into the revision.',
  accept: 'When a transmittal that goes with the file says both.',
  data: {
    label: 'label of the revision',
    missing: 'what is missing: `issued`, `by` or `issued and by`',
  },
  message: ({ label, missing }) => {
    const what = missing === 'issued' ? 'when' : missing === 'by' ? 'by whom' : 'when and by whom';
    return `Revision "${label}" does not say ${what} it was issued.`;
  },
  example: {
    form: 'members',
    bad: '"revision": { "label": "B" }',
    good: '"parties": [{ "id": "office", "firm": "Example Office", "role": "coordinator" }],\n"revision": { "label": "B", "issued": "2026-03-02T07:30:00-05:00", "by": "office" }',
  },
  checkSite(site, run) {
    for (const part of site.parts) {
      const { header, isHeaderBroken, holes } = part.layout;
      if (holes.count === 0) continue;
      if (isHeaderBroken || header.revision === undefined) {
        run.leftOut(BROKEN);
        continue;
      }
      run.judged(1);
      const { label, issued, by } = header.revision;
      const missing = [issued === undefined ? 'issued' : [], by === undefined ? 'by' : []].flat().join(' and ');
      if (missing !== '') run.atMember(part, 'revision', { data: { label, missing }, cause: label });
    }
  },
};
