import type { Bore, KeepOut } from '../../generated/layout.js';
import { kindsOf } from '../kinds.js';
import type { Rule } from '../rule.js';
import type { Site } from '../site.js';
import { BROKEN } from '../site.js';
import type { SitePart } from '../site-part.js';
import { isToBeMade } from '../to-be-made.js';

export const scanMissing: Rule = {
  id: 'scan-missing',
  class: 'site',
  severity: { 'for-review': 'off', 'for-drilling': 'error', 'for-closeout': 'off' },
  since: '0.1',
  stage: 'completeness',
  title: 'Concrete is to be drilled of which the layout shows no scan.',
  why: 'Tendons, conduits and bars lie elsewhere than drawn, and some are on no drawing. A scan finds some of them and misses others; without one nobody has looked at all.',
  mend: 'Have the concrete scanned, and enter what was found as keep-outs with the scan as their source. Name the record of the scan among the `scans` of the substrate, whatever it found.',
  accept:
    'When the scan comes after the holes are marked, as part of the permit to drill, or its record goes to the crew another way.',
  data: {
    substrate: 'id of the substrate',
    holes: 'number of holes to be made in it',
  },
  message: ({ substrate, holes }) =>
    `The layout shows no scan of substrate "${substrate}", in which ${holes === 1 ? 'a hole is' : `${holes} holes are`} to be made.`,
  causeMessage: () => 'Concrete is to be drilled of which the layout shows no scan.',
  example: {
    form: 'members',
    bad: '"sources": [{ "id": "S-201", "title": "Framing plan", "kind": "structural-drawing" }]',
    good: '"sources": [{ "id": "SC-1", "title": "Scan of the soffit, 0.2 m deep", "kind": "scan" }],\n"keepOuts": [\n  { "id": "K-1", "kind": "conduit", "shape": { "path": { "points": [[0, 3000, 3060], [10000, 3000, 3060]], "radius": 12 } },\n    "standoff": 50, "positionTolerance": 15, "knownFrom": "scan", "substrate": "S-1", "source": "SC-1" }\n]',
  },
  checkSite(site, run) {
    const holes = new Map<number, number>();
    for (const { out, type, substrate, count } of kindsOf(site).list) {
      if (substrate < 0 || out !== undefined || type === undefined || !isToBeMade(type)) continue;
      holes.set(substrate, (holes.get(substrate) ?? 0) + count);
    }
    const { shown, isWhole } = scansOf(site);
    for (const [name, count] of holes) {
      const place = site.substrates.places[name];
      if (site.substrates.records[name] === undefined || place === undefined) run.leftOut(BROKEN);
      else if (!shown.has(name) && !isWhole) run.leftOut('a record broken that may show a scan');
      else {
        run.judged(1);
        if (shown.has(name)) continue;
        const data = { substrate: site.substrates.id(name), holes: count };
        run.atRecord(place.part, 'substrates', place.index, { data, cause: '' });
      }
    }
  },
};

/** Numbers of the substrates of which a scan is shown, and whether all records could be read that may show one. */
function scansOf(site: Site): { shown: ReadonlySet<number>; isWhole: boolean } {
  const shown = new Set<number>();
  let isWhole = true;
  for (const part of site.parts) {
    const { layout } = part;
    for (const name of ['sources', 'keepOuts', 'bores'] as const)
      if (layout.collection(name).hasBroken) isWhole = false;
    const finds: (KeepOut | Bore | undefined)[] = [
      ...layout.collection('keepOuts').judged,
      ...layout.collection('bores').judged,
    ];
    for (const find of finds) {
      if (find?.substrate === undefined || (find.knownFrom !== 'scan' && !isScan(part, find.source))) continue;
      shown.add(site.substrates.numberOf(part, find.substrate));
    }
    for (const substrate of layout.collection('substrates').judged)
      if (substrate !== undefined && (substrate.scans ?? []).some((id) => isScan(part, id)))
        shown.add(site.substrates.numberOf(part, substrate.id));
  }
  return { shown, isWhole };
}

function isScan({ layout }: SitePart, id: string | undefined): boolean {
  const sources = layout.collection('sources');
  return id !== undefined && sources.judged[sources.indexOf(sources.names.find(id))]?.kind === 'scan';
}
