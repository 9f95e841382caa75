/** Journeys over the reading pages: the doors of home, from a number to its origin, no script, print, a lost address. */
import { expect, test } from '../support/browser.ts';

test('home says the job, puts the maker first and offers doors in the reader\'s words', async ({ page }) => {
  await page.goto('');
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  const main = page.getByRole('main');
  await expect(main).toContainText(/maker/i);
  for (const door of ['My sling is old', 'Compare ways to attach a sling', 'I look after a rack', 'I break things', 'I teach']) {
    await expect(main.getByText(door)).toBeVisible();
  }
  const text = await main.innerText();
  expect(text.search(/maker/i), 'the maker comes before the comparison').toBeLessThan(text.indexOf('Compare ways to attach a sling'));
});

test('each open door of home leads to its page, and Back returns', async ({ page }) => {
  await page.goto('');
  const doors = page.getByRole('main').getByRole('link');
  const count = await doors.count();
  expect(count).toBeGreaterThanOrEqual(3);
  for (let i = 0; i < count; i += 1) {
    const href = await doors.nth(i).getAttribute('href');
    await doors.nth(i).click();
    await expect(page).toHaveURL(new RegExp(`${href}$`));
    await expect(page.getByRole('heading', { level: 1 })).toHaveCount(1);
    await page.goBack();
  }
});

test('a number on a method\'s page leads to its figure, the figure to its source, and back', async ({ page }) => {
  await page.goto('methods/girth-hitch/');
  const number = page.getByRole('main').locator('a[href*="/figures/"]').filter({ hasText: /\d/ }).first();
  const digits = /\d+(?:\.\d+)?/.exec((await number.innerText()) ?? '')?.[0] ?? 'none';
  await number.click();
  await expect(page).toHaveURL(/\/figures\/[a-z0-9-]+\/[a-z0-9-]+\//);
  const main = page.getByRole('main');
  await expect(main).toContainText(digits);
  // Standing, locator and certainty stand where the number stands.
  await expect(main).toContainText(/read|quoted|recalled|common practice|derived|assumed/i);
  await main.locator('a[href*="/sources/"]').first().click();
  await expect(page).toHaveURL(/\/sources\/[a-z0-9-]+\//);
  await page.goBack();
  await page.goBack();
  await expect(page).toHaveURL(/\/methods\/girth-hitch\/$/);
});

test('the maker comes first, and the way there, on every page that offers a method', async ({ page }) => {
  await page.goto('methods/');
  const addresses = await page.getByRole('main').locator('a[href*="/methods/"]').evaluateAll((links) => [...new Set(links.map((link) => (link as HTMLAnchorElement).href))]);
  expect(addresses.length).toBeGreaterThanOrEqual(6);
  for (const address of addresses) {
    await page.goto(address);
    const main = page.getByRole('main');
    await expect(main.locator('a[href$="/replace/"]').first(), address).toBeVisible();
    const text = await main.innerText();
    const steps = text.search(/^steps|how (?:it is|to) (?:made|make|tie)/im);
    if (steps >= 0) expect(text.search(/maker/i), address).toBeLessThan(steps);
  }
});

test('a lost address says so and offers ways on', async ({ page, baseURL }) => {
  const answer = await page.request.get(`${baseURL}no/such/page/`);
  expect(answer.status()).toBe(404);
  expect(answer.headers()['content-type']).toContain('text/html');
  expect(await answer.text()).toContain('There is no page at this address');
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });
  test('every reading page says all it has to say', async ({ page }) => {
    for (const path of ['', 'methods/basket/', 'figures/ibarra-2021/girth-on-wire/', 'sources/', 'gaps/', 'caution/', 'replace/']) {
      await page.goto(path);
      await expect(page.getByRole('heading', { level: 1 }), path).toBeVisible();
      expect((await page.getByRole('main').innerText()).length, path).toBeGreaterThan(200);
    }
  });
});

test('the keyboard reaches the text first, and each link shows where it is', async ({ page, isMobile }) => {
  test.skip(isMobile === true, 'a keyboard is a desktop matter');
  await page.goto('');
  await page.keyboard.press('Tab');
  const skip = page.getByRole('link', { name: /skip/i });
  await expect(skip).toBeFocused();
  await expect(skip).toBeInViewport();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Tab');
  const focused = page.locator(':focus');
  expect(await focused.evaluate((element) => element.closest('main') !== null)).toBe(true);
  const outline = await focused.evaluate((element) => getComputedStyle(element).outlineStyle);
  expect(outline).not.toBe('none');
});

test('on paper nothing is closed, cut off or hidden behind the frame', async ({ page }) => {
  for (const path of ['methods/basket/', 'figures/ibarra-2021/girth-on-wire/', 'replace/']) {
    await page.goto(path);
    await page.emulateMedia({ media: 'print' });
    const hidden = await page.evaluate(() => {
      const lost: string[] = [];
      for (const element of document.querySelectorAll('main *')) {
        const text = [...element.childNodes].filter((node) => node.nodeType === 3).map((node) => node.textContent?.trim()).join('');
        if (text === '' || element.closest('script, style, template, noscript, [hidden], .hidden, title')) continue;
        if (element.closest('button, select, input')) continue;
        if (element.getClientRects().length === 0) lost.push(`${element.tagName.toLowerCase()}: ${text.slice(0, 60)}`);
      }
      return lost;
    });
    expect(hidden, path).toEqual([]);
    await page.emulateMedia({ media: 'screen' });
  }
});
