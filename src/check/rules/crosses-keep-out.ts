import type { KeepOut } from '../../generated/layout.js';
import type { Severity } from '../../model/observation.js';
import { KeepOutIndex } from '../keep-out-index.js';
import { kindsOf } from '../kinds.js';
import type { Rule } from '../rule.js';
import type { Site } from '../site.js';
import { LENGTH_SLACK_MM } from '../slack.js';

export const crossesKeepOut: Rule = {
  id: 'crosses-keep-out',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole comes too near to something that must not be hit.',
  why: 'A struck tendon or live service can kill; a cut bar weakens the structure. That no crossing is found says nothing about what is in the concrete.',
  mend: 'Move the hole, shorten it, or have the keep-out measured and its record corrected.',
  accept:
    'A bar known from a drawing may lie elsewhere; it is looked for on site. Nothing else without the engineer in charge.',
  data: {
    keepOut: 'id of the keep-out',
    kind: 'what it is',
    knownFrom: 'where it is known from',
    clear: 'clear distance between hole and shape, mm; negative where the hole goes into it',
    standoff: 'least clear distance, mm',
  },
  message: ({ keepOut, kind, knownFrom, clear, standoff }, say) =>
    Number(clear) <= 0
      ? `The hole goes into keep-out "${keepOut}" (${kindInWords(kind)}, known from a ${String(knownFrom).replace('-', ' ')}).`
      : `The hole passes keep-out "${keepOut}" (${kindInWords(kind)}, known from a ${String(knownFrom).replace('-', ' ')}) at ${say.length(clear)}; at least ${say.length(standoff)} must be kept.`,
  causeMessage: ({ keepOut, kind, knownFrom }) =>
    kind === 'bar' && knownFrom === 'design-drawing'
      ? 'Holes meet bars that are known from a design drawing; look for them before drilling.'
      : `Holes come too near to keep-out "${keepOut}" (${kindInWords(kind)}, known from a ${String(knownFrom).replace('-', ' ')}).`,
  example: {
    form: 'members',
    bad: '"keepOuts": [{ "id": "T-1", "kind": "tendon", "standoff": 50, "knownFrom": "scan",\n  "shape": { "path": { "points": [[0, 1000, 3030], [9000, 1000, 3030]], "radius": 10 } } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1064.9, 3000], "axis": [0, 0, 1] }\n]',
    good: '"keepOuts": [{ "id": "T-1", "kind": "tendon", "standoff": 50, "knownFrom": "scan",\n  "shape": { "path": { "points": [[0, 1000, 3030], [9000, 1000, 3030]], "radius": 10 } } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1066, 3000], "axis": [0, 0, 1] }\n]',
  },
  checkSite(site, run) {
    const index = new KeepOutIndex(keepOutsOf(site));
    if (index.count === 0) return;
    const kinds = kindsOf(site);
    // One function for all holes: a new one for each would be garbage a million times.
    let i = 0;
    const judge = (keepOut: KeepOut, clear: number) => {
      if (clear >= keepOut.standoff - LENGTH_SLACK_MM) return;
      const { id, kind, knownFrom, standoff } = keepOut;
      const severity = severityOf(keepOut, clear);
      const data = { keepOut: id, kind, knownFrom, clear, standoff };
      run.atHole(i, { data, cause: severity === 'info' ? `bars ${site.substrates.nameOf(i)}` : id, severity });
    };
    for (; i < site.holeCount; i++) {
      const depth = site.depth(i);
      const { axis, out } = kinds.at(i);
      const p = site.point(i);
      if (out !== undefined) run.leftOut(out);
      else if (Number.isNaN(depth)) run.leftOut('depth not known');
      else if (Number.isNaN(site.diameter(i))) run.leftOut('diameter not known');
      else if (axis === undefined) run.leftOut('axis not known');
      else if (Number.isNaN(p[2])) run.leftOut('height not known');
      else {
        run.judged(1);
        index.near(p, axis, depth, site.diameter(i) / 2, judge);
      }
    }
  },
};

/** The keep-outs of all layouts; one that two layouts describe alike is taken once. */
function keepOutsOf({ parts }: Site): (KeepOut | undefined)[] {
  const known = new Set<string>();
  return parts.flatMap(({ layout }) => {
    const { judged } = layout.collection('keepOuts');
    if (parts.length === 1) return judged;
    return judged.filter((keepOut) => {
      if (keepOut === undefined) return false;
      const { id, kind, shape, standoff, positionTolerance, knownFrom } = keepOut;
      const key = JSON.stringify([id, kind, shape, standoff, positionTolerance, knownFrom]);
      return known.size < known.add(key).size;
    });
  });
}

function severityOf({ kind, knownFrom, standoff, positionTolerance }: KeepOut, clear: number): Severity {
  if (knownFrom !== 'design-drawing') return 'error';
  if (kind === 'bar') return 'info';
  return positionTolerance !== undefined && standoff - clear <= positionTolerance + LENGTH_SLACK_MM
    ? 'warning'
    : 'error';
}

function kindInWords(kind: unknown): string {
  return String(kind).replace('-', ' ');
}
