/** The comparator as a reader meets it: what the form is called, what the rows say, and when the page is alive. */
import type { Locator, Page } from '@playwright/test';
import { expect } from './browser.ts';

/** A complete link: every input that moves the answer, none at its default. */
export const OTHER_RIG = 'v=1&rating=9&eye=bare-wire&bearing=3.8&sling=nylon-16&length=30&used=used&demand=8&oldsling=nylon&oldage=7';

/** The parts of the page by what they are called. */
export function partsOf(page: Page) {
  return {
    rating: page.getByLabel('Strength marked on the device'),
    eye: (name: string) => page.getByRole('radio', { name, exact: true }),
    bearing: page.getByLabel(/^Diameter that the sling bears on/),
    sling: page.getByLabel('Material and width'),
    length: page.getByLabel('Length', { exact: true }),
    used: page.getByRole('radio', { name: /^used/ }),
    isNew: page.getByRole('radio', { name: 'new', exact: true }),
    more: page.getByText(/^More:/),
    oldSling: page.getByLabel('Material', { exact: true }),
    oldAge: page.getByLabel(/^Age since it was made/),
    demand: page.getByLabel(/^Load that the rig must survive/),
    unit: page.getByLabel('Unit'),
    sort: page.getByLabel('Sort'),
    change: page.getByRole('button', { name: 'Change' }),
    rigLine: page.locator('.rig-line'),
    rows: page.locator('table#comparison'),
    summary: page.locator('.summary'),
    copyLink: page.getByRole('button', { name: 'Copy link' }),
    copyText: page.getByRole('button', { name: 'Copy as text' }),
    saveTable: page.getByRole('button', { name: /CSV/ }),
  };
}

/** Lets later pages note that their script has answered, for `alive`. */
export async function watchComparisons(page: Page): Promise<void> {
  await page.addInitScript(() => addEventListener('comparison-shown', () => document.documentElement.setAttribute('data-shown', '')));
}

/** Opens the comparator and waits until its script answers. */
export async function openComparator(page: Page, query = '', path = 'compare/'): Promise<void> {
  await watchComparisons(page);
  await page.goto(`${path}${query ? `?${query}` : ''}`);
  await alive(page);
}

/** Waits until the script of the page has shown the rig of the address. */
export async function alive(page: Page): Promise<void> {
  await expect(page.locator('html')).toHaveAttribute('data-shown', '', { timeout: 15_000 });
  await expect(page.locator('table#comparison')).toBeVisible();
}

/** Unfolds the form where a narrow screen folds it, and its closed part. */
export async function unfold(page: Page): Promise<void> {
  const { change, more, rating, demand } = partsOf(page);
  if (!(await rating.isVisible())) await change.click();
  await expect(rating).toBeVisible();
  if (!(await demand.isVisible())) await more.click();
  await expect(demand).toBeVisible();
}

/** What a reader learns from each row: its group, name and numbers as text, in the order of the page. */
export function rowTexts(page: Page): Promise<string[]> {
  return page.locator('table#comparison > tbody > tr').evaluateAll((rows) =>
    rows.map((row) => [...row.querySelectorAll(':scope > th, :scope > td:not(.more)')].map((cell) => cell.textContent?.replace(/\s+/g, ' ').trim()).join(' | ')),
  );
}

/** Drawing and text of all rows: anything that an input can move. */
export const answerOf = (page: Page): Promise<string> => page.locator('.results').evaluate((part) => part.innerHTML);

/** Does something and expects the answer to be another one. */
export async function expectNewAnswer(page: Page, change: () => Promise<unknown>): Promise<void> {
  const before = await answerOf(page);
  await change();
  await expect.poll(() => answerOf(page)).not.toBe(before);
}

/** Low value and middle of a row as printed: "1 in 20 below 9.4, half below 11.2 kN". */
export function numbersOf(text: string): { low: number; middle: number; unit: string } | null {
  const found = /1 in 20 below (-?[\d.]+), half below (-?[\d.]+) (kN|lbf|kgf)/.exec(text);
  return found ? { low: Number(found[1]), middle: Number(found[2]), unit: found[3] ?? '' } : null;
}

/** The text of a button's message, once it is there. */
export async function said(page: Page, text: string | RegExp): Promise<void> {
  await expect(page.locator('.tools [role="status"]')).toHaveText(text);
}

/** The rows of a table of comma-separated values, with quotes taken off (RFC 4180). */
export function parseCsv(text: string): Record<string, string>[] {
  // A field is quoted text with doubled quotes, or plain text up to the next comma or line end.
  const fields = text.replace(/^\uFEFF/, '').matchAll(/("(?:[^"]|"")*"|[^,\r\n]*)(,|\r?\n|$)/g);
  const lines: string[][] = [[]];
  for (const [whole, field = '', end = ''] of fields) {
    if (whole === '') break;
    lines.at(-1)?.push(field.startsWith('"') ? field.slice(1, -1).replaceAll('""', '"') : field);
    if (end !== ',') lines.push([]);
  }
  const [head = [], ...rows] = lines.filter((line) => line.length > 0);
  return rows.map((row) => Object.fromEntries(head.map((name, i) => [name, row[i] ?? ''])));
}

/** The message at a field, by the field's own description. */
export async function messageAt(field: Locator): Promise<string> {
  const id = await field.getAttribute('aria-describedby');
  return id === null ? '' : ((await field.page().locator(`[id="${id}"]`).textContent()) ?? '');
}
