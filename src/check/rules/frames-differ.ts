import type { LayoutModel } from '../../model/layout-model.js';
import type { Rule } from '../rule.js';
import { BROKEN } from '../site.js';
import type { InputLayout } from '../site-part.js';
import { sitesOf, whyApart } from '../sites-of.js';

export const framesDiffer: Rule = {
  id: 'frames-differ',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'frame',
  title: 'Layouts that are checked together have different frames, so that their holes are not compared.',
  why: 'Clashes between the trades stay unseen until the second crew stands below the first hole.',
  mend: 'Agree on one site frame with one name and one height datum, and issue both layouts in it. Where only the spelling differs, use one spelling.',
  accept: 'When the layouts belong to different sites.',
  needs: 'At least two layouts whose frames are not broken.',
  data: {
    differs: 'what differs: `name`, `height datum` or `georeference`',
    own: 'the name or the height datum here; absent for a georeference',
    other: 'that of the other layout; absent for a georeference',
    otherInput: 'number of the input of the other layout, from 1',
    otherName: 'name of the input of the other layout',
  },
  message: ({ differs, own, other, otherName }) =>
    differs === 'georeference'
      ? `The georeference is not that of ${otherName}, so the holes of the two are not compared.`
      : `The ${differs === 'name' ? 'name of the frame' : differs} is "${own}" here and "${other}" in ${otherName}, so the holes of the two are not compared.`,
  example: {
    form: 'layouts',
    bad: '"id": "sprinkler"\n---\n"id": "ducts", "frame": { "name": "Site grid 2", "heightDatum": "Top of the ground slab" }, "holes": []',
    good: '"id": "sprinkler"\n---\n"id": "ducts", "holes": []',
  },
  checkInputs(layouts, run) {
    if (layouts.length < 2) return;
    const isWhole = ({ layout }: InputLayout) => layout.header.frame !== undefined;
    const whole = layouts.filter(isWhole);
    run.judged(whole.length);
    run.leftOut(BROKEN, layouts.length - whole.length);
    sitesOf(whole).forEach((parts, s, sites) => {
      const earlier = sites.slice(0, s).flat();
      const found = firstApart(parts, earlier);
      if (found === undefined) return;
      const { part, other, differs } = found;
      const data = {
        differs,
        ...textsOf(differs, part.layout, other.layout),
        otherInput: other.input + 1,
        otherName: other.name,
      };
      run.atMember(part, 'frame', { data, cause: '' });
    });
  },
};

type Differs = 'name' | 'height datum' | 'georeference';

/** The first part whose frame differs from that of an earlier layout. */
function firstApart(
  parts: readonly InputLayout[],
  earlier: readonly InputLayout[],
): { part: InputLayout; other: InputLayout; differs: Differs } | undefined {
  for (const part of parts) {
    for (const other of earlier) {
      const differs = whyApart(other.layout, part.layout);
      if (differs !== undefined && differs !== 'same layout') return { part, other, differs };
    }
  }
  return undefined;
}

function textsOf(differs: Differs, { header }: LayoutModel, other: LayoutModel): { own?: string; other?: string } {
  if (differs === 'georeference') return {};
  const member = differs === 'name' ? 'name' : 'heightDatum';
  return { own: header.frame?.[member], other: other.header.frame?.[member] };
}
