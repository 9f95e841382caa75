/** The course kit as somebody gets it: unpacked by a reader that did not pack it, opened from a folder, without a network. */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { crc32 } from 'node:zlib';
import AxeBuilder from '@axe-core/playwright';
import { Cite } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import '@citation-js/plugin-ris';
import type { Browser, BrowserContext, Page, TestInfo } from '@playwright/test';
import { archive } from '../../src/build/downloads/archive.ts';
import { kitFiles } from '../../src/build/kit/kit-files.ts';
import { type Lesson, readLessons } from '../../src/records/lessons.ts';
import { readFiles } from '../../src/records/files.ts';
import { expect, test, wideElements } from '../support/browser.ts';
import { ROOT } from '../support/step.ts';
import { type Entry, unzip } from '../support/unzip.ts';

const DIST = process.env['BUILT_SITE'] ?? join(ROOT, 'dist');
const ZIP = join(DIST, 'teach/second-sling-course-kit.zip');
const lessons: Lesson[] = [...readLessons(readFiles(ROOT)).lessons.values()];
const TOP = 'second-sling-course-kit';
const entries = (): Entry[] => unzip(readFileSync(ZIP));

/** Unpacks the archive into a folder of this test. Returns the folder of the kit. */
function unpacked(info: TestInfo): string {
  const folder = info.outputPath('kit');
  for (const { path, bytes } of entries()) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), bytes);
  }
  return join(folder, TOP);
}

/** A window without a network and without scripts; what asks for anything but a file of the folder is written down. */
async function offline(browser: Browser, info: TestInfo, folder: string): Promise<{ context: BrowserContext; page: Page; asked: string[] }> {
  const context = await browser.newContext({ offline: true, javaScriptEnabled: false, viewport: info.project.use.viewport ?? null });
  const asked: string[] = [];
  const own = pathToFileURL(folder).href;
  context.on('request', (request) => {
    if (!request.isNavigationRequest() || !request.url().startsWith(own)) asked.push(request.url());
  });
  return { context, page: await context.newPage(), asked };
}

test('it opens from a folder, each link leads to a file that is there or to the site, and nothing is asked for', async ({ browser }, info) => {
  const folder = unpacked(info);
  const { context, page, asked } = await offline(browser, info, folder);
  const first = pathToFileURL(join(folder, 'index.html')).href;
  const open = [first];
  const seen = new Set(open);
  for (let at = open.shift(); at !== undefined; at = open.shift()) {
    await page.goto(at);
    await expect(page.getByRole('heading', { level: 1 }), at).toHaveCount(1);
    expect(await wideElements(page), at).toEqual([]);
    const links = await page.locator('a[href]').evaluateAll((all) => all.map((link) => [link.getAttribute('href') ?? '', (link as HTMLAnchorElement).href] as const));
    for (const [written, whole] of links) {
      if (/^https?:/.test(written)) continue;
      const target = new URL(whole);
      expect(target.protocol, `${at}: ${written}`).toBe('file:');
      expect(existsSync(fileURLToPath(target)), `${at}: ${written}`).toBe(true);
      if (target.hash && target.href.split('#')[0] === at) await expect(page.locator(`[id="${target.hash.slice(1)}"]`), written).toHaveCount(1);
      target.hash = '';
      if (target.href.endsWith('.html') && !seen.has(target.href)) {
        seen.add(target.href);
        open.push(target.href);
      }
    }
  }
  // The first page, and of each lesson the plan, the handout, the variants and the answers.
  expect(seen.size).toBe(1 + 4 * lessons.length);
  expect(asked).toEqual([]);
  await context.close();
});

test('a page of each kind passes axe in light and dark', async ({ browser }, info) => {
  const folder = unpacked(info);
  const context = await browser.newContext({ offline: true, viewport: info.project.use.viewport ?? null });
  for (const path of ['index.html', 'lessons/knots-and-bends.html', 'handouts/weak-links.html', 'variants/falls.html', 'answers/deciding-to-retire.html']) {
    const page = await context.newPage();
    await page.goto(pathToFileURL(join(folder, path)).href);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']).analyze();
      expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(' ')}`), `${path}, ${colorScheme}`).toEqual([]);
    }
    await page.close();
  }
  await context.close();
});

test('every handout of the kit prints on its pages, on A4 and on Letter', async ({ browser }, info) => {
  test.skip(info.project.name === 'phone', 'paper is the same whatever the screen');
  const folder = unpacked(info);
  const { context, page } = await offline(browser, info, folder);
  for (const { id, handoutPages, drawings } of lessons) {
    await page.goto(pathToFileURL(join(folder, `handouts/${id}.html`)).href);
    await expect(page.locator('.handout svg[role=img]')).toHaveCount(drawings.length);
    for (const format of ['A4', 'Letter'] as const) {
      const pages = ((await page.pdf({ format })).toString('latin1').match(/\/Type \/Page\b/g) ?? []).length;
      expect(pages, `${id} on ${format}`).toBe(handoutPages);
    }
  }
  await context.close();
});

test('it has every drawing in both forms, thirty variants with answers, licence, citation and what it is', async () => {
  const files = new Map(entries().map(({ path, bytes }) => [path.replace(`${TOP}/`, ''), bytes]));
  const text = (path: string): string => files.get(path)?.toString('utf8') ?? '';
  const drawings = readdirSync(join(DIST, 'drawings'), { recursive: true, encoding: 'utf8' }).map((path) => path.split(sep).join('/')).filter((path) => /\.(?:svg|png)$/.test(path));
  expect([...files.keys()].filter((path) => path.startsWith('drawings/')).sort()).toEqual(drawings.map((path) => `drawings/${path}`).sort());
  for (const path of drawings) expect(files.get(`drawings/${path}`)?.equals(readFileSync(join(DIST, 'drawings', path))), path).toBe(true);
  for (const { id } of lessons) {
    expect(text(`variants/${id}.html`).match(/<th scope="row" data-id[^>]*>/g), id).toHaveLength(30);
    expect(text(`answers/${id}.html`).match(/<th scope="row" data-id[^>]*>/g), id).toHaveLength(31);
  }
  expect(text('LICENSE.txt')).toContain(readFileSync(join(ROOT, 'LICENSE'), 'utf8'));
  const version = (JSON.parse(readFileSync(join(ROOT, 'data/versions/index.json'), 'utf8')) as { version: string }[]).at(-1)?.version ?? '';
  expect(text('README.txt')).toContain(`Evidence ${version}`);
  expect(text('README.txt')).toContain(version.slice(0, 10));
  for (const ending of ['bib', 'ris', 'json']) expect(new Cite(text(`cite/course-kit.${ending}`)).data, ending).toMatchObject([{ title: 'Course kit: lessons on slings and protection devices', URL: expect.stringMatching(/\/teach\/kit\/$/) }]);
});

test('the maker stands first in every text of it', () => {
  for (const { path, bytes } of entries()) if (/\.(?:html|txt)$/.test(path)) expect(bytes.toString('utf8'), path).toContain("The maker's instruction and a professional replacement come first.");
  for (const { path, bytes } of entries()) if (path.endsWith('.svg')) expect(bytes.toString('utf8'), path).toContain('Ask the maker first.');
});

test('its bytes depend on the built pages and the day of the evidence alone, and its page says its size', async ({ page }) => {
  const packed = readFileSync(ZIP);
  for (const { path, bytes, crc } of entries()) expect(crc32(bytes), path).toBe(crc);
  const files = readdirSync(DIST, { recursive: true, encoding: 'utf8' }).map((path) => path.split(sep).join('/'));
  const day = /Evidence (\d{4}-\d{2}-\d{2})/.exec(entries().find(({ path }) => path.endsWith('README.txt'))?.bytes.toString('utf8') ?? '')?.[1] ?? '';
  const site = new URL(/href="([^"]*)" rel="canonical"|rel="canonical" href="([^"]*)"/.exec(readFileSync(join(DIST, 'index.html'), 'utf8'))?.slice(1).find(Boolean) ?? '');
  const again = archive(kitFiles({
    files, base: site.pathname.replace(/\/$/, ''), licence: readFileSync(join(ROOT, 'LICENSE'), 'utf8'),
    read: (path) => new Uint8Array(readFileSync(join(DIST, path))), address: (path) => `${site.href.replace(/\/$/, '')}${path}`,
  }), day);
  const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
  expect(hash(again)).toBe(hash(packed));
  await page.goto('teach/kit/');
  await expect(page.getByRole('main')).toContainText(`${(packed.length / 1e6).toFixed(1)} MB`);
});
