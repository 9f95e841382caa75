/** Search and the list from A to Z: typing, the address, Back, what is fetched and when, numbers with their origin, keyboard, no script. */
import type { Page } from '@playwright/test';
import { expect, test, wideElements } from '../support/browser.ts';
import { quantitiesIn } from '../support/gates/bare-quantities.ts';

const field = (page: Page) => page.getByRole('searchbox', { name: 'What do you look for?' });
const results = (page: Page) => page.locator('.found:not(.some) > li');
const says = (page: Page) => page.locator('#search-says');
/** Files of the index that are fetched from now on. */
function watchIndex(page: Page): string[] {
  const asked: string[] = [];
  page.on('request', (request) => { if (/\/search\/[^/]+\.json$/.test(new URL(request.url()).pathname)) asked.push(request.url()); });
  return asked;
}

test('a reader on a phone types with a slip, finds the method, and comes back to what was found', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto('');
  await page.locator('#menu').getByRole('link', { name: 'Search', exact: true }).click();
  const asked = watchIndex(page);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Search');
  await page.waitForLoadState('networkidle');
  expect(asked).toEqual([]);
  await field(page).fill('girht hitch');
  await expect(results(page).first()).toContainText('Girth hitch');
  expect(new Set(asked).size).toBe(2);
  await expect(page.locator('#found-root')).toContainText('Read as Girth hitch');
  await expect(says(page)).toHaveText(/^[A-Z][a-z-]+ places have what you typed\.$/);
  await expect(page).toHaveURL(/\/search\/\?q=girht\+hitch$/);
  expect(await wideElements(page)).toEqual([]);
  await results(page).first().getByRole('heading').getByRole('link').click();
  await expect(page).toHaveURL(/\/methods\/girth-hitch\/$/);
  await page.goBack();
  await expect(field(page)).toHaveValue('girht hitch');
  await expect(results(page).first()).toContainText('Girth hitch');
  await page.reload();
  await expect(field(page)).toHaveValue('girht hitch');
  await expect(results(page).first()).toContainText('Girth hitch');
  expect(new Set(asked).size).toBe(2);
});

test('the index comes when the field is first used, once, and pages need not wait for figures', async ({ page }) => {
  const asked = watchIndex(page);
  let letFiguresGo = (): void => undefined;
  const held = new Promise<void>((go) => { letFiguresGo = go; });
  await page.route(/\/search\/index-figures-.*\.json$/, async (route) => {
    await held;
    await route.continue();
  });
  await page.goto('search/');
  expect(asked).toEqual([]);
  await field(page).focus();
  await expect.poll(() => asked.length).toBe(2);
  await field(page).fill('girth hitch');
  await expect(results(page).first()).toContainText('Girth hitch');
  await expect(page.locator('#found-root').getByRole('link', { name: 'Figure', exact: true })).toHaveCount(0);
  letFiguresGo();
  await expect(page.locator('#found-root').getByRole('link', { name: 'Figure', exact: true })).toHaveCount(1);
  expect(asked).toHaveLength(2);
});

test('Back leads from search to search, not from letter to letter', async ({ page }) => {
  await page.goto('search/');
  await field(page).pressSequentially('basket');
  await field(page).press('Enter');
  await expect(page.locator('#found')).toBeFocused();
  await expect(results(page).first()).toContainText('Basket');
  await field(page).fill('');
  await field(page).pressSequentially('ferrule');
  await field(page).press('Enter');
  await expect(results(page).first()).toContainText('Ferrule');
  await page.goBack();
  await expect(field(page)).toHaveValue('basket');
  await expect(results(page).first()).toContainText('Basket');
  await page.goBack();
  await expect(field(page)).toHaveValue('');
  await expect(page.locator('#hints')).toBeVisible();
  await page.goForward();
  await expect(field(page)).toHaveValue('basket');
});

test('pages that lack one of the words stand below those that have all', async ({ page }) => {
  await page.goto('search/?q=cam+sling+replacement');
  await expect(page.getByRole('heading', { level: 2, name: 'Without one of the words' })).toBeVisible();
  await expect(page.locator('.some')).toContainText('Who can replace the sling');
});

test('one kind can be looked at alone, and its address says so', async ({ page }) => {
  await page.goto('search/?q=nylon');
  await page.locator('[data-kind="material"]').click();
  await expect(results(page)).toHaveCount(await results(page).filter({ hasText: 'Material' }).count());
  await expect(page).toHaveURL(/q=nylon&kind=material$/);
  await page.reload();
  await expect(page.locator('[data-kind="material"]')).toHaveAttribute('aria-current', 'true');
  await page.goBack();
  await expect(page.locator('[data-kind=""]')).toHaveAttribute('aria-current', 'true');
});

test('every number that is found leads to its figure, with its standing', async ({ page }) => {
  for (const query of ['22 kN', 'hmpe 10mm', 'melting', 'EN 566', 'overhand', 'wet nylon', 'shelf life', 'device over rating']) {
    await page.goto(`search/?q=${encodeURIComponent(query)}`);
    await expect(says(page)).toContainText('have');
    const more = page.getByRole('button', { name: 'Show more' });
    while (await more.isVisible()) await more.click();
    const found = await page.evaluate(`(${quantitiesIn.toString()})(document.querySelector('#found'))`) as ReturnType<typeof quantitiesIn>;
    expect(found.bare.map(({ text, where }) => `${query}: ${text} (${where})`)).toEqual([]);
    expect(found.wide).toEqual([]);
    const links = await page.locator('#found .fig').all();
    for (const link of links) await expect(link.locator('.standing')).toHaveCount(1);
  }
  const addresses = await page.locator('#found a[href]').evaluateAll((links) => [...new Set(links.map((link) => (link as HTMLAnchorElement).href))]);
  for (const address of addresses) {
    const answer = await page.request.get(address);
    expect(answer.status(), address).toBe(200);
    const anchor = decodeURIComponent(new URL(address).hash.slice(1));
    if (anchor) expect(await answer.text(), address).toContain(`id="${anchor}"`);
  }
});

test('what is found nowhere stays as typed, is said, and the list from A to Z is offered', async ({ page }) => {
  const odd = '<zzqxv>"\'&%$';
  await page.goto('search/');
  await field(page).fill(odd);
  await expect(says(page)).toHaveText('Nothing was found.');
  await expect(field(page)).toHaveValue(odd);
  await expect(page.locator('zzqxv')).toHaveCount(0);
  await expect(page.locator('#found').getByRole('link', { name: 'HMPE, nylon, polyester, aramid' })).toBeVisible();
  await page.reload();
  await expect(field(page)).toHaveValue(odd);
  await field(page).fill('fxrryle');
  await page.locator('#found').getByRole('link', { name: 'Ferrule' }).click();
  await expect(results(page).first()).toContainText('Ferrule');
  await page.goto('search/?q=zzqxv');
  await expect(says(page)).toHaveText('Nothing was found.');
  await page.getByRole('link', { name: 'Everything from A to Z' }).click();
  await expect(page).toHaveURL(/\/a-z\/$/);
});

test('a strange address gives a page', async ({ page }) => {
  for (const query of ['q=', 'q=%00%ff', `q=${'a'.repeat(5000)}`, 'q=nylon&kind=bogus', 'q=nylon&kind=constructor', 'q=a&q=b', 'q=%F0%9F%A7%97', 'bogus=1#found']) {
    await page.goto(`search/?${query}`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Search');
    expect(await wideElements(page), query).toEqual([]);
  }
});

test('it works by keyboard alone', async ({ page }) => {
  await page.goto('search/');
  await page.keyboard.press('Tab');
  while (!(await field(page).evaluate((element) => element === document.activeElement))) await page.keyboard.press('Tab');
  await page.keyboard.type('ring bend');
  await expect(results(page).first()).toContainText('Ring bend');
  await page.keyboard.press('Enter');
  await expect(page.locator('#found')).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.locator('[data-kind=""]')).toBeFocused();
  while (!(await page.evaluate(() => document.activeElement?.matches('.found > li:first-child h3 a')))) await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1 })).toContainText(/ring bend/i);
});

test.describe('while the index does not arrive', () => {
  test.use({ expectedErrors: /Failed to load resource/ });
  test('what was typed stays, the page says so, and trying again brings it', async ({ page }) => {
    await page.route(/\/search\/index-pages-.*\.json$/, (route) => route.abort());
    await page.goto('search/');
    await field(page).fill('ferrule');
    await expect(says(page)).toContainText('The index did not arrive');
    await expect(field(page)).toHaveValue('ferrule');
    await page.unroute(/\/search\/index-pages-.*\.json$/);
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(results(page).first()).toContainText('Ferrule');
  });
});

test('a page that is not there leads to search', async ({ page, baseURL }) => {
  const response = await page.request.get(`${baseURL}no-such-page/`);
  expect(response.status()).toBe(404);
  expect(await response.text()).toContain('href="/search/"');
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false });
  test('the form gives way to the list from A to Z, which leads to pages by their letter', async ({ page }) => {
    await page.goto('search/?q=girth');
    await expect(page.locator('form')).toBeHidden();
    await page.locator('noscript a').click();
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('A to Z');
    await page.getByRole('link', { name: 'G', exact: true }).click();
    await expect(page).toHaveURL(/#letter-g$/);
    await page.getByRole('link', { name: 'Girth hitch', exact: true }).first().click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Girth hitch');
  });
});
