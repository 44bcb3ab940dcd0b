import { Names } from '../model/names.js';

/** More unknown members than this in the objects that are open are left to the scanner. */
const MOST = 32;

/** Numbers for the names of members that the schema does not know, and which of them the open objects have. */
export class UnknownNames {
  /** Unknown members of the objects that are open. */
  open = 0;
  private names = new Names();
  private readonly numbers = new Int32Array(MOST);

  /** How many names have a number. */
  get count(): number {
    return this.names.count;
  }

  get areTooMany(): boolean {
    return this.open === MOST;
  }

  /** Takes the numbers back. */
  forget(): void {
    this.names = new Names();
  }

  /** Adds a member with the name at `from..to`; returns the number of the name. */
  add(b: Uint8Array, from: number, to: number): number {
    const number = this.names.add(b, from, to);
    this.numbers[this.open++] = number;
    return number;
  }

  /** Whether the member that was added last stands in its object twice; `first` is how many were open before the object. */
  isTwice(first: number): boolean {
    const { numbers } = this;
    const last = this.open - 1;
    for (let k = first; k < last; k++) if (numbers[k] === numbers[last]) return true;
    return false;
  }
}
