/**
 * `npm run bench`: how fast the comparison, the page and the build are, against the budgets of the design.
 *
 * Measured: a whole comparison in Node; one change of each of three inputs in the built page with the processor slowed
 * four times; the build, by page; the check and the build with 5,000 figures and 1,000 comparisons, in a copy; audits of
 * load speed. Times depend on the machine, so a budget that is missed is reported and fails nothing unless `--strict` is
 * given. Words choose parts: `npm run bench -- comparison page build figures audit`.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import type { Comparison, Evidence, Rig } from '../strength/types.ts';
import type { AuditLine } from './bench-audit.ts';
import { benchFigures } from './bench-figures.ts';
import { asBase, serveDirectory } from './static-server.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const PARTS = ['comparison', 'page', 'build', 'figures', 'rack', 'breaks', 'audit'] as const;
type Part = (typeof PARTS)[number];

/** What was measured and the most that the design allows it. */
type Line = ({ what: string; budget?: number } & ({ milliseconds: number } | { megabytes: number })) | AuditLine;

/** The value below which a share of the times lies; the smallest one at or above that rank. */
function quantile(times: readonly number[], share: number): number {
  if (times.length === 0) throw new RangeError('times: none were measured');
  const sorted = times.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.POSITIVE_INFINITY;
}

/** The prebuilt rig that gives the most methods a number, on a bearing that was measured. */
async function fullestRig(): Promise<{ evidence: Evidence; rig: Rig; compare: (evidence: Evidence, rig: Rig) => Comparison }> {
  const { loadEvidence } = await import('../build/evidence.ts');
  const { prebuiltRigs } = await import('../build/comparator/page.ts');
  const { compare } = await import('../strength/compare.ts');
  const evidence = loadEvidence();
  const withNumbers = (rig: Rig) => compare(evidence, rig).rows.filter(({ dots }) => dots.length > 0).length;
  const rigs = prebuiltRigs().map((rig): Rig => ({ ...rig, bearingMm: 4 }));
  // The same evidence under another identity: what was worked out for these is not kept for those that are measured.
  return { evidence: structuredClone(evidence), rig: rigs.reduce((a, b) => (withNumbers(b) > withNumbers(a) ? b : a)), compare };
}

/** A whole comparison of all methods: anew for each of many bearings, and with what is kept while only the rating changes. */
async function benchComparison(): Promise<Line[]> {
  const RUNS = 1000;
  const { evidence, rig, compare } = await fullestRig();
  const started = performance.now();
  compare(evidence, { ...rig, ratingKn: 4 });
  const first = performance.now() - started;
  const timesOf = (rigOfRun: (run: number) => Rig): number[] => Array.from({ length: RUNS }, (_, run) => {
    const asked = rigOfRun(run);
    const from = performance.now();
    compare(evidence, asked);
    return performance.now() - from;
  });
  const processor = process.cpuUsage();
  // Wires from 3.5 to 6 mm and ratings from 5 to 15 kN, in steps that never repeat.
  const anew = timesOf((run) => ({ ...rig, ratingKn: 5 + run / 100, bearingMm: 3.5 + run / 400 }));
  const { user, system } = process.cpuUsage(processor);
  const rated = timesOf((run) => ({ ...rig, ratingKn: 5 + run / 100 }));
  const methods = Object.keys(evidence.methods).length;
  return [
    { what: `comparison in Node, ${methods} methods, anew, median of ${RUNS}`, milliseconds: quantile(anew, 0.5), budget: 2 },
    { what: `comparison in Node, anew, 95 of 100 below (of ${RUNS})`, milliseconds: quantile(anew, 0.95) },
    { what: 'comparison in Node, anew, processor time, mean', milliseconds: (user + system) / 1000 / RUNS },
    { what: `comparison in Node, other rating, median of ${RUNS}`, milliseconds: quantile(rated, 0.5) },
    { what: 'comparison in Node, the very first', milliseconds: first },
  ];
}

/** Inputs that are changed in the page, each with the value of a change: neighbours differ much, as when one types. */
const CHANGED: Readonly<Record<string, (change: number) => number>> = {
  rating: (change) => 5 + ((change * 7) % 20) / 2,
  bearing: (change) => 3.5 + ((change * 7) % 20) / 10,
  demand: (change) => 5 + ((change * 7) % 20) / 2,
};

/** Changes of one input in the built page, from the key press until the answer is laid out and until it is drawn. */
async function benchPage(): Promise<Line[]> {
  const { chromium: browserType } = await import('@playwright/test');
  const { default: packaged } = await import('@sparticuz/chromium');
  const CHANGES = 40;
  const SLOWED = 4;
  const dist = join(root, 'dist');
  if (!existsSync(join(dist, 'compare', 'index.html'))) throw new Error('dist/ holds no built comparator. Run `npm run build` first.');
  const site = await serveDirectory(dist, { port: 0, base: asBase(process.env['BASE_PATH'] ?? '/') });
  const browser = await browserType.launch({ executablePath: await packaged.executablePath(), args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage'] });
  try {
    const page = await browser.newPage({ viewport: { width: 360, height: 740 } });
    await page.addInitScript(() => addEventListener('comparison-shown', () => document.documentElement.setAttribute('data-shown', '')));
    const { serialiseLink } = await import('../links/serialise-link.ts');
    await page.goto(`${site.address}compare/?${serialiseLink((await fullestRig()).rig)}`);
    await page.locator('html[data-shown]').waitFor({ state: 'attached' });
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
    const lines: Line[] = [];
    for (const [name, valueAt] of Object.entries(CHANGED)) {
      const input = await page.locator(`input[name="${name}"]`).elementHandle();
      if (!input) throw new Error(`the page has no input called ${name}`);
      const laidOut: number[] = [];
      const drawn: number[] = [];
      for (let change = 0; change < CHANGES; change += 1) {
        const [laid, painted] = await input.evaluate(async (element, text) => {
          const shown = new Promise((done) => addEventListener('comparison-shown', done, { once: true }));
          const from = performance.now();
          (element as HTMLInputElement).value = text;
          element.dispatchEvent(new Event('input', { bubbles: true }));
          await shown;
          // Reading a size makes the browser lay the new rows out now.
          void document.body.offsetHeight;
          const laid = performance.now() - from;
          await new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0)));
          return [laid, performance.now() - from] as const;
        }, String(valueAt(change)));
        laidOut.push(laid);
        drawn.push(painted);
      }
      lines.push(
        { what: `one change of the ${name} at ${SLOWED}x throttle, median of ${CHANGES}`, milliseconds: quantile(laidOut, 0.5) },
        { what: `one change of the ${name}, 95 of 100 below (of ${CHANGES})`, milliseconds: quantile(laidOut, 0.95), budget: 16 },
        { what: 'the same until the next frame is drawn, 95 of 100 below', milliseconds: quantile(drawn, 0.95) },
      );
    }
    return lines;
  } finally {
    await browser.close();
    await site.close();
  }
}

/** A cold build into a folder of its own. */
function benchBuild(): Line[] {
  const folder = mkdtempSync(join(tmpdir(), 'second-sling-build-'));
  try {
    const from = performance.now();
    const build = spawnSync(process.execPath, ['node_modules/astro/bin/astro.mjs', 'build', '--force', '--outDir', folder], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' },
    });
    const all = performance.now() - from;
    if (build.status !== 0) throw new Error(`the build failed:\n${build.stdout}${build.stderr}`);
    const pages = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.html')).length;
    return [
      { what: `build of ${pages} pages, cold, record check included`, milliseconds: all },
      { what: 'build, by page', milliseconds: all / pages, budget: 30 },
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const { values, positionals } = parseArgs({ allowPositionals: true, options: { strict: { type: 'boolean', default: false } } });
const unknown = positionals.filter((word) => !PARTS.some((part) => part === word));
if (unknown.length > 0) {
  console.error(`${unknown.join(', ')}: no such part. Choose from ${PARTS.join(', ')}.`);
  process.exit(1);
}
const wanted = (part: Part) => positionals.length === 0 || positionals.includes(part);

const lines: Line[] = [];
if (wanted('comparison')) lines.push(...(await benchComparison()));
if (wanted('page')) lines.push(...(await benchPage()));
if (wanted('build')) lines.push(...benchBuild());
if (wanted('figures')) lines.push(...(await benchFigures(root)));
if (wanted('rack')) lines.push(...(await import('./bench-rack.ts')).benchRack());
if (wanted('audit')) lines.push(...(await (await import('./bench-audit.ts')).benchAudit(join(root, 'dist'))));
if (wanted('breaks')) lines.push(...(await import('./bench-breaks.ts')).benchBreaks());
let over = 0;
for (const line of lines) {
  const { what, budget } = line;
  const [amount, unit] = 'megabytes' in line ? [line.megabytes, 'MB'] : 'milliseconds' in line ? [line.milliseconds, 'ms'] : 'points' in line ? [line.points, 'points'] : [line.shift, ''];
  const isOver = budget !== undefined && (unit === 'points' ? amount < budget : amount > budget);
  if (isOver) over += 1;
  const verdict = budget === undefined ? '' : isOver ? `  ${unit === 'points' ? 'BELOW' : 'OVER'} the budget of ${budget} ${unit}` : `  within ${budget} ${unit}`;
  console.log(`${what.padEnd(64)} ${`${amount.toFixed(amount < 100 ? 2 : 0)} ${unit}`.padStart(12)}${verdict}`);
}
process.exitCode = over > 0 && values.strict ? 1 : 0;
