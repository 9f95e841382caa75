/** From a method to the comparison with it in focus, and back, with the reader's rig kept. */
import { alive, partsOf, unfold, watchComparisons } from '../support/comparator-page.ts';
import { expect, test } from '../support/browser.ts';

const RIG = 'v=1&rating=9&eye=metal-bar&bearing=4&sling=hmpe-10&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown&olduse=unknown&oldlight=unknown';

test.beforeEach(async ({ page }) => watchComparisons(page));

test('a method leads to its own row, opened, and the row leads back', async ({ page }) => {
  await page.goto('methods/girth-hitch/');
  await page.getByRole('link', { name: 'See it on your device' }).click();
  await alive(page);
  const row = page.locator('#work-girth-hitch');
  await expect(row).toHaveAttribute('open', '');
  await expect(row.locator('summary')).toBeFocused();
  await expect(row).toBeInViewport();
  await row.getByRole('link', { name: 'How it is made, and whether we would' }).click();
  await expect(page).toHaveURL(/\/methods\/girth-hitch\/\?/);
});

test("the reader's rig goes along in both directions, one click each", async ({ page }) => {
  await page.goto(`compare/?${RIG}`);
  await alive(page);
  await unfold(page);
  await partsOf(page).rating.fill('10');
  const row = page.locator('#work-girth-hitch');
  await row.locator('summary').click();
  await row.getByRole('link', { name: 'How it is made, and whether we would' }).click();
  await expect(page).toHaveURL(/\/methods\/girth-hitch\/\?.*rating=10&eye=metal-bar&bearing=4/);
  await page.getByRole('link', { name: 'See it on your device' }).click();
  await alive(page);
  await expect(page.locator('.rig-line')).toContainText('10 kN');
  await expect(page.locator('.rig-line')).toContainText('metal bar');
  await expect(row).toHaveAttribute('open', '');
});

test('a method without a number is shown among those without, and without a script the way there still stands', async ({ page, browser, baseURL }) => {
  await page.goto('methods/bowline-on-a-bight/');
  await page.getByRole('link', { name: 'See it on your device' }).click();
  await alive(page);
  await expect(page.locator('#work-bowline-on-a-bight')).toBeInViewport();
  const context = await browser.newContext({ javaScriptEnabled: false, baseURL: baseURL ?? '' });
  const plain = await context.newPage();
  await plain.goto('methods/girth-hitch/?rating=9');
  await plain.getByRole('link', { name: 'See it on your device' }).click();
  await expect(plain).toHaveURL(/\/compare\/.*#work-girth-hitch$/);
  await context.close();
});

test('steps stand only with methods that can be ranked, after the maker and the warning', async ({ page }) => {
  const made = { 'girth-hitch': true, 'cord-loop-double-fishermans': true, basket: false, 'bowline-on-a-bight': false, 'sewn-loop-single': false, 'quick-link': false };
  for (const [method, hasSteps] of Object.entries(made)) {
    await page.goto(`methods/${method}/`);
    await expect(page.getByRole('heading', { name: 'How it is made' })).toHaveCount(hasSteps ? 1 : 0);
    await expect(page.getByRole('note', { name: 'The maker first' })).toBeVisible();
    const places = await page.evaluate(() => ['.maker', '.warning', '#how-it-is-made'].map((what) => document.querySelector(what)?.getBoundingClientRect().top ?? null));
    if (hasSteps) expect([...places].sort((a, b) => (a ?? 0) - (b ?? 0))).toEqual(places);
  }
});
