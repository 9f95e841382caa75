/** Knots and bearings: the choice by keyboard, what stands empty, without a script, on a phone, on paper. */
import type { Page } from '@playwright/test';
import { expect, test, wideElements } from '../support/browser.ts';
import { quantitiesIn } from '../support/gates/bare-quantities.ts';

const PATH = 'materials/knots-and-bearings/';
const chosen = (page: Page) => page.locator('#chosen');
const panels = (page: Page) => page.locator('.bearing:visible');
const rows = (page: Page) => page.locator('#points tbody tr:visible');

test('by keyboard: a material, a way and a bearing; the panel says that nothing was tested there', async ({ page }) => {
  await page.goto(PATH);
  await page.getByLabel('Material').focus();
  await page.keyboard.type('HMPE');
  await page.keyboard.press('Tab');
  await page.keyboard.type('girth hitch');
  await page.keyboard.press('Tab');
  await page.keyboard.type('6');
  await expect(page.getByLabel('Your bearing')).toBeFocused();
  await expect(panels(page)).toHaveCount(1);
  // The published breaks stand at 3.8 mm and 10 mm: six is between.
  await expect(chosen(page)).toHaveText('HMPE, girth hitch: We found no test here. It lies between two tested bearings.');
  await expect(page.locator('.bearing:visible .asked')).toHaveCSS('visibility', 'visible');
  await expect(page.locator('#points tr.here:visible')).toHaveCount(0);
  await page.keyboard.press('Enter');
  await expect(chosen(page)).toBeFocused();
});

test('each place has its own words: at a test, thinner, thicker, and beyond the axis', async ({ page }) => {
  await page.goto(PATH);
  await page.getByLabel('Material').selectOption('nylon');
  await page.getByLabel('How it is loaded').selectOption('girth-hitch');
  const bearing = page.getByLabel('Your bearing');
  // The published breaks stand at 3.5 mm and 10 mm.
  for (const [mm, words] of [['3.5', 'Tested at this bearing'], ['2', 'Thinner than any that was tested'], ['12', 'Thicker than any that was tested'], ['40', 'Thicker than any that was tested']] as const) {
    await bearing.fill(mm);
    await expect(chosen(page)).toContainText(words);
  }
  await expect(page.locator('.bearing:visible .asked')).toHaveCSS('visibility', 'hidden');
  await bearing.fill('10,2');
  await expect(page.locator('#points tr.here:visible')).toHaveCount(1);
  await bearing.fill('thin');
  await expect(page.locator('#fault')).toContainText('thin: not a plain number');
  await expect(bearing).toHaveAttribute('aria-invalid', 'true');
  await bearing.fill('');
  await expect(page.locator('#fault')).toBeEmpty();
});

test('what nobody published stays empty and says so', async ({ page }) => {
  await page.goto(PATH);
  await page.getByLabel('Material').selectOption('polyester');
  await page.getByLabel('How it is loaded').selectOption('figure-eight');
  await expect(chosen(page)).toHaveText('We found no published point of this. The space stays empty.');
  await expect(rows(page)).toHaveCount(0);
  await page.getByLabel('How it is loaded').selectOption('girth-hitch');
  await page.getByLabel('Your bearing').fill('8');
  await expect(chosen(page)).toHaveText('Polyester, girth hitch: We found no test of this on any bearing.');
  await expect(panels(page).locator('use')).toHaveCount(0);
});

test('a knot shows its lanes and its rows, and no panel of a bearing', async ({ page }) => {
  await page.goto(PATH);
  await page.getByLabel('Material').selectOption('hmpe');
  await page.getByLabel('How it is loaded').selectOption('overhand-on-a-bight');
  await expect(panels(page)).toHaveCount(0);
  await expect(page.locator('.lanes tbody:visible')).toHaveCount(1);
  // Two slings of one study, and one at second hand.
  await expect(rows(page)).toHaveCount(3);
});

test('wire bends by the ratio of two diameters, and a decimal comma is read', async ({ page }) => {
  await page.goto(PATH);
  await expect(page.getByLabel('Your wire')).toBeHidden();
  await page.getByLabel('Material').selectOption('wire');
  await page.getByLabel('Your bearing').fill('3');
  await page.getByLabel('Your wire').fill('3,2');
  await expect(chosen(page)).toContainText('The pin is thinner than the wire.');
  await page.getByLabel('Your bearing').fill('10');
  await expect(chosen(page)).toContainText('The step below is the weaker.');
});

test('every number that the script leaves on the page has an origin, and nothing sticks out', async ({ page }) => {
  await page.goto(PATH);
  await page.getByLabel('Material').selectOption('hmpe');
  await page.getByLabel('Your bearing').fill('6');
  const found = await page.evaluate(`(${quantitiesIn.toString()})(document.body)`) as ReturnType<typeof quantitiesIn>;
  expect(found.seen).toBeGreaterThan(20);
  expect(found.bare).toEqual([]);
  expect(await wideElements(page)).toEqual([]);
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false });
  test('all points stand, as panels and as a table, and no control that does nothing', async ({ page }) => {
    await page.goto(PATH);
    await expect(page.locator('#choose')).toBeHidden();
    await expect(page.locator('.bearing')).toHaveCount(13);
    await expect(page.locator('.bearing').last()).toBeVisible();
    expect(await page.locator('#points tbody tr').count()).toBeGreaterThan(60);
    await expect(page.locator('#points tbody tr').last()).toBeVisible();
  });
});

test('on paper the controls are gone and the points are there', async ({ page }) => {
  await page.goto(PATH);
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('#choose')).toBeHidden();
  await expect(page.locator('.plot').first()).toBeVisible();
  await expect(page.locator('#points')).toBeVisible();
});

test('materials at 320 px: panels two in a line, and nothing sticks out', async ({ page }) => {
  await page.setViewportSize({ width: 320, height: 700 });
  for (const path of ['materials/', 'materials/hmpe/', PATH]) {
    await page.goto(path);
    expect(await wideElements(page), path).toEqual([]);
  }
  await page.goto('materials/');
  const tops = await page.locator('#knots .panels').first().locator('> li').evaluateAll((panel) => panel.map((one) => Math.round(one.getBoundingClientRect().top)));
  expect(new Set(tops).size).toBe(2);
});
