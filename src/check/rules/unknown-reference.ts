import { type Collection, collections, references } from '../../generated/schema-tables.js';
import { type HoleReference, HoleColumns } from '../../model/hole-columns.js';
import { holeReferences } from '../../model/hole-row.js';
import type { LayoutModel } from '../../model/layout-model.js';
import { nearest } from '../../model/nearest.js';
import { BROKEN } from '../near-holes.js';
import { type FoundReference, referencesIn } from '../references-in.js';
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
    checkHoles(layout, run);
  },
};

const UNREADABLE = 'the collection that it refers to cannot be read';

function judge(layout: LayoutModel, { record, byte, member, id, target }: FoundReference, run: RuleRun): void {
  if (layout.unreadable.has(target)) {
    run.leftOut(UNREADABLE);
    return;
  }
  run.judged(1);
  const isKnown = target === 'holes' ? layout.holes.find(id) >= 0 : layout.collection(target).isDefined(id);
  if (!isKnown) run.finding({ record, byte, member, data: describe(layout, id, target), cause: `${target} ${id}` });
}

/** One reference that holes may have. */
interface HoleColumn {
  path: HoleReference;
  member: string;
  target: Exclude<Collection, 'holes'>;
  column: Int32Array;
  /** 1 for the names that are defined. */
  isDefined: Uint8Array;
  /** Ten thousand holes may name one missing type; the nearest id is looked for once. */
  described: Map<number, Record<string, unknown>>;
}

function checkHoles(layout: LayoutModel, run: RuleRun): void {
  const { holes } = layout;
  const columns = holeReferences.map((path) => holeColumn(layout, path)).filter(({ column }) => column.length > 0);
  let judged = 0;
  let unreadable = 0;
  let broken = 0;
  for (let i = 0; i < holes.count; i++) {
    for (const { target, column, isDefined, described, member } of columns) {
      const name = i < column.length ? column[i] : -1;
      if (name < 0) continue;
      if (holes.broken[i] === HoleColumns.BROKEN_RECORD) broken++;
      else if (layout.unreadable.has(target)) unreadable++;
      else {
        judged++;
        if (isDefined[name] === 1) continue;
        const data = described.get(name) ?? describe(layout, layout.collection(target).names.text(name), target);
        described.set(name, data);
        const cause = `${target} ${data.id}`;
        run.finding({ record: `/holes/${i}`, byte: holes.byte[i], member, hole: i, data, cause });
        holes.giveUp(i);
      }
    }
  }
  run.judged(judged);
  run.leftOut(BROKEN, broken);
  run.leftOut(UNREADABLE, unreadable);
}

function holeColumn(layout: LayoutModel, path: HoleReference): HoleColumn {
  const target = references.holes.find((reference) => reference.path === path)?.target as Exclude<Collection, 'holes'>;
  const collection = layout.collection(target);
  return {
    path,
    member: path.replaceAll('.', '/'),
    target,
    column: layout.holes.reference(path),
    isDefined: Uint8Array.from({ length: collection.names.count }, (_, name) =>
      collection.indexOf(name) >= 0 ? 1 : 0,
    ),
    described: new Map(),
  };
}

function describe(layout: LayoutModel, id: string, target: Collection): Record<string, unknown> {
  const near = target === 'holes' ? undefined : nearest(id, layout.collection(target).definedIds());
  return { id, target, ...(near === undefined ? {} : { nearest: near }) };
}
