import { type Collection, collections, references } from '../../generated/schema-tables.js';
import { tidyId } from '../../model/fix.js';
import { HoleColumns, type HoleReference } from '../../model/hole-columns.js';
import { holeReferences } from '../../model/hole-row.js';
import type { LayoutModel } from '../../model/layout-model.js';
import { nearest } from '../../model/nearest.js';
import { BROKEN } from '../site.js';
import { type FoundReference, referencesIn } from '../references-in.js';
import type { Rule } from '../rule.js';
import { isDefined } from '../tidy-fix.js';
import type { LayoutRun } from '../run.js';

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
  checkLayout(run) {
    const { layout } = run;
    const suggest = new Suggestions(layout);
    if (!layout.isHeaderBroken) checkRecords('header', suggest, run);
    for (const name of collections) if (name !== 'holes') checkRecords(name, suggest, run);
    checkHoles(suggest, run);
  },
  fix({ target }, { pointer: path, value, layout }) {
    if (typeof value !== 'string' || layout === undefined) return undefined;
    const tidy = tidyId(value);
    // Texts that differ in normalisation form only are the same text for people.
    if (tidy === value || !isDefined(layout, target as Collection, tidy)) return undefined;
    return { patch: [{ op: 'replace', path, value: tidy }] };
  },
};

const UNREADABLE = 'the collection that it refers to cannot be read';

function checkRecords(name: Exclude<Collection, 'holes'> | 'header', suggest: Suggestions, run: LayoutRun): void {
  const { layout } = run;
  for (const found of referencesIn(layout, name)) {
    if (isSound(found, suggest, run)) continue;
    if (name === 'header') layout.isHeaderBroken = true;
    else layout.collection(name).giveUp(found.index);
  }
}

function isSound(found: FoundReference, suggest: Suggestions, run: LayoutRun): boolean {
  const { layout } = run;
  const { record, byte, member, id, target } = found;
  if (layout.unreadable.has(target)) {
    run.leftOut(UNREADABLE);
    return true;
  }
  run.judged(1);
  const isKnown = isDefined(layout, target, id);
  if (!isKnown) run.atPointer(record, byte, { member, data: suggest.describe(id, target), cause: `${target} ${id}` });
  return isKnown;
}

/** One reference that holes may have. */
interface HoleColumn {
  path: HoleReference;
  member: string;
  target: Exclude<Collection, 'holes'>;
  column: Int32Array;
  /** 1 for the names that are defined. */
  isDefined: Uint8Array;
}

function checkHoles(suggest: Suggestions, run: LayoutRun): void {
  const { layout } = run;
  const { holes } = layout;
  const columns = holeReferences.map((path) => holeColumn(layout, path)).filter(({ column }) => column.length > 0);
  let judged = 0;
  let unreadable = 0;
  let broken = 0;
  for (let i = 0; i < holes.count; i++) {
    for (const { target, column, isDefined, member } of columns) {
      const name = i < column.length ? column[i] : -1;
      if (name < 0) continue;
      if (holes.broken[i] === HoleColumns.BROKEN_RECORD) broken++;
      else if (layout.unreadable.has(target)) unreadable++;
      else {
        judged++;
        if (isDefined[name] === 1) continue;
        const data = suggest.describe(layout.collection(target).names.text(name), target);
        const cause = `${target} ${data.id}`;
        run.atHole(i, { member, data, cause });
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
  };
}

/** Most ids that a nearest one is looked for: a list that is wrong throughout is not helped by suggestions. */
const MOST_SUGGESTIONS = 200;

/** The data of findings, with the nearest id; ten thousand holes may name one missing type, which is looked for once. */
class Suggestions {
  private readonly known = new Map<string, Record<string, unknown>>();

  constructor(private readonly layout: LayoutModel) {}

  describe(id: string, target: Collection): Record<string, unknown> {
    const key = `${target} ${id}`;
    const before = this.known.get(key);
    if (before !== undefined) return before;
    if (this.known.size >= MOST_SUGGESTIONS) return { id, target };
    const near = target === 'holes' ? undefined : nearest(id, this.layout.collection(target).definedIds());
    const data = { id, target, ...(near === undefined ? {} : { nearest: near }) };
    this.known.set(key, data);
    return data;
  }
}
