/** Nothing on a page is fetched from another origin: no script, style, picture, font, frame or beacon. */
import { type Fault, type Gate, type Page, resolveAddress, selectorOf, type Site } from './site.ts';

/** Relations of `<link>` that fetch nothing. */
const INERT = new Set(['canonical', 'alternate', 'author', 'license', 'me', 'next', 'prev', 'help', 'search', 'cite-as', 'describedby', 'item', 'type']);
const FETCHING = ['src', 'poster', 'data', 'background', 'ping', 'formaction', 'manifest', 'component-url', 'renderer-url', 'before-hydration-url'];

export const thirdParty: Gate = {
  name: 'third party',
  holds: 'no page fetches anything from another origin, sets a cookie or brings a font',
  check: (site) => [...site.pages.flatMap((page) => checkPage(site, page)), ...checkFiles(site)],
};

function checkPage(site: Site, page: Page): Fault[] {
  const faults: Fault[] = [];
  const refuse = (address: string, what: string) => {
    const target = resolveAddress(site, page, address);
    if (target?.inside || address.startsWith('data:')) return;
    faults.push({ page: page.path, message: `${what} fetches ${address}. Keep a copy in the site, or link to it.` });
  };
  for (const attribute of FETCHING) {
    for (const element of page.document.querySelectorAll(`[${attribute}]`)) {
      refuse(element.getAttribute(attribute) ?? '', `${attribute} of ${selectorOf(element)}`);
    }
  }
  for (const element of page.document.querySelectorAll('[srcset]')) {
    for (const piece of (element.getAttribute('srcset') ?? '').split(',')) refuse(piece.trim().split(/\s+/)[0] ?? '', `srcset of ${selectorOf(element)}`);
  }
  for (const element of page.document.querySelectorAll('link[href]')) {
    const relations = (element.getAttribute('rel') ?? '').toLowerCase().split(/\s+/);
    if (!relations.every((relation) => INERT.has(relation))) refuse(element.getAttribute('href') ?? '', `link rel="${relations.join(' ')}"`);
  }
  for (const element of page.document.querySelectorAll('form[action]')) refuse(element.getAttribute('action') ?? '', 'form');
  for (const element of page.document.querySelectorAll('use, image')) {
    const address = element.getAttribute('href') ?? element.getAttribute('xlink:href');
    if (address) refuse(address, selectorOf(element));
  }
  for (const element of page.document.querySelectorAll('style')) {
    for (const fault of styleFaults(element.textContent)) faults.push({ page: page.path, message: fault });
  }
  return faults;
}

/** What a stylesheet may not do. */
function styleFaults(css: string): string[] {
  const faults: string[] = [];
  for (const [, address = ''] of css.matchAll(/(?:url\(\s*|@import\s+)["']?([^"')\s;]+)/g)) {
    if (/^(?:[a-z][a-z0-9+.-]*:)?\/\//i.test(address)) faults.push(`a style fetches ${address}. Keep a copy in the site.`);
  }
  if (/@font-face/.test(css)) faults.push('a style brings a font. Use the fonts of the reader\'s device.');
  return faults;
}

function checkFiles(site: Site): Fault[] {
  const faults: Fault[] = [];
  for (const path of site.files) {
    if (/\.(?:woff2?|ttf|otf|eot)$/i.test(path)) faults.push({ page: path, message: 'is a font. The budget for fonts is none.' });
    if (path.endsWith('.css')) faults.push(...styleFaults(site.read(path).toString('utf8')).map((message) => ({ page: path, message })));
    if (/\.m?js$/.test(path)) {
      const code = site.read(path).toString('utf8');
      if (/document\.cookie/.test(code)) faults.push({ page: path, message: 'touches cookies. The site keeps none.' });
      if (/sendBeacon/.test(code)) faults.push({ page: path, message: 'sends a beacon. The site reports nothing.' });
    }
  }
  return faults;
}
