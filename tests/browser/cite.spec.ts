/** The boxes that say how to cite a page: with the keyboard, on a phone, and their text as a reader would copy it. */
import { Cite } from '@citation-js/core';
import '@citation-js/plugin-bibtex';
import '@citation-js/plugin-ris';
import { expect, test } from '../support/browser.ts';

test('a figure\'s box opens with the keyboard, and what it shows is read by a reference manager: the source, then us', async ({ page }) => {
  await page.goto('figures/ibarra-2021/girth-on-wire/');
  const box = page.locator('details.cite');
  await expect(box.locator('pre').first()).toBeHidden();
  await box.locator('summary').focus();
  await page.keyboard.press('Enter');
  await expect(box.locator('blockquote').first()).toContainText(/^Ibarra, M \(2021\)/);
  const title = await page.locator('meta[name=citation_title]').getAttribute('content');
  for (const pre of await box.locator('pre').all()) {
    const entries = new Cite(await pre.innerText()).data;
    expect(entries).toHaveLength(2);
    expect(entries[1]).toMatchObject({ type: 'report', title, publisher: 'Second Sling' });
  }
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  expect(wide).toBeLessThanOrEqual(0);
});

test('the cited link of a comparison leads to that page and its answer', async ({ page }) => {
  await page.goto('compare/12/bare-wire/hmpe-10/');
  const heading = await page.locator('#answer').innerText();
  const link = new URL((await page.locator('link[rel=cite-as]').getAttribute('href')) ?? '');
  const path = (await page.locator('link[rel=canonical]').getAttribute('href')) ?? '';
  expect(link.href.startsWith(path)).toBe(true);
  await page.goto(`compare/12/bare-wire/hmpe-10/${link.search}`);
  await expect(page.locator('html')).not.toHaveClass(/waiting|reading|unread/);
  await expect.poll(() => page.locator('#answer').innerText()).toBe(heading);
});

test('an invented series offers no citation', async ({ page }) => {
  await page.goto('breaks/gear-room-basket/');
  await expect(page.locator('details.cite, meta[name=citation_title], link[rel=cite-as]')).toHaveCount(0);
  await page.goto('breaks/ibarra-girth-on-wire/');
  await expect(page.locator('details.cite')).toHaveCount(1);
});
