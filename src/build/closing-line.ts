import type { Reporter, TestModule } from 'vitest/node';

/**
 * Ends a test run with one plain line, `N passed, N failed`, for tools that read only that.
 *
 * A file that cannot be loaded has no tests to fail; it counts as one failed, as does an error outside
 * of any test.
 */
export class ClosingLine implements Reporter {
  private line = '';

  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const counts = { passed: 0, failed: unhandledErrors.length, skipped: 0, pending: 0 };
    for (const module of modules) {
      if (module.errors().length > 0) counts.failed++;
      for (const test of module.children.allTests()) counts[test.result().state]++;
    }
    const skipped = counts.skipped > 0 ? `, ${counts.skipped} skipped` : '';
    this.line = `${counts.passed} passed, ${counts.failed + counts.pending} failed${skipped}`;
    // The reporter of people's summary writes in the same turn; the line comes after it.
    setImmediate(() => process.stdout.write(`${this.line}\n`));
  }
}
