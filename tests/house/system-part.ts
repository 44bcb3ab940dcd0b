import { it } from 'vitest';

/** What becomes of tests that need a part of the system which may be missing. */
export type Fate = 'run' | 'skip' | 'fail';

/**
 * Tests run where the part is there. Where it is missing they are skipped, unless `required`, the
 * value of AHX_REQUIRE, names the part: then the machine was meant to have it.
 */
export function fateOf(part: string, isPresent: boolean, required: string): Fate {
  if (isPresent) return 'run';
  return required.split(/[\s,]+/).includes(part) ? 'fail' : 'skip';
}

/**
 * An `it` for tests that need a system part, such as a browser: `const withBrowser = itWith('chromium', path !== undefined)`.
 * Says once and visibly when the tests are skipped.
 */
export function itWith(part: string, isPresent: boolean): (title: string, test: () => unknown) => void {
  const fate = fateOf(part, isPresent, process.env.AHX_REQUIRE ?? '');
  if (fate === 'run') return (title, test) => it(title, async () => void (await test()));
  if (fate === 'skip') {
    console.warn(`skipped: tests that need ${part}, which this machine does not have`);
    return (title, test) => it.skip(title, async () => void (await test()));
  }
  return (title) =>
    it(title, () => {
      throw new Error(`AHX_REQUIRE names ${part}, but it is not there`);
    });
}
