import type { Level, Substrate } from '../../generated/layout.js';
import type { Rule } from '../rule.js';
import type { SiteRun } from '../run.js';
import { BROKEN } from '../site.js';
import { slabKey } from '../slab-key.js';
import type { SitePart } from '../site-part.js';

export const definitionsDiffer: Rule = {
  id: 'definitions-differ',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'Two layouts describe one slab or level differently.',
  why: 'Each trade is then judged by its own picture of the building, and one of the pictures is old or wrong.',
  mend: 'Find out which description holds, and give it to all trades.',
  accept: 'When one trade needs, and gives, no more than a part of what the other says.',
  needs:
    'At least two layouts of one frame that name the same substrate, by id, kind and face, or the same level, by id, name and building.',
  data: {
    collection: '`substrates` or `levels`',
    id: 'id of the record',
    members: 'the members that differ',
    otherInput: 'number of the input of the other record, from 1',
    otherName: 'name of the input of the other record',
  },
  message: ({ collection, id, members, otherName }) =>
    `The ${collection === 'levels' ? 'level' : 'substrate'} "${id}" is described differently in ${otherName} (${members}). Its holes are judged by the description here.`,
  causeMessage: ({ collection, members, otherName }) =>
    `${collection === 'levels' ? 'Levels' : 'Substrates'} are described differently in ${otherName} (${members}). Their holes are judged by the descriptions here.`,
  example: {
    form: 'layouts',
    bad: '"id": "sprinkler"\n---\n"id": "ducts", "holes": [],\n"substrates": [\n  { "id": "S-1", "kind": "solid-slab", "face": { "point": [0, 0, 3000], "inward": [0, 0, 1] }, "thickness": 60 }\n]',
    good: '"id": "sprinkler"\n---\n"id": "ducts", "holes": []',
  },
  checkSite({ parts }, run) {
    if (parts.length < 2) return;
    compare(parts, 'substrates', slabKey, run);
    compare(parts, 'levels', ({ id, name, building }: Level) => JSON.stringify([id, name, building]), run);
  },
};

/** Members that are for people, or say where a record comes from and not what it is. */
const ASIDE = new Set(['name', 'source', 'scans', 'note', 'ext']);

function compare<K extends 'substrates' | 'levels'>(
  parts: readonly SitePart[],
  collection: K,
  keyOf: (record: K extends 'levels' ? Level : Substrate) => string,
  run: SiteRun,
): void {
  const known = new Map<string, { part: SitePart; record: object }>();
  for (const part of parts) {
    part.layout.collection(collection).judged.forEach((record, index) => {
      if (record === undefined) {
        run.leftOut(BROKEN);
        return;
      }
      const key = keyOf(record as never);
      const other = known.get(key);
      if (other === undefined) {
        known.set(key, { part, record });
        return;
      }
      run.judged(1);
      const members = differing(record, other.record);
      if (members.length === 0) return;
      const data = {
        collection,
        id: record.id,
        members: members.join(', '),
        otherInput: other.part.input + 1,
        otherName: other.part.name,
      };
      run.atRecord(part, collection, index, {
        member: 'id',
        data,
        cause: `${collection} ${part.input} ${other.part.input} ${data.members}`,
      });
    });
  }
}

function differing(a: object, b: object): string[] {
  const [one, two] = [a, b] as Record<string, unknown>[];
  return [...new Set([...Object.keys(one), ...Object.keys(two)])].filter(
    (name) => !ASIDE.has(name) && JSON.stringify(one[name]) !== JSON.stringify(two[name]),
  );
}
