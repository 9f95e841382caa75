/** A new sling: from the verdict to the printed form, the calculator with its link, currencies and countries, wrong inputs, keyboard, paper, no script. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, test, wideElements } from '../support/browser.ts';
import { quantitiesIn } from '../support/gates/bare-quantities.ts';
import { keptItems, openRack, startWith } from '../support/rack-page.ts';
import { ROOT } from '../support/step.ts';

const headline = (page: Page) => page.locator('#cost-root .headline');
const row = (page: Page, name: string) => page.locator('#cost-root .ways tbody tr').filter({ has: page.locator('th', { hasText: name }) });
const put = (page: Page, name: string, text: string) => page.locator(`[name="${name}"]`).fill(text);
/** Seven devices at 9 each and 15 shipping each way: 7 x 9 + 2 x 15 = 93, against 7 x 20 = 140. */
const SEVEN = 'v=1&kinds=7&names=cams&w=9~15~15&n=20';

test.use({ locale: 'en-GB' });

test('from the verdict to the printed form: retire now, who can replace it, what it costs, the form', async ({ page }) => {
  await page.goto('retire/?v=1&material=hmpe&width=10&made=2012-06&use=weekly');
  await page.locator('#verdict-root').getByRole('link', { name: 'Who can replace the sling' }).click();
  await expect(page).toHaveURL(/\/replace\/$/);
  await expect(page.locator('#maker')).toContainText('Over which age do you refuse a device?');
  await page.goBack();
  await page.locator('#verdict-root').getByRole('link', { name: 'What each way costs' }).click();
  await expect(page).toHaveURL(/\/replace\/cost\/\?v=1&retire=now&kinds=1$/);
  await expect(page.getByLabel('How many').first()).toHaveValue('1');
  await put(page, 'count-0', '7');
  await put(page, 'workshop-price', '9');
  await put(page, 'workshop-there', '15');
  await put(page, 'workshop-back', '15');
  await put(page, 'new-price', '20');
  await expect(headline(page)).toHaveText('Least cost now: a workshop, 93 in all, 13.29 each.');
  await expect(row(page, 'Keep and watch')).toContainText('Not open: the verdict was to retire the sling now.');
  await expect(row(page, 'Sling at home')).toContainText('closed');
  await page.getByRole('link', { name: 'A form to send with the devices' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('A form to send with the devices');
  await page.getByLabel('Name', { exact: true }).fill('A. Keeper');
  await page.getByLabel('Device, device 1').fill('Cam, size 2');
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByLabel('Device, device 1')).toBeVisible();
  await expect(page.locator('h1')).toBeHidden();
  await expect(page.locator('#from-rack')).toBeHidden();
  await expect(page.locator('.asks.for-maker')).toBeVisible();
  await expect(page.locator('.asks.for-workshop')).toBeHidden();
});

test('the ways stand in the order to ask, and the home way opens only where maker and workshop have both refused', async ({ page }) => {
  await page.goto(`replace/cost/?${SEVEN}&h=1~~0~0`);
  await expect(page.locator('#cost-root .ways tbody th')).toHaveText([/^Maker/, /^Workshop/, /^Buy new/, /^Sling at home/, /^Keep and watch/]);
  await expect(page.locator('#fields-home')).toBeHidden();
  await expect(headline(page)).toContainText('a workshop, 93');
  await page.getByLabel('the maker refused').first().check();
  await expect(page.locator('#fields-home')).toBeHidden();
  await page.getByLabel('a workshop refused').first().check();
  await expect(page.locator('#fields-home')).toBeVisible();
  await expect(row(page, 'Workshop')).toContainText('refused all devices');
  await expect(page.locator('#cost-root .warning')).toContainText('It can come off or be cut');
  await expect(page.locator('#cost-root .warning').getByRole('link')).toHaveCount(2);
  await page.getByLabel('a workshop refused').first().uncheck();
  await expect(page.locator('#cost-root .warning')).toHaveCount(0);
});

test('break-even, chart, its table and what changes the answer say the same', async ({ page }) => {
  await page.goto(`replace/cost/?${SEVEN}`);
  const answer = page.locator('#cost-root');
  // 30 + 9 n against 20 n: from three on. 7 p + 30 = 140 at 15.71.
  await expect(answer).toContainText('A workshop is dearer than buying new for one device; from 3 on cheaper than buying new.');
  await expect(answer).toContainText('For one device buying new costs least; from 3 on a workshop.');
  await expect(answer.locator('.cost-chart .turn')).toHaveCount(1);
  await expect(answer.locator('.cost-chart title')).toContainText('from 3 on a workshop');
  await answer.locator('summary').click();
  await expect(answer.locator('.scroll tbody tr').nth(6).locator('td')).toHaveText(['93 least', '140']);
  await expect(answer.locator('.changes tbody tr').filter({ hasText: 'Workshop: price each' })).toContainText('above 15.71');
  const left = await page.evaluate(`(${quantitiesIn.toString()})(document.querySelector('main')).bare.map(({ text }) => text)`);
  expect(left).toEqual([]);
});

for (const [locale, cur, inAll] of [
  // As the Unicode locale data prints 1234.50 in these countries.
  ['en-GB', 'GBP', '£1,234.50'], ['de-DE', 'EUR', '1.234,50\u00a0€'], ['fr-FR', 'EUR', '1\u202f234,50\u00a0€'], ['ja-JP', 'JPY', '￥1,235'], ['de-DE', 'Taler', '1.234,50\u00a0Taler'], ['en-GB', '', '1,234.50'],
] as const) {
  test.describe(`in ${locale} with ${cur || 'no currency'}`, () => {
    test.use({ locale });
    test('amounts are printed as that country writes them, and typed either way', async ({ page }) => {
      await page.goto('replace/cost/?v=1&kinds=1&n=2000');
      await put(page, 'cur', cur);
      await put(page, 'maker-price', '1234,50');
      await expect(row(page, 'Maker').locator('[data-label="In all"]')).toHaveText(inAll);
      await put(page, 'maker-price', locale === 'en-GB' ? '1,234.50' : '1.234,50');
      await expect(row(page, 'Maker').locator('[data-label="In all"]')).toHaveText(inAll);
    });
  });
}

test('wrong inputs are said at their field, stay as typed, and are not worked out as nothing', async ({ page }) => {
  await page.goto(`replace/cost/?${SEVEN}&m=8~5~5`);
  await put(page, 'workshop-there', '1,234');
  await expect(page.locator('#says-workshop-there')).toHaveText('1,234: can be 1234 or 1.234; write it without the sign, or with two digits behind it. Not used.');
  await expect(page.locator('[name="workshop-there"]')).toHaveAttribute('aria-invalid', 'true');
  await expect(row(page, 'Workshop')).toContainText('left out: a field is not readable');
  await expect(headline(page)).toContainText('the maker’s service, 66 in all');
  await put(page, 'count-0', 'seven');
  await expect(page.locator('#says-count-0')).toContainText('no whole number');
  await expect(page.locator('#cost-root')).toHaveText('Nothing is worked out before the fields marked above can be read.');
  await page.reload();
  await expect(page.locator('[name="count-0"]')).toHaveValue('seven');
  await expect(page.locator('[name="workshop-there"]')).toHaveValue('1,234');
});

test('a strange link gives a page: each piece that is not understood is listed word for word', async ({ page }) => {
  await page.goto('replace/cost/?kinds=7&bogus=1&refused=all&retire=soon&n=20');
  for (const piece of ['bogus=1', 'refused=all', 'retire=soon']) await expect(page.locator('#not-used')).toContainText(piece);
  await expect(row(page, 'Buy new')).toContainText('140');
});

test('the address follows; Back, Forward and reload keep what was written; a copied link gives the same answer', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto(`replace/cost/?${SEVEN}`);
  await put(page, 'workshop-price', '10');
  await expect(page).toHaveURL(/w=10~15~15/);
  const said = await headline(page).textContent();
  await page.reload();
  await expect(headline(page)).toHaveText(said ?? 'none');
  await page.locator('main').getByRole('link', { name: 'Has the sling to go?' }).click();
  await expect(page).toHaveURL(/\/retire\//);
  await page.goBack();
  await expect(page.locator('[name="workshop-price"]')).toHaveValue('10');
  await expect(headline(page)).toHaveText(said ?? 'none');
  await page.getByRole('button', { name: 'Copy as text' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Text copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('Least cost now: a workshop, 100 in all');
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Link copied.');
  const link = await page.evaluate(() => navigator.clipboard.readText());
  await page.goto('replace/');
  await page.goto(link);
  await expect(headline(page)).toHaveText(said ?? 'none');
});

test('kinds of device are added and taken out, and may go different ways', async ({ page }) => {
  await page.goto(`replace/cost/?${SEVEN}`);
  await page.getByRole('button', { name: 'Another kind of device' }).click();
  await expect(page.locator('[name="count-1"]')).toBeFocused();
  await put(page, 'count-1', '2');
  await put(page, 'name-1', 'nuts');
  await put(page, 'fresh-1', '5');
  // 93 and 2 x 5.
  await expect(headline(page)).toHaveText('Least cost now: a workshop for 7 cams; buying new for 2 nuts, 103 in all, 11.44 each.');
  await page.getByRole('button', { name: 'Take this kind out' }).click();
  await expect(page.locator('#kind-1')).toBeHidden();
  await expect(headline(page)).toContainText('93 in all');
  await page.getByRole('button', { name: 'Try the invented example' }).click();
  await expect(page.locator('[name="name-1"]')).toHaveValue('old nuts');
  await expect(page.locator('#example')).toContainText('Every price here is invented.');
});

test('it works by keyboard alone', async ({ page }) => {
  await page.goto('replace/cost/');
  await page.locator('[name="count-0"]').focus();
  await page.keyboard.type('3');
  await page.locator('[name="maker-price"]').focus();
  await page.keyboard.type('9');
  await page.keyboard.press('Tab');
  await page.keyboard.type('4');
  await page.locator('[name="new-price"]').focus();
  await page.keyboard.type('30');
  await page.keyboard.press('Enter');
  await expect(page.locator('#answer')).toBeFocused();
  await expect(headline(page)).toContainText('the maker’s service, 31 in all');
});

test('the form is filled from the register of a rack, pasted or as a file, and a faulty one says its line', async ({ page }) => {
  const rack = readFileSync(join(ROOT, 'data/demo/rack.json'), 'utf8');
  await page.goto('replace/form/');
  await page.getByText('Take the file of a rack, or its text').click();
  await page.getByLabel('Text of the register').fill('{\n oops');
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.locator('#rack-says')).toContainText(/Nothing was taken\. line 2: /);
  await page.getByLabel('Text of the register').fill(rack);
  await page.getByRole('button', { name: 'Take it' }).click();
  await expect(page.locator('#rack-says')).toContainText(/items read\. Ticked: \d+ whose sling has to go now\./);
  const first = await page.getByLabel('Device, device 1', { exact: true }).inputValue();
  await expect(page.locator('#rack-items li').first()).toContainText(`${first}, `);
  await expect(page.locator('#rack-items li').first()).toContainText('retire now');
  await page.getByRole('button', { name: 'None' }).click();
  await expect(page.getByLabel('Device, device 1', { exact: true })).toHaveValue('');
  await page.locator('#rack-items input').nth(1).check();
  await expect(page.getByLabel('Device, device 1', { exact: true })).not.toHaveValue('');
  await page.reload();
  await page.getByText('Take the file of a rack, or its text').click();
  await page.getByLabel('File of the register').setInputFiles({ name: 'rack.json', mimeType: 'application/json', buffer: Buffer.from(rack) });
  await expect(page.getByLabel('Device, device 1', { exact: true })).toHaveValue(first);
  // Nothing stays: what was read is gone with the page.
  expect(await page.evaluate(() => localStorage.length + sessionStorage.length)).toBe(0);
  await page.getByLabel('a workshop').check();
  await expect(page.locator('.asks.for-workshop')).toBeVisible();
  await expect(page.locator('.asks.for-maker')).toBeHidden();
});

test('the rack in this browser fills the calculator and the form; what was written stays one step back', async ({ page }) => {
  await page.goto('replace/form/');
  await page.getByRole('button', { name: 'Take the rack in this browser' }).click();
  await expect(page.locator('#rack-says')).toHaveText('Nothing was taken. this browser keeps no register; save one on the page of the rack, or take its file');
  await openRack(page);
  // Name, rating, sling, made, count: what is not known counts against each.
  await startWith(page, 'Cam 1, 12, nylon 16, 1990, 2\nCam 2, 12, nylon 16, 1991, 5\nNut, 10, hmpe 10, 2026-09, 4');
  await expect.poll(async () => (await keptItems(page)).length).toBe(3);
  await page.locator('#send').getByRole('link', { name: 'What a new sling costs' }).click();
  await expect(page).toHaveURL(/replace\/cost\/#from-rack$/);
  await put(page, 'count-0', '9');
  await put(page, 'workshop-price', '9');
  await put(page, 'workshop-there', '15');
  await put(page, 'workshop-back', '15');
  await put(page, 'new-price', '20');
  await page.getByRole('button', { name: 'Take the rack in this browser' }).click();
  await expect(page.locator('#rack-says')).toContainText('Ticked: 3 whose sling has to go now.');
  await expect(page.locator('[name="count-0"]')).toHaveValue('2');
  await expect(page.locator('[name="count-1"]')).toHaveValue('5');
  // Eleven at 9 each and 15 each way: 11 x 9 + 2 x 15 = 129; without the four nuts seven: 93.
  await expect(headline(page)).toContainText('a workshop, 129 in all');
  await page.locator('#rack-items input').nth(2).uncheck();
  await expect(headline(page)).toContainText('a workshop, 93 in all');
  await page.goBack();
  await expect(page.locator('[name="count-0"]')).toHaveValue('9');
  await page.getByRole('link', { name: 'A form to send with the devices' }).click();
  await page.getByRole('button', { name: 'Take the rack in this browser' }).click();
  await expect(page.getByLabel('Device, device 1', { exact: true })).toHaveValue('Cam 1');
  await expect(page.getByLabel('How many, device 2')).toHaveValue('5');
  await page.locator('#rack-items input').nth(2).uncheck();
  await expect(page.getByLabel('Device, device 3', { exact: true })).toHaveValue('');
});

test('on paper stand what was written and the answer, without controls', async ({ page }) => {
  await page.setViewportSize({ width: 760, height: 1000 });
  await page.goto(`replace/cost/?${SEVEN}`);
  await page.emulateMedia({ media: 'print' });
  await expect(headline(page)).toBeVisible();
  await expect(page.locator('.outcome .tools')).toBeHidden();
  await expect(page.locator('[name="workshop-price"]')).toBeVisible();
  await expect(page.locator('[name="maker-price"]')).toBeHidden();
  expect(await wideElements(page)).toEqual([]);
  await page.goto('replace/form/');
  expect(await wideElements(page)).toEqual([]);
});

test('every legal sentence stands with its source and its day, and every region says that local rules decide', async ({ page }) => {
  await page.goto('replace/');
  for (const region of ['eu', 'uk', 'us', 'elsewhere']) {
    const section = page.locator('section.law', { has: page.locator(`#${region}`) });
    await expect(section).toContainText('Local rules decide.');
    const sentences = section.locator('li');
    expect(await sentences.count()).toBeGreaterThan(0);
    for (const sentence of await sentences.all()) {
      await expect(sentence.locator('a[href*="/figures/"]').first()).toBeVisible();
      await expect(sentence.locator('a[href*="/sources/"]').first()).toBeVisible();
      await expect(sentence.locator('time').last()).toHaveText(/^\d{4}-\d{2}-\d{2}$/);
    }
  }
  await expect(page.locator('#attach-at-home')).toContainText('Only if maker and workshop have both refused.');
  await expect(page.locator('#keep-and-watch')).toContainText('Never past a verdict that says retire now.');
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false });
  test('stands the worked example for one to ten devices, with its break-even; and the form prints blank', async ({ page }) => {
    await page.goto('replace/cost/');
    await expect(page.locator('.questions')).toBeHidden();
    await expect(page.locator('noscript p')).toBeVisible();
    const rows = page.locator('#example .scroll tbody tr');
    await expect(rows).toHaveCount(10);
    // By hand: 16 + 18 + 4; 3 x 12 + 28 + 5; 27 + 6.
    await expect(rows.first().locator('td')).toHaveText(['38', '69', '33 least']);
    await expect(page.locator('#example')).toContainText('from 2 on cheaper than buying new');
    await page.goto('replace/form/');
    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('#devices tbody tr')).toHaveCount(8);
    await expect(page.locator('.ticks.for-maker')).toBeVisible();
    await expect(page.locator('#from-rack')).toBeHidden();
  });
});
