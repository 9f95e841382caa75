/**
 * A network that fails or dawdles, a clock that is wrong by years, Back and Forward, and two windows: nothing that a reader
 * typed is lost, no page claims what it has not worked out, and no script throws. The rack and the comparator have further
 * cases of their own, in rack.spec.ts and shared-link.spec.ts; the saved copy has them in offline.spec.ts.
 */
import type { Page } from '@playwright/test';
import { delayScripts, expect, SCRIPTS, test } from '../support/browser.ts';

test.skip(({ isMobile }) => isMobile === true, 'a network fails alike on every screen');

/** Interactive pages: a field with what a reader types there, and what the page says where its script never comes. */
const PAGES: readonly { name: string; path: string; field: (page: Page) => ReturnType<Page['locator']>; typed: string; says: RegExp; answer: string; answered: RegExp }[] = [
  { name: 'the verdict', path: 'retire/', field: (page) => page.getByLabel('Made in'), typed: '2010', says: /If it does not, load the page again/, answer: '#verdict-root', answered: /retire now/i },
  { name: 'the costs', path: 'replace/cost/', field: (page) => page.getByLabel('How many').first(), typed: '4', says: /If it does not, load the page again/, answer: '#cost-root', answered: /price/i },
  { name: 'a fall', path: 'falls/', field: (page) => page.getByLabel('How far above it'), typed: '3', says: /of the fall that we made up/, answer: '.outcome', answered: /3\sm above/ },
  { name: 'the analysis', path: 'breaks/analyse/', field: (page) => page.getByLabel('One force a line, or a table with a heading'), typed: '11.2\n9.2\n11.4', says: /If it does not, load the page again/, answer: '#analysis-root', answered: /3 pulls/ },
  { name: 'the plan', path: 'breaks/plan/', field: (page) => page.getByLabel('Your guess of the standard deviation'), typed: '9', says: /If it does not, load the page again/, answer: '#plan-root', answered: /pulls/ },
  { name: 'search', path: 'search/', field: (page) => page.getByRole('searchbox'), typed: 'girht hitch', says: /If they do not, load the page again/, answer: '#found-root', answered: /Read as Girth hitch/ },
];

for (const { name, path, field, typed, says, answer, answered } of PAGES) {
  test.describe(name, () => {
    test.use({ expectedErrors: /ERR_FAILED|Failed to (?:fetch|load)/ });
    test('without its script says what to do, claims nothing, and what was typed stays', async ({ page }) => {
      await page.route(SCRIPTS, (route) => route.abort());
      await page.goto(path);
      await field(page).fill(typed);
      await expect(page.locator('.outcome')).toContainText(says);
      await expect(page.locator('.outcome')).not.toContainText(/retire now|cheapest|19 in 20 break/i);
      await expect(field(page)).toHaveValue(typed);
      // Once the network is there again, a reload makes the page whole.
      await page.unroute(SCRIPTS);
      await page.reload();
      await field(page).fill(typed);
      await expect(page.locator(answer)).toContainText(answered);
    });

    test('with a script that comes three seconds late keeps what was typed before it, and answers it or waits', async ({ page }) => {
      await delayScripts(page, 3);
      await page.goto(path, { waitUntil: 'commit' });
      await field(page).fill(typed);
      await page.waitForLoadState('load');
      await expect(field(page)).toHaveValue(typed);
      // One step on within the page and back: the history has it as well.
      await page.evaluate(() => { location.hash = 'main'; });
      await page.goBack();
      await expect(page).not.toHaveURL(/#main/);
      await expect(field(page)).toHaveValue(typed);
      await field(page).press('End');
      await field(page).pressSequentially(' ');
      await field(page).press('Backspace');
      await expect(page.locator(answer)).toContainText(answered);
      await expect(field(page)).toHaveValue(typed);
    });

    test('left and come back to, by Back and by Forward, still holds what was typed', async ({ page }) => {
      await page.goto(path);
      await field(page).fill(typed);
      await expect(page.locator(answer)).toContainText(answered);
      await page.waitForTimeout(600);
      await page.goto('caution/');
      await page.goBack();
      await expect(field(page)).toHaveValue(typed);
      await expect(page.locator(answer)).toContainText(answered);
      await page.goForward();
      await expect(page).toHaveURL(/caution\/$/);
    });
  });
}

for (const year of [1970, 2001, 2099]) {
  test(`a clock that says ${year} breaks no page`, async ({ page }) => {
    await page.clock.setFixedTime(new Date(Date.UTC(year, 0, 1)));
    for (const path of ['', 'compare/?v=1&rating=9', 'retire/?v=1&material=hmpe&made=2019', 'rack/', 'replace/cost/', 'falls/', 'breaks/analyse/?v=1&unit=kN&p=11~9~10', 'changes/', 'send/?to=gaps/']) {
      await page.goto(path);
      await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
      expect(await page.locator('main').innerText(), path).not.toMatch(/NaN|undefined|Invalid Date|null /);
    }
  });
}

test('two windows with the same comparison do not disturb each other', async ({ page, context }) => {
  await page.goto('compare/?v=1&rating=9&eye=bare-wire');
  const other = await context.newPage();
  await other.goto('compare/?v=1&rating=12&eye=metal-bar&bearing=8');
  await expect(page.locator('.rig-line')).toContainText('9 kN');
  await expect(other.locator('.rig-line')).toContainText('12 kN');
  await page.reload();
  await expect(page.locator('.rig-line')).toContainText('9 kN · bare wire');
  await other.close();
});
