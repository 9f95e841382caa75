/**
 * The saved copy: kept at home, used where there is no network, and through everything that can go wrong in between. What must never
 * happen is DESIGN's: another rig's numbers, a comparison from two builds, a take-over under the reader's eyes, lost items of a rack.
 */
import type { BrowserContext, Page } from '@playwright/test';
import { expect, test as base, wideElements } from '../support/browser.ts';
import { alive, OTHER_RIG, partsOf, unfold, watchComparisons } from '../support/comparator-page.ts';
import { keptItems } from '../support/rack-page.ts';
import { RENEWED, RENEWED_VERSION, type RenewableSite, startRenewableSite } from '../support/renewable-site.ts';

const test = base.extend<{ baseURL: string }, { site: RenewableSite }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads from the pattern which fixtures are wanted; here none.
  site: [async ({}, use) => {
    const site = await startRenewableSite();
    await use(site);
    await site.close();
  }, { scope: 'worker' }],
  baseURL: async ({ site }, use) => use(site.address),
});
// A network that is cut is what these tests are about; the browser reports each file that did not come.
test.use({ expectedErrors: /Failed to load resource|net::ERR_/ });
test.skip(({ isMobile }) => isMobile === true, 'a worker is the same on every screen');
test.beforeEach(({ site }) => {
  Object.assign(site, { build: 'built', isDown: false, delayMs: 0, filesLeft: null, asked: [] });
});

const savedLine = (page: Page) => page.getByRole('note').filter({ hasText: /^Saved copy/ });
const says = (page: Page) => page.locator('#keep-says');

/** Keeps the site as a reader does. */
async function keep(page: Page): Promise<void> {
  await page.goto('offline/');
  await expect(says(page)).toHaveText('Not kept on this device.');
  await page.getByRole('button', { name: 'Keep this site' }).focus();
  await page.keyboard.press('Enter');
  await expect(says(page)).toHaveText(/^Kept: the copy of \d+ \w+ \d{4}, fetched on \d+ \w+ \d{4}\. Its pages open without a network\.$/);
}

/** Closes every page of the site, and opens one once the browser has let a waiting worker take over. */
async function reopened(context: BrowserContext, path: string): Promise<Page> {
  for (const page of context.pages()) await page.close();
  const page = await context.newPage();
  await page.waitForTimeout(300);
  await watchComparisons(page);
  await page.goto(path);
  return page;
}

/** Waits until the newest build has been fetched and waits for its turn. */
const waiting = (page: Page) => expect.poll(() => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  return Boolean(registration?.waiting) && !registration?.installing;
})).toBe(true);

/** Looks for a new build, as the browser does by itself on a visit. */
const update = (page: Page) => page.evaluate(async () => { await (await navigator.serviceWorker.getRegistration())?.update().catch(() => {}); });

/** Names of all caches of the site. */
const cachesOf = (page: Page) => page.evaluate(() => caches.keys());

/** Puts a device on the rack, so that there is something to lose. */
async function addToRack(page: Page): Promise<void> {
  await page.goto('rack/');
  await page.getByRole('button', { name: 'Start empty' }).click();
  await page.getByRole('link', { name: 'Add several', exact: true }).first().click();
  await page.getByLabel(/^One line for each/).fill('Red; 9; nylon 16; 2024-05');
  await page.getByRole('button', { name: /^Add (?:this item|these)/ }).click();
  await expect(page.locator('.said')).toContainText('1 item added');
  await expect.poll(async () => (await keptItems(page)).length).toBe(1);
}

async function expectRack(page: Page): Promise<void> {
  await page.goto('rack/');
  await expect(page.locator('.row').filter({ hasText: 'Red' })).toHaveCount(1);
}

test('kept at home, the site opens where there is no network: pages never seen, shared links, built pages, the rack', async ({ page, context, site }) => {
  await addToRack(page);
  await keep(page);
  expect(await wideElements(page)).toEqual([]);
  await page.goto('about/');
  await expect(savedLine(page)).toHaveCount(0);

  await context.setOffline(true);
  site.isDown = true;
  // Pages of the set that were never opened, by any spelling of their address.
  for (const path of ['methods/girth-hitch/', 'caution/?from=a-friend', 'replace/cost', 'terms/index.html', 'falls/examples/']) {
    await page.goto(path);
    await expect(savedLine(page)).toHaveText(/^Saved copy of 25 November 2026, fetched on \d+ \w+ \d{4}\.$/);
  }
  await page.goto('methods/girth-hitch/');
  await expect.poll(() => page.locator('.drawings img').first().evaluate((image: HTMLImageElement) => image.naturalWidth)).toBeGreaterThan(0);
  expect(await wideElements(page)).toEqual([]);

  // A shared comparison is the reader's rig, worked out here.
  await watchComparisons(page);
  await page.goto(`compare/?${OTHER_RIG}`);
  await alive(page);
  await expect(savedLine(page)).toBeVisible();
  await expect(partsOf(page).rigLine).toContainText('9 kN');
  await expect(partsOf(page).rows).toContainText('above 8 kN');

  // A page that is built for one rig shows that rig, and what its link says besides.
  await page.goto('compare/7/bare-wire/nylon-16/');
  await alive(page);
  expect(new URL(page.url()).search).toBe('?v=1&rating=7&eye=bare-wire&sling=nylon-16');
  await expect(partsOf(page).rigLine).toContainText(/7 kN.*nylon/i);
  await expect(partsOf(page).rows).toContainText('above 7 kN');
  await page.goto('compare/7/bare-wire/nylon-16/?rating=10&wings=2');
  await alive(page);
  await expect(partsOf(page).rigLine).toContainText('10 kN');
  await expect(page.getByText('wings=2')).toBeVisible();

  // A link made with older evidence still tells what it showed.
  await page.goto('compare/?v=1&rating=12&eye=bare-wire&sling=hmpe-10&d=2026-11-25.1&m=1');
  await alive(page);
  await expect(page.locator('#then-root tbody tr').first()).toBeVisible();

  // A term's own page is not in the set: its line in the list is.
  await page.goto('terms/aramid/');
  await expect(page).toHaveURL(/terms\/#aramid$/);
  await expect(page.locator('#aramid')).toBeInViewport();

  // A visited page stays; any other says what is here.
  await page.goto('about/');
  await expect(savedLine(page)).toHaveText(/^Saved copy of 25 November 2026, fetched on/);
  const lost = await page.goto('gaps/');
  expect(lost?.status()).toBe(503);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This page is not on your device');
  await expect(page.getByRole('link', { name: 'About', exact: true }).first()).toBeVisible();
  expect(await wideElements(page)).toEqual([]);
  await page.getByRole('listitem').getByRole('link', { name: 'Compare ways to attach a sling' }).first().click();
  await alive(page);
  await expectRack(page);
});

test('a new build waits until the last page is closed: an open comparison keeps its numbers and its evidence', async ({ page, context, site }) => {
  await addToRack(page);
  await keep(page);
  // The page fetches its evidence only when it is asked something: by then the host is another.
  await page.addInitScript(() => { globalThis.requestIdleCallback = () => 0; });
  await page.goto('compare/');
  const second = await context.newPage();
  await second.goto('caution/');

  site.build = 'renewed';
  await update(page);
  await waiting(page);
  // The host has the old evidence no longer. What the page asks for now comes from its own build.
  await unfold(page);
  await partsOf(page).rating.fill('9');
  await expect(partsOf(page).rows).toContainText('above 9 kN');
  await expect(page.getByText(RENEWED)).toHaveCount(0);
  // With a network, a page opened now is today's, with today's evidence; no old data come into it.
  const third = await context.newPage();
  await watchComparisons(third);
  await third.goto(`compare/?${OTHER_RIG}`);
  await alive(third);
  await expect(third.locator('table#comparison')).toContainText(RENEWED);
  // Without one it is the old build, whole.
  site.isDown = true;
  await third.goto(`compare/?${OTHER_RIG}`);
  await alive(third);
  await expect(savedLine(third)).toContainText('25 November 2026');
  await expect(third.getByText(RENEWED)).toHaveCount(0);

  // One of several pages that is closed changes nothing.
  await third.close();
  await second.close();
  await page.waitForTimeout(300);
  await watchComparisons(page);
  await page.goto(`compare/?${OTHER_RIG}`);
  await alive(page);
  await expect(page.getByText(RENEWED)).toHaveCount(0);
  const after = await reopened(context, `compare/?${OTHER_RIG}`);
  await alive(after);
  await expect(savedLine(after)).toContainText('2 January 2027');
  await expect(after.locator('table#comparison')).toContainText(RENEWED);
  expect((await cachesOf(after)).filter((name) => name.includes(' set '))).toHaveLength(1);
  await expectRack(after);
});

test('an update fetches only what has changed, and an older build that comes back is as good as a new one', async ({ page, context, site }) => {
  await keep(page);
  const all = site.asked.length;
  // Only now is the page one of the worker's, which a new one has to wait for.
  await page.goto('offline/');
  await expect(says(page)).toHaveText(/^Kept/);
  site.asked = [];
  site.build = 'renewed';
  await page.getByRole('button', { name: 'Look for a newer copy' }).click();
  await expect(says(page)).toContainText('A newer copy is here, too.');
  // Two pages, the evidence, and nothing else but the worker.
  expect(site.asked.filter((path) => !/offline-worker\.js$/.test(path)).map((path) => path.replace(/^.*\/(?=[^/]+\/?$)/, '')).sort()).toEqual(['caution/', 'compare/', `evidence-${RENEWED_VERSION}.0123456789ab.json`]);
  expect(all).toBeGreaterThan(100);
  const renewed = await reopened(context, 'caution/');
  site.isDown = true;
  await renewed.goto('caution/');
  await expect(renewed.getByRole('heading', { level: 1 })).toContainText(RENEWED);

  site.isDown = false;
  site.build = 'built';
  await update(renewed);
  await waiting(renewed);
  const back = await reopened(context, 'retire/');
  site.isDown = true;
  await back.goto('caution/');
  await expect(savedLine(back)).toContainText('25 November 2026');
  await expect(back.getByText(RENEWED)).toHaveCount(0);
  await back.goto('offline/');
  await expect(says(back)).toHaveText(/^Kept: the copy of 25 November 2026.*without a network\.$/);
  await expect(back.getByRole('button', { name: 'Look for a newer copy' })).toBeEnabled();
});

test('where keeping breaks off, nothing half there is used, and the next try fetches only the rest', async ({ page, context, site }) => {
  await page.goto('offline/');
  site.filesLeft = 20;
  await page.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(page)).toHaveText(/^A file did not arrive\. Nothing is used until all of it is there\./);
  await expect(says(page)).toHaveClass('fault');
  site.isDown = true;
  await expect((await context.newPage()).goto('caution/')).rejects.toThrow(/ERR_/);

  Object.assign(site, { isDown: false, filesLeft: null });
  await page.goto('offline/');
  await expect(says(page)).toHaveText('Not kept yet. A part of it is here from a try that broke off, and is not used.');
  site.asked = [];
  await page.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(page)).toHaveText(/^Kept/);
  const total = Number(await page.locator('progress').getAttribute('max'));
  expect(site.asked.length).toBeLessThan(total - 10);
  site.isDown = true;
  await page.goto('caution/');
  await expect(savedLine(page)).toBeVisible();
});

test('an update that breaks off leaves the old copy in use; so does a host that is renewed while it sends', async ({ page, context, site }) => {
  await keep(page);
  site.build = 'renewed';
  site.filesLeft = 1;
  await update(page);
  const after = await reopened(context, 'retire/');
  site.isDown = true;
  await after.goto(`compare/?${OTHER_RIG}`);
  await alive(after);
  await expect(savedLine(after)).toContainText('25 November 2026');
  await expect(after.getByText(RENEWED)).toHaveCount(0);

  // The list is of one build, a file already of the next: the hash does not fit, and the set is not used.
  await after.goto('offline/');
  await after.getByRole('button', { name: 'Remove the saved copy' }).click();
  await expect(says(after)).toContainText('Removed.');
  Object.assign(site, { isDown: false, filesLeft: null, build: 'built' });
  const fresh = await reopened(context, 'offline/');
  await context.route('**/caution/', (route) => route.fulfill({ body: 'of another build', contentType: 'text/html' }));
  await fresh.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(fresh)).toHaveText(/^The site was being renewed just now/);
});

test('where the device is full it says so and what to do, keeps nothing, and an old copy stays in use', async ({ page, context, site }) => {
  const devtools = await context.newCDPSession(page);
  const room = (quotaSize?: number) => devtools.send('Storage.overrideQuotaForOrigin', { origin: new URL(site.address).origin, ...(quotaSize !== undefined && { quotaSize }) });
  await addToRack(page);
  await page.goto('offline/');
  await room(200_000);
  await page.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(page)).toHaveText(/^The device has no room for it, so nothing new was kept\. Delete something/);
  expect(await cachesOf(page)).toEqual([]);
  await room();
  await page.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(page)).toHaveText(/^Kept/);
  await room(1000);
  site.build = 'renewed';
  await page.getByRole('button', { name: 'Look for a newer copy' }).click();
  await expect(says(page)).toHaveText(/^The device has no room.*The copy that you have stays in use\.$/);
  const after = await reopened(context, 'retire/');
  site.isDown = true;
  await after.goto('caution/');
  await expect(savedLine(after)).toContainText('25 November 2026');
  await expectRack(after);
});

test('a page that does not come in time is answered from the copy; one that is not kept is waited for', async ({ page, site }) => {
  await keep(page);
  site.delayMs = 5000;
  const started = performance.now();
  await page.goto('compare/12/bare-wire/hmpe-8/', { waitUntil: 'commit' });
  await expect(savedLine(page)).toBeVisible();
  await expect(partsOf(page).rigLine).toContainText('12 kN');
  // One wait, though the reader was led to another address; and not the five seconds of the host.
  expect(performance.now() - started).toBeLessThan(4900);
  site.delayMs = 1500;
  await page.goto('gaps/', { waitUntil: 'commit' });
  await expect(page.getByRole('heading', { level: 1 })).not.toHaveText('This page is not on your device');
  await expect(savedLine(page)).toHaveCount(0);
});

test('the switch takes all copies away and forgets the worker; the items of a rack stay', async ({ page, context, site }) => {
  await addToRack(page);
  await keep(page);
  await page.goto('retire/');
  site.build = 'ended';
  await update(page);
  await expect.poll(() => cachesOf(page)).toEqual([]);
  const after = await reopened(context, 'caution/');
  expect(await after.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0);
  expect(await after.evaluate(() => navigator.serviceWorker.controller)).toBeNull();
  await expectRack(after);
  // Once the site offers it again, it can be kept again.
  site.build = 'built';
  await after.goto('offline/');
  await after.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(after)).toHaveText(/^Kept/);
});

test('the reader removes the copy, and nothing but the copy; a copy that the browser deleted is fetched again', async ({ page, context, site }) => {
  await addToRack(page);
  await keep(page);
  await page.evaluate(async () => { for (const name of await caches.keys()) await caches.delete(name); });
  await page.goto('offline/');
  await expect(says(page)).toHaveText('Not kept on this device.');
  // The worker is still there. Of a set that is half there it uses nothing, and says so where there is no network.
  site.filesLeft = 20;
  await page.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(page)).toHaveText(/^A file did not arrive/);
  const half = await context.newPage();
  // The first page is the first file of the list: it has arrived.
  expect((await half.goto(''))?.status()).toBe(503);
  await expect(half.getByRole('heading', { level: 1 })).toHaveText('No network');
  await half.close();
  site.filesLeft = null;
  await page.getByRole('button', { name: 'Keep this site' }).click();
  await expect(says(page)).toHaveText(/^Kept/);

  await page.getByRole('button', { name: 'Remove the saved copy' }).click();
  await expect(says(page)).toHaveText('Removed. What you entered on other pages, such as the register of a rack, is still here.');
  await expect(page.getByRole('button', { name: 'Keep this site' })).toBeFocused();
  // The page is still the old worker's until it is closed; that keeps nothing any more.
  expect(await page.evaluate(async () => [Boolean(navigator.serviceWorker.controller), (await fetch('../drawings/basket-overhand/step-1.svg')).ok])).toEqual([true, true]);
  await page.waitForTimeout(200);
  expect(await cachesOf(page)).toEqual([]);
  const after = await reopened(context, 'rack/');
  await expectRack(after);
  site.isDown = true;
  await expect(after.goto('caution/')).rejects.toThrow(/ERR_/);
});

for (const [why, hide, words] of [
  ['has no workers', () => { delete (Navigator.prototype as { serviceWorker?: unknown }).serviceWorker; }, /^This browser keeps no site\. A private window is often the reason/],
  ['was reached without encryption', () => { Object.defineProperty(globalThis, 'isSecureContext', { value: false }); }, /^This address is not encrypted/],
  ['refuses to open its store', () => { Object.defineProperty(CacheStorage.prototype, 'keys', { value: () => Promise.reject(new DOMException('no', 'SecurityError')) }); }, /^The browser refused to keep it\. A private window keeps nothing/],
] as const) {
  test(`a browser that ${why} is told so, and offered no button`, async ({ page }) => {
    await page.addInitScript(hide);
    await page.goto('offline/');
    await expect(says(page)).toHaveText(words);
    await expect(page.getByRole('button', { name: 'Keep this site' })).toBeHidden();
  });
}

test('no worker is asked for on any page but the one that offers it', async ({ page }) => {
  for (const path of ['', 'compare/', 'rack/', 'offline/']) {
    await page.goto(path);
    await page.waitForLoadState('networkidle');
    expect(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0);
  }
});

test.describe('without script', () => {
  test.use({ javaScriptEnabled: false });
  test('the page says that keeping needs one, and what would be kept', async ({ page }) => {
    await page.goto('offline/');
    await expect(page.locator('noscript p')).toContainText('Script is off. Keeping a copy needs one');
    await expect(page.getByRole('button', { name: 'Keep this site' })).toBeHidden();
    await expect(page.getByRole('heading', { name: 'What is kept' })).toBeVisible();
  });
});
