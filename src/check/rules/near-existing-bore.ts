import { BoreFaults } from '../bore-faults.js';
import { inInput, OTHER_INPUT } from '../other-input.js';
import type { Rule } from '../rule.js';
import { siteBores } from '../site-bores.js';

export const nearExistingBore: Rule = {
  id: 'near-existing-bore',
  class: 'site',
  severity: 'error',
  since: '0.1',
  stage: 'geometry',
  title: 'A hole lies too near to a bore that is in the concrete already.',
  why: 'Concrete beside an old bore is weak, filled or not, and an anchor beside another one takes part of what holds it. A bit that meets an old bore wanders or jams.',
  mend: 'Move the hole, or have the designer say what the old bore is filled with and how near the new anchor may come.',
  accept:
    'When the designer of the anchors has agreed to the distance in writing, or the old bore is meant to be used.',
  needs: 'Bores in the file; a distance is judged where the hole type gives one.',
  options: {
    mostDepth: {
      what: 'Depth that a bore of unknown depth is taken to have at most.',
      unit: 'mm',
      default: 1000,
      least: 0,
      most: 100_000,
    },
    mostDiameter: {
      what: 'Diameter that a bore of unknown diameter is taken to have at most.',
      unit: 'mm',
      default: 150,
      least: 0,
      most: 100_000,
    },
  },
  data: {
    bore: 'id of the nearest bore that is at fault',
    ...OTHER_INPUT,
    end: 'how the bore ended: complete, partial, abandoned',
    fault: 'same-place, runs-into or too-close, the first that is so',
    distance: 'distance of the two points, mm',
    limit: 'least distance, mm; only where it is not kept',
    source: 'where the limit comes from; only where it is not kept',
    overlap: 'how far the two walls lie in each other, mm; only where they do',
    holeType: 'id of the hole type of this hole',
  },
  message: ({ bore, otherName, end, fault, distance, limit, source, overlap }, say) => {
    const which = `existing bore "${bore}"${inInput(otherName)} (${end})`;
    if (fault === 'same-place') return `The hole lies at the place of ${which}. Say which of the two is meant.`;
    if (fault === 'runs-into')
      return `The hole runs into ${which}: their walls lie ${say.length(overlap)} in each other.`;
    return `The hole lies ${say.length(distance)} from ${which}; at least ${say.length(limit)} is needed (${source}).`;
  },
  causeMessage: ({ end, fault, holeType, otherName }) =>
    fault === 'same-place'
      ? `Holes of type "${holeType}" lie at the places of existing bores (${end})${inInput(otherName)}.`
      : fault === 'runs-into'
        ? `Holes of type "${holeType}" run into existing bores (${end})${inInput(otherName)}.`
        : `Holes of type "${holeType}" lie too near to existing bores (${end})${inInput(otherName)}.`,
  example: {
    form: 'members',
    bad: '"bores": [{ "id": "B-1", "point": [1000, 1040, 3000], "end": "abandoned", "depth": 50, "diameter": 10, "knownFrom": "survey" }],\n"holeTypes": [{ "id": "HT-1", "name": "Hanger", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n  "abandonedSpacing": { "unfilled": { "depthFactor": 2 }, "source": "Invented approval 01" } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "axis": [0, 0, 1] }\n]',
    good: '"bores": [{ "id": "B-1", "point": [1000, 1100, 3000], "axis": [0, 0, 1], "end": "abandoned", "depth": 50, "diameter": 10, "knownFrom": "survey" }],\n"holeTypes": [{ "id": "HT-1", "name": "Hanger", "principle": "screw", "form": "blind", "diameter": 10, "depth": 60,\n  "abandonedSpacing": { "unfilled": { "depthFactor": 2 }, "source": "Invented approval 01" } }],\n"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000], "axis": [0, 0, 1] }\n]',
  },
  checkSite(site, run) {
    const list = siteBores(site, run);
    if (list.length === 0) return;
    const sizes = { depth: run.option('mostDepth'), diameter: run.option('mostDiameter') };
    const faults = new BoreFaults(site, list, sizes);
    run.leftOut('bore: so long or wide that it meets too many holes', faults.tooLarge);
    let judged = 0;
    for (let i = 0; i < site.holeCount; i++) {
      const said = faults.judge(i);
      if (typeof said === 'string') {
        run.leftOut(said);
        continue;
      }
      judged++;
      if (said === undefined) continue;
      const { bore, fault, distance, limit, overlap } = said;
      const data = {
        bore: bore.bore.id,
        ...(bore.part !== site.partOf(i) && { otherInput: bore.part.input + 1, otherName: bore.part.name }),
        end: bore.bore.end,
        fault,
        distance,
        ...(limit && { limit: limit.least, source: limit.source }),
        ...(overlap !== undefined && { overlap }),
        holeType: site.types.of(i)?.id ?? '',
      };
      run.atHole(i, { data, cause: `${fault} ${data.holeType} ${data.end} ${bore.part.input}` });
    }
    run.judged(judged);
  },
};
