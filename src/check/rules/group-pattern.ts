import { misfitOf } from '../group-fit.js';
import { groupsOf } from '../group-members.js';
import type { Rule } from '../rule.js';

export const groupPattern: Rule = {
  id: 'group-pattern',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'The holes of a group do not lie as its pattern says.',
  why: 'The plate or hanger is made to the pattern and will not go on the anchors. A mirrored or turned group fits its plate, but carries on the wrong side.',
  mend: 'Correct the holes or the pattern, whichever is wrong; check the order of the holes and the direction of the run first.',
  accept: 'When what is hung has slots that take the difference; then give the group that tolerance.',
  needs: 'A pattern with a place for each member; a group with a run, or of more than 64 members, also a face of all.',
  options: {
    tolerance: {
      what: 'Greatest deviation from the pattern of a group that gives none.',
      unit: 'mm',
      default: 1,
      least: 0,
      most: 1000,
    },
  },
  data: {
    group: 'id of the group',
    fault: 'distance, place, turned or mirrored',
    mirrored: 'true where the pattern fits when it is mirrored; else absent',
    member: 'id of the member that is worst',
    other: 'id of the other member of the pair; only where a distance is wrong',
    distance: 'distance of the pair, or of the member from its place, mm',
    inPattern: 'distance of the two places in the pattern, mm; only where a distance is wrong',
    tolerance: 'greatest deviation, mm',
    kind: 'kind of the group',
  },
  message: ({ group, fault, member, other, distance, inPattern, tolerance }, say) => {
    const allowed = `(tolerance ${say.length(tolerance)})`;
    if (fault === 'distance') {
      return `Holes "${member}" and "${other}" of group "${group}" lie ${say.length(distance)} apart, ${say.length(inPattern)} in its pattern ${allowed}.`;
    }
    if (fault === 'place') {
      return `Hole "${member}" of group "${group}" lies ${say.length(distance)} from its place in the pattern ${allowed}, and no turn or mirroring of the group mends it.`;
    }
    const how = fault === 'mirrored' ? 'mirrored, on the other side of its run' : 'turned against its run';
    return `Group "${group}" fits its pattern only ${how}: hole "${member}" lies ${say.length(distance)} from its place ${allowed}.`;
  },
  causeMessage: ({ fault, kind }) => {
    if (fault === 'distance')
      return `Holes of groups of kind ${kind} lie nearer or farther apart than in the pattern of their group.`;
    return fault === 'place'
      ? `Holes of groups of kind ${kind} do not lie at their places in the pattern of their group.`
      : `Groups of kind ${kind} are ${fault} against their pattern.`;
  },
  example: {
    form: 'members',
    bad: '"groups": [{ "id": "G-1", "kind": "trapeze", "run": [1, 0, 0], "pattern": [[0, 0], [0, 600]] }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "group": "G-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "group": "G-1", "point": [1000, 1610, 3000] }\n]',
    good: '"groups": [{ "id": "G-1", "kind": "trapeze", "run": [1, 0, 0], "pattern": [[0, 0], [0, 600]] }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "group": "G-1", "point": [1000, 1000, 3000] },\n  { "id": "H-2", "trade": "FP", "holeType": "HT-1", "group": "G-1", "point": [1000, 1600, 3000] }\n]',
  },
  checkSite(site, run) {
    for (const { group, place, members } of groupsOf(site, run, ({ pattern = [] }) => pattern.length > 1)) {
      const tolerance = group.patternTolerance ?? run.option('tolerance');
      const isWhole = group.pattern?.length === members.length;
      const misfit = isWhole ? misfitOf(site, group, members, tolerance) : 'another number of members than places';
      if (typeof misfit === 'string') {
        run.leftOut(misfit);
        continue;
      }
      run.judged(1);
      if (misfit === undefined) continue;
      const { fault, kind } = { ...misfit, kind: group.kind };
      const data = {
        group: group.id,
        ...misfit,
        ...(fault === 'mirrored' && { mirrored: true }),
        member: site.holeId(misfit.member),
        ...('other' in misfit && { other: site.holeId(misfit.other) }),
        tolerance,
        kind,
      };
      run.atRecord(place.part, 'groups', place.index, { data, cause: `${fault} ${kind}` });
    }
  },
};
