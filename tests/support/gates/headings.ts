/** Each page has one first heading, no skipped level, a title and a description of its own, and a language. */
import { brief, type Fault, type Gate, type Page } from './site.ts';

export const headings: Gate = {
  name: 'headings',
  holds: 'one first heading, levels in order, title and description present and unique',
  check(site) {
    const pages = site.pages.filter((page) => !page.document.querySelector('meta[http-equiv="refresh"]'));
    return [...pages.flatMap(checkPage), ...twins(pages, 'title', titleOf), ...twins(pages, 'description', descriptionOf)];
  },
};

const titleOf = (page: Page) => page.document.querySelector('head > title')?.textContent.trim() ?? '';
const descriptionOf = (page: Page) => page.document.querySelector('meta[name="description"]')?.getAttribute('content')?.trim() ?? '';

function checkPage(page: Page): Fault[] {
  const faults: string[] = [];
  if (titleOf(page) === '') faults.push('has no title.');
  if (descriptionOf(page) === '') faults.push('has no description. Say in a sentence what a reader finds here.');
  if (!page.document.querySelector('html[lang]')) faults.push('does not say its language.');
  const found = page.document.querySelectorAll('h1, h2, h3, h4, h5, h6').map((element) => ({
    level: Number(element.rawTagName.slice(1)),
    text: brief(element.textContent, 50),
  }));
  const firsts = found.filter(({ level }) => level === 1);
  if (firsts.length !== 1) faults.push(`has ${firsts.length} first-level headings; a page has one.`);
  let previous = 0;
  for (const { level, text } of found) {
    if (text === '') faults.push(`has an empty heading of level ${level}.`);
    if (level > previous + 1) faults.push(`heading "${text}" is level ${level} after level ${previous}: one was skipped.`);
    previous = level;
  }
  return faults.map((message) => ({ page: page.path, message }));
}

/** Pages that share what should tell them apart. */
function twins(pages: readonly Page[], what: string, read: (page: Page) => string): Fault[] {
  const seen = new Map<string, string>();
  const faults: Fault[] = [];
  for (const page of pages) {
    const text = read(page);
    const other = seen.get(text);
    if (text !== '' && other !== undefined) faults.push({ page: page.path, message: `has the same ${what} as ${other}: "${brief(text)}".` });
    else seen.set(text, page.path);
  }
  return faults;
}
