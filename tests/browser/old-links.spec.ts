/** A link made with older evidence: today's answer first, then what it showed, to the digit of the frozen file. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { alive, openComparator, OTHER_RIG, partsOf, unfold, watchComparisons } from '../support/comparator-page.ts';
import { expect, test, wideElements } from '../support/browser.ts';
import { quantitiesIn } from '../support/gates/bare-quantities.ts';
import { ROOT } from '../support/step.ts';

const RIG = 'v=1&rating=12&eye=bare-wire&bearing=unmeasured&sling=hmpe-10&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown&olduse=unknown&oldlight=unknown';
const OLD = '2026-11-25.1';
const index = JSON.parse(readFileSync(join(ROOT, 'data/versions/index.json'), 'utf8')) as { version: string; model: number }[];
const frozen = JSON.parse(readFileSync(join(ROOT, `data/versions/${OLD}.json`), 'utf8')) as { answers: Record<string, { method: string; attachment: [string, string, string] | null }[]>; evidence: { methods: Record<string, { name: string }> } };

test('of a rig with a page, the link shows every number of then below today\'s answer, and says what moved', async ({ page }) => {
  await openComparator(page, `${RIG}&d=${OLD}&m=1`);
  const part = page.locator('#then-root');
  await expect(part.getByRole('heading', { name: 'When this link was made' })).toBeVisible();
  await expect(part).toContainText(/Above is today.s answer/);
  for (const { method, attachment } of frozen.answers['12/bare-wire/hmpe-10'] ?? []) {
    if (!attachment) continue;
    await expect(part.locator('tbody tr').filter({ has: page.getByRole('rowheader', { name: frozen.evidence.methods[method]?.name ?? 'none', exact: true }) }).locator('td').first())
      .toContainText(`1 in 20 below ${attachment[0]}, half below ${attachment[1]} kN`);
  }
  await expect(part).toContainText(/Moved for this rig: .*Girth hitch/);
  expect(await page.evaluate(() => {
    const [table, then] = [document.querySelector('table#comparison'), document.querySelector('#then-root')] as [Element, Element];
    return (table.compareDocumentPosition(then) & Node.DOCUMENT_POSITION_FOLLOWING) > 0;
  })).toBe(true);
  await expect(page.getByRole('link', { name: /made with older evidence/i })).toBeVisible();
  expect(await wideElements(page)).toEqual([]);
  const found = await page.evaluate(`(${quantitiesIn.toString()})(document.querySelector('#answer'))`) as ReturnType<typeof quantitiesIn>;
  expect(found.bare.map(({ text, where }) => `${text} (${where})`)).toEqual([]);
  // With the next change the question is the reader's own, and the part goes.
  await unfold(page);
  await partsOf(page).rating.fill('9');
  await expect(partsOf(page).rows).toContainText('above 9 kN');
  await expect(part).toBeHidden();
  await expect(page.getByRole('link', { name: /made with older evidence/i })).toHaveCount(0);
});

test('of any other rig it shows no number of then, and names the inputs that have changed', async ({ page }) => {
  await openComparator(page, `${RIG.replace('bearing=unmeasured', 'bearing=4')}&d=${OLD}&m=1`);
  const part = page.locator('#then-root');
  await expect(part).toContainText('No page was built for this rig then');
  await expect(part.locator('table')).toHaveCount(0);
  await expect(part.getByRole('listitem').filter({ hasText: 'Girth hitch' }).getByRole('link', { name: 'girth hmpe' })).toHaveAttribute('href', /\/model\/factors\/#factor-girth-hmpe$/);
  await expect(part).toContainText(`data/versions/${OLD}.json`);
});

for (const [name, stamp, says] of [
  ['a version that never was', 'd=2020-01-01.1&m=1', /No version of the evidence is called 2020-01-01\.1/],
  ['a model that its version never had', `d=${OLD}&m=7`, new RegExp(`Version ${OLD.replaceAll('.', '\\.')} was made with model 1, never with 7`)],
  ['a model alone that never was', 'm=99', /No version had the model 99/],
] as const) {
  test(`${name} is not named as fact: what the link showed is not known`, async ({ page }) => {
    await openComparator(page, `${OTHER_RIG}&${stamp}`);
    const part = page.locator('#then-root');
    await expect(part).toContainText('Not known: what it showed.');
    await expect(part.getByRole('listitem').filter({ hasText: says })).toBeVisible();
    await expect(part).not.toContainText('The link was made with');
    await expect(part.locator('table')).toHaveCount(0);
  });
}

test('a link made with today\'s evidence asks for nothing of then', async ({ page }) => {
  const asked: string[] = [];
  page.on('request', (request) => { if (/\/then/.test(request.url())) asked.push(request.url()); });
  await watchComparisons(page);
  const newest = index.at(-1) as { version: string; model: number };
  await page.goto(`compare/?${OTHER_RIG}&d=${newest.version}&m=${newest.model}`);
  await alive(page);
  await page.waitForLoadState('networkidle');
  await expect(page.locator('#then-root')).toBeHidden();
  expect(asked).toEqual([]);
});
