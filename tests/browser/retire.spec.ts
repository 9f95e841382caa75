/** Has the sling to go: the owner's first minute, the verdict as it grows, its link, wrong answers, keyboard, paper, no script. */
import type { Page } from '@playwright/test';
import { expect, test, wideElements } from '../support/browser.ts';

const headline = (page: Page) => page.locator('#verdict-root .headline');
const soFar = (page: Page, group: string) => page.locator(`#group-${group} .so-far`);
const choose = (page: Page, name: string, value: string) => page.locator(`[name="${name}"][value="${value}"]`).check();
/** Days of the tests are counted from the reader's own day: the clock of the page is set. */
const NOW = new Date('2026-12-10T12:00:00');
/** Every question answered, and nothing speaks against the sling but time. */
const CLEAN = 'light.wet.salt.chemicals.heat.big-fall.edge.bare-wire.test-pull.cut.edge-nick.snag.fuzz.melted.stiff.chemical-burn.faded.dirt.stitching.label-missing.tails-slipped.doubt';
const SOUND = `v=1&material=nylon&width=16&made=2024-05&first=2024-06&inspected=2026-12-01&use=seldom&makerdate=unknown&makermade=unknown&makerused=unknown&yes=none&no=${CLEAN}`;

test.beforeEach(async ({ page }) => { await page.clock.setFixedTime(NOW); });

test("the owner's minute: a few taps, retire now, who can replace it; if nobody will, the comparison with this sling", async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto('');
  await page.getByRole('link', { name: /my sling is old/i }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Has the sling to go?');
  await choose(page, 'material', 'hmpe');
  await expect(soFar(page, 'sling')).toContainText('counted against it');
  await page.getByLabel('Width of the tape').fill('10');
  await page.getByLabel('Made in').fill('2012-06');
  await choose(page, 'use', 'weekly');
  // Ten years from 2012-06 are over: nothing makes that milder.
  await expect(soFar(page, 'sling')).toContainText('Retire now. No other answer makes that milder.');
  await expect(headline(page)).toHaveText('Retire now');
  await soFar(page, 'sling').getByRole('link', { name: 'Who can replace it' }).click();
  await expect(page).toHaveURL(/\/replace\/$/);
  await page.goBack();
  await expect(headline(page)).toHaveText('Retire now');
  await expect(page.getByLabel('Made in')).toHaveValue('2012-06');
  await page.getByRole('link', { name: 'compare ways to attach a new sling' }).click();
  await expect(page).toHaveURL(/\/compare\/\?/);
  await expect(page.locator('.rig-line')).toContainText('HMPE sewn sling, 10');
  await expect(page.locator('.rig-line')).toContainText('old sling HMPE');
});

test('the verdict grows under each group, and every reason stands in order with its sources', async ({ page }) => {
  await page.goto('retire/');
  await expect(headline(page)).toHaveCount(0);
  await choose(page, 'material', 'nylon');
  await page.getByLabel('Width of the tape').fill('16');
  await page.getByLabel('Made in').fill('05/2024');
  await choose(page, 'use', 'seldom');
  await expect(soFar(page, 'sling')).toHaveText(/^At best: Inspect again by .*As it stands, .*: Retire now\.$/);
  for (const group of ['sling', 'life', 'events', 'findings']) {
    if (group !== 'sling') await page.locator(`#group-${group} .rest`).click();
    await page.locator(`#group-${group} .next`).click();
  }
  await page.locator('#group-findings').getByLabel('Last looked over').fill('2026-12-01');
  await page.locator('#group-life').getByLabel('First used').fill('2024-06');
  // A year after the last inspection comes before ten years from the first of May 2024.
  await expect(headline(page)).toHaveText('Inspect again by 1 December 2027');
  const reasons = page.locator('#verdict-root > ul').first().locator('li');
  await expect(reasons.first()).toContainText('Inspect again by 1 December 2027');
  await expect(reasons.last()).toContainText('Retire by 1 May 2034');
  for (const source of await page.locator('#verdict-root').getByRole('link', { name: 'Sources' }).all()) {
    await expect(page.locator(await source.getAttribute('href') ?? 'none')).toHaveCount(1);
  }
  // A worse answer is never milder; the maker's stricter limit wins.
  await choose(page, 'edge-nick', 'yes');
  await expect(headline(page)).toHaveText('Retire now');
  await choose(page, 'edge-nick', 'no');
  await page.getByLabel('Longest life from manufacture').fill('3');
  await expect(headline(page)).toHaveText('Retire by 1 May 2027');
  await expect(reasons.first()).toContainText('The maker decides');
});

test('a link holds the answers and the day: opened later it says both verdicts', async ({ page }) => {
  await page.goto(`retire/?${SOUND}&on=2026-12-10`);
  await expect(page.locator('.then')).toHaveCount(0);
  await expect(headline(page)).toHaveText('Inspect again by 1 December 2027');
  await page.clock.setFixedTime(new Date('2028-01-05T12:00:00'));
  await page.reload();
  await expect(page.locator('.then')).toContainText('When this link was made, on 10 December 2026: Inspect again by 1 December 2027');
  await expect(headline(page)).toHaveText('Inspect before the next use');
  await page.clock.setFixedTime(new Date('2034-06-05T12:00:00'));
  await page.reload();
  await expect(headline(page)).toHaveText('Retire now');
  // An edit is judged today, and its link says so.
  await choose(page, 'use', 'daily');
  await expect(page.locator('.then')).toHaveCount(0);
  await expect(page).toHaveURL(/on=2034-06-05/);
});

test('the address follows the answers, and a copied link gives the same verdict elsewhere', async ({ page, context, browser, baseURL }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto(`retire/?${SOUND}&on=2026-12-10`);
  await page.locator('#group-life summary').click();
  await choose(page, 'light', 'yes');
  const said = await headline(page).textContent();
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Link copied.');
  const link = await page.evaluate(() => navigator.clipboard.readText());
  expect(new URL(link).searchParams.get('yes')).toBe('light');
  await page.getByRole('button', { name: 'Copy as text' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Text copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toContain(said ?? 'none');
  const other = await browser.newContext({ baseURL: baseURL ?? '' });
  const elsewhere = await other.newPage();
  await elsewhere.clock.setFixedTime(NOW);
  await elsewhere.goto(link);
  await expect(headline(elsewhere)).toHaveText(said ?? 'none');
  await other.close();
});

test('wrong answers are said at their field, stay as typed, and count as not known', async ({ page }) => {
  await page.goto(`retire/?${SOUND}&on=2026-12-10`);
  await page.getByLabel('Width of the tape').fill('ten');
  await expect(page.locator('#says-width')).toHaveText('ten: no plain number; write one from 1 to 60 mm. Not used.');
  await page.getByLabel('Made in').fill('3/4/2024');
  await expect(page.locator('#says-made')).toContainText('can be two days; write the year first');
  await expect(headline(page)).toHaveText('Retire now');
  await page.getByLabel('Made in').fill('2027');
  await expect(page.locator('#says-made')).toContainText('still to come on 2026-12-10');
  await page.getByLabel('Made in').fill('2024-05');
  await page.locator('#group-maker summary').click();
  await page.getByLabel('Longest life from manufacture').fill('a few');
  await expect(page.locator('#verdict-root')).toContainText('not in this verdict: the life from manufacture that the maker prints');
  await page.reload();
  await expect(page.getByLabel('Width of the tape')).toHaveValue('ten');
});

test('a strange link gives a page: each piece that is not understood is listed word for word', async ({ page }) => {
  await page.goto('retire/?material=hemp&bogus=1&yes=cut.rust&on=2031-01-01');
  const listed = page.locator('#not-used');
  for (const piece of ['material=hemp', 'bogus=1', 'yes=cut.rust', 'on=2031-01-01']) await expect(listed).toContainText(piece);
  await expect(headline(page)).toHaveText('Retire now');
});

test('a clock that is behind the evidence makes no verdict milder', async ({ page }) => {
  await page.clock.setFixedTime(new Date('2001-01-01T12:00:00'));
  await page.goto(`retire/?${SOUND.replace('inspected=2026-12-01', 'inspected=2026-06-01')}`);
  await expect(page.locator('#clock')).toContainText("Your device's clock is behind");
  await expect(headline(page)).toHaveText('Inspect again by 1 June 2027');
});

test('strength is said only where used slings of this material and age were broken', async ({ page }) => {
  const kept = page.locator('#verdict-root');
  await page.goto('retire/?v=1&material=hmpe&made=2022-06&use=seldom');
  await expect(kept.locator('a[href*="/figures/dav-2015/"]')).not.toHaveCount(0);
  await expect(kept).toContainText('No figure says what yours would break at');
  // The published groups end at five years.
  await page.goto('retire/?v=1&material=hmpe&made=2015-06&use=seldom');
  await expect(kept).toContainText('We found no breaks of used slings of this material and age');
});

test('the comparison leads here with the old sling as it was described there', async ({ page }) => {
  await page.goto('compare/?v=1&rating=12&eye=bare-wire&sling=hmpe-10&oldsling=hmpe&oldage=4&olduse=weekly&oldlight=sun');
  await page.locator('.retirement').getByRole('link', { name: 'Has it to go?' }).click();
  await expect(page).toHaveURL(/\/retire\/\?/);
  for (const [name, value] of [['material', 'hmpe'], ['use', 'weekly'], ['light', 'yes']] as const) await expect(page.locator(`[name="${name}"][value="${value}"]`)).toBeChecked();
  await expect(page.locator('#not-used')).toBeHidden();
});

test('it works by keyboard alone', async ({ page }) => {
  await page.goto('retire/');
  await page.locator('[name="material"]').first().focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('ArrowRight');
  await expect(page.locator('[name="material"][value="nylon"]')).toBeChecked();
  await page.keyboard.press('Tab');
  await page.keyboard.type('16');
  await page.locator('#group-sling .next').focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('#group-life summary')).toBeFocused();
  await expect(page.locator('#group-life')).toHaveAttribute('open', '');
  await page.locator('#group-maker summary').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('button', { name: 'To the verdict' }).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('#verdict')).toBeFocused();
});

test('on paper stand the verdict, its reasons and what was answered', async ({ page }) => {
  await page.setViewportSize({ width: 760, height: 1000 });
  await page.goto(`retire/?${SOUND}&on=2026-12-10`);
  await expect(headline(page)).toBeVisible();
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  await expect(headline(page)).toBeVisible();
  await expect(page.locator('.outcome .tools')).toBeHidden();
  await expect(page.locator('#group-findings legend').first()).toBeVisible();
  await expect(page.locator('#group-findings [name="cut"][value="yes"]')).toBeHidden();
  expect(await wideElements(page)).toEqual([]);
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false });
  test('stands a checklist to print, with every rule and what to do', async ({ page }) => {
    await page.goto('retire/');
    await expect(page.locator('.questions')).toBeHidden();
    const rules = page.locator('.checklist li');
    expect(await rules.count()).toBeGreaterThan(25);
    await expect(rules.first().locator('.do')).toBeVisible();
    await expect(page.locator('noscript p')).toBeVisible();
  });
});
