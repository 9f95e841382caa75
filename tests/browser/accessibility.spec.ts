/** WCAG 2.x A and AA by axe, in light and dark, at phone and desktop width, and what axe cannot see: reflow and target size. */
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test, wideElements } from '../support/browser.ts';

/** One page of each kind. */
const PAGES = [
  ['home', ''],
  ['comparator', 'compare/'],
  ['a method', 'methods/basket/'],
  ['a figure', 'figures/ibarra-2021/girth-on-wire/'],
  ['a source', 'sources/ibarra-2021/'],
  ['gaps', 'gaps/'],
  ['caution', 'caution/'],
  ['replace', 'replace/'],
  ['what a new sling costs', 'replace/cost/'],
  ['a cost from a link', 'replace/cost/?v=1&cur=EUR&week=1&metal=8&kinds=5~2&names=cams~nuts&fresh=~20&refused=~mw&m=16~9~9~4~10&w=12~x&n=27~~6~0~10&h=7~~4~1~5'],
  ['a form to send', 'replace/form/'],
  ['materials', 'materials/'],
  ['a material', 'materials/nylon/'],
  ['knots and bearings', 'materials/knots-and-bearings/'],
  ['terms', 'terms/'],
  ['a guide', 'guides/pulling-without-harm/'],
  ['the verdict', 'retire/'],
  ['the rack', 'rack/'],
  ['search', 'search/'],
  ['a search', 'search/?q=girht+hitch'],
  ['a search for a number', 'search/?q=22+kN&kind=figure'],
  ['a search for what is nowhere', 'search/?q=zzqxv'],
  ['from A to Z', 'a-z/'],
  ['breaks', 'breaks/'],
  ['a series of breaks', 'breaks/jones-water-knot/'],
  ['an invented series with several modes', 'breaks/gear-room-basket/'],
  ['how many pulls', 'breaks/plan/'],
  ['a plan from a link', 'breaks/plan/?v=1&want=bound&pair=own&own=97,5~90&cv=9,3&short=8&bogus=1'],
  ['a protocol for breaks', 'breaks/plan/protocol/'],
  ['a form for ten pulls', 'breaks/plan/form/'],
  ['a fall', 'falls/'],
  ['a fall from a link', 'falls/?v=1&kg=95&onto=piece&up=3,5&slack=x&out=8&rope=half&kn=6&belay=hitch&route=zigzag&state=wet&bogus=1'],
  ['a fall onto the belay', 'falls/?v=1&kg=180 lb&onto=belay&up=10 ft&kn=8.7&belay=device'],
  ['falls worked for a class', 'falls/examples/'],
  ['a page to send', 'send/?to=compare/%3Fv=1%26rating=10'],
  ['embedding', 'embed/'],
  ['a comparison to embed', 'embed/compare/12/bare-wire/hmpe-10/'],
  ['a load path to embed', 'embed/chain/girth-hitch/'],
  ['a figure to embed', 'embed/figure/ibarra-2021/girth-on-wire/'],
  ['a fall to embed', 'embed/fall/'],
  ['a comparison from an older link', 'compare/?v=1&rating=12&eye=bare-wire&sling=hmpe-10&d=2026-11-25.1&m=1'],
  ['lessons', 'teach/'],
  ['the course kit', 'teach/kit/'],
  ['a lesson', 'teach/knots-and-bends/'],
  ['a handout', 'teach/weak-links/handout/'],
  ['variants of an exercise', 'teach/how-many-tests/variants/'],
  ['answers of an exercise', 'teach/falls/answers/'],
  ['keeping the site', 'offline/'],
  ['a page that is not kept', 'offline/not-kept/'],
  ['a verdict from a link', 'retire/?v=1&material=hmpe&width=10&made=2022-06&use=weekly&yes=light'],
] as const;
/** Other kinds, of which only the fit is looked at: their parts are those of the pages above. */
const MORE_PAGES = [
  ['a term', 'terms/hmpe/'],
  ['guides', 'guides/'],
  ['a prebuilt comparison', 'compare/12/bare-wire/hmpe-10/'],
  ['methods', 'methods/'],
  ['figures', 'figures/'],
  ['a table of figures', 'figures/nelhams-2010/sewn-knots/'],
  ['the model', 'model/'],
  ['nothing', 'no-such-page/'],
] as const;
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa', 'best-practice'];

/** Opens every closed part: its text counts too. */
const openAll = (page: Page) =>
  page.evaluate(() => {
    for (const part of document.querySelectorAll('details')) part.open = true;
  });

/** There are no frames, so the short way through axe sees all. */
const audit = (page: Page) => new AxeBuilder({ page }).setLegacyMode(true);

const inWords = (violations: Awaited<ReturnType<AxeBuilder['analyze']>>['violations']) =>
  violations.map(({ id, help, nodes }) => `${id}: ${help} at ${nodes.slice(0, 4).map((node) => node.target.join(' ')).join('; ')}`);

for (const [name, path] of PAGES) {
  test(`${name} passes axe in light, and its colours in dark`, async ({ page, isMobile }) => {
    await page.emulateMedia({ colorScheme: 'light' });
    await page.goto(path);
    await openAll(page);
    const light = await audit(page).withTags(TAGS).analyze();
    expect(inWords(light.violations)).toEqual([]);
    expect(light.passes.length).toBeGreaterThan(10);
    // Only colours depend on the scheme, and they are the same on both screens; both looks must have the contrast.
    if (isMobile) return;
    await page.emulateMedia({ colorScheme: 'dark' });
    const dark = await audit(page).withRules(['color-contrast', 'link-in-text-block']).analyze();
    expect(inWords(dark.violations)).toEqual([]);
  });
}

test.describe('fit', () => {
  test.use({ expectedErrors: /status of 404/ });
  for (const [name, path] of [...PAGES, ...MORE_PAGES]) {
    test(`${name} fits the window: nothing sticks out sideways`, async ({ page }) => {
      await page.goto(path);
      await openAll(page);
      expect(await wideElements(page)).toEqual([]);
    });
  }
});

test.describe('large text', () => {
  // The reader's own setting is imitated by a style, which the content policy would stop.
  test.use({ bypassCSP: true });
  test('text at twice its size still fits a phone', async ({ page }) => {
    await page.setViewportSize({ width: 360, height: 740 });
    for (const path of ['', 'compare/', 'methods/basket/']) {
      await page.goto(path);
      await page.addStyleTag({ content: 'html { font-size: 200% }' });
      expect(await wideElements(page), path).toEqual([]);
    }
  });
});
