/** The tests that a changed room is tried against: its own, and the reference tests. Set by mutate.ts through ROOM. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const room = process.env['MUTATED_ROOM'];
if (!room) throw new Error('MUTATED_ROOM is not set. Run npm run mutate.');

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: [`tests/unit/${room}/**/*.test.ts`, 'tests/reference/**/*.test.ts'],
    environment: 'node',
    testTimeout: 30_000,
    passWithNoTests: false,
  },
});
