/** What a fall loads: from words to loads, to the comparator and back; wrong inputs, link, keyboard, paper, no script. */
import type { Page } from '@playwright/test';
import { expect, test, wideElements } from '../support/browser.ts';
import { quantitiesIn } from '../support/gates/bare-quantities.ts';

const headline = (page: Page) => page.locator('#fall-root .headline');
const put = (page: Page, name: string, text: string) => page.locator(`[name="${name}"]`).fill(text);
const bare = (page: Page): Promise<string[]> => page.evaluate(`(${quantitiesIn.toString()})(document.querySelector('main')).bare.map(({ text }) => text)`);
const row = (page: Page, name: string) => page.locator('#fall-root .loads tbody tr').filter({ has: page.locator('th', { hasText: name }) }).locator('td');
const middle = async (page: Page): Promise<string> => /([\d.]+)\u00a0kN in the middle/.exec((await headline(page).textContent()) ?? '')?.[1] ?? 'none';
/** Height of a span of the drawing, in its units. */
const span = (page: Page, name: string): Promise<number> => page.locator(`.fall-drawing .span.${name}`).evaluate((path) => (path as SVGPathElement).getTotalLength());
/** Let go on a tight rope: twice 75 kg times 9.80665 N is 1.47 kN, whatever the rope; held fast. */
const LET_GO = 'v=1&kg=75&onto=piece&up=0&out=15&rope=single&kn=8.7&belay=held&route=straight&state=new';

test('a fall in words gives its loads, and the drawing moves with it, to scale', async ({ page }) => {
  await page.goto('falls/');
  await expect(headline(page)).toContainText('The top piece bears');
  await put(page, 'kg', '75');
  await put(page, 'up', '3');
  await put(page, 'slack', '');
  await put(page, 'out', '15');
  await put(page, 'kn', '8.7');
  await page.getByLabel('How the rope is held').selectOption('held');
  await page.getByLabel('How it runs').selectOption('straight');
  await page.locator('[name="state"]').selectOption('new');
  // By hand: down by 3 m, and 3 m more: 6 m on 15 m.
  await expect(page.locator('#fall-root')).toContainText('A fall of 6\u00a0m on 15\u00a0m of rope: fall factor 0.40.');
  await expect(page.locator('.fall-drawing title')).toContainText('6\u00a0m until the rope is tight');
  const stretchM = Number(/([\d.]+)\u00a0m of stretch/.exec((await page.locator('.fall-drawing title').textContent()) ?? '')?.[1]);
  expect((await span(page, 'fall')) / (await span(page, 'stretch')) / (6 / stretchM)).toBeCloseTo(1, 1);
  await expect(row(page, 'Climber').nth(1)).toHaveText(/^\d+\.\d$/);
  await expect(page.locator('.drivers tbody tr')).not.toHaveCount(0);
  await put(page, 'up', '6');
  await expect(page.locator('#fall-root')).toContainText('fall factor 0.80');
  expect(await bare(page)).toEqual([]);
});

test('let go on a tight rope the climber feels twice the weight, and the page leads to each figure and each gap', async ({ page }) => {
  await page.goto(`falls/?${LET_GO}`);
  await expect(row(page, 'Climber')).toHaveText(['1.5', '1.5', '1.5']);
  await expect(page.locator('#fall-root')).toContainText('No fall: the rope is tight');
  await expect(page.locator('#fall-root').getByRole('link', { name: 'The gap' })).toHaveCount(1);
  await page.locator('[name="state"]').selectOption('wet');
  await expect(page.locator('#fall-root')).toContainText('A wet or frozen rope is computed as a dry one.');
  await page.locator('.drivers').getByRole('link', { name: 'Figures' }).first().click();
  await expect(page.locator('dt:target')).toBeVisible();
  await page.locator('dt:target + dd a').first().click();
  await expect(page.getByRole('heading', { name: 'What it feeds' })).toBeVisible();
  await expect(page.locator('main')).not.toContainText('No factor of the model uses it');
  await page.locator('main').getByRole('link', { name: /^what a fall loads/ }).first().click();
  await expect(page).toHaveURL(/\/falls\/#sources$/);
});

test('from the comparator to a fall and back: the rig stays, and the load stands as what it must bear', async ({ page }) => {
  await page.goto('compare/?v=1&rating=9&eye=bare-wire&bearing=4&sling=hmpe-10&length=30&used=new&demand=rating&oldsling=unknown&oldage=unknown&olduse=unknown&oldlight=unknown');
  await expect(page.locator('[name="rating"]')).toHaveValue('9');
  await page.evaluate(() => { for (const part of document.querySelectorAll('details')) part.open = true; document.querySelector('.rig')?.classList.remove('folded'); });
  await page.locator('form').getByRole('link', { name: 'What a fall loads' }).click();
  await expect(page).toHaveURL(/\/falls\/\?.*rig=v%3D1%26rating%3D9/);
  await put(page, 'up', '1');
  await put(page, 'out', '20');
  const load = await middle(page);
  await page.reload();
  const back = page.getByRole('link', { name: /^Back to your rig/ });
  await expect(back).toContainText(load);
  await back.click();
  await expect(page).toHaveURL(new RegExp(`/compare/\\?.*rating=9&.*sling=hmpe-10&.*demand=${load.replace('.', '\\.')}`));
  await expect(page.locator('[name="demand"]')).toHaveValue(load);
  await expect(page.locator('[name="bearing"]')).toHaveValue('4');
  await page.goBack();
  await expect(page.locator('[name="up"]')).toHaveValue('1');
  await expect(headline(page)).toContainText(load);
  // A fall beside the comparison leads back to itself; the rig comes along, and no earlier fall in it.
  await page.getByRole('link', { name: 'with all of its range beside the rating' }).click();
  // Everything drawn, so that nothing moves under the click.
  await page.waitForLoadState('networkidle');
  await page.locator('#fall-root').getByRole('link', { name: 'as this fall gives them' }).click();
  await expect(page).toHaveURL(/\/falls\/\?.*out=20&.*rig=v%3D1%26rating%3D9/);
  expect(page.url()).not.toContain('%26f%3D');
  await expect(headline(page)).toContainText(load);
});

test('the whole range of a fall stands beside the rating, with dots for load and strength, and what is not in it', async ({ page }) => {
  await page.goto('falls/');
  const query = new URL(page.url()).search;
  await page.getByRole('link', { name: 'with all of its range beside the rating' }).click();
  await expect(page).toHaveURL(/compare\/\?v=1&f=/);
  const part = page.locator('#fall-root');
  await expect(part).toContainText('Nine in ten loads on the top piece lie between');
  await expect(part).toContainText('Not in these numbers:');
  await expect(part).toContainText('The load on the top piece is not the load on the sling alone.');
  // One drawing of the loads, and one for each method that has a number.
  expect(await part.locator('svg.lane').count()).toBe(1 + await part.locator('li').count());
  expect(await part.locator('li').count()).toBeGreaterThan(0);
  await part.getByRole('link', { name: 'as this fall gives them' }).click();
  await expect(page).toHaveURL(/\/falls\/\?/);
  expect(query).toBe('');
  await expect(page.locator('#not-used')).toBeHidden();
  // A load that hardly any strength is below, and one that every strength is above: nearly never, and nearly always.
  await page.goto('compare/?v=1&rating=12&eye=bare-wire&bearing=4&sling=hmpe-10&f=0.1~0.2');
  await expect(part.locator('li').first()).toContainText('fewer than 1');
  await page.goto('compare/?v=1&rating=12&eye=bare-wire&bearing=4&sling=hmpe-10&f=90~99');
  await expect(part.locator('li').first()).toContainText('more than 19');
  await page.goto('compare/?v=1&rating=12&f=9~8');
  await expect(part).toContainText('f=9~8 (the upper load must lie above the lower one)');
});

test('an impossible fall is said at its field; what was typed stays, also after a reload', async ({ page }) => {
  await page.goto('falls/');
  await put(page, 'out', '2');
  await put(page, 'up', '5');
  // By hand: 2 x 5 + 0.5 = 10.5 m of fall.
  await expect(page.locator('#says-out')).toContainText('nobody falls farther than twice the rope that is out');
  await expect(page.locator('#says-out')).toContainText('10.5 m');
  await expect(page.locator('[name="out"]')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.locator('#fall-root')).toHaveText('No load is worked out before the marked fields can be read.');
  await expect(page.locator('.outcome .tools')).toBeHidden();
  await put(page, 'kg', 'heavy');
  await expect(page.locator('#says-kg')).toContainText('No plain number; write one from 20 to 200 kg');
  await put(page, 'up', '');
  await expect(page.locator('#says-up')).toContainText('Write how far the knot at the harness is above the last piece');
  await page.reload();
  await expect(page.locator('[name="kg"]')).toHaveValue('heavy');
  await expect(page.locator('[name="out"]')).toHaveValue('2');
  await expect(page.locator('[name="up"]')).toHaveValue('');
  await put(page, 'kg', '180 lb');
  await put(page, 'up', '6,5 ft');
  await put(page, 'out', '40 ft');
  await expect(page.locator('.fault').filter({ hasText: /\S/ })).toHaveCount(0);
  // 180 lb x 0.45359237: 81.6 kg.
  await expect(page.locator('.told-as')).toContainText('81.6\u00a0kg');
});

test('a strange link gives a page: each piece that is not understood is listed word for word, and the rest is used', async ({ page }) => {
  await page.goto(`falls/?${LET_GO}&bogus=1&state=dry&rig=rating`);
  for (const piece of ['bogus=1', 'state=new', 'state=dry', 'rig=rating']) await expect(page.locator('#not-used')).toContainText(piece);
  await expect(row(page, 'Climber').first()).toHaveText('1.5');
});

test('a fall past the belay by keyboard alone, with its factor of two', async ({ page }) => {
  await page.goto('falls/');
  await page.locator('[name="onto"][value="piece"]').focus();
  await page.keyboard.press('ArrowDown');
  await expect(page.locator('#ask-route')).toBeHidden();
  for (const typed of ['75', '3', '0', '']) {
    await page.keyboard.press('Tab');
    await page.keyboard.press('ControlOrMeta+a');
    await (typed ? page.keyboard.type(typed) : page.keyboard.press('Delete'));
  }
  await page.keyboard.press('Enter');
  await expect(page.locator('#answer')).toBeFocused();
  await expect(page.locator('#fall-root')).toContainText('A fall of 6\u00a0m on 3\u00a0m of rope: fall factor 2.00.');
  await expect(headline(page)).toContainText('The belay bears');
  await expect(page.locator('.fall-drawing .piece')).toHaveCount(0);
  await expect(page).toHaveURL(/onto=belay&up=3/);
});

test('copied link and text say the fall again, and what the load is not; nothing is kept on the device', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto(`falls/?${LET_GO}`);
  await put(page, 'up', '2,5');
  const said = (await headline(page).textContent()) ?? 'none';
  await page.getByRole('button', { name: 'Copy as text' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Text copied.');
  const text = await page.evaluate(() => navigator.clipboard.readText());
  expect(text).toContain('not on the sling alone');
  expect(text).toContain('2.5 m above the last piece');
  await page.getByRole('button', { name: 'Copy link' }).click();
  await expect(page.locator('.tools [role=status]')).toHaveText('Link copied.');
  const link = await page.evaluate(() => navigator.clipboard.readText());
  await page.goto('terms/');
  await page.goto(link);
  await expect(headline(page)).toHaveText(said);
  await expect(page.locator('[name="up"]')).toHaveValue('2,5');
  expect(await page.evaluate(() => localStorage.length + sessionStorage.length)).toBe(0);
});

test('a climber who ends below the belayer is told of the ground', async ({ page }) => {
  // By hand: 3 m above a piece 9 m up, so 6 m of fall end 6 m above the belayer, less the stretch; 3 m above one 3.5 m up, 0.5 m less it.
  await page.goto('falls/?v=1&kg=80&onto=piece&up=3&out=12&rope=single&kn=8.7&belay=held&route=straight&state=new');
  await expect(page.locator('#fall-root .note')).toHaveCount(0);
  await put(page, 'out', '6.5');
  await expect(page.locator('#fall-root .note')).toContainText('From the ground that is a fall to the ground.');
});

test('inputs, ranges and drawing print on one sheet of either paper', async ({ page }) => {
  const sheets = async (format: 'A4' | 'Letter'): Promise<number> => ((await page.pdf({ format })).toString('latin1').match(/\/Type \/Page\b/g) ?? []).length;
  for (const query of ['', '?v=1&kg=95&onto=piece&up=3&slack=0.5&out=8&rope=half', '?v=1&kg=80&onto=belay&up=3&belay=device']) {
    await page.goto(`falls/${query}`);
    await expect(headline(page)).toBeVisible();
    await expect(page.locator('#fall-root .headline')).toHaveCount(1);
    expect([await sheets('A4'), await sheets('Letter')], query).toEqual([1, 1]);
  }
  await page.setViewportSize({ width: 703, height: 1000 });
  await page.emulateMedia({ media: 'print' });
  for (const shown of ['.told-as', '.fall-drawing', '.loads', '.drivers', '.warning']) await expect(page.locator(shown).first()).toBeVisible();
  for (const hidden of ['.questions', '.tools', '#usual', '#limits']) await expect(page.locator(hidden).first()).toBeHidden();
  expect(await wideElements(page)).toEqual([]);
});

test('the worked examples say what the equation gives by hand, and open on the page', async ({ page }) => {
  await page.goto('falls/examples/');
  const sections = page.locator('.worked-fall');
  await expect(sections).toHaveCount(6);
  // By hand: 75 kg are 0.7355 kN, let go on a tight rope twice that; 4.5 m on 15 m is a factor of 0.30.
  await expect(sections.nth(0)).toContainText('The climber feels 1.47 kN');
  await expect(sections.nth(1)).toContainText('0.30');
  // 8.7 (8.7 - 1.569) / (1.569 x 1.7143) = 23.06; 0.7355 + sqrt(0.541 + 2 x 0.7355 x 23.06 x 0.3) = 4.01.
  await expect(sections.nth(1)).toContainText('The climber feels 4.01 kN');
  await expect(sections.nth(3)).toContainText('The climber feels 4.01 kN');
  await sections.nth(4).getByRole('link', { name: 'Open this fall' }).click();
  await expect(page.locator('#fall-root')).toContainText('fall factor 2.00');
  await expect(page.locator('[name="kn"]')).toHaveValue('8.7');
});

test.describe('without a script', () => {
  test.use({ javaScriptEnabled: false });
  test('stand a fall with its drawing and loads, a table of usual falls, limits and figures', async ({ page }) => {
    await page.goto('falls/');
    await expect(page.locator('noscript p')).toBeVisible();
    await expect(page.locator('.questions')).toBeHidden();
    await expect(page.locator('.fall-drawing')).toBeVisible();
    await expect(page.locator('.told-as')).toContainText('2\u00a0m above the last piece');
    await expect(page.locator('.loads tbody tr')).toHaveCount(3);
    await expect(page.locator('.usual tbody tr')).toHaveCount(3);
    await expect(page.locator('#sources a[href*="/figures/"]')).not.toHaveCount(0);
    for (const said of ['The load on the top piece is not the load on the sling alone.', 'Placement, rock and wear', 'A belayer who is lifted', 'A wet or frozen rope', 'mean 11.7\u00a0kN', '12.4 to 14.3\u00a0kN']) await expect(page.locator('main')).toContainText(said);
    await expect(page.locator('.warning')).toHaveCount(1);
  });
});

test('a gap of falls leads to the page', async ({ page }) => {
  await page.goto('gaps/belay-slip/');
  await page.locator('main').getByRole('link', { name: 'what a fall loads' }).click();
  await expect(page.getByRole('heading', { level: 2, name: 'What it leaves out' })).toBeVisible();
});
