/** Handing a page on: from the comparator to a code on a friend's phone. The code is read from what the screen shows, by a library that did not draw it. */
import { readFileSync } from 'node:fs';
import type { Locator } from '@playwright/test';
import jsQR from 'jsqr';
import sharp from 'sharp';
import { alive, openComparator, OTHER_RIG, rowTexts, watchComparisons } from '../support/comparator-page.ts';
import { expect, test, wideElements } from '../support/browser.ts';

const REST = 'bearing=4&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown&olduse=unknown&oldlight=unknown';
const RIG = `v=1&rating=10&eye=bare-wire&sling=hmpe-8&${REST}`;

/** What a camera reads from a picture. */
async function readCode(picture: Buffer): Promise<string | undefined> {
  const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return jsQR(new Uint8ClampedArray(data), info.width, info.height, { inversionAttempts: 'dontInvert' })?.data;
}
const scan = async (code: Locator): Promise<string | undefined> => readCode(await code.screenshot());

test('from a comparison, the code on the screen leads a friend to the same rows, in light and dark, on a phone and a desk', async ({ page, browser, baseURL }) => {
  await openComparator(page, RIG);
  const mine = await rowTexts(page);
  await page.getByText('More', { exact: true }).click();
  await page.getByRole('link', { name: 'Code to scan' }).click();
  await expect(page.getByRole('heading', { name: /^10 kN · bare wire, 4 mm · HMPE sewn sling, 8 mm 60 cm, new$/ })).toBeVisible();
  const link = await page.locator('#link').getAttribute('href');
  expect(link).toMatch(new RegExp(`^${baseURL}compare/10/bare-wire/hmpe-8/\\?v=1&${REST}&d=[\\d.-]+&m=\\d+$`));
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [360, 1280]) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height: 800 });
      expect(await wideElements(page)).toEqual([]);
      expect(await scan(page.locator('#code'))).toBe(link);
    }
  }
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('button', { name: 'Copy link' })).toBeHidden();
  expect(await scan(page.locator('#code'))).toBe(link);
  const other = await browser.newContext();
  const friend = await other.newPage();
  await watchComparisons(friend);
  await friend.goto(link ?? '');
  await alive(friend);
  expect(await rowTexts(friend)).toEqual(mine);
  await other.close();
});

test('the foot of any page leads here with that page; a reload and Back keep it', async ({ page, baseURL }) => {
  await page.goto('figures/ibarra-2021/girth-on-wire/');
  await page.locator('footer').getByRole('link', { name: 'Send', exact: true }).click();
  const link = page.locator('#link');
  await expect(link).toHaveText(`${baseURL}figures/ibarra-2021/girth-on-wire/`);
  await page.reload();
  await expect(link).toHaveText(`${baseURL}figures/ibarra-2021/girth-on-wire/`);
  await page.getByLabel('Page of this site').fill('gaps/');
  await page.keyboard.press('Enter');
  await expect(link).toHaveText(`${baseURL}gaps/`);
  await expect(page.locator('#outcome')).toBeFocused();
  await page.goBack();
  await expect(link).toHaveText(`${baseURL}figures/ibarra-2021/girth-on-wire/`);
  await page.goBack();
  await expect(page).toHaveURL(/girth-on-wire\/$/);
});

test('saved as SVG and PNG, the code reads the same; the link is copied, and by hand where that is not allowed', async ({ page, baseURL }) => {
  await page.addInitScript(() => Object.defineProperty(navigator, 'clipboard', { value: undefined }));
  await page.goto(`send/?to=${encodeURIComponent(`compare/?${OTHER_RIG}`)}`);
  const link = await page.locator('#link').getAttribute('href');
  expect(link?.startsWith(`${baseURL}compare/`)).toBe(true);
  for (const kind of ['SVG', 'PNG']) {
    const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: `Save as ${kind}` }).click()]);
    expect(file.suggestedFilename()).toBe(`code.${kind.toLowerCase()}`);
    expect(await readCode(readFileSync(await file.path()))).toBe(link);
    await expect(page.locator('.tools [role=status]')).toHaveText(`Saved code.${kind.toLowerCase()}.`);
  }
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.getByLabel('To copy by hand')).toHaveValue(link ?? 'none');
});

test('another site, a broken address and one too long for a code: the page says so and keeps what was typed', async ({ page, baseURL }) => {
  await page.goto('send/');
  const field = page.getByLabel('Page of this site');
  await expect(page.locator('#outcome')).toBeHidden();
  for (const words of ['https://elsewhere.example/', 'javascript:alert(1)', '//elsewhere.example']) {
    await field.fill(words);
    await page.getByRole('button', { name: 'Draw the code' }).click();
    await expect(page.locator('#says-to')).toHaveText(`${words}: not a page of this site. Paste an address that begins with ${baseURL}.`);
    await expect(field).toHaveValue(words);
    await expect(field).toBeFocused();
    await expect(page.locator('#outcome')).toBeHidden();
  }
  await page.goto(`send/?to=gaps/&to=figures/&colour=red#x`);
  await expect(page.locator('#not-used')).toContainText('to=figures/: a second page; the first is used');
  await expect(page.locator('#not-used')).toContainText('colour=red: nothing is called "colour"');
  await page.goto(`send/?to=${encodeURIComponent(`falls/?v=1&rig=${'x'.repeat(2400)}`)}`);
  await expect(page.locator('#of-code')).toContainText(/has \d{4} letters, and a code takes 2331 at most\. Send the link\./);
  await expect(page.locator('#code')).toBeHidden();
  await expect(page.getByRole('button', { name: 'Save as PNG' })).toBeDisabled();
  await expect(page.locator('#link')).toBeVisible();
});

test('by keyboard alone: from the field to the code to the copied link', async ({ page, context, baseURL, isMobile }) => {
  test.skip(isMobile === true, 'a keyboard is a desktop matter');
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('send/');
  const tabTo = async (name: string): Promise<void> => {
    for (let press = 0; press < 40; press++) {
      await page.keyboard.press('Tab');
      if (await page.evaluate((wanted) => [document.activeElement?.id, document.activeElement?.getAttribute('name')].includes(wanted), name)) return;
    }
    throw new Error(`the keyboard never got to ${name}`);
  };
  await tabTo('to');
  await page.keyboard.type('gaps/');
  await page.keyboard.press('Enter');
  await expect(page.locator('#outcome')).toBeFocused();
  await tabTo('link');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.locator('.tools [role=status]')).toHaveText('Link copied.');
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(`${baseURL}gaps/`);
});
