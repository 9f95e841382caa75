/** WCAG 2.x A and AA by axe, in light and dark, at phone and desktop width, and what axe cannot see: reflow and target size. */
import AxeBuilder from '@axe-core/playwright';
import { expect, test, wideElements } from '../support/browser.ts';

/** One page of each kind. */
const PAGES = [
  ['home', ''],
  ['comparator', 'compare/'],
  ['a prebuilt comparison', 'compare/12/bare-wire/hmpe-10/'],
  ['a method', 'methods/basket/'],
  ['methods', 'methods/'],
  ['figures', 'figures/'],
  ['a figure', 'figures/ibarra-2021/girth-on-wire/'],
  ['a source', 'sources/ibarra-2021/'],
  ['gaps', 'gaps/'],
  ['caution', 'caution/'],
  ['replace', 'replace/'],
  ['nothing', 'no-such-page/'],
] as const;
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa', 'best-practice'];

test.use({ expectedErrors: [/status of 404/] });

for (const [name, path] of PAGES) {
  for (const scheme of ['light', 'dark'] as const) {
    test(`${name} passes axe in ${scheme}`, async ({ page }) => {
      await page.emulateMedia({ colorScheme: scheme });
      await page.goto(path);
      // Text in closed parts counts too.
      await page.evaluate(() => {
        for (const part of document.querySelectorAll('details')) part.open = true;
      });
      const { violations } = await new AxeBuilder({ page }).withTags(TAGS).analyze();
      expect(violations.map(({ id, help, nodes }) => `${id}: ${help} at ${nodes.slice(0, 4).map((node) => node.target.join(' ')).join('; ')}`)).toEqual([]);
    });
  }
  test(`${name} fits the window: nothing sticks out sideways`, async ({ page }) => {
    await page.goto(path);
    expect(await wideElements(page)).toEqual([]);
  });
}

test('text at twice its size still fits a phone and loses nothing', async ({ page }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  for (const path of ['', 'compare/', 'methods/basket/']) {
    await page.goto(path);
    await page.addStyleTag({ content: 'html { font-size: 200% }' }).catch(() => {});
    expect(await wideElements(page), path).toEqual([]);
  }
});
