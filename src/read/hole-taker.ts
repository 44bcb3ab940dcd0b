import { decodeHole } from '../generated/decode-hole.js';
import type { HoleColumns } from '../model/hole-columns.js';
import { newHoleRow, rowFromHole } from '../model/hole-row.js';
import type { Observation, Observe } from '../model/observation.js';
import { CarefulDecoder } from './careful-hole.js';
import { type KnownFault, KnownFaults } from './known-faults.js';

/** Most names of unknown members that are told apart at a time. */
const MOST_NAMES = 4096;
/** Holes after an unusual one that are taken for unusual. */
const UNUSUAL_RUN = 16;

/**
 * Takes holes from bytes into columns without parsing them.
 *
 * Plain ones go through the generated decoder; others through the careful one, which also takes those whose
 * faults are known so well that they need only be counted. What is left has to be parsed and judged.
 */
export class HoleTaker {
  /** Bytes of records that both decoders have looked at: they count once more. */
  lookedAgain = 0;
  private haveBothLooked = false;
  private readonly row = newHoleRow();
  private readonly known: KnownFaults;
  private careful: CarefulDecoder | undefined;
  /** Notes about the hole that is to be parsed, if there are any. */
  private learning: KnownFault | undefined;
  /** How many of the next holes go straight to the careful decoder. */
  private unusual = 0;

  constructor(
    private readonly holes: HoleColumns,
    observe: Observe,
  ) {
    this.known = new KnownFaults(observe);
  }

  /** Takes the hole at `start`; returns the position behind it, or -1 to have it parsed and judged. */
  take(bytes: Uint8Array, start: number, base: number): number {
    this.learning = undefined;
    this.haveBothLooked = false;
    // After an unusual hole more of them are likely, and trying the quick decoder first costs more than it gains.
    if (this.unusual > 0) {
      this.unusual--;
    } else {
      const end = decodeHole(bytes, start, this.row);
      if (end >= 0) {
        this.holes.push(this.row, base + start, false);
        return end;
      }
      this.haveBothLooked = true;
    }
    return this.takeCarefully(bytes, start, base);
  }

  private takeCarefully(bytes: Uint8Array, start: number, base: number): number {
    this.careful ??= new CarefulDecoder();
    const { careful, row } = this;
    const end = careful.decode(bytes, start, row);
    if (end < 0) return -1;
    let isSound = true;
    const isFaulty = careful.notes.count > 0;
    if (isFaulty || this.haveBothLooked) this.unusual = UNUSUAL_RUN;
    if (isFaulty) {
      const fault = this.known.of(careful.notes);
      if (!fault.isKnown) {
        this.learning = fault;
        fault.begin();
        return -1;
      }
      fault.pass();
      isSound = fault.isSound;
    }
    this.holes.push(row, base + start, !isSound);
    if (this.haveBothLooked) this.lookedAgain += end - start;
    return end;
  }

  /** Takes a hole that was parsed and judged; `length` is that of its text. */
  takeParsed(parsed: unknown, byte: number, length: number, isSound: boolean): void {
    if (this.haveBothLooked) this.lookedAgain += length;
    rowFromHole(parsed, this.row);
    this.holes.push(this.row, byte, !isSound);
    this.learning?.end(isSound);
    this.learning = undefined;
    if (this.known.areMany || (this.careful?.unknown.count ?? 0) >= MOST_NAMES) this.settle();
  }

  /** Hears what is said of the hole that is being judged. */
  hear(observation: Observation, isOnlyCounted: boolean): void {
    this.learning?.hear(observation, isOnlyCounted);
  }

  /** Says what was only counted so far. */
  settle(): void {
    this.known.settle();
    this.careful?.unknown.forget();
  }
}
