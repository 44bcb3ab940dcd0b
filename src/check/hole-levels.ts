import type { Level } from '../generated/layout.js';
import type { RecordOf } from '../model/layout-model.js';
import type { Kind } from './kinds.js';
import type { Site } from './site.js';
import type { SitePart } from './site-part.js';

/** A level as a hole names it. */
export interface HoleLevel {
  id: string;
  /** Undefined where it is broken. */
  record: Level | undefined;
}

/** The levels of holes: the one that a hole names, else that of its substrate. Worked out once for each pair of the two. */
export class HoleLevels {
  private readonly known = new Map<number, HoleLevel | undefined>();

  constructor(private readonly site: Site) {}

  of({ part, level, substrate }: Kind): HoleLevel | undefined {
    const { substrates, levels, parts } = this.site;
    const key = ((substrate + 1) * (levels.count + 1) + level + 1) * parts.length + parts.indexOf(part);
    if (this.known.has(key)) return this.known.get(key);
    const id =
      level >= 0
        ? levels.id(level)
        : substrate >= 0
          ? this.record(part, 'substrates', substrates.id(substrate))?.level
          : undefined;
    const found = id === undefined ? undefined : { id, record: this.record(part, 'levels', id) };
    this.known.set(key, found);
    return found;
  }

  /** The record of an id in the layout that names it: another layout may mean another level by it. */
  private record<K extends 'levels' | 'substrates'>(part: SitePart, name: K, id: string): RecordOf<K> | undefined {
    const collection = part.layout.collection(name);
    return collection.judged[collection.indexOf(collection.names.find(id))];
  }
}
