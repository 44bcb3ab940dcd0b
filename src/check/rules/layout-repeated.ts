import type { LayoutModel } from '../../model/layout-model.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';

export const layoutRepeated: Rule = {
  id: 'layout-repeated',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'Two layouts that are checked together have the same id.',
  why: 'They are two revisions of one layout, or one file twice. Their holes are not compared, and one of the two should not be there.',
  mend: 'Check the revision that holds and leave the other one out. A layout of its own needs an id of its own.',
  accept: 'When both revisions are checked on purpose.',
  needs: 'At least two layouts whose ids can be read.',
  data: {
    id: 'the id',
    revision: 'label of the revision here; absent where it cannot be read',
    otherRevision: 'label of the revision of the other layout; absent where it cannot be read',
    otherInput: 'number of the input of the other layout, from 1',
    otherName: 'name of the input of the other layout',
  },
  message: ({ id, revision, otherRevision, otherName }) => {
    const differ = revision !== undefined && otherRevision !== undefined && revision !== otherRevision;
    const revisions = differ ? `, revision "${revision}" here and "${otherRevision}" there` : '';
    return `The layout "${id}" is already in ${otherName}${revisions}. Holes of the two are not compared. Leave out the one that no longer holds, or give one an id of its own.`;
  },
  example: {
    form: 'layouts',
    bad: '"id": "sprinkler"\n---\n"id": "sprinkler", "revision": { "label": "B" }',
    good: '"id": "sprinkler"\n---\n"id": "ducts", "holes": []',
  },
  checkInputs(layouts, run) {
    if (layouts.length < 2) return;
    const revisionOf = ({ header }: LayoutModel) => header.revision?.label;
    layouts.forEach((part, k) => {
      const { id } = part.layout.header;
      if (id === undefined) {
        run.leftOut(BROKEN);
        return;
      }
      run.judged(1);
      const other = layouts.slice(0, k).find(({ layout }) => layout.header.id === id);
      if (other === undefined) return;
      const revision = revisionOf(part.layout);
      const otherRevision = revisionOf(other.layout);
      const data = {
        id,
        ...(revision !== undefined && { revision }),
        ...(otherRevision !== undefined && { otherRevision }),
        otherInput: other.input + 1,
        otherName: other.name,
      };
      run.atMember(part, 'id', { data, cause: id });
    });
  },
};
