import { type Collection, collections, references } from '../../generated/schema-tables.js';
import { holeReferences } from '../../model/hole-row.js';
import type { LayoutModel } from '../../model/layout-model.js';
import { referencesIn } from '../references-in.js';
import type { Rule } from '../rule.js';

/** Collections whose records have no use of their own: they are there to be referred to. */
const DEFINITIONS = ['trades', 'holeTypes', 'substrates', 'groups', 'sources'] as const;

export const unusedDefinition: Rule = {
  id: 'unused-definition',
  class: 'data',
  severity: 'off',
  since: '0.1',
  stage: 'references',
  title: 'A definition is referred to by nothing.',
  why: 'It is mostly left over from another layout, or the holes that should use it name another one.',
  mend: 'Remove it, or correct the references.',
  accept: 'In a layout that several others are made from.',
  data: { id: 'the id', collection: 'the collection' },
  message: ({ id, collection }) => `Nothing refers to "${id}" in ${collection}.`,
  example: {
    form: 'members',
    bad: '"sources": [{ "id": "S-9", "title": "Old drawing", "kind": "structural-drawing" }]',
    good: '"sources": []',
  },
  checkLayout(run) {
    const { layout } = run;
    const used = usedNames(layout);
    for (const name of DEFINITIONS) {
      const collection = layout.collection(name);
      run.judged(collection.ids.length);
      collection.ids.forEach((id, index) => {
        if (id === undefined || used.get(name)?.has(id)) return;
        const data = { id, collection: name };
        run.atRecord(name, index, { member: 'id', data, cause: name });
      });
    }
  },
};

function usedNames(layout: LayoutModel): Map<Collection, Set<string>> {
  const used = new Map<Collection, Set<string>>(DEFINITIONS.map((name) => [name, new Set()]));
  for (const name of ['header', ...collections] as const) {
    if (name === 'holes') continue;
    for (const { target, id } of referencesIn(layout, name)) used.get(target)?.add(id);
  }
  for (const path of holeReferences) {
    const target = references.holes.find((reference) => reference.path === path)?.target as Exclude<
      Collection,
      'holes'
    >;
    const column = layout.holes.reference(path);
    const names = new Set<number>();
    for (let i = 0; i < Math.min(layout.holes.count, column.length); i++) if (column[i] >= 0) names.add(column[i]);
    for (const name of names) used.get(target)?.add(layout.collection(target).names.text(name));
  }
  return used;
}
