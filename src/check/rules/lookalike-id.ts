import { identified } from '../../generated/schema-tables.js';
import type { Rule } from '../rule.js';

export const lookalikeId: Rule = {
  id: 'lookalike-id',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'references',
  title: 'Two ids of one kind differ only in the case of letters.',
  why: 'People on a lift read them as one, and some databases store them as one.',
  mend: 'Change one of the two ids so that it reads differently.',
  accept: 'When no person ever reads the ids.',
  data: { id: 'the id', collection: 'the collection', other: 'the earlier id that looks like it' },
  message: ({ id, other }) => `The id "${id}" differs from "${other}" only in the case of letters.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1a", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-1A", "trade": "FP", "holeType": "HT-1", "point": [2000, 1000, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1a", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-1b", "trade": "FP", "holeType": "HT-1", "point": [2000, 1000, 3000] }\n]',
  },
  checkLayout(run) {
    const { layout } = run;
    const { holes } = layout;
    for (const name of identified) {
      if (name === 'holes') continue;
      const { ids } = layout.collection(name);
      run.judged(ids.length);
      const seen = new Map<string, string>();
      ids.forEach((id, index) => {
        if (id === undefined) return;
        const folded = id.replace(/[A-Z]/g, (letter) => letter.toLowerCase());
        const other = seen.get(folded);
        if (other === undefined) seen.set(folded, id);
        if (other === undefined || other === id) return;
        const data = { id, collection: name, other };
        run.atRecord(name, index, { member: 'id', data, cause: `${name} ${folded}` });
      });
    }
    run.judged(holes.count);
    for (const [i, j] of holes.lookalikes) {
      const data = { id: holes.id(i), collection: 'holes', other: holes.id(j) };
      run.atHole(i, { member: 'id', data, cause: `holes ${data.other}` });
    }
  },
};
