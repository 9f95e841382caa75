/**
 * Pages to embed, framed by a page of a foreign origin that forbids scripts: they fit, ask for nothing but themselves, and
 * say what must not get lost. What the server is asked is read at the server.
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { test as base, expect } from '@playwright/test';
import { asBase, serveDirectory } from '../../src/commands/static-server.ts';
import { ROOT } from '../support/step.ts';

/** One of each kind, with the page that it is from and a word that its subject cannot be without. */
const KINDS = [
  ['a comparison', 'embed/compare/12/bare-wire/hmpe-10/', 'compare/12/bare-wire/hmpe-10/', /Maker's sling/],
  ['a figure', 'embed/figure/ibarra-2021/girth-on-wire/', 'figures/ibarra-2021/girth-on-wire/', /Ibarra/],
  ['a table of figures', 'embed/figure/nelhams-2010/sewn-knots/', 'figures/nelhams-2010/sewn-knots/', /Nelhams/],
  ['a load path', 'embed/chain/girth-hitch/', 'methods/girth-hitch/', /sling/],
  ['a fall', 'embed/fall/', 'falls/', /top piece/i],
] as const;
/** Widths of the frames, px: a narrow phone's column, a column of text, a wide page. */
const WIDTHS = [280, 640, 1000] as const;

interface Asked { path: string; referrer: string | undefined }
interface Servers {
  /** The built site, and what it was asked for. */
  site: { address: string; asked: Asked[] };
  /** A host elsewhere whose page holds what a test puts in. */
  host: { address: string; show: (html: string) => void };
}

const test = base.extend<Servers>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads from the pattern which fixtures are wanted; here none.
  site: async ({}, use) => {
    const { server, address, close } = await serveDirectory(process.env['BUILT_SITE'] ?? join(ROOT, 'dist'), { port: 0, base: asBase(process.env['BASE_PATH'] ?? '/') });
    const asked: Asked[] = [];
    server.prependListener('request', ({ url, headers }) => { asked.push({ path: url ?? '', referrer: headers.referer }); });
    await use({ address, asked });
    await close();
  },
  // biome-ignore lint/correctness/noEmptyPattern: as above.
  host: async ({}, use) => {
    let shown = '';
    const server = createServer((_, response) => { response.writeHead(200, { 'content-type': 'text/html; charset=utf-8' }).end(`<!doctype html><title>Course</title><link rel="icon" href="data:,">${shown}`); });
    await new Promise<void>((done) => { server.listen(0, '127.0.0.1', done); });
    // Another name and another port: another origin, and another site.
    await use({ address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`, show: (html) => { shown = html; } });
    server.closeAllConnections();
    await new Promise((done) => { server.close(done); });
  },
});

for (const [name, path, from, subject] of KINDS) {
  test(`${name} in a foreign page: fits three widths in light and dark, without a script or a request of its own`, async ({ page, site, host }) => {
    const errors: string[] = [];
    page.on('console', (message) => { if (message.type() === 'error') errors.push(message.text()); });
    await page.setViewportSize({ width: 1100, height: 800 });
    // Without its sandbox a script could run, and without its policy a referrer be sent: the page itself has to see to both.
    host.show(WIDTHS.map((width) => `<iframe src="${site.address}${path}?${width}" title="${width}" width="${width}" height="500"></iframe>`).join('<br>'));
    await page.goto(host.address);
    for (const width of WIDTHS) {
      const frame = page.frameLocator(`iframe[title="${width}"]`);
      await expect(frame.locator('h1')).toBeVisible();
      await expect(frame.locator('body')).toContainText(subject);
      await expect(frame.locator('.caution')).toContainText('The maker’s instruction and a professional re-sling come first.');
      await expect(frame.locator('header a').first()).toHaveAttribute('href', new RegExp(`/${from}$`));
      const wide = await frame.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth);
      expect(wide, `${width} px`).toBeLessThanOrEqual(0);
      await expect(frame.locator('script')).toHaveCount(0);
    }
    const paperOf = () => page.frameLocator('iframe[title="640"]').locator('body').evaluate((body) => getComputedStyle(body).backgroundColor);
    await page.emulateMedia({ colorScheme: 'light' });
    const light = await paperOf();
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await paperOf()).not.toBe(light);
    expect(site.asked.map((one) => one.path).sort()).toEqual(WIDTHS.map((width) => `${new URL(site.address).pathname}${path}?${width}`).sort());
    expect(errors).toEqual([]);
  });
}

test('the copied code works as it stands: the frame sends no referrer, and a link opens a page of its own that knows nothing of the host', async ({ page, context, site, host }) => {
  await page.goto(`${site.address}methods/girth-hitch/`);
  await page.locator('details.embed-code summary').click();
  const code = await page.locator('.embed-code textarea').inputValue();
  // The build names the address that it is published under; here it is served from another.
  const built = new URL(/src="([^"]+)"/.exec(code)?.[1] ?? '');
  expect(built.pathname).toBe(`${new URL(site.address).pathname}embed/chain/girth-hitch/`);
  host.show(code.replace(built.href, `${site.address}embed/chain/girth-hitch/`));
  site.asked.length = 0;
  await page.goto(host.address);
  const frame = page.frameLocator('iframe');
  const credit = frame.locator('header a').first();
  await expect(credit).toBeVisible();
  expect(site.asked).toEqual([{ path: `${new URL(site.address).pathname}embed/chain/girth-hitch/`, referrer: undefined }]);
  site.asked.length = 0;
  const [opened] = await Promise.all([context.waitForEvent('page'), frame.locator('.caution a').click()]);
  await opened.waitForLoadState();
  expect(new URL(opened.url()).pathname).toBe(`${new URL(site.address).pathname}replace/`);
  expect(await opened.evaluate(() => [window.opener === null, document.referrer])).toEqual([true, '']);
  // The host stays, and the opened page is whole: its own sandbox is gone.
  expect(page.url()).toBe(host.address);
  expect(site.asked.every(({ referrer }) => referrer === undefined || referrer.startsWith(site.address))).toBe(true);
});

test('pages to embed are left out by search engines, which are led to the page that they are from', async ({ request, site }) => {
  for (const [, path, from] of KINDS) {
    const html = await (await request.get(site.address + path)).text();
    expect(html).toContain('<meta name="robots" content="noindex">');
    expect(/<link rel="canonical" href="([^"]+)"/.exec(html)?.[1]).toMatch(new RegExp(`/${from}$`));
    expect(html).toContain('<meta name="referrer" content="no-referrer">');
  }
});

test('the page on embedding shows each kind in a frame that works', async ({ page, site }) => {
  await page.goto(`${site.address}embed/`);
  const frames = page.locator('iframe');
  await expect(frames).toHaveCount(4);
  for (let i = 0; i < 4; i += 1) {
    await frames.nth(i).scrollIntoViewIfNeeded();
    await expect(frames.nth(i).contentFrame().locator('h1')).toBeVisible();
  }
});
