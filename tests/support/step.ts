/** One step of the test run: a child process, its time, and how many checks passed and failed in it. */
import { spawn } from 'node:child_process';
import { createWriteStream, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Where the reports of a run are kept; never committed. */
export const RESULTS = join(ROOT, 'test-results');

/** How many checks of a step passed and failed. */
export interface Count {
  passed: number;
  failed: number;
}

/** A step as it is written down in the list of all steps. */
export interface Step {
  name: string;
  /** Commands run one after another, each a script of Node with its arguments; a failing one ends the step. */
  commands: readonly (readonly string[])[];
  /** Reads the counts from the step's report. Absent: the step counts as one check, passed when every command ends with 0. */
  count?: () => Count;
}

export interface Outcome extends Count {
  name: string;
  seconds: number;
}

/** Runs one command with the Node that runs this file, prints what it prints, and gives its exit code. */
function run(command: readonly string[], log: string): Promise<number> {
  mkdirSync(dirname(log), { recursive: true });
  const file = createWriteStream(log, { flags: 'a' });
  return new Promise((done) => {
    const child = spawn(process.execPath, command, {
      cwd: ROOT,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', FORCE_COLOR: '0', NO_COLOR: '1' },
    });
    for (const [from, to] of [[child.stdout, process.stdout], [child.stderr, process.stderr]] as const) {
      from.on('data', (chunk: Buffer) => {
        to.write(chunk);
        file.write(chunk);
      });
    }
    child.on('error', (error) => {
      console.error(error.message);
      file.end();
      done(1);
    });
    child.on('close', (code) => {
      file.end();
      done(code ?? 1);
    });
  });
}

/**
 * Runs a step and counts it.
 *
 * A step that stops with a failure while its report counts none (a broken configuration, a file that
 * does not load, no report at all) still counts as one failure: silence is never a pass.
 */
export async function runStep(step: Step): Promise<Outcome> {
  console.log(`\n== ${step.name}`);
  const started = performance.now();
  let code = 0;
  for (const command of step.commands) {
    code = await run(command, join(RESULTS, `${step.name.replaceAll(' ', '-')}.log`));
    if (code !== 0) break;
  }
  let counted: Count = code === 0 ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 };
  if (step.count) {
    try {
      counted = step.count();
      if (code !== 0 && counted.failed === 0) counted = { ...counted, failed: 1 };
      if (counted.passed + counted.failed === 0) counted = { passed: 0, failed: 1 };
    } catch (error) {
      console.error(`No report of "${step.name}": ${error instanceof Error ? error.message : String(error)}`);
      counted = { passed: 0, failed: 1 };
    }
  }
  const seconds = (performance.now() - started) / 1000;
  console.log(`-- ${step.name}: ${counted.passed} passed, ${counted.failed} failed (${seconds.toFixed(1)} s)`);
  return { name: step.name, seconds, ...counted };
}

/** A JSON report of a step, by file name in the results folder. */
export function readReport(name: string): unknown {
  return JSON.parse(readFileSync(join(RESULTS, name), 'utf8'));
}
