import type { Collection } from '../../generated/schema-tables.js';
import { identified } from '../../generated/schema-tables.js';
import type { Rule } from '../rule.js';
import type { LayoutRun } from '../run.js';

export const duplicateId: Rule = {
  id: 'duplicate-id',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'references',
  title: 'Two records of one kind have the same id.',
  why: 'Whatever refers to the id, a reference or a note from the field, may mean either of them.',
  mend: 'Give one of them an id of its own. Tags may repeat between levels; ids may not.',
  data: { id: 'the id', collection: 'the collection', first: 'JSON Pointer of the first record with the id' },
  message: ({ id, first }) => `The id "${id}" is already used by ${first}.`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [2000, 1000, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "point": [2000, 1000, 3000] }\n]',
  },
  checkLayout(run) {
    for (const name of identified) {
      if (name === 'holes') checkHoles(run);
      else checkCollection(name, run);
    }
  },
};

function checkHoles(run: LayoutRun): void {
  const { holes } = run.layout;
  run.judged(holes.count);
  for (const [i, first] of holes.duplicates) {
    const data = { id: holes.id(i), collection: 'holes', first: `/holes/${first}` };
    run.atHole(i, { member: 'id', data, cause: `holes ${data.id}` });
    holes.giveUp(i);
  }
}

function checkCollection(name: Exclude<Collection, 'holes'>, run: LayoutRun): void {
  const collection = run.layout.collection(name);
  const { ids, duplicates } = collection;
  run.judged(ids.length);
  for (const [index, first] of duplicates) {
    const data = { id: ids[index], collection: name, first: `/${name}/${first}` };
    run.atRecord(name, index, { member: 'id', data, cause: `${name} ${data.id}` });
    collection.giveUp(index);
  }
}
