import { type Collection, collections, references } from '../../generated/schema-tables.js';
import { type HoleReference, HoleColumns } from '../../model/hole-columns.js';
import { holeReferences } from '../../model/hole-row.js';
import type { LayoutModel } from '../../model/layout-model.js';
import { nearest } from '../../model/nearest.js';
import { referencesIn } from '../references-in.js';
import type { Rule } from '../rule.js';
import type { RuleRun } from '../run.js';

const SINGULAR: Readonly<Record<string, string>> = {
  parties: 'party',
  sources: 'source document',
  buildings: 'building',
  levels: 'level',
  areas: 'area',
  control: 'control point',
  trades: 'trade',
  holeTypes: 'hole type',
  substrates: 'substrate',
  groups: 'group',
  holes: 'hole',
};

export const unknownReference: Rule = {
  id: 'unknown-reference',
  class: 'format',
  severity: 'error',
  since: '0.1',
  stage: 'references',
  title: 'A record refers to an id that is not defined.',
  why: 'Nobody can tell what is meant: which diameter, whose hole, which slab.',
  mend: 'Correct the id, or add the record that it names.',
  data: {
    id: 'the id',
    target: 'the collection where it should be defined',
    nearest: 'the nearest id there; absent when none is near',
  },
  message: ({ id, target, nearest: near }) =>
    `No ${SINGULAR[String(target)] ?? target} has the id "${id}".${near === undefined ? '' : ` Did you mean "${near}"?`}`,
  example: {
    form: 'members',
    bad: '"holes": [\n  { "id": "H-1", "trade": "FB", "holeType": "HT-1", "point": [1000, 1000, 3000] }\n]',
    good: '"holes": [\n  { "id": "H-1", "trade": "FP", "holeType": "HT-1", "point": [1000, 1000, 3000] }\n]',
  },
  checkReferences(layout, run) {
    for (const name of ['header', ...collections] as const) {
      if (name !== 'holes') for (const found of referencesIn(layout, name)) judge(layout, found, run);
    }
    for (const path of holeReferences) checkHoles(layout, path, run);
  },
};

interface Found {
  record: string;
  byte: number;
  member: string;
  id: string;
  target: Collection;
}

function judge(layout: LayoutModel, { record, byte, member, id, target }: Found, run: RuleRun): void {
  run.judged(1);
  const isKnown = target === 'holes' ? layout.holes.find(id) >= 0 : layout.collection(target).isDefined(id);
  if (!isKnown) run.finding({ record, byte, member, data: describe(layout, id, target), cause: `${target} ${id}` });
}

function checkHoles(layout: LayoutModel, path: HoleReference, run: RuleRun): void {
  const { holes } = layout;
  const column = holes.reference(path);
  const target = references.holes.find((reference) => reference.path === path)?.target as Exclude<Collection, 'holes'>;
  const { names } = layout.collection(target);
  const isDefined = Uint8Array.from({ length: names.count }, (_, name) =>
    layout.collection(target).indexOf(name) >= 0 ? 1 : 0,
  );
  const count = Math.min(holes.count, column.length);
  // Ten thousand holes may name one missing type; the nearest id is looked for once.
  const described = new Map<number, Record<string, unknown>>();
  let judged = 0;
  for (let i = 0; i < count; i++) {
    const name = column[i];
    if (name < 0) continue;
    judged++;
    if (isDefined[name] === 1 || holes.broken[i] === HoleColumns.BROKEN_RECORD) continue;
    const data = described.get(name) ?? describe(layout, names.text(name), target);
    described.set(name, data);
    const member = path.replaceAll('.', '/');
    run.finding({ record: `/holes/${i}`, byte: holes.byte[i], member, hole: i, data, cause: `${target} ${data.id}` });
    holes.giveUp(i);
  }
  run.judged(judged);
}

function describe(layout: LayoutModel, id: string, target: Collection): Record<string, unknown> {
  const near = target === 'holes' ? undefined : nearest(id, layout.collection(target).definedIds());
  return { id, target, ...(near === undefined ? {} : { nearest: near }) };
}
