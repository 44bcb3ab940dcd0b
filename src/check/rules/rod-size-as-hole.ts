import { lengthAtStart } from '../../units/length-at-start.js';
import { judgeTypes } from '../judge-types.js';
import type { Rule } from '../rule.js';
import { LENGTH_SLACK_MM } from '../slack.js';

/** Principles of which the hole is wider than the rod that goes in. Common practice. */
const WIDER_THAN_ROD: ReadonlySet<string> = new Set(['displacement-controlled', 'adhesive']);

export const rodSizeAsHole: Rule = {
  id: 'rod-size-as-hole',
  class: 'data',
  severity: 'warning',
  since: '0.1',
  stage: 'control',
  title: 'The diameter of the hole is the size of the rod.',
  why: 'The hole for a sleeve or for adhesive is wider than the rod. Drilled to the size of the rod, neither goes in, and every hole is drilled twice.',
  mend: 'Take the diameter of the hole from the approval of the anchor, not the thread.',
  needs: 'A rod whose text begins with its size, such as `M12`, `12 mm` or `3/8 in`.',
  options: {
    within: {
      what: 'Greatest difference at which the two are the same size.',
      unit: 'mm',
      default: 0.05,
      least: 0,
      most: 1,
    },
  },
  data: {
    holeType: 'id of the hole type',
    rod: 'the rod as written',
    size: 'its size, mm',
    diameter: 'diameter of the hole type, mm',
    principle: 'principle of the anchor',
  },
  message: ({ holeType, rod, diameter, principle }, say) =>
    `The hole of type "${holeType}" is ${say.length(diameter)}, as wide as its rod "${rod}"; the hole of ${principle} anchors is wider than the rod.`,
  causeMessage: ({ size, principle }, say) =>
    `Hole types have a hole as wide as its rod, ${say.length(size)}; the hole of ${principle} anchors is wider than the rod.`,
  example: {
    form: 'members',
    bad: '"holeTypes": [\n  { "id": "HT-1", "name": "Drop-in", "principle": "displacement-controlled", "form": "blind", "diameter": 9.525, "depth": 40,\n    "rod": "3/8 in" }\n]',
    good: '"holeTypes": [\n  { "id": "HT-1", "name": "Drop-in", "principle": "displacement-controlled", "form": "blind", "diameter": 12.7, "depth": 40,\n    "rod": "3/8 in" }\n]',
  },
  checkSite(site, run) {
    const within = run.option('within');
    judgeTypes(site, run, { readsLengths: true }, ({ id, rod, principle, diameter }) => {
      if (rod === undefined || !WIDER_THAN_ROD.has(principle)) return undefined;
      const size = threadSize(rod) ?? lengthAtStart(rod);
      if (size === undefined) return { leftOut: 'rod without a size and unit' };
      if (Math.abs(size - diameter) > within + LENGTH_SLACK_MM) return 'passed';
      const data = { holeType: id, rod, size, diameter, principle };
      return { finding: { member: 'diameter', data, cause: `${size} ${principle}` } };
    });
  },
};

/** Size of a metric thread in millimetres, such as 12 for `M12` and `M12x1.75 rod`. */
function threadSize(rod: string): number | undefined {
  const [, size] = /^M(\d{1,3}(?:\.\d+)?)(?![\d.])/.exec(rod) ?? [];
  return size === undefined ? undefined : Number(size);
}
