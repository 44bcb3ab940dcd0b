import { type Collection, references } from '../generated/schema-tables.js';
import { idOf, memberOf, type Rec, recordOf, recordsOf, textOf, textsOf } from './records.js';

/** How many holes use a definition, and how many of them a declared change names. */
export interface Uses {
  holes: number;
  declared: number;
}

/** By what a hole is found to use a definition: it names it, is reached from a level, or is named itself. */
interface Use {
  by: Collection | 'reached-from';
  id: string;
}

/** Uses, by what and by id. */
export type UseSet = Map<Use['by'], Set<string>>;

const paths = references.holes.map(({ path, target }) => ({ steps: path.split('.'), target }));
const named: ReadonlySet<Collection> = new Set(paths.map(({ target }) => target));

/** Whether holes name records of a collection. */
export function isNamedByHoles(collection: Collection): boolean {
  return named.has(collection);
}

/** What a hole uses, each once. */
function usesOf(hole: Rec): Use[] {
  const uses: Use[] = [];
  const level = textOf(hole, 'level');
  if (level !== undefined) uses.push({ by: 'reached-from', id: level });
  for (const { steps, target } of paths) {
    let record = hole;
    for (let k = 0; k < steps.length - 1; k++) record = recordOf(memberOf(record, steps[k]));
    const id = textOf(record, steps[steps.length - 1]);
    if (id !== undefined && !uses.some((use) => use.by === target && use.id === id)) uses.push({ by: target, id });
  }
  return uses;
}

/** Which holes of a layout use which definitions. Building it is linear in the holes and the levels. */
export class HoleUses {
  private readonly counts = new Map<Use['by'], Map<string, Uses>>();
  private readonly holes = new Map<string, Rec>();
  private readonly levelsOf = new Map<string, Set<string>>();

  /**
   * @param header of the same layout
   * @param isDeclared whether a declared change names the hole
   */
  constructor(
    header: Rec,
    holes: readonly Rec[],
    private readonly isDeclared: (id: string) => boolean,
  ) {
    for (const level of recordsOf(memberOf(header, 'levels'))) {
      const building = textOf(level, 'building');
      if (building === undefined) continue;
      const levels = this.levelsOf.get(building);
      if (levels === undefined) this.levelsOf.set(building, new Set([idOf(level)]));
      else levels.add(idOf(level));
    }
    for (const hole of holes) {
      this.holes.set(idOf(hole), hole);
      const declared = isDeclared(idOf(hole)) ? 1 : 0;
      for (const use of usesOf(hole)) this.count(use, declared);
    }
  }

  /** Holes that use a definition; undefined where nothing says which ones it is for. */
  of(collection: Collection, record: Rec): Uses | undefined {
    const uses = this.usesFor(collection, record);
    if (uses === undefined) return undefined;
    const areas = new Set(uses.filter(({ by }) => by === 'areas').map(({ id }) => id));
    const total = { holes: 0, declared: 0 };
    for (const use of uses) {
      const found = use.by === 'holes' ? this.namedOutside(use.id, areas) : this.counts.get(use.by)?.get(use.id);
      total.holes += found?.holes ?? 0;
      total.declared += found?.declared ?? 0;
    }
    return total;
  }

  /** Adds what marks a hole as one that uses the definition. */
  mark(collection: Collection, record: Rec, marks: UseSet): void {
    for (const { by, id } of this.usesFor(collection, record) ?? []) {
      const ids = marks.get(by) ?? new Set();
      marks.set(by, ids.add(id));
    }
  }

  /** Whether the hole of this id is marked. */
  isMarked(id: string, marks: UseSet): boolean {
    const hole = this.holes.get(id);
    if (hole === undefined) return false;
    return (marks.get('holes')?.has(id) ?? false) || usesOf(hole).some((use) => marks.get(use.by)?.has(use.id));
  }

  private usesFor(collection: Collection, record: Rec): Use[] | undefined {
    const id = idOf(record);
    if (isNamedByHoles(collection)) return [{ by: collection, id }];
    if (collection === 'packages') {
      return [...all('areas', textsOf(memberOf(record, 'areas'))), ...all('holes', textsOf(memberOf(record, 'holes')))];
    }
    if (collection === 'buildings') return all('reached-from', this.levelsOf.get(id) ?? []);
    if (collection === 'grids') {
      return memberOf(record, 'levels') === undefined
        ? undefined
        : all('reached-from', textsOf(memberOf(record, 'levels')));
    }
    const level = collection === 'control' ? textOf(record, 'level') : undefined;
    if (level !== undefined) return [{ by: 'reached-from', id: level }];
    const substrate = textOf(record, 'substrate');
    return substrate === undefined ? undefined : [{ by: 'substrates', id: substrate }];
  }

  /** A hole that a package names, where it is not counted with one of the areas. */
  private namedOutside(id: string, areas: ReadonlySet<string>): Uses | undefined {
    const hole = this.holes.get(id);
    const area = hole && textOf(hole, 'area');
    if (hole === undefined || (area !== undefined && areas.has(area))) return undefined;
    return { holes: 1, declared: this.isDeclared(id) ? 1 : 0 };
  }

  private count({ by, id }: Use, declared: number): void {
    const ofKind = this.counts.get(by) ?? new Map<string, Uses>();
    this.counts.set(by, ofKind);
    const uses = ofKind.get(id) ?? { holes: 0, declared: 0 };
    ofKind.set(id, uses);
    uses.holes++;
    uses.declared += declared;
  }
}

function all(by: Use['by'], ids: Iterable<string>): Use[] {
  return [...new Set(ids)].map((id) => ({ by, id }));
}
