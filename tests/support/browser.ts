/**
 * The test function of the browser tests. Whatever a test does, it also checks that nothing left the origin,
 * that the console stayed clean (a breach of the content policy is a console error) and that no script threw.
 */
import { test as base, expect, type Page } from '@playwright/test';
import { SITE_VARIABLE } from './serve-built-site.ts';

export { expect };

interface Watch {
  /** Console errors that a test causes on purpose, such as a script that it stops. */
  expectedErrors: RegExp | null;
  watched: undefined;
}

export const test = base.extend<Watch>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads from the pattern which fixtures are wanted; here none.
  baseURL: async ({}, use) => {
    const address = process.env[SITE_VARIABLE];
    if (!address) throw new Error('The built site is not being served.');
    await use(address);
  },
  expectedErrors: [null, { option: true }],
  watched: [
    async ({ context, baseURL, expectedErrors }, use) => {
      const left: string[] = [];
      const errors: string[] = [];
      context.on('request', (request) => {
        const url = request.url();
        if (!url.startsWith(baseURL ?? '') && !/^(?:data|blob|about):/.test(url)) left.push(url);
      });
      context.on('console', (message) => {
        if (message.type() === 'error' && !expectedErrors?.test(message.text())) errors.push(`${message.text()} (${message.location().url})`);
      });
      context.on('weberror', (error) => {
        if (!expectedErrors?.test(String(error.error()))) errors.push(String(error.error()));
      });
      await use(undefined);
      expect(left, 'requests that left the site').toEqual([]);
      expect(errors, 'errors in the console').toEqual([]);
    },
    { auto: true },
  ],
});

/** Elements that stick out of the window sideways. A table may scroll inside its own box. */
export async function wideElements(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    if (document.documentElement.scrollWidth <= width) return [];
    const scrolls = (element: Element | null): boolean => element !== null && (/auto|scroll|hidden|clip/.test(getComputedStyle(element).overflowX) || scrolls(element.parentElement));
    return [...document.body.querySelectorAll('*')]
      .filter((element) => element.getBoundingClientRect().right > width + 1 && !scrolls(element.parentElement))
      .map((element) => `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}: ${element.textContent?.trim().slice(0, 60)}`);
  });
}

/** Addresses of the pages' scripts. */
export const SCRIPTS = /\.m?js(?:\?|$)/;

/** Lets every script of later pages come so many seconds late. */
export async function delayScripts(page: Page, seconds: number): Promise<void> {
  await page.route(SCRIPTS, async (route) => {
    await new Promise((done) => { setTimeout(done, 1000 * seconds); });
    await route.continue();
  });
}
