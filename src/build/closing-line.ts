import type { Reporter, TestCase, TestModule } from 'vitest/node';

/**
 * Says which tests were skipped, by the titles that tell why, and ends a run with one plain line,
 * `N passed, N failed`, for tools that read only that.
 *
 * A file that cannot be loaded has no tests to fail; it counts as one failed, as does an error outside
 * of any test.
 */
export class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const counts = { passed: 0, failed: unhandledErrors.length, skipped: 0, pending: 0 };
    const titles = new Set<string>();
    for (const module of modules) {
      if (module.errors().length > 0) counts.failed++;
      for (const test of module.children.allTests()) {
        counts[test.result().state]++;
        if (test.result().state === 'skipped') titles.add(`skipped in ${module.relativeModuleId}: ${titleOf(test)}`);
      }
    }
    const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
    const line = `${counts.passed} passed, ${counts.failed + counts.pending} failed${skipped}`;
    // The reporter of people's summary writes in the same turn; the line comes after it.
    setImmediate(() => process.stdout.write(`${[...titles, line].join('\n')}\n`));
  }
}

/** Title of the outermost group of a test: a group that is skipped as a whole is told once. */
function titleOf(test: TestCase): string {
  let title = test.name;
  for (let part: TestCase['parent'] = test.parent; part.type !== 'module'; part = part.parent) title = part.name;
  return title;
}
