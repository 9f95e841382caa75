/** The register of a rack as a keeper meets it. */
import { readFile } from 'node:fs/promises';
import type { Download, Locator, Page } from '@playwright/test';
import { expect } from './browser.ts';

/** Day on which every test of the rack opens the page. No verdict of a test depends on when it runs. */
export const TODAY = '2026-11-25';

/** Opens the page with the clock at the day of the tests, and waits for the script. */
export async function openRack(page: Page, hash = ''): Promise<void> {
  await page.clock.setFixedTime(new Date(`${TODAY}T10:00:00Z`));
  await page.goto(`rack/${hash}`);
  await expect(page.locator('html')).toHaveClass(/rack-ready/);
}

/** The parts of the page by what they are called. */
export function partsOf(page: Page) {
  const button = (name: string | RegExp): Locator => page.getByRole('button', { name });
  return {
    example: button('Try with an example rack'),
    empty: button('Start empty'),
    addSeveral: page.getByRole('link', { name: 'Add several', exact: true }).first(),
    addOne: button('Add one'),
    lines: page.getByLabel(/^One line for each/),
    add: button(/^Add (?:this item|these)/),
    print: button('Print sheet'),
    calendar: button('Calendar file'),
    files: page.getByRole('link', { name: 'Export and import' }),
    saveFile: button('Save as a file (JSON)').last(),
    saveTable: button('Save as a table (CSV)'),
    file: page.getByLabel('File', { exact: true }),
    pasted: page.getByLabel('Or paste its text'),
    importText: button('Import the text'),
    undo: button(/^Undo/),
    redo: button(/^Redo/),
    said: page.locator('.said'),
    back: page.getByRole('link', { name: 'Back to the rack' }),
    headline: page.locator('.headline'),
    rows: page.locator('.row'),
    group: (name: string): Locator => page.locator('.group').filter({ has: page.getByRole('heading', { name }) }),
    item: (name: string): Locator => page.getByRole('link', { name, exact: true }),
  };
}

/** Starts a register and pastes lines into it. */
export async function startWith(page: Page, lines: string): Promise<void> {
  const parts = partsOf(page);
  await parts.empty.click();
  await parts.addSeveral.click();
  // Set at once, as a paste does: typed key by key, thousands of lines take minutes.
  await parts.lines.evaluate((box, text) => {
    (box as HTMLTextAreaElement).value = text;
    box.dispatchEvent(new Event('input', { bubbles: true }));
  }, lines);
  await parts.add.click();
  await expect(parts.rows.first()).toBeVisible();
}

interface KeptItem { id: string; name: string; notes: string }

/** The items as the browser keeps them; none where nothing is kept yet. */
export function keptItems(page: Page): Promise<KeptItem[]> {
  return page.evaluate(() => new Promise<KeptItem[]>((done, fail) => {
    const opening = indexedDB.open('second-sling-rack');
    opening.onerror = () => fail(opening.error);
    opening.onsuccess = () => {
      const reading = opening.result.transaction('register').objectStore('register').get('own');
      reading.onsuccess = () => {
        opening.result.close();
        done((reading.result as { register: { items: KeptItem[] } } | undefined)?.register.items ?? []);
      };
    };
  }));
}

/** The open item as the browser keeps it: a reload before it is there would lose the edit, and a browser would ask first. */
export async function keptItem(page: Page): Promise<KeptItem | undefined> {
  const id = new URL(page.url()).hash.slice('#item-'.length);
  return (await keptItems(page)).find((item) => item.id === id);
}

/** Text and name of the file that something saves. */
export async function saved(page: Page, act: () => Promise<unknown>): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), act()]) as [Download, unknown];
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

/** A file for the field of the import. */
export const asFile = (name: string, text: string) => ({ name, mimeType: 'text/plain', buffer: Buffer.from(text, 'utf8') });
