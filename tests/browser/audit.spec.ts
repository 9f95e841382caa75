/**
 * Page audits of Lighthouse, as a phone sees the page: accessibility, best practice and what search engines need, each in
 * full. Its measure of speed depends on the machine and stands in `npm run bench`.
 */
import { createServer, type AddressInfo } from 'node:net';
import { chromium, test as base, type Browser } from '@playwright/test';
import lighthouse from 'lighthouse';
import { expect } from '../support/browser.ts';
import { SITE_VARIABLE } from '../support/serve-built-site.ts';

const PAGES = [
  ['home', ''],
  ['the comparator', 'compare/'],
  ['a method', 'methods/basket/'],
  ['a figure', 'figures/ibarra-2021/girth-on-wire/'],
  ['a lesson', 'teach/reading-a-figure/'],
] as const;
const CATEGORIES = ['accessibility', 'best-practices', 'seo'] as const;

const freePort = (): Promise<number> => new Promise((done) => {
  const server = createServer().listen(0, '127.0.0.1', () => {
    const { port } = server.address() as AddressInfo;
    server.close(() => done(port));
  });
});

const test = base.extend<object, { port: number }>({
  port: [
    async ({ launchOptions }, use) => {
      const port = await freePort();
      const browser: Browser = await chromium.launch({ ...launchOptions, args: [...(launchOptions.args ?? []), `--remote-debugging-port=${port}`] });
      await use(port);
      await browser.close();
    },
    { scope: 'worker' },
  ],
});
test.skip(({ isMobile }) => isMobile === true, 'the audit has a phone of its own');

for (const [name, path] of PAGES) {
  test(`${name} passes every audit`, async ({ port }) => {
    const result = await lighthouse(`${process.env[SITE_VARIABLE]}${path}`, { port, onlyCategories: [...CATEGORIES], output: 'json', logLevel: 'silent' });
    const report = result?.lhr;
    expect(report?.runtimeError).toBeUndefined();
    const failed = Object.values(report?.audits ?? {}).filter(({ score, scoreDisplayMode }) => score !== null && score < 1 && ['binary', 'numeric', 'metricSavings'].includes(scoreDisplayMode));
    expect(failed.map(({ id, title, displayValue }) => `${id}: ${title} ${displayValue ?? ''}`)).toEqual([]);
    for (const category of CATEGORIES) expect(report?.categories[category]?.score, category).toBe(1);
  });
}
