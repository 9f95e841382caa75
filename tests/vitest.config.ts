/**
 * Unit, record and reference tests: plain Node, no Astro and no browser, so that a run takes seconds.
 * What needs a built page is a gate (tests/support/gates) or a browser test (tests/browser).
 */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    include: ['tests/{unit,records,reference}/**/*.test.{ts,tsx}'],
    environment: 'node',
    // Files of one process share what they load: half of the time goes into loading otherwise. No test may leave anything changed.
    isolate: false,
    // A core that vitest would keep for itself does nothing in a run.
    maxWorkers: '100%',
    // One process for each core; a property test that runs wild shows as a time limit, not as a hang.
    testTimeout: 30_000,
    passWithNoTests: false,
  },
});
