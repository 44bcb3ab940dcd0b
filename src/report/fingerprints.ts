import type { Finding, Report } from '../generated/report.js';
import { lastingFacts } from '../policy/lasting-facts.js';
import { fnvHash } from './fnv-hash.js';

/** Facts are compared to a thousandth: a micrometre, where they are lengths. */
const PER_UNIT = 1000;

/**
 * Fingerprints of findings, the same in every report in which the same is found, whatever lines and rows were put
 * before it.
 *
 * Made of the rule, the id of the layout (or the name of the input), what the finding is about (the id of its
 * hole, else collection and id of its record, else its pointer) and the facts that last, which are those that a
 * baseline goes by: their names in order, numbers rounded to 0.001. Hashed by FNV-1a with 64 bits; findings that
 * agree in all of that are numbered.
 */
export class Fingerprints {
  private readonly seen = new Map<string, number>();

  constructor(private readonly inputs: Report['inputs']) {}

  /** Fingerprint of the next finding of the report. */
  next({ rule, input, id, record, place, data }: Finding): string {
    const { id: layout, name } = this.inputs[input - 1] ?? {};
    const about = id !== undefined ? { hole: id } : record !== undefined ? { record } : { pointer: place.pointer };
    const hash = fnvHash(JSON.stringify(canonical([rule, layout ?? name ?? null, about, lastingFacts(data)])));
    const count = (this.seen.get(hash) ?? 0) + 1;
    this.seen.set(hash, count);
    return `${hash}:${count}`;
  }
}

/** The same value with members in the order of their names and numbers rounded. */
function canonical(value: unknown): unknown {
  if (typeof value === 'number') return Math.round(value * PER_UNIT) / PER_UNIT;
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.map(canonical);
  const entries = Object.entries(value).filter(([, member]) => member !== undefined);
  return entries.sort(([a], [b]) => (a < b ? -1 : 1)).map(([name, member]) => [name, canonical(member)]);
}
