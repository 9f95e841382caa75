/**
 * What the audit of accessibility.spec.ts cannot see: what assistive technology is told of each interactive page, reflow at
 * 320 px and at 400 % zoom, focus that stays in view, forced colours, and reduced motion. Numbers are those of WCAG 2.2.
 */
import type { Page } from '@playwright/test';
import sharp from 'sharp';
import { expect, test, wideElements } from '../support/browser.ts';

/**
 * Outline of each interactive page, as it is told: written by hand from what the page is for, in the order in which a
 * reader who does not see it meets its parts. Each line is the role and name of a part, or how they begin; what is not named
 * here may stand between.
 */
const OUTLINES: readonly (readonly [string, string, readonly (string | RegExp)[]])[] = [
  ['the comparator', 'compare/?v=1&rating=12&eye=bare-wire&bearing=4', [
    'main', 'heading "Compare ways to attach a new sling" [level=1]', 'note "Warning"', /^paragraph: Attaching a sling at home ends the maker’s approval/,
    'region "My rig"', 'group "Marked rating"', 'textbox "Strength marked on the device": "12"', 'checkbox "can’t be read"',
    'group "Eye: what the sling sits in"', 'radio "bare wire" [checked]', 'radio "twin eye"', /^textbox "Diameter that the sling bears on.*": "4"$/,
    'group "New sling"', 'combobox "Material and width"', 'combobox "Length"',
    'region "Ways to attach it"', /^status: On this eye with this sling/, 'combobox "Sort"', 'combobox "Unit"', 'table "Ways to attach a sling, each with what breaks first',
    'columnheader "Method"', 'columnheader "Low value and middle"', 'columnheader "Breaks first"', 'columnheader "One clipping error"',
    'rowheader "The maker’s way"', 'rowheader "Maker\'s sling, protective layer"', 'button "Copy link"', 'button "Copy as text"',
  ]],
  ['the verdict', 'retire/?v=1&material=hmpe&width=10&made=2010&use=weekly&on=2026-11-29', [
    'main', 'heading "Has the sling to go?" [level=1]', 'note "The maker first"', 'group "Material"', 'radio "HMPE" [checked]', /^textbox "Width of the tape.*": "10"$/,
    'textbox "Made in": "2010"', 'group "Used"', 'radio "every week" [checked]', 'button "Next questions"', 'region "The verdict"', 'heading "The verdict" [level=2]', /retire now/i, 'note "Warning"',
  ]],
  ['the register of a rack', 'rack/', [
    'main', 'heading "The register of a rack" [level=1]', 'note "Warning"', 'status', 'heading "Begin" [level=2]', 'button "Try with an example rack"', 'button "Start empty"', 'link "Open a file"', 'note "The maker first"',
  ]],
  ['what a new sling costs', 'replace/cost/', [
    'main', 'heading "What a new sling costs" [level=1]', 'note "The maker first"', 'region "What you have"', 'group "The devices"', 'textbox "How many"', 'textbox "What they are"', 'checkbox "the maker refused"',
    'button "Another kind of device"', 'textbox "Currency"', 'region "What you were offered"', 'textbox "New sling, each"', 'region "The answer"',
  ]],
  ['a fall', 'falls/', [
    'main', 'heading "What a fall loads" [level=1]', 'region "The fall"', 'group "What stops the fall?"', 'radio "a piece that the rope is clipped to" [checked]', 'textbox "Climber, with all gear"', 'textbox "How far above it"',
    'region "Rope and belay"', 'combobox "How the rope is held"', 'button "To the answer"', 'region "The loads"', 'heading "The loads" [level=2]', /^img "The fall to scale/, /^img "Peak loads/,
    'table "Peak loads, kN"', 'columnheader "On"', 'columnheader "Low"', 'columnheader "Middle"', 'columnheader "High"', 'rowheader "Top piece"',
  ]],
  ['the analysis of breaks', 'breaks/analyse/?v=1&unit=kN&p=11.2~9.2~11.4~11.4~10.8', [
    'main', 'heading "Analyse my breaks" [level=1]', 'region "Your pulls"', 'textbox "One force a line, or a table with a heading"', 'combobox "Numbers without a unit are in"', /^button "Files/, 'button "To the answer"',
    'region "What they say"', 'heading "What they say" [level=2]', 'table', 'group "Use them"', 'heading "Use them" [level=2]', 'note "Warning"', 'note "The maker first"',
  ]],
  ['how many pulls', 'breaks/plan/', [
    'main', 'heading "How many pulls" [level=1]', 'group "What do you want to learn?"', /^radio "A lower bound.*\[checked\]/, 'radio "A difference', 'radio "Which part goes first', 'region "A lower bound"',
    'group "How many pieces above it, and how sure"', 'radio "95 of 100, 95 % sure" [checked]', 'textbox "It may fall short by"', 'region "How much pulls scatter"', 'textbox "Your guess of the standard deviation"', 'button "To the answer"', 'region "The plan"',
  ]],
  ['knots and bearings', 'materials/knots-and-bearings/', [
    'main', 'heading "Why knots and thin bearings weaken a sling" [level=1]', 'img "A sling over a thick bar', 'combobox "Material"', 'combobox "How it is loaded"', 'textbox "Your bearing, mm"', 'button "To the points"', 'status: All published points are shown.',
  ]],
  ['a page to send', 'send/?to=gaps/', [
    'main', 'heading "Send a page" [level=1]', 'textbox "Page of this site": gaps/', 'alert', 'button "Draw the code"', 'region "/gaps/"', 'img "Code to scan', /^link "http:.*\/gaps\/"/, 'button "Copy link"', 'status',
  ]],
];

/** Parts of a page in the order in which a browser tells them, each as its role, name, states and value. */
const toldParts = async (page: Page): Promise<string[]> =>
  (await page.locator('body').ariaSnapshot()).split('\n').map((line) => line.trim().replace(/^- '?/, '').replaceAll("''", "'"));

test.describe('what is told', () => {
  test.skip(({ isMobile }) => isMobile === true, 'the tree is that of the desk; a phone folds the form');
  for (const [name, path, outline] of OUTLINES) {
    test(`${name} tells its parts in order, with roles, names and states`, async ({ page }) => {
      await page.goto(path);
      await expect(async () => {
        const rest = await toldParts(page);
        for (const part of outline) {
          const at = rest.findIndex((told) => (typeof part === 'string' ? told.startsWith(part) : part.test(told)));
          expect(at, `${part} is not told, or not in its place; left are:\n${rest.slice(0, 40).join('\n')}`).toBeGreaterThanOrEqual(0);
          rest.splice(0, at + 1);
        }
      }).toPass({ timeout: 15_000 });
    });
  }
});

/** Pages whose layout differs most: a form with its answer, wide tables, drawings, long words. */
const REFLOWED = [
  '', 'compare/?v=1&rating=12&eye=bare-wire&bearing=4', 'compare/12/bare-wire/hmpe-10/', 'retire/', 'rack/', 'replace/', 'replace/cost/', 'falls/', 'breaks/', 'breaks/jones-water-knot/', 'breaks/analyse/?v=1&unit=kN&p=11.2~9.2~11.4~11.4~10.8',
  'breaks/plan/?v=1&want=bound&pair=own&own=97,5~90&cv=9,3&short=8', 'methods/', 'methods/basket/', 'materials/nylon/', 'materials/knots-and-bearings/', 'figures/', 'figures/nelhams-2010/sewn-knots/', 'figures/ibarra-2021/girth-on-wire/', 'sources/ibarra-2021/',
  'gaps/', 'model/', 'terms/', 'teach/', 'teach/weak-links/', 'teach/falls/answers/', 'data/', 'changes/', 'cite/', 'embed/', 'send/?to=gaps/', 'about/access/', 'caution/',
];

/** Opens every closed part: its text counts too. */
const openAll = (page: Page) => page.evaluate(() => { for (const part of document.querySelectorAll('details')) part.open = true; });

/** Elements with focus that a reader would not see: out of the window, or wholly behind something else. */
async function lostFocus(page: Page, presses: number): Promise<string[]> {
  const lost: string[] = [];
  for (let press = 0; press < presses; press++) {
    await page.keyboard.press('Tab');
    const told = await page.evaluate(() => {
      const focused = document.activeElement;
      if (!focused || focused === document.body) return null;
      const boxes = [...focused.getClientRects()].filter(({ width, height }) => width > 0 && height > 0);
      const isSeen = boxes.some((box) => {
        const x = Math.min(Math.max(box.left + box.width / 2, 0), innerWidth - 1);
        const top = Math.max(box.top, 0);
        const bottom = Math.min(box.bottom, innerHeight);
        if (bottom - top < 1 || box.right <= 0 || box.left >= innerWidth) return false;
        // A label or a drawing may lie over what it names.
        return [0.1, 0.5, 0.9].some((share) => {
          const there = document.elementFromPoint(x, top + (bottom - top) * share);
          return there !== null && (focused.contains(there) || there.contains(focused) || there.closest('label')?.contains(focused) === true);
        });
      });
      return isSeen ? null : `${focused.tagName.toLowerCase()} "${(focused.textContent || focused.getAttribute('aria-label') || (focused as HTMLInputElement).name || '').trim().slice(0, 40)}"`;
    });
    if (told) lost.push(told);
  }
  return lost;
}

test.describe('reflow', () => {
  test.skip(({ isMobile }) => isMobile === true, 'the window is set by the test');
  // 1.4.10: 320 CSS px wide, which is 1280 px at 400 %; then 256 px of height are left of 1024.
  for (const path of REFLOWED) {
    test(`/${path} needs no sideways scrolling at 320 px, and at 400 % zoom the focus stays in view`, async ({ page }) => {
      await page.setViewportSize({ width: 320, height: 256 });
      await page.goto(path);
      await openAll(page);
      // Rows that a script draws once they are open move what stands below them.
      await page.waitForLoadState('networkidle');
      await page.waitForFunction(() => new Promise((done) => {
        const before = document.body.scrollHeight;
        setTimeout(() => done(document.body.scrollHeight === before), 250);
      }));
      expect(await wideElements(page)).toEqual([]);
      await page.evaluate(() => scrollTo(0, 0));
      // 2.4.11: what has the focus is not hidden behind anything.
      expect(await lostFocus(page, 25)).toEqual([]);
    });
  }
});

/** Colours in a picture that stand out from its ground, as a share of all its points. The ground is the commonest colour. */
async function shareThatStandsOut(picture: Buffer): Promise<number> {
  const { data } = await sharp(picture).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const counts = new Map<number, number>();
  for (let at = 0; at < data.length; at += 3) {
    const colour = ((data[at] as number) << 16) | ((data[at + 1] as number) << 8) | (data[at + 2] as number);
    counts.set(colour, (counts.get(colour) ?? 0) + 1);
  }
  // Relative luminance and contrast as WCAG 2 defines them.
  const linear = (value: number): number => (value / 255 <= 0.04045 ? value / 255 / 12.92 : ((value / 255 + 0.055) / 1.055) ** 2.4);
  const luminance = (colour: number): number => 0.2126 * linear(colour >> 16) + 0.7152 * linear((colour >> 8) & 255) + 0.0722 * linear(colour & 255);
  const [ground = 0] = [...counts].sort(([, a], [, b]) => b - a)[0] ?? [];
  const contrast = (colour: number): number => {
    const [low = 0, high = 0] = [luminance(colour), luminance(ground)].sort((a, b) => a - b);
    return (high + 0.05) / (low + 0.05);
  };
  // 1.4.11: what a drawing says needs a contrast of three to its ground.
  const out = [...counts].filter(([colour]) => contrast(colour) >= 3).reduce((sum, [, count]) => sum + count, 0);
  return out / (data.length / 3);
}

const DRAWN = [
  ['a row of the comparison', 'compare/12/bare-wire/hmpe-10/', 'table#comparison .lane'],
  ['the strip of what breaks first', 'compare/12/bare-wire/hmpe-10/', 'table#comparison .strip'],
  ['the drawing of a method', 'methods/basket/', '.drawings img'],
  ['the load path of a method', 'methods/basket/', 'svg.chain'],
  ['the fall to scale', 'falls/', '#fall-root svg[role=img]'],
  ['the points over a bearing', 'materials/knots-and-bearings/', 'main li svg'],
  ['the breaks of a series', 'breaks/jones-water-knot/', 'main svg[role=img]'],
  ['a code to scan', 'send/?to=gaps/', '#code'],
] as const;

test.describe('forced colours', () => {
  test.skip(({ isMobile }) => isMobile === true, 'colours are the same on every screen');
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const [name, path, which] of DRAWN) {
      test(`${name} still shows its marks in forced colours, ${colorScheme}`, async ({ page }) => {
        await page.emulateMedia({ forcedColors: 'active', colorScheme });
        await page.goto(path);
        const drawing = page.locator(which).filter({ visible: true }).first();
        await drawing.scrollIntoViewIfNeeded();
        expect(await shareThatStandsOut(await drawing.screenshot())).toBeGreaterThan(0.004);
      });
    }
  }
});

test.describe('motion', () => {
  test.skip(({ isMobile }) => isMobile === true, 'movement is the same on every screen');
  for (const reducedMotion of ['reduce', 'no-preference'] as const) {
    test(`nothing moves by itself, with motion ${reducedMotion === 'reduce' ? 'reduced' : 'as the device has it; an answer that is worked out may fade'}`, async ({ page }) => {
      await page.emulateMedia({ reducedMotion });
      // One fade of a moment, of opacity alone: nothing changes its place.
      const mayFade = reducedMotion === 'reduce' ? 'none' : '#analysis-root';
      for (const path of ['', 'compare/?v=1&rating=9', 'retire/', 'falls/', 'breaks/analyse/?v=1&unit=kN&p=11.2~9.2~11.4~11.4~10.8']) {
        await page.goto(path);
        await openAll(page);
        const moving = await page.evaluate((fading) => [
          ...document.getAnimations().filter((animation) => !(animation.effect as KeyframeEffect).target?.matches(fading)).map((animation) => `runs: ${(animation as CSSAnimation).animationName ?? 'a transition'}`),
          ...[...document.querySelectorAll('*')].filter((element) => !element.matches(fading)).filter((element) => {
            const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(element);
            return animationName !== 'none' || Number.parseFloat(transitionDuration) > 0 || scrollBehavior === 'smooth';
          }).map((element) => `could move: ${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''}`),
          ...document.querySelectorAll('marquee, blink, video, audio, animate, animateTransform').length > 0 ? ['an element that moves'] : [],
        ], mayFade);
        expect(moving, path).toEqual([]);
      }
    });
  }
});
