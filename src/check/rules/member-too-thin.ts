import { judgeHoles } from '../judge-holes.js';
import type { OfKind } from '../judge-kinds.js';
import type { Kind } from '../kinds.js';
import type { Rule } from '../rule.js';
import { SIDE, sideData, sideInWords } from '../side-in-words.js';
import { NO_HEIGHT } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';
import { type Thickness, thicknessAt } from '../surface.js';
import { TYPE_BROKEN } from '../to-be-made.js';

const NOT_KNOWN: OfKind = { leftOut: 'thickness not known' };

export const memberTooThin: Rule = {
  id: 'member-too-thin',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'The concrete is thinner than the type of the hole needs.',
  why: 'In thin concrete the anchor splits it or pulls a cone out of the far side long before its load.',
  mend: 'Move the hole to thicker concrete, or use a type that may go into concrete as thin as this.',
  accept: 'When the engineer in charge has worked the anchor out for this thickness.',
  needs: 'A substrate with a face, and its thickness at the hole.',
  data: {
    holeType: 'id of the hole type',
    substrate: 'id of the substrate',
    thickness: 'thickness of the concrete at the hole, mm',
    limit: 'least thickness that the type needs, mm',
    source: 'where the limit comes from',
    ...SIDE,
  },
  message: ({ holeType, substrate, thickness, limit, source, side, phaseFrom }, say) =>
    `Type "${holeType}" needs concrete at least ${say.length(limit)} thick (${source}); substrate "${substrate}" is ${say.length(thickness)} thick there${sideInWords(side, phaseFrom)}.`,
  causeMessage: ({ holeType, substrate, thickness, limit, source, side, phaseFrom }, say) =>
    `Holes of type "${holeType}" need concrete at least ${say.length(limit)} thick (${source}); substrate "${substrate}" is ${say.length(thickness)} thick${sideInWords(side, phaseFrom)}.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minThickness": { "value": 220, "source": "Invented approval 01, table 2" } }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Screw anchor", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n    "minThickness": { "value": 200, "source": "Invented approval 01, table 2" } }\n]',
  },
  checkSite(site, run) {
    judgeHoles(
      site,
      run,
      (kind) => {
        if (kind.type === undefined) return { leftOut: TYPE_BROKEN };
        if (kind.type.minThickness === undefined) return undefined;
        const { surface } = kind;
        if (surface === undefined) return { leftOut: site.whyNoSurface(kind.first) ?? 'substrate without a face' };
        if (surface.isVertical && !kind.hasHeight) return { leftOut: NO_HEIGHT };
        return surface.even === undefined ? { each: kind } : ofThickness(kind, surface.even);
      },
      (i, kind) => {
        const thickness = kind.surface && thicknessAt(kind.surface, site.point(i));
        return thickness === undefined ? NOT_KNOWN : ofThickness(kind, thickness);
      },
    );
  },
};

function ofThickness({ type, surface }: Kind, thickness: Thickness): OfKind {
  const limit = type?.minThickness;
  if (limit === undefined || surface === undefined) return NOT_KNOWN;
  if (thickness.mm >= limit.value - LENGTH_SLACK_MM) return 'passed';
  const { id: substrate } = surface.substrate;
  const data = {
    holeType: type?.id,
    substrate,
    thickness: thickness.mm,
    limit: limit.value,
    source: limit.source,
    ...sideData(thickness, surface),
  };
  return { finding: { data, cause: `${substrate} ${type?.id} ${thickness.mm} ${thickness.side ?? ''}` } };
}
