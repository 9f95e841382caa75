/** A shared link never shows another rig's numbers as its own: with the script slow, stopped, without its evidence, and off. */
import { alive, OTHER_RIG, partsOf, rowTexts, watchComparisons } from '../support/comparator-page.ts';
import { delayScripts, expect, SCRIPTS, test } from '../support/browser.ts';

/** What a reader sees at one moment. */
async function glance(page: import('@playwright/test').Page) {
  return page.evaluate(() => {
    const visible = (element: Element | null) => element !== null && element.getClientRects().length > 0 && getComputedStyle(element).visibility !== 'hidden' && getComputedStyle(element).opacity !== '0';
    return {
      rows: visible(document.querySelector('table#comparison td.spread')) || visible(document.querySelector('table#comparison')),
      summary: visible(document.querySelector('.summary')),
      line: visible(document.querySelector('.rig-line')) ? (document.querySelector('.rig-line')?.textContent ?? '') : '',
      text: document.body.innerText,
    };
  });
}

/** Looks at the page for some time; whenever rows show, they must be those of the link. */
async function watch(page: import('@playwright/test').Page, milliseconds: number): Promise<number> {
  let looks = 0;
  const until = Date.now() + milliseconds;
  while (Date.now() < until) {
    const seen = await glance(page);
    if (seen.rows || seen.summary) {
      expect(seen.line).toContain('9 kN');
      expect(seen.line).toContain('bare wire');
    } else {
      // While there is no answer the page says which rig it is reading, or that it gave up.
      expect(seen.text).toMatch(/9 kN|rating[:= ]+9|not been computed/);
    }
    looks += 1;
    await page.waitForTimeout(80);
  }
  return looks;
}

/** A rig that has a page of its own. */
const BUILT_RIG = 'v=1&rating=9&eye=bare-wire&bearing=unmeasured&sling=hmpe-10&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown';
/** What the page says when there is no answer. */
const NOT_COMPUTED = /not been computed/i;
const EVIDENCE = /evidence[^/]*\.json/;

test('script five seconds late: first the rig as read, then its rows, never the example\'s', async ({ page }) => {
  await watchComparisons(page);
  await delayScripts(page, 5);
  await page.goto(`compare/?${OTHER_RIG}`, { waitUntil: 'commit' });
  await page.locator('footer').waitFor({ state: 'attached' });
  expect((await glance(page)).rows).toBe(false);
  expect(await watch(page, 4_500)).toBeGreaterThan(10);
  await alive(page);
  await expect(partsOf(page).rigLine).toContainText('9 kN');
  const late = await rowTexts(page);
  await page.unrouteAll();
  await page.reload();
  await alive(page);
  expect(await rowTexts(page)).toEqual(late);
});

test('what is chosen before a script that comes three seconds late stays, on top of the rig of the link', async ({ page }) => {
  await watchComparisons(page);
  await delayScripts(page, 3);
  await page.goto(`compare/?${OTHER_RIG}`, { waitUntil: 'commit' });
  await page.locator('footer').waitFor({ state: 'attached' });
  const rating = await page.evaluate(() => {
    const form = document.querySelector<HTMLFormElement>('.rig-form') as HTMLFormElement;
    const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement;
    field('rating').value = '7,5';
    field('oldage').value = '4';
    return field('rating').value;
  });
  await alive(page);
  await expect(page.locator('[name="rating"]')).toHaveValue(rating);
  await expect(page.locator('[name="oldage"]')).toHaveValue('4');
  await expect(page.locator('[name="no-oldage"]')).not.toBeChecked();
  await expect(partsOf(page).rigLine).toContainText('7.5 kN');
  // The rest is the link's, and the address follows.
  await expect(page).toHaveURL(/rating=7\.5.*oldage=4/);
  const others = new URLSearchParams(OTHER_RIG);
  for (const key of ['eye', 'sling', 'bearing']) expect(new URL(page.url()).searchParams.get(key)).toBe(others.get(key));
});

for (const [what, pattern] of [['the script', SCRIPTS], ['the evidence', EVIDENCE]] as const) {
  test.describe(`${what} never arrives`, () => {
    test.use({ expectedErrors: /ERR_FAILED|Failed to fetch/ });
    test(`${what} stopped: the page says so, names a built page, and shows no rows`, async ({ page }) => {
      await page.route(pattern, (route) => route.abort());
      await page.goto(`compare/?${BUILT_RIG}`, { waitUntil: 'commit' });
      await page.locator('footer').waitFor({ state: 'attached' });
      await watch(page, 2_000);
      const alert = page.getByRole('alert').filter({ hasText: NOT_COMPUTED });
      await expect(alert).toBeVisible();
      expect((await glance(page)).rows).toBe(false);
      await alert.getByRole('link').click();
      await expect(page).toHaveURL(/\/compare\/9\/bare-wire\/hmpe-10\/$/);
      await expect(partsOf(page).rigLine).toContainText('9 kN');
      await expect(partsOf(page).rows).toBeVisible();
    });

    test(`${what} stopped, for a rig without a built page: the page says that too`, async ({ page }) => {
      await page.route(pattern, (route) => route.abort());
      await page.goto(`compare/?${OTHER_RIG}`);
      const alert = page.getByRole('alert').filter({ hasText: NOT_COMPUTED });
      await expect(alert).toBeVisible();
      await expect(alert).toContainText(/no page is built for exactly this rig/i);
      await watch(page, 500);
      await expect(page.locator('table[data-built]')).toBeVisible();
    });
  });
}

test.describe('script off', () => {
  test.use({ javaScriptEnabled: false });
  test('the example is labelled an example, beside the pages that are built', async ({ page }) => {
    await page.goto(`compare/?${OTHER_RIG}`);
    await expect(page.getByText(/example, not your rig/i)).toBeVisible();
    await expect(page.getByRole('heading', { name: 'Example' })).toBeVisible();
    await expect(partsOf(page).rigLine).toContainText('12 kN');
    await expect(partsOf(page).rows).toBeVisible();
    // Controls that need the script are not offered.
    await expect(partsOf(page).copyLink).toBeHidden();
    const built = page.locator('table[data-built] a');
    // Ten ratings, two kinds of eye, four slings.
    expect(await built.count()).toBe(240);
    await page.locator('table[data-built] a[href$="/compare/9/bare-wire/hmpe-10/"]').click();
    await expect(page).toHaveURL(/\/compare\/9\/bare-wire\/hmpe-10\/$/);
    await expect(partsOf(page).rigLine).toContainText('9 kN');
    await expect(partsOf(page).rigLine).toContainText('bare wire');
    await expect(partsOf(page).rows).toBeVisible();
  });

  test('a row\'s working opens without script and leads to figures', async ({ page }) => {
    await page.goto('compare/12/bare-wire/hmpe-10/');
    const working = page.locator('table#comparison details').first();
    await working.locator('summary').click();
    await expect(working.locator('a[href*="/figures/"]').first()).toBeVisible();
  });
});

test('a built page and the same rig in a link show the same rows', async ({ page }) => {
  await page.goto('compare/9/bare-wire/hmpe-8/');
  await expect(partsOf(page).rows).toBeVisible();
  const built = await rowTexts(page);
  await watchComparisons(page);
  await page.goto('compare/?v=1&rating=9&eye=bare-wire&bearing=unmeasured&sling=hmpe-8&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown');
  await alive(page);
  expect(await rowTexts(page)).toEqual(built);
});
