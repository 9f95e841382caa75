/**
 * `npm test`: every check of the project, in an order that finds cheap faults first.
 *
 * All steps run, also after a failure, so that one run lists everything. The last line says how many
 * checks passed and failed; the exit code is 1 when any failed. `node tests/support/all.ts lint unit`
 * runs only the steps whose name starts with one of the words given.
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { type Count, type Outcome, RESULTS, readReport, ROOT, runStep, type Step } from './step.ts';

const UNIT_REPORT = 'unit.json';
const GATES_REPORT = 'gates.json';
const BROWSER_REPORT = 'browser.json';

const astro = 'node_modules/astro/bin/astro.mjs';

const STEPS: readonly Step[] = [
  { name: 'record check', commands: [['src/commands/check.ts']] },
  { name: 'types', commands: [[astro, 'sync'], [astro, 'check']] },
  {
    name: 'lint',
    commands: [['node_modules/@biomejs/biome/bin/biome', 'lint', '--config-path=tests/lint.json', '--diagnostic-level=warn', '--error-on-warnings', 'src', 'tests']],
  },
  {
    name: 'unit, record and reference tests',
    commands: [[
      'node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts',
      '--reporter=dot', '--reporter=json', `--outputFile.json=${join(RESULTS, UNIT_REPORT)}`,
    ]],
    count: countUnit,
  },
  { name: 'build', commands: [[astro, 'build', '--force']] },
  { name: 'gates on the built site', commands: [['tests/support/gates/run.ts', join(RESULTS, GATES_REPORT)]], count: () => readReport(GATES_REPORT) as Count },
  {
    name: 'browser tests',
    commands: [['node_modules/@playwright/test/cli.js', 'test', '--config', 'tests/playwright.config.ts']],
    count: countBrowser,
  },
];

interface UnitReport {
  numPassedTests: number;
  numFailedTests: number;
  testResults: { status: string; assertionResults: { status: string }[] }[];
}

/** Tests, and test files that could not be loaded: those hold no test that could fail. */
function countUnit(): Count {
  const report = readReport(UNIT_REPORT) as UnitReport;
  const broken = report.testResults.filter((file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'));
  return { passed: report.numPassedTests, failed: report.numFailedTests + broken.length };
}

interface BrowserReport {
  stats: { expected: number; unexpected: number; flaky: number };
  errors: unknown[];
}

/** A test that passes only on a second try is a failure: nothing here may depend on luck. */
function countBrowser(): Count {
  const { stats, errors } = readReport(BROWSER_REPORT) as BrowserReport;
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + (errors.length > 0 && stats.unexpected === 0 ? 1 : 0) };
}

const chosen = process.argv.slice(2);
const steps = chosen.length === 0 ? STEPS : STEPS.filter((step) => chosen.some((word) => step.name.startsWith(word)));

rmSync(RESULTS, { recursive: true, force: true });
// A page of an older build must not pass for the newest one when the build fails.
if (steps.some((step) => step.name === 'build')) rmSync(join(ROOT, 'dist'), { recursive: true, force: true });

const outcomes: Outcome[] = [];
for (const step of steps) outcomes.push(await runStep(step));

console.log('\nstep                               time   passed  failed');
for (const { name, seconds, passed, failed } of outcomes) {
  console.log(`${name.padEnd(33)} ${`${seconds.toFixed(1)} s`.padStart(7)} ${String(passed).padStart(7)} ${String(failed).padStart(7)}`);
}
const passed = outcomes.reduce((sum, outcome) => sum + outcome.passed, 0);
const failed = outcomes.reduce((sum, outcome) => sum + outcome.failed, 0);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
