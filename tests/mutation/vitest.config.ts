/**
 * The tests that a changed room is tried against: its own unit tests, and those reference tests of its answers that are
 * quick enough to be run a thousand times. The quick ones come first, since the first failure ends a try.
 */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const TESTS: Readonly<Record<string, readonly string[]>> = {
  numerics: ['unit/numerics/*', 'reference/pooling', 'reference/distributions'],
  'break-tests': ['unit/break-tests/*', 'reference/break-statistics'],
  strength: ['unit/strength/*', 'unit/comparator/wording', ...['chain', 'pooling', 'golden', 'trade-facts', 'states'].map((name) => `reference/${name}`)],
};
/** What takes over a second: simulations, properties over many inputs, large tables. In the order in which they are run. */
const SLOW = ['reference/distributions', 'mangled-tables', 'break-statistics', 'fits', 'bounds', 'planning', 'rows', 'compare.property', 'chain.property', 'breaks.property', 'golden', 'states', 'summary', 'orthants'];

const room = process.env['MUTATED_ROOM'] ?? '';
const tests = TESTS[room];
if (!tests) throw new Error(`MUTATED_ROOM names no room (got "${room}"). Run npm run mutate.`);

class QuickFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number => SLOW.findIndex((name) => moduleId.endsWith(`/${name}.test.ts`));
    return [...files].sort((a, b) => place(a) - place(b) || (a.moduleId < b.moduleId ? -1 : 1));
  }
}

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include: tests.map((name) => `tests/${name}.test.ts`),
    environment: 'node',
    testTimeout: 120_000,
    passWithNoTests: false,
    sequence: { sequencer: QuickFirst },
  },
});
