/** What can be wrong at a place. */
export const NOTE = {
  wrongType: 0,
  belowMinimum: 1,
  aboveMaximum: 2,
  notAboveLimit: 3,
  notBelowLimit: 4,
  tooFew: 5,
  tooMany: 6,
  notAChoice: 7,
  badText: 8,
  tooLong: 9,
  noDirection: 10,
  limitsTurned: 11,
  membersMissing: 12,
  unknownMember: 13,
  losesDigits: 14,
  outOfRange: 15,
  memberTwice: 16,
  notUtf8: 17,
  loneSurrogate: 18,
  noncharacter: 19,
} as const;

const PLACES = 32;

/** More notes than this on one record are not taken. */
const MOST = 64;

/**
 * What is wrong with one record, as numbers in the order of its text.
 *
 * Two records with equal notes have the same findings, at the same paths and for the same reasons: they
 * differ only in the values that they quote.
 */
export class Notes {
  /** The notes; valid up to `count`. */
  readonly list = new Int32Array(MOST);
  count = 0;

  get areTooMany(): boolean {
    return this.count > MOST;
  }

  clear(): void {
    this.count = 0;
  }

  /** @param place number of a shape */
  add(place: number, what: number): void {
    this.put(place * PLACES + what);
  }

  /** Adds a note that says more of the one before it. */
  put(note: number): void {
    if (this.count < MOST) this.list[this.count] = note;
    this.count++;
  }
}
