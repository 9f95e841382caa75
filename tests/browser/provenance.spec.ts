/** What the script draws obeys the rule of the built pages: every number leads to its figure or to a working made of figures. */
import { quantitiesIn } from '../support/gates/bare-quantities.ts';
import { openComparator, OTHER_RIG, partsOf } from '../support/comparator-page.ts';
import { expect, test } from '../support/browser.ts';

const RIGS = [
  ['the example', ''],
  ['another rig', OTHER_RIG],
  ['nothing known', 'v=1&rating=unknown&eye=unknown&bearing=unmeasured&sling=unknown&length=unknown&used=used&demand=rating&oldsling=unknown&oldage=unknown'],
  ['a measured wire and a high demand', 'v=1&rating=14&eye=bare-wire&bearing=4&sling=hmpe-8&length=120&used=new&demand=35&oldsling=hmpe&oldage=5'],
  ['a wire thinner than tested', 'v=1&rating=8&eye=bare-wire&bearing=2&sling=nylon-20&length=60&used=new&demand=rating&oldsling=nylon&oldage=10'],
] as const;

for (const [name, query] of RIGS) {
  test(`every number of ${name} has an origin`, async ({ page, baseURL }) => {
    await openComparator(page, query);
    for (const summary of await page.locator('table#comparison summary').all()) {
      if (!(await summary.evaluate((element) => (element.parentElement as HTMLDetailsElement).open))) await summary.click();
    }
    for (const unit of ['kN', 'lbf']) {
      await partsOf(page).unit.selectOption(unit);
      const found = await page.evaluate(`(${quantitiesIn.toString()})(document.body)`) as ReturnType<typeof quantitiesIn>;
      expect(found.seen).toBeGreaterThan(20);
      expect(found.bare.map(({ text, where }) => `${text} (${where})`)).toEqual([]);
      expect(found.wide).toEqual([]);
      const empty = await page.evaluate((targets) => targets.filter((id) => !document.getElementById(id)?.querySelector('a[href*="/figures/"]')), [...new Set(found.workings.map(({ target }) => target))].filter((target) => !target.includes('#')));
      expect(empty, 'workings without a figure').toEqual([]);
    }
    const figures = await page.locator('a[href*="/figures/"]').evaluateAll((links) => [...new Set(links.map((link) => (link as HTMLAnchorElement).href))]);
    for (const address of figures) {
      const answer = await page.request.get(address);
      expect(answer.status(), address).toBe(200);
      const cell = decodeURIComponent(new URL(address).hash.slice(1));
      if (cell) expect(await answer.text(), address).toContain(`id="${cell}"`);
    }
    expect(figures.every((address) => address.startsWith(baseURL ?? 'none'))).toBe(true);
  });
}
