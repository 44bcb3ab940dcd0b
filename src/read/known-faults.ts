import type { Observation, Observe } from '../model/observation.js';
import type { Notes } from './notes.js';

/** More sets of notes than this are not told apart at a time. */
const MOST = 4096;

/** What was said of the records with the same notes. */
export class KnownFault {
  /** Whether all that is said of a further record with these notes would only be counted: it need not be looked at. */
  isKnown = false;
  /** Whether such a record is judged further all the same. */
  isSound = false;
  /** What is said of each of them. */
  private said: Observation[] = [];
  private areOnlyCounted = true;
  /** How many were passed over since. */
  private passed = 0;

  constructor(private readonly notes: Int32Array) {}

  isAbout({ list, count }: Notes): boolean {
    const { notes } = this;
    if (notes.length !== count) return false;
    for (let k = 0; k < count; k++) if (notes[k] !== list[k]) return false;
    return true;
  }

  /** A record with these notes is about to be looked at. */
  begin(): void {
    this.said = [];
    this.areOnlyCounted = true;
  }

  hear(observation: Observation, isOnlyCounted: boolean): void {
    this.said.push(observation);
    this.areOnlyCounted &&= isOnlyCounted;
  }

  /** The record was looked at. */
  end(isSound: boolean): void {
    this.isSound = isSound;
    this.isKnown = this.areOnlyCounted;
  }

  /** A record with these notes was passed over. */
  pass(): void {
    this.passed++;
  }

  /** Says what is to be said of the records that were passed over. */
  settle(observe: Observe): void {
    if (this.passed === 0) return;
    for (const observation of this.said) observe({ ...observation, count: (observation.count ?? 1) * this.passed });
    this.passed = 0;
  }
}

/**
 * Remembers what was said of records by their notes, so that the thousandth record with the same faults is
 * counted and no more.
 */
export class KnownFaults {
  private readonly faults = new Map<string, KnownFault>();
  private last: KnownFault | undefined;

  constructor(private readonly observe: Observe) {}

  get areMany(): boolean {
    return this.faults.size >= MOST;
  }

  /** What is known of records with these notes. */
  of(notes: Notes): KnownFault {
    // Neighbouring records mostly share their faults.
    if (this.last?.isAbout(notes) === true) return this.last;
    const key = keyOf(notes);
    let fault = this.faults.get(key);
    if (fault === undefined) {
      fault = new KnownFault(notes.list.slice(0, notes.count));
      this.faults.set(key, fault);
    }
    this.last = fault;
    return fault;
  }

  /** Says what was left unsaid, and forgets all. */
  settle(): void {
    for (const fault of this.faults.values()) fault.settle(this.observe);
    this.faults.clear();
    this.last = undefined;
  }
}

/** The notes as a text, two units for each. */
function keyOf({ list, count }: Notes): string {
  let key = '';
  for (let k = 0; k < count; k++) key += String.fromCharCode(list[k] >>> 16, list[k] & 0xffff);
  return key;
}
