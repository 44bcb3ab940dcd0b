import { HoleColumns } from '../../model/hole-columns.js';
import type { LayoutModel } from '../../model/layout-model.js';
import type { Rule } from '../rule.js';

export const patternCount: Rule = {
  id: 'pattern-count',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'records',
  title: 'The pattern of a group has not one place for each of its holes.',
  why: 'Either a hole is missing or one too many, and a plate or a hanger will not go on; or nobody can tell which place is whose.',
  mend: 'Add the missing holes or take the surplus ones out of the group, or give the pattern a place for each, in the order of the holes.',
  data: {
    group: 'id of the group',
    places: 'number of places in the pattern',
    members: 'number of holes that name the group',
  },
  message: ({ group, places, members }) =>
    `The pattern of group "${group}" has ${places} ${places === 1 ? 'place' : 'places'}; ${members} ${members === 1 ? 'hole names' : 'holes name'} the group.`,
  causeMessage: ({ places, members }) =>
    `Patterns have ${places} ${places === 1 ? 'place' : 'places'} and their groups ${members} ${members === 1 ? 'hole' : 'holes'}.`,
  example: {
    form: 'members',
    bad: '"groups": [{ "id": "G-1", "kind": "trapeze", "pattern": [[0, 0], [600, 0]] }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "group": "G-1", "point": [1000, 1000, 3000] }\n]',
    good: '"groups": [{ "id": "G-1", "kind": "trapeze", "pattern": [[0, 0], [600, 0]] }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "group": "G-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "group": "G-1", "point": [1600, 1000, 3000] }\n]',
  },
  checkLayout(run) {
    const { layout } = run;
    const groups = layout.collection('groups');
    const patterned = groups.judged.flatMap((group, index) =>
      group?.pattern === undefined ? [] : [{ id: group.id, index, places: group.pattern.length }],
    );
    if (patterned.length === 0) return;
    const { members, mayHaveMore } = countMembers(layout);
    for (const { id, index, places } of patterned) {
      const own = members[groups.names.find(id)] ?? 0;
      if (own < places && mayHaveMore) run.leftOut('a hole whose group cannot be read');
      else if (own === 0) run.leftOut('no hole names the group');
      else {
        run.judged(1);
        if (own === places) continue;
        const data = { group: id, places, members: own };
        run.atRecord('groups', index, { member: 'pattern', data, cause: `${places} ${own}` });
        groups.giveUp(index);
      }
    }
  },
};

/** How many holes name each group, by number of its name; and whether holes that cannot be read may do so as well. */
function countMembers({ holes, unreadable }: LayoutModel): { members: number[]; mayHaveMore: boolean } {
  const column = holes.reference('group');
  const members: number[] = [];
  let mayHaveMore = unreadable.has('holes');
  for (let i = 0; i < holes.count; i++) {
    const name = i < column.length ? column[i] : -1;
    if (name >= 0) members[name] = (members[name] ?? 0) + 1;
    else if (holes.broken[i] === HoleColumns.BROKEN_RECORD) mayHaveMore = true;
  }
  return { members, mayHaveMore };
}
