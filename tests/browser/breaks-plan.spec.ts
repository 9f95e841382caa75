/** Planning breaks: what to learn, how many pulls, what each buys; wrong inputs, links, keyboard, paper, the empty table, no script. */
import type { Page } from '@playwright/test';
import { readTable } from '../../src/break-tests/read-table.ts';
import { expect, test, wideElements } from '../support/browser.ts';
import { quantitiesIn } from '../support/gates/bare-quantities.ts';

const headline = (page: Page) => page.locator('#plan-root .headline');
const steps = (page: Page) => page.locator('#plan-root .steps tbody tr');
const put = (page: Page, name: string, text: string) => page.locator(`[name="${name}"]`).fill(text);
const bare = (page: Page): Promise<string[]> => page.evaluate(`(${quantitiesIn.toString()})(document.querySelector('main')).bare.map(({ text }) => text)`);
/** By hand in plan-steps.test.ts, with published factors: 16 pulls. */
const BOUND = 'v=1&want=bound&pair=95~95&cv=9.3&short=8';

test('a lower bound by keyboard alone: the question, the pair, the numbers, then the answer', async ({ page }) => {
  await page.goto('breaks/plan/');
  await expect(page.locator('#plan-root')).toHaveText('Write how much pulls scatter, and the plan stands here.');
  await page.locator('[name="want"][value="bound"]').focus();
  await page.keyboard.press('Tab');
  await expect(page.locator('[name="pair"][value="95~95"]')).toBeFocused();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Tab');
  await page.keyboard.type('8');
  await page.keyboard.press('Tab');
  await page.keyboard.type('9,3');
  await page.keyboard.press('Enter');
  await expect(page.locator('#answer')).toBeFocused();
  await expect(headline(page)).toContainText('Pull 16.');
  await expect(page).toHaveURL(/cv=9%2C3/);
});

test('the table begins at three pulls, marks the count that is enough, and says the same as the drawing', async ({ page }) => {
  await page.goto(`breaks/plan/?${BOUND}`);
  await expect(steps(page).first().locator('th')).toHaveText('3');
  // Published factor at three pulls, 95/95: 7.656; c4 0.8862, so 1 - 7.656 x 0.8862 x 0.093 = 0.369.
  await expect(steps(page).first().locator('td')).toHaveText(['36.9', /^\d/, '', /^\d/, '7.656']);
  await expect(page.locator('#plan-root .steps .best th')).toHaveText('16enough');
  await expect(page.locator('.plan-chart .dot')).toHaveCount(await steps(page).count());
  await expect(page.locator('.plan-chart title')).toContainText('From 3 pulls to 5 the bound rises by');
  // ln 0.05 / ln 0.95, rounded up.
  await expect(page.locator('#plan-root')).toContainText('the weakest of 59 pulls is such a bound');
  expect(await bare(page)).toEqual([]);
});

test('a difference and a share: the counts that R and SciPy give', async ({ page }) => {
  await page.goto('breaks/plan/');
  await page.getByRole('radio', { name: /A difference/ }).check();
  await put(page, 'cv', '10');
  await put(page, 'diff', '10');
  await put(page, 'power', '80');
  // R 4.2.2, power.t.test(delta = 1, sd = 1, power = 0.8): 16.7.
  await expect(headline(page)).toContainText('Pull 17 of each method, 34 in all.');
  expect(await bare(page)).toEqual([]);
  await page.getByRole('radio', { name: /Which part goes first/ }).check();
  await expect(page.locator('#q-cv')).toBeHidden();
  await put(page, 'share', '50');
  await put(page, 'width', '40');
  // SciPy 1.17.1, searched one by one.
  await expect(headline(page)).toContainText('Pull 26.');
  // 1 - 0.025^(1/3), by hand.
  await expect(steps(page).first().locator('td').last()).toHaveText('70.8');
  await page.getByRole('radio', { name: /A difference/ }).check();
  await expect(page.locator('[name="diff"]')).toHaveValue('10');
  await expect(headline(page)).toContainText('Pull 17');
});

test('a scatter of ours is taken with one press, and leads to its figures', async ({ page }) => {
  await page.goto('breaks/plan/?short=5');
  const offer = page.locator('.offers li').last();
  const shown = /[\d.]+/.exec((await offer.getByRole('button').textContent()) ?? '')?.[0] ?? 'none';
  await offer.getByRole('button').click();
  await expect(page.locator('[name="cv"]')).toHaveValue(shown);
  await expect(headline(page)).toContainText('Pull ');
  await offer.getByRole('link').click();
  await expect(page).toHaveURL(/\/model\/factors\/#class-/);
  const place = page.locator(`[id="${new URL(page.url()).hash.slice(1)}"]`);
  await expect(place).toContainText(`Scatter between pieces: ${shown}`);
  await expect(place.locator('a[href*="/figures/"]').first()).toBeVisible();
});

test('wrong inputs are said at their field and stay as typed, also after a reload', async ({ page }) => {
  await page.goto(`breaks/plan/?${BOUND}`);
  await put(page, 'cv', 'wide');
  await expect(page.locator('#says-cv')).toHaveText('wide: not a plain number; write one from 0.5 to 60 %. Not used.');
  await expect(page.locator('[name="cv"]')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.locator('#plan-root')).toHaveText('Nothing is planned before the marked fields can be read.');
  await page.reload();
  await expect(page.locator('[name="cv"]')).toHaveValue('wide');
  await expect(page.locator('[name="short"]')).toHaveValue('8');
  await put(page, 'cv', '9,3 %');
  await expect(page.locator('#says-cv')).toBeEmpty();
  await expect(headline(page)).toContainText('Pull 16.');
  await page.getByRole('radio', { name: 'your own' }).check();
  await put(page, 'coverage', '100');
  await expect(page.locator('#says-coverage')).toContainText('outside 50 to 99.9 of 100');
});

test('a strange link gives a page: each piece that is not understood is listed word for word', async ({ page }) => {
  await page.goto(`breaks/plan/?${BOUND}&bogus=1&want=all&pair=7`);
  // Two answers to one question: none is used, and the form begins where it always does.
  for (const piece of ['bogus=1', 'want=bound', 'want=all', 'pair=95~95', 'pair=7']) await expect(page.locator('#not-used')).toContainText(piece);
  await expect(headline(page)).toContainText('Pull 16.');
});

test('reload, Back and a copied link keep the plan; the copied text says what pulled pieces are', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto(`breaks/plan/?${BOUND}`);
  await put(page, 'short', '10');
  await expect(page).toHaveURL(/short=10/);
  const said = (await headline(page).textContent()) ?? 'none';
  await page.reload();
  await expect(headline(page)).toHaveText(said);
  await page.getByRole('link', { name: 'A protocol to print' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('A protocol for breaks');
  await page.goBack();
  await expect(headline(page)).toHaveText(said);
  await page.getByRole('button', { name: 'Copy as text' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Text copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('Pieces pulled in a test are destroyed');
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Link copied.');
  const link = await page.evaluate(() => navigator.clipboard.readText());
  await page.goto('breaks/plan/form/');
  await page.goto(link);
  await expect(headline(page)).toHaveText(said);
  expect(await page.evaluate(() => localStorage.length + sessionStorage.length)).toBe(0);
});

test('the empty table is served as it is, and our reader takes it once it is filled', async ({ page, baseURL }) => {
  await page.goto('breaks/plan/');
  const address = await page.getByRole('link', { name: 'An empty table' }).getAttribute('href');
  const served = await page.request.get(new URL(address ?? '', baseURL).href);
  expect(served.headers()['content-type']).toContain('text/csv');
  const text = (await served.text()).replace('1,,,,', '1,12.3,torn,knot,').replace('2,,,,', '2,>13,nothing broke,machine,').split('\r\n').slice(0, 3).join('\r\n');
  const reading = readTable(text);
  expect('table' in reading && reading.table.columns[1]).toMatchObject({ unit: 'kN', values: [12.3, 13], atLeast: [false, true] });
  const schema = (await (await page.request.get(new URL('breaks/plan/template.schema.json', baseURL).href)).json()) as { fields: { name: string }[] };
  expect(schema.fields.map(({ name }) => name)).toEqual(text.split('\r\n')[0]?.split(','));
});

test('the form prints on one sheet of either paper, blank or filled, and the protocol without its page', async ({ page }) => {
  const sheets = async (format: 'A4' | 'Letter'): Promise<number> => ((await page.pdf({ format })).toString('latin1').match(/\/Type \/Page\b/g) ?? []).length;
  await page.goto('breaks/plan/form/');
  expect([await sheets('A4'), await sheets('Letter')]).toEqual([1, 1]);
  await page.getByLabel('Who pulled').fill('A. Tester');
  for (let pull = 1; pull <= 10; pull += 1) await page.getByLabel(`How it broke, pull ${pull}`, { exact: true }).fill('torn');
  expect([await sheets('A4'), await sheets('Letter')]).toEqual([1, 1]);
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('h1')).toBeHidden();
  await expect(page.locator('#pulls tbody tr')).toHaveCount(10);
  await expect(page.locator('.sheet')).toContainText('They are never climbed on.');
  await page.goto('breaks/plan/protocol/');
  await expect(page.locator('h1')).toBeHidden();
  await expect(page.locator('.warning')).toHaveCount(1);
  await expect(page.locator('.warning')).toBeVisible();
  for (const said of ['never climbed on', 'Whoever runs the pull stays behind a shield', 'drawn by lot', 'with the sign > before it', 'The series ends at the number planned']) await expect(page.locator('.protocol')).toContainText(said);
});

test('on paper stand the question, the answer and its table, without controls', async ({ page }) => {
  await page.setViewportSize({ width: 703, height: 1000 });
  await page.goto(`breaks/plan/?${BOUND}`);
  await expect(headline(page)).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(headline(page)).toBeVisible();
  await expect(steps(page).first()).toBeVisible();
  await expect(page.locator('.outcome .tools')).toBeHidden();
  await expect(page.locator('.offers')).toBeHidden();
  await expect(page.locator('#worked')).toBeHidden();
  await expect(page.locator('[name="cv"]')).toBeVisible();
  expect(await wideElements(page)).toEqual([]);
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false });
  test('stand factors for three to thirty pulls, and pulls for usual differences and shares', async ({ page }) => {
    await page.goto('breaks/plan/');
    await expect(page.locator('.questions')).toBeHidden();
    await expect(page.locator('noscript p')).toBeVisible();
    const rows = page.locator('#worked-bounds ~ .scroll').first().locator('tbody tr');
    await expect(rows).toHaveCount(28);
    // Exact factors of published-checks.json: 90/95, 95/95 and 99/95 at three and ten pulls.
    for (const [at, factors] of [[0, ['6.155', '7.656', '10.553']], [7, ['2.355', '2.911', '3.981']]] as const) {
      expect((await rows.nth(at).locator('td').allTextContents()).slice(0, 3)).toEqual(factors);
    }
    // SciPy 1.17.1: a share of one half, 40 points wide: 26 pulls.
    await expect(page.locator('#worked-shares ~ .scroll tbody tr').last().locator('td').nth(2)).toHaveText('26');
    await expect(page.getByText('Pieces pulled in a test are destroyed')).toBeVisible();
    await page.goto('breaks/plan/form/');
    await expect(page.locator('#pulls tbody tr')).toHaveCount(10);
  });
});
