import { describe, expect, it } from 'vitest';
import { carefulNumberEnd } from '../../src/read/careful-number.js';
import { numberRead } from '../../src/read/lexemes.js';
import { NOTE, Notes } from '../../src/read/notes.js';
import { Scanner } from '../../src/read/scan.js';
import { padded } from './padded.js';
import { newRandom, pick } from './random.js';

/** What the scanner finds in a number. */
const noteOf = { 'number-loses-digits': NOTE.losesDigits, 'number-out-of-range': NOTE.outOfRange } as const;

describe('careful reading of numbers', () => {
  it('agrees with the scanner and with Number() on random texts', () => {
    const random = newRandom(62);
    const letters = [...'00112345678999..eE+--'];
    let numbers = 0;
    for (let k = 0; k < 100_000; k++) {
      const written = Array.from({ length: 1 + Math.floor(random() * 24) }, () => pick(random, letters)).join('');
      const { bytes, limit } = padded(`${written},`);
      const notes = new Notes();
      const end = carefulNumberEnd(bytes, 0, 0, notes);
      const scanner = new Scanner();
      const outcome = scanner.scan(bytes, 0, limit, false);
      if (outcome !== 'whole') {
        expect([written, end]).toEqual([written, -1]);
        continue;
      }
      numbers++;
      const expected = scanner.faults.map(({ rule }) => noteOf[rule as keyof typeof noteOf]);
      const found = [end, numberRead[0], ...notes.list.subarray(0, notes.count)];
      const wanted = [scanner.end, Number(written.slice(0, scanner.end)), ...expected];
      if (!Object.is(found[1], wanted[1]) || found.join() !== wanted.join())
        expect([written, found]).toEqual([written, wanted]);
    }
    expect(numbers).toBeGreaterThan(10_000);
  });

  it('leaves a number that the end of the window may cut to the scanner', () => {
    for (const written of ['1', '1.5', '1e3', '12345678901234567890', '-']) {
      expect([written, carefulNumberEnd(padded(written).bytes, 0, 0, new Notes())]).toEqual([written, -1]);
    }
  });
});
