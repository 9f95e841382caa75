/**
 * The keeper's journey: an example or an empty rack, many items at once, what is due, one item, files, paper. Items are
 * invented. Which verdict comes first is the order of the design; which rule fires is tested with the rules.
 */
import AxeBuilder from '@axe-core/playwright';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { quantitiesIn } from '../support/gates/bare-quantities.ts';
import { expect, test, wideElements } from '../support/browser.ts';
import { asFile, keptItem, openRack, partsOf, saved, startWith } from '../support/rack-page.ts';
import { ROOT } from '../support/step.ts';

const LINES = 'rating, sling, made, count\n12 kN; HMPE 10 mm; 2010; 3\nRed; 9; nylon 16; 2026-05\n14; string; 2019; 1\n12; HMPE 10; 2019; 3; 4';

test('a keeper starts empty, pastes many lines, sees what is due, and goes home with sheet and calendar', async ({ page }) => {
  await openRack(page);
  const parts = partsOf(page);
  await parts.empty.click();
  await expect(page.getByRole('heading', { name: 'My rack' })).toBeFocused();
  await parts.addSeveral.click();
  await expect(page.getByRole('heading', { name: 'Add several' })).toBeFocused();
  await parts.lines.fill(LINES);
  // What is not understood comes back word for word; what is understood is shown before it is added.
  await expect(page.locator('.not-understood li')).toHaveText([/^line 4: 14; string; 2019; 1: "string" is no rating, sling, date or count$/, /^line 5: 12; HMPE 10; 2019; 3; 4: two pieces give a count; the second is "4"$/]);
  await expect(page.locator('.understood li')).toHaveText(['Device, 12 kN, HMPE 10 mm: 12 kN, HMPE 10 mm, made 2010, 3 of them', 'Red: 9 kN, nylon 16 mm, made 2026-05']);
  await parts.add.click();
  await expect(parts.lines).toHaveValue('14; string; 2019; 1\n12; HMPE 10; 2019; 3; 4');
  await expect(parts.said).toHaveText('2 items added. What was not understood is still in the box.');
  await parts.lines.fill('');
  await parts.back.click();

  // Older than any life that is given to textile gear: retire now. What nobody has looked at is not milder than an inspection.
  await expect(parts.group('Retire now').locator('.row').filter({ hasText: 'made 2010' })).toContainText('3 of them');
  await expect(parts.rows).toHaveCount(2);
  await parts.item('Red').click();
  await expect(page.getByRole('heading', { name: 'Red' })).toBeFocused();
  const before = await parts.headline.textContent();
  await page.getByLabel('Use', { exact: true }).selectOption('seldom');
  await page.getByRole('group', { name: 'What it was exposed to' }).getByLabel('don’t know').uncheck();
  await page.getByRole('group', { name: 'What happened to it' }).getByLabel('don’t know').uncheck();
  await page.getByRole('button', { name: 'Add the inspection' }).click();
  await expect(parts.headline).toHaveText('Inspect again by 25 November 2027');
  expect(before).not.toContain('Inspect again');
  await expect(page.getByRole('heading', { name: 'Inspections' })).toBeFocused();
  await parts.back.click();
  await expect(parts.item('Red')).toBeFocused();
  await expect(parts.group('Due later, by day').getByRole('link', { name: 'Red' })).toBeVisible();

  const calendar = await saved(page, () => parts.calendar.click());
  expect(calendar.name).toBe('rack-2026-11-25.ics');
  expect(calendar.text.match(/^BEGIN:VEVENT\r$/gm)).toHaveLength(2);
  expect(calendar.text).toContain('SUMMARY:Inspect again by this day: Red');
  expect(calendar.text).toContain('DTSTART;VALUE=DATE:20271125');
  const printed = page.evaluate(() => new Promise<string>((done) => addEventListener('beforeprint', () => done(document.querySelector('.sheet')?.textContent ?? ''))));
  await parts.print.click();
  expect(await printed).toContain('Red');
});

test('the example is labelled on screen, on paper and in every file, and is never kept', async ({ page }) => {
  await openRack(page);
  const parts = partsOf(page);
  await parts.example.click();
  await expect(page.getByRole('heading', { name: 'The example rack' })).toBeFocused();
  await expect(parts.rows).toHaveCount(23);
  await expect(page.locator('.note.invented')).toContainText('Invented example');
  for (const group of ['Retire now', 'Inspect before the next use', 'Due later, by day']) await expect(parts.group(group).locator('.row').first()).toBeVisible();
  expect((await saved(page, () => parts.calendar.click())).text.match(/^SUMMARY:Invented example/gm)).toHaveLength(23);
  await parts.files.click();
  const file = await saved(page, () => parts.saveFile.click());
  expect(file.name).toBe('invented-example-rack-2026-11-25.json');
  // Untouched, it is the file of the project, to the byte.
  expect(file.text).toBe(readFileSync(join(ROOT, 'data/demo/rack.json'), 'utf8'));
  const table = await saved(page, () => parts.saveTable.click());
  expect(table.text.split('\r\n').filter((line) => line.includes('This rack is invented'))).toHaveLength(24);
  await parts.back.click();
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.sheet')).toContainText('Invented example');
  await expect(page.locator('.sheet tbody tr')).toHaveCount(23);
  await expect(page.locator('#rack-root')).toBeHidden();
  expect((await page.locator('.sheet .box').count()) / 23).toBe(3);
  await page.emulateMedia({ media: 'screen' });
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));

  // An invented rack is not mixed with a real one.
  await page.getByRole('button', { name: 'Start empty' }).click();
  await parts.addOne.click();
  await page.getByLabel('Name', { exact: true }).fill('Mine');
  await page.getByLabel('Name', { exact: true }).blur();
  await parts.back.click();
  await parts.files.click();
  await parts.file.setInputFiles(asFile('example.json', file.text));
  await expect(page.locator('#refused')).toContainText('examples are not mixed with a real rack');
  await page.reload();
  await expect(page.locator('html')).toHaveClass(/rack-ready/);
  await partsOf(page).back.click();
  await expect(parts.rows).toHaveCount(1);
  await expect(parts.item('Mine')).toBeVisible();
});

test('what is kept is there again, and export then import is the same file byte for byte', async ({ page, browser, baseURL }) => {
  await openRack(page);
  await startWith(page, 'Red "1"; 12; HMPE 10; 2019-04; 3\nBlüe; 9; nylon 16; 2026');
  const parts = partsOf(page);
  await expect(page.locator('.note')).toContainText('No file of it exists yet');
  await parts.item('Red "1"').click();
  await page.getByLabel('Notes').fill('one\ntwo, "three"; =4');
  await page.getByLabel('Notes').blur();
  await expect(parts.undo).toContainText('Red "1": notes');
  await expect.poll(async () => (await keptItem(page))?.notes).toContain('three');
  await page.reload();
  await expect(page.getByLabel('Notes')).toHaveValue('one\ntwo, "three"; =4');
  await parts.back.click();
  await parts.files.click();
  const first = await saved(page, () => parts.saveFile.click());
  await expect(page.locator('.note')).toHaveCount(0);
  const table = await saved(page, () => parts.saveTable.click());

  const other = await browser.newContext({ baseURL: baseURL ?? '' });
  const there = await other.newPage();
  await openRack(there, '#files');
  const theirs = partsOf(there);
  await theirs.file.setInputFiles(asFile('rack.json', first.text));
  await expect(theirs.rows).toHaveCount(2);
  await theirs.files.click();
  expect((await saved(there, () => theirs.saveFile.click())).text).toBe(first.text);
  expect((await saved(there, () => theirs.saveTable.click())).text).toBe(table.text);
  await other.close();
});

test('undo and redo say what they do, and the list follows', async ({ page }) => {
  await openRack(page);
  await startWith(page, 'Red; 12; HMPE 10; 2019-04; 3');
  const parts = partsOf(page);
  await parts.item('Red').click();
  await page.getByLabel(/^One of several/).fill('1');
  await page.getByRole('button', { name: 'into an item of their own' }).click();
  await expect(page.getByRole('heading', { name: 'Red' })).toBeFocused();
  await page.getByLabel('Add what happened').selectOption('big-fall');
  await page.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByLabel('When: a big fall')).toBeVisible();
  await page.getByLabel('When: a big fall').fill('8/2026');
  await page.getByLabel('When: a big fall').blur();
  await expect(page.getByLabel('When: a big fall')).toHaveValue('2026-08');
  await expect(parts.headline).toHaveText('Retire now');
  await page.getByRole('button', { name: 'Take it off the rack' }).click();
  await expect(page.getByRole('button', { name: 'Put it back on the rack' })).toBeFocused();
  await parts.back.click();
  await expect(parts.rows).toHaveCount(1);
  await expect(parts.rows).toContainText('2 of them');
  await expect(parts.undo).toHaveText('Undo: Red: taken off the rack');
  await parts.undo.click();
  await expect(parts.said).toHaveText('Taken back: Red: taken off the rack.');
  await expect(parts.undo).toBeFocused();
  await expect(parts.rows).toHaveCount(2);
  await parts.redo.click();
  await expect(parts.rows).toHaveCount(1);
  for (let step = 0; step < 4; step += 1) await parts.undo.click();
  await expect(parts.rows).toHaveText(/3 of them/);
  await parts.undo.click();
  await expect(parts.rows).toHaveCount(0);
  await expect(parts.undo).toHaveAttribute('aria-disabled', 'true');
});

test('what is typed and cannot be read stays in its field with the reason', async ({ page }) => {
  await openRack(page);
  await startWith(page, 'Red; 12; HMPE 10');
  const parts = partsOf(page);
  await parts.item('Red').click();
  const made = page.getByLabel('Date of manufacture');
  await made.fill('3/4/2019');
  await made.blur();
  await expect(page.locator('.fault:not(:empty)')).toHaveText('3/4/2019: can be two days; write the year first, as in 2019-04-17. Not used.');
  await page.getByLabel('Marked rating').fill('120');
  await page.getByLabel('Marked rating').blur();
  await page.getByLabel('By', { exact: true }).fill('half an inspection');
  await parts.back.click();
  await parts.item('Red').click();
  await expect(made).toHaveValue('3/4/2019');
  await expect(page.getByLabel('Marked rating')).toHaveValue('120');
  await expect(page.getByLabel('Marked rating')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('By', { exact: true })).toHaveValue('half an inspection');
  await made.fill('April 2019');
  await made.blur();
  await expect(made).toHaveValue('2019-04');
});

test.describe('where the browser refuses to keep anything', () => {
  for (const [how, script] of [
    ['the database throws', () => Object.defineProperty(globalThis, 'indexedDB', { get: () => { throw new DOMException('The operation is insecure.', 'SecurityError'); } })],
    ['the database does not open', () => { IDBFactory.prototype.open = () => { const request = new EventTarget() as IDBOpenDBRequest; setTimeout(() => request.onerror?.(new Event('error')), 0); return request; }; }],
    ['a write fails', () => { IDBObjectStore.prototype.put = () => { throw new DOMException('No room is left.', 'QuotaExceededError'); }; }],
  ] as const) {
    test(`the page works in memory and says so at its top: ${how}`, async ({ page }) => {
      await page.addInitScript(script);
      await openRack(page);
      await startWith(page, 'Red; 12; HMPE 10; 2019-04; 3');
      const parts = partsOf(page);
      await expect(page.locator('.note.warn')).toContainText('Export before you close it');
      await parts.item('Red').click();
      await page.getByLabel('Name', { exact: true }).fill('Crimson');
      await page.getByLabel('Name', { exact: true }).blur();
      await parts.back.click();
      await expect(parts.item('Crimson')).toBeVisible();
      expect((await saved(page, () => page.locator('.note.warn').getByRole('button', { name: /^Save as a file/ }).click())).text).toContain('"Crimson"');
    });
  }
});

test.describe('two windows', () => {
  test('follow each other, and edits of different things come together without a question', async ({ page, context }) => {
    await openRack(page);
    await startWith(page, 'Red; 12; HMPE 10; 2019-04\nBlue; 9; nylon 16; 2020');
    const other = await context.newPage();
    await openRack(other);
    const [here, there] = [partsOf(page), partsOf(other)];
    await expect(there.rows).toHaveCount(2);
    await here.item('Red').click();
    await there.item('Blue').click();
    await page.getByLabel('Name', { exact: true }).fill('Crimson');
    await page.getByLabel('Name', { exact: true }).blur();
    await other.getByLabel('Name', { exact: true }).fill('Navy');
    await other.getByLabel('Name', { exact: true }).blur();
    await here.back.click();
    await there.back.click();
    for (const parts of [here, there]) {
      await expect(parts.item('Crimson')).toBeVisible();
      await expect(parts.item('Navy')).toBeVisible();
    }
    // Added in both at once, under the same clock: two items, not one.
    await Promise.all([here.addOne.click(), there.addOne.click()]);
    await here.back.click();
    await expect(here.rows).toHaveCount(4);
  });

  test('leave what is being typed alone while the other writes', async ({ page, context }) => {
    await openRack(page);
    await startWith(page, 'Red; 12; HMPE 10; 2019-04\nBlue; 9; nylon 16; 2020');
    const other = await context.newPage();
    await openRack(other);
    const [here, there] = [partsOf(page), partsOf(other)];
    await here.item('Red').click();
    await page.getByLabel('Notes').fill('half a note');
    await there.item('Blue').click();
    await other.getByLabel('Name', { exact: true }).fill('Navy');
    await other.getByLabel('Name', { exact: true }).blur();
    await expect(here.said).toHaveText('Another window’s changes are here.');
    await expect(page.getByLabel('Notes')).toHaveValue('half a note');
    // Leaving the view by the browser's own button takes it over.
    await page.goBack();
    await expect(here.item('Navy')).toBeVisible();
    await here.item('Red').click();
    await expect(page.getByLabel('Notes')).toHaveValue('half a note');
  });

  test('that changed the same thing apart from each other are asked, and nothing is overwritten', async ({ page, context }) => {
    await openRack(page);
    await startWith(page, 'Red; 12; HMPE 10; 2019-04');
    const other = await context.newPage();
    // A window that hears of nothing, as one that was asleep.
    await other.addInitScript(() => { BroadcastChannel.prototype.addEventListener = () => {}; });
    await openRack(other);
    const [here, there] = [partsOf(page), partsOf(other)];
    await here.item('Red').click();
    await page.getByLabel('Name', { exact: true }).fill('Crimson');
    await page.getByLabel('Name', { exact: true }).blur();
    await expect(here.undo).toContainText('name');
    await there.item('Red').click();
    await other.getByLabel('Marked rating').fill('13');
    await other.getByLabel('Marked rating').blur();
    await expect(other.getByLabel('Name', { exact: true })).toHaveValue('Crimson');
    // Kept by now, and heard of here.
    await expect(page.getByLabel('Marked rating')).toHaveValue('13');
    await other.close();

    const third = await context.newPage();
    await third.addInitScript(() => { BroadcastChannel.prototype.addEventListener = () => {}; });
    await openRack(third);
    const late = partsOf(third);
    await page.getByLabel('Name', { exact: true }).fill('Scarlet');
    await page.getByLabel('Name', { exact: true }).blur();
    await expect(here.undo).toContainText('name');
    await late.item('Crimson').click();
    await third.getByLabel('Name', { exact: true }).fill('Ruby');
    await third.getByLabel('Name', { exact: true }).blur();
    await expect(third.getByRole('heading', { name: 'Two copies differ' })).toBeFocused();
    const conflict = third.getByRole('group', { name: /name$/ });
    await expect(conflict.getByRole('radio')).toHaveCount(2);
    await expect(conflict.getByRole('radio', { checked: true })).toHaveCount(0);
    await expect(conflict).toContainText('Here: Ruby');
    await expect(conflict).toContainText('In the other: Scarlet');
    await third.getByRole('button', { name: 'Decide later' }).click();
    await expect(third.locator('.note.warn')).toContainText('not kept until you have chosen');
    await third.getByRole('link', { name: 'Choose' }).click();
    await conflict.getByRole('radio', { name: /Ruby/ }).check();
    await third.getByRole('button', { name: 'Merge as chosen' }).click();
    await expect(late.item('Ruby')).toBeVisible();
    await expect(page.getByLabel('Name', { exact: true })).toHaveValue('Ruby');
  });

  test('a register that one window deletes stays in the other until it is kept again or closed', async ({ page, context }) => {
    await openRack(page);
    await startWith(page, 'Red; 12; HMPE 10; 2019-04');
    const other = await context.newPage();
    await openRack(other);
    await partsOf(page).files.click();
    await page.getByRole('button', { name: 'Delete the register from this browser' }).click();
    await expect(page.getByRole('button', { name: 'Delete it' })).toBeFocused();
    await page.getByRole('button', { name: 'Delete it' }).click();
    await expect(page.getByRole('heading', { name: 'Begin' })).toBeFocused();
    await expect(other.locator('.note.warn')).toContainText('Another window has deleted');
    await other.getByRole('button', { name: 'Keep it in this browser again' }).click();
    await expect(other.locator('.note.warn')).toHaveCount(0);
    await other.reload();
    await expect(partsOf(other).item('Red')).toBeVisible();
  });
});

test.describe('import', () => {
  test('is refused with line and reason, and loses nothing', async ({ page }) => {
    await openRack(page);
    await startWith(page, 'Red; 12; HMPE 10; 2019-04');
    const parts = partsOf(page);
    await parts.files.click();
    await parts.file.setInputFiles(asFile('other.json', '{\n "format": "something else"\n}\n'));
    await expect(page.locator('#refused')).toBeFocused();
    await expect(page.locator('#refused li')).toHaveText('line 1: this is no rack register: "format" must be "second-sling-rack"');
    const mine = (await saved(page, () => parts.saveFile.click())).text;
    await parts.pasted.fill(mine.replace('"ratingKn": 12', '"ratingKn": 1200'));
    await parts.importText.click();
    const line = mine.slice(0, mine.indexOf('"ratingKn"')).split('\n').length;
    await expect(page.locator('#refused li')).toHaveText(`line ${line}, /items/0/ratingKn: must be a number from 1 to 40, or null (got 1200)`);
    await parts.pasted.fill('id,name\n,"open');
    await parts.importText.click();
    await expect(page.locator('#refused li')).toHaveText('line 2: a quote is opened and never closed');
    await expect(parts.pasted).toHaveValue('id,name\n,"open');
    await parts.back.click();
    await expect(parts.rows).toHaveCount(1);
  });

  test('is merged with a rack that is there: what differs is asked, undo takes it back', async ({ page }) => {
    await openRack(page);
    await startWith(page, 'Red; 12; HMPE 10; 2019-04\nBlue; 9; nylon 16; 2020');
    const parts = partsOf(page);
    await parts.files.click();
    const file = (await saved(page, () => parts.saveFile.click())).text;
    const table = (await saved(page, () => parts.saveTable.click())).text;
    // Another copy of the same file, edited there.
    const copy = /"(k[a-z0-9]+)": 1/.exec(file)?.[1] ?? '';
    const theirs = file.replace(`"${copy}": 1`, `"${copy}": 1,\n  "zother": 1`).replace('"name": "Red"', '"name": "Crimson"').replace(/("stamps": \{)\}/, '$1\n    "name": "1@zother"\n   }');
    await parts.file.setInputFiles(asFile('theirs.json', theirs));
    await expect(parts.said).toContainText('theirs.json is merged');
    await expect(parts.item('Crimson')).toBeVisible();
    await parts.undo.click();
    await expect(parts.item('Red')).toBeVisible();
    // A table does not know which edit came first: it asks.
    await parts.files.click();
    await parts.pasted.fill(table.replace(',Red,', ',Scarlet,'));
    await parts.importText.click();
    await expect(page.getByRole('heading', { name: 'Two copies differ' })).toBeFocused();
    await expect(page.getByRole('radio', { checked: true })).toHaveCount(0);
    // Nothing is chosen yet, and the button says that it does nothing.
    await page.getByRole('button', { name: 'Merge as chosen' }).click({ force: true });
    await expect(page.getByRole('heading', { name: 'Two copies differ' })).toBeVisible();
    await page.getByRole('button', { name: 'All as in the other' }).click();
    await page.getByRole('button', { name: 'Merge as chosen' }).click();
    await expect(parts.item('Scarlet')).toBeVisible();
    await expect(parts.item('Blue')).toBeVisible();
  });
});

test('the register is kept by keyboard alone', async ({ page, isMobile }) => {
  test.skip(isMobile === true, 'a phone has no keyboard');
  await openRack(page);
  const press = async (target: ReturnType<typeof page.locator>, key = 'Enter') => {
    for (let tabs = 0; tabs < 60; tabs += 1) {
      if (await target.evaluate((element) => element === document.activeElement)) break;
      await page.keyboard.press('Tab');
    }
    await expect(target).toBeFocused();
    await page.keyboard.press(key);
  };
  const parts = partsOf(page);
  await press(parts.empty);
  await press(parts.addSeveral);
  await expect(page.getByRole('heading', { name: 'Add several' })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(parts.lines).toBeFocused();
  await page.keyboard.type('Red; 12; HMPE 10; 2019-04');
  await press(parts.add);
  await expect(page.getByRole('heading', { name: 'My rack' })).toBeFocused();
  await press(parts.item('Red'));
  await expect(page.getByRole('heading', { name: 'Red' })).toBeFocused();
  await press(page.getByRole('button', { name: 'Add the inspection' }));
  await expect(page.getByRole('heading', { name: 'Inspections' })).toBeFocused();
  await press(page.getByRole('button', { name: /^Take out/ }));
  await expect(page.getByRole('heading', { name: 'Inspections' })).toBeFocused();
  await press(page.getByRole('button', { name: 'Take it off the rack' }), ' ');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Take it off the rack' })).toBeFocused();
  await page.goBack();
  await expect(parts.item('Red')).toBeFocused();
});

for (const scheme of ['light', 'dark'] as const) {
  test(`every view is accessible, fits and gives each number its origin, ${scheme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await openRack(page);
    const check = async (view: string) => {
      const { violations } = await new AxeBuilder({ page }).analyze();
      expect(violations.map(({ id, nodes }) => `${view}: ${id} ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`)).toEqual([]);
      expect(await wideElements(page), view).toEqual([]);
      const found = await page.evaluate(`(${quantitiesIn.toString()})(document.body)`) as ReturnType<typeof quantitiesIn>;
      expect(found.bare.map(({ text, where }) => `${view}: ${text} (${where})`)).toEqual([]);
      expect(found.wide, view).toEqual([]);
    };
    const parts = partsOf(page);
    await check('start');
    await parts.example.click();
    await expect(parts.rows).toHaveCount(23);
    await check('list');
    await parts.item('Small 4').click();
    await expect(parts.headline).toBeVisible();
    await page.locator('.verdict summary').click();
    await page.getByLabel('First use', { exact: true }).fill('soon');
    await page.getByLabel('First use', { exact: true }).blur();
    await check('item');
    await parts.back.click();
    await parts.addSeveral.click();
    await parts.lines.fill(LINES);
    await check('add');
    await parts.back.click();
    await parts.files.click();
    await parts.pasted.fill('nothing');
    await parts.importText.click();
    await expect(page.locator('#refused')).toBeVisible();
    await check('files');
    const table = (await saved(page, () => parts.saveTable.click())).text;
    await parts.pasted.fill(table.replace(',Small 4,', ',Small four,').replace(',8,', ',9,'));
    await parts.importText.click();
    await expect(page.getByRole('heading', { name: 'Two copies differ' })).toBeVisible();
    await check('conflicts');
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    // A sheet is as wide as paper (A4 at 96 dots an inch), whatever the window is.
    await page.setViewportSize({ width: 794, height: 1123 });
    await check('sheet');
  });
}

test('a clock that is behind the evidence is said, and makes no verdict milder', async ({ page }) => {
  await page.clock.setFixedTime(new Date('2019-01-01T10:00:00Z'));
  await page.goto('rack/');
  await expect(page.locator('html')).toHaveClass(/rack-ready/);
  await expect(page.locator('.note')).toContainText('The clock of this device is behind');
  await startWith(page, 'Red; 12; HMPE 10; 2012');
  await expect(partsOf(page).group('Retire now').locator('.row')).toHaveCount(1);
});

test('five thousand items are listed, found and edited', async ({ page }) => {
  test.slow();
  await openRack(page);
  await startWith(page, Array.from({ length: 5000 }, (_, at) => `Device ${at}; ${6 + (at % 10)}; ${at % 2 ? 'HMPE 10' : 'nylon 16'}; ${2010 + (at % 16)}`).join('\n'));
  const parts = partsOf(page);
  await expect(page.locator('.list')).toContainText('5000 devices');
  expect(await parts.rows.count()).toBeLessThanOrEqual(300);
  await page.getByRole('button', { name: /^Show/ }).first().click();
  await page.getByLabel('Find by name').fill('device 4999');
  await expect(parts.rows).toHaveCount(1);
  await parts.item('Device 4999').click();
  await page.getByLabel('Name', { exact: true }).fill('The last');
  await page.getByLabel('Name', { exact: true }).blur();
  await expect(page.getByRole('heading', { name: 'The last' })).toBeVisible();
  await expect.poll(async () => (await keptItem(page))?.name).toBe('The last');
  await page.reload();
  await expect(page.getByLabel('Name', { exact: true })).toHaveValue('The last');
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false });
  test('the page says what it is and gives a sheet to keep by hand', async ({ page }) => {
    await page.goto('rack/');
    await expect(page.getByText('The register needs a script')).toBeVisible();
    await expect(page.getByRole('table')).toBeVisible();
    expect(await page.getByRole('row').count()).toBeGreaterThan(10);
    await expect(page.getByText('Opening the register')).toBeHidden();
    await page.emulateMedia({ media: 'print' });
    await expect(page.getByRole('table')).toBeVisible();
  });
});

for (const [paper, width, height] of [['A4', '210mm', '297mm'], ['Letter', '8.5in', '11in']] as const) {
  test(`the sheet is printed on ${paper}`, async ({ page, isMobile }) => {
    test.skip(isMobile === true, 'paper is the same from any window');
    await openRack(page);
    await partsOf(page).example.click();
    await expect(partsOf(page).rows).toHaveCount(23);
    // What draws the sheet is there once another view was.
    await partsOf(page).addSeveral.click();
    await partsOf(page).back.click();
    await expect(partsOf(page).rows).toHaveCount(23);
    const pdf = (await page.pdf({ width, height })).toString('latin1');
    const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    expect(pages).toBeGreaterThanOrEqual(1);
    expect(pages).toBeLessThanOrEqual(2);
  });
}
