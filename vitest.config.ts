import { defineConfig } from 'vitest/config';
import { ClosingLine } from './src/build/closing-line.js';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', new ClosingLine()],
    // Tests of the command line start a process for each case; a busy machine must not fail them.
    testTimeout: 60_000,
  },
});
