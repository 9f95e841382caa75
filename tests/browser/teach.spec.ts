/** Lessons: from home to a handout, variants and answers; paper of both sizes, without script, and what programs read. */
import { type Lesson, readLessons } from '../../src/records/lessons.ts';
import { readFiles } from '../../src/records/files.ts';
import { expect, test, wideElements } from '../support/browser.ts';
import { ROOT } from '../support/step.ts';

const lessons: Lesson[] = [...readLessons(readFiles(ROOT)).lessons.values()];

test('from home a teacher comes to a lesson with its time, and to its handout, variants and answers', async ({ page }) => {
  await page.goto('');
  await page.getByRole('main').getByRole('link', { name: /^I teach/ }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Teach');
  await page.getByRole('link', { name: 'Chains and weak links', exact: true }).click();
  await expect(page.getByRole('main').locator('time').first()).toHaveText('35 min');
  const handout = page.getByRole('link', { name: 'Handout to print' });
  await expect(handout).toBeInViewport();
  await handout.click();
  await expect(page.locator('article.handout')).toContainText('The club and what it measures or guesses are invented');
  await page.getByRole('link', { name: 'Answers' }).click();
  await page.getByRole('link', { name: 'The variants' }).click();
  await expect(page.locator('table.key tbody tr')).toHaveCount(30);
  await expect(page.getByRole('main')).toContainText('They are no secret.');
});

test('the list goes by level and then by time', async ({ page }) => {
  await page.goto('teach/');
  await expect(page.getByRole('heading', { level: 2 }).filter({ hasText: /^(?:Start|Further|Deep)$/ })).toHaveText(['Start', 'Further', 'Deep']);
  for (const table of await page.locator('main section table').all()) {
    const minutes = (await table.locator('time').allTextContents()).map((text) => Number.parseInt(text, 10));
    expect(minutes.length).toBeGreaterThan(0);
    expect(minutes).toEqual(minutes.toSorted((a, b) => a - b));
  }
  await expect(page.locator('main section table tbody tr')).toHaveCount(lessons.length);
});

test('every handout prints on exactly the pages that its lesson says, on A4 and on Letter', async ({ page }, info) => {
  test.skip(info.project.name === 'phone', 'paper is the same whatever the screen');
  for (const { id, handoutPages } of lessons) {
    await page.goto(`teach/${id}/handout/`);
    await expect.poll(() => page.evaluate(() => [...document.images].every(({ complete, naturalWidth }) => complete && naturalWidth > 0)), id).toBe(true);
    await page.emulateMedia({ media: 'print' });
    await expect(page.locator('.not-printed')).toBeHidden();
    for (const format of ['A4', 'Letter'] as const) {
      const pages = ((await page.pdf({ format })).toString('latin1').match(/\/Type \/Page\b/g) ?? []).length;
      expect(pages, `${id} on ${format}`).toBe(handoutPages);
    }
    await page.emulateMedia({ media: null });
  }
});

test('a lesson lists its drawings for slides, as SVG and as a PNG of a screen\'s shape, with words for those who cannot see them and a line of credit', async ({ page }) => {
  const { id, drawings } = lessons.find((one) => one.id === 'knots-and-bends') as Lesson;
  await page.goto(`teach/${id}/`);
  await expect(page.locator('table.slides tbody tr')).toHaveCount(drawings.length);
  for (const row of await page.locator('table.slides tbody tr').all()) {
    expect(((await row.locator('td').last().textContent()) ?? '').length).toBeGreaterThan(40);
    await expect(row.locator('td').first()).toHaveText(/SVG \d+ kB, PNG \d+ kB/);
  }
  await expect(page.locator('.credit')).toHaveText(new RegExp(`^Second Sling, CC BY 4.0, .*/teach/${id}/$`));
  const size = await page.evaluate(async (address) => {
    const picture = new Image();
    picture.src = address;
    await picture.decode();
    return [picture.naturalWidth, picture.naturalHeight];
  }, (await page.getByRole('link', { name: 'Girth hitch, wrong: PNG' }).getAttribute('href')) ?? '');
  expect(size).toEqual([1920, 1080]);
});

test('from the list of lessons a teacher comes to the course kit, and every plan on it takes the sum of its lessons', async ({ page }) => {
  await page.goto('teach/');
  await page.getByRole('link', { name: 'The course kit' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Course kit');
  const plans = page.locator('section:has(> ol.plan)');
  expect(await plans.count()).toBeGreaterThan(2);
  for (const plan of await plans.all()) {
    const minutes = await plan.locator('ol.plan li span time').allTextContents();
    const sum = minutes.reduce((all, text) => all + Number.parseInt(text, 10), 0);
    await expect(plan.locator('h3 time')).toHaveText(`${sum} min`);
  }
  await expect(page.getByRole('link', { name: 'The course kit as an archive' })).toHaveAttribute('href', /second-sling-course-kit\.zip$/);
});

test('thirty variants stand on the page, and their answers on another, with numbers that differ in each column', async ({ page }) => {
  for (const [part, rows] of [['variants', 30], ['answers', 31]] as const) {
    await page.goto(`teach/falls/${part}/`);
    const cells = await page.locator('table.key tbody tr').evaluateAll((all) => all.map((row) => [...row.children].map(({ textContent }) => textContent ?? '')));
    expect(cells).toHaveLength(rows);
    for (const [i] of (cells[0] ?? []).entries()) expect(new Set(cells.map((row) => row[i])).size).toBe(rows);
  }
});

test('nothing sticks out sideways, and a lesson needs no script', async ({ browser, baseURL }) => {
  const context = await browser.newContext({ javaScriptEnabled: false, viewport: { width: 360, height: 740 } });
  const page = await context.newPage();
  await page.goto(`${baseURL}teach/minimum-mean-and-bounds/`);
  await expect(page.locator('.plan li')).not.toHaveCount(0);
  await page.getByText('Cite this lesson').click();
  await expect(page.locator('details.cite blockquote').first()).toBeVisible();
  await context.close();
});

for (const part of ['', 'kit/', 'minimum-mean-and-bounds/', 'repair-law-and-risk/handout/', 'knots-and-bends/variants/', 'weak-links/answers/']) {
  test(`teach/${part} fits its window`, async ({ page }) => {
    await page.goto(`teach/${part}`);
    expect(await wideElements(page)).toEqual([]);
  });
}

test('a lesson says to programs what it is, how long it takes, and who made it', async ({ page }) => {
  await page.goto('teach/falls/');
  const data = JSON.parse((await page.locator('script[type="application/ld+json"]').textContent()) ?? '{}');
  expect(data).toMatchObject({ '@type': 'LearningResource', name: 'Falls', timeRequired: 'PT45M', educationalLevel: 'Deep' });
  await expect(page.locator('meta[name=citation_title]')).toHaveAttribute('content', 'Falls');
  await expect(page.locator('link[rel=type]')).toHaveAttribute('href', 'https://schema.org/LearningResource');
});
