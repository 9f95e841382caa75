/**
 * How fast pages load, by the audit of Lighthouse: a phone on a slow network, both simulated. The first audit warms up and
 * is not counted. Times depend on the machine, so they stand here and not among the tests.
 */
import { createServer, type AddressInfo } from 'node:net';
import { asBase, serveDirectory } from './static-server.ts';

const PAGES = ['', 'compare/', 'methods/basket/', 'figures/ibarra-2021/girth-on-wire/', 'teach/reading-a-figure/'];

/** A measure, and the most that the design allows; of points the least. */
export type AuditLine = { what: string; budget: number } & ({ milliseconds: number } | { points: number } | { shift: number });

/** A port that nobody uses now. */
const freePort = (): Promise<number> => new Promise((done) => {
  const server = createServer().listen(0, '127.0.0.1', () => {
    const { port } = server.address() as AddressInfo;
    server.close(() => done(port));
  });
});

/** Audits one page of each kind. @param dist folder with the built site */
export async function benchAudit(dist: string): Promise<AuditLine[]> {
  const { default: lighthouse } = await import('lighthouse');
  const { chromium } = await import('@playwright/test');
  const { default: packaged } = await import('@sparticuz/chromium');
  const site = await serveDirectory(dist, { port: 0, base: asBase(process.env['BASE_PATH'] ?? '/') });
  const port = await freePort();
  const browser = await chromium.launch({ executablePath: await packaged.executablePath(), args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', `--remote-debugging-port=${port}`] });
  try {
    const lines: AuditLine[] = [];
    for (const [at, path] of [PAGES[0] as string, ...PAGES].entries()) {
      const report = (await lighthouse(`${site.address}${path}`, { port, onlyCategories: ['performance'], output: 'json', logLevel: 'silent' }))?.lhr;
      if (!report || report.runtimeError) throw new Error(`/${path}: ${report?.runtimeError?.message ?? 'the audit gave no report'}`);
      if (at === 0) continue;
      const value = (audit: string): number => report.audits[audit]?.numericValue ?? Number.POSITIVE_INFINITY;
      lines.push(
        { what: `/${path}: performance`, points: 100 * (report.categories['performance']?.score ?? 0), budget: 100 },
        { what: `/${path}: largest element drawn`, milliseconds: value('largest-contentful-paint'), budget: 1000 },
        { what: `/${path}: time blocked`, milliseconds: value('total-blocking-time'), budget: 0 },
        { what: `/${path}: layout shift`, shift: value('cumulative-layout-shift'), budget: 0 },
      );
    }
    return lines;
  } finally {
    await browser.close();
    await site.close();
  }
}
