import type { HoleType } from '../generated/layout.js';

/** Why a hole is left out of which it is not known whether it is to be made. */
export const TYPE_BROKEN = 'record of its hole type broken';

/** Whether holes of a type are to be drilled or cored: neither cast in nor there already. */
export function isToBeMade({ made, purpose }: HoleType): boolean {
  return made !== 'cast-in' && purpose !== 'existing';
}
