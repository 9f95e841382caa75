/**
 * The small script in the head of a comparison page. It runs before anything is shown: where the address names
 * another rig than the one that is built into the page, the built results stay hidden until they match.
 */
import { createHash } from 'node:crypto';
import { minifySync } from 'vite';

/** What the script knows of the page. */
export interface HeadScriptPage {
  /** Folder of the site, with its closing slash. */
  base: string;
  /** Words of the rig that is built in, by key of a link. */
  rig: Record<string, string>;
  /** Words of the example, whose other inputs every prebuilt page shares. */
  example: Record<string, string>;
  /** What is prebuilt. */
  prebuilt: { rating: readonly string[]; eye: readonly string[]; sling: readonly string[] };
  /** Wait for the comparison, ms. */
  patience: number;
}

/** The body of the script. Its own text is sent to the browser, so it uses nothing outside itself and plain old syntax. */
function readLink(page: HeadScriptPage): void {
  const root = document.documentElement;
  const query = new URLSearchParams(location.search);
  const said: string[] = [];
  const asked: Record<string, string> = {};
  let isOther = false;
  for (const key in page.rig) {
    const all = query.getAll(key);
    const built = page.rig[key] as string;
    asked[key] = all.length > 0 ? all.join(' / ').trim() : built;
    said.push(`${key} ${asked[key]}`);
    if (asked[key] !== built) isOther = true;
  }
  const fill = (id: string, text: string) => {
    const place = document.getElementById(id);
    if (place) place.textContent = text;
    return place;
  };
  const fail = () => {
    root.classList.add('unread');
    if (!isOther) return;
    const rating = String(Number((asked['rating'] as string).replace(',', '.')));
    const has = (list: readonly string[], word: string) => list.indexOf(word) >= 0;
    let isBuilt = has(page.prebuilt.rating, rating) && has(page.prebuilt.eye, asked['eye'] as string) && has(page.prebuilt.sling, asked['sling'] as string);
    for (const key in page.example) {
      if (key !== 'rating' && key !== 'eye' && key !== 'sling' && asked[key] !== page.example[key]) isBuilt = false;
    }
    const path = `compare/${rating}/${asked['eye']}/${asked['sling']}/`;
    const link = fill('unread-page', isBuilt ? `A page is built for exactly this rig: ${path}` : 'No page is built for exactly this rig. The table below leads to the pages that are.');
    if (isBuilt && link) link.setAttribute('href', page.base + path);
  };
  if (isOther) root.classList.add('reading');
  // The page is read before its modules run, however late these are; a window's own event for that would wait for them.
  document.addEventListener('readystatechange', () => {
    fill('reading-rig', said.join(', '));
    if (root.classList.contains('unread')) fail();
  });
  // A module that does not arrive tells its element, not the window: listen on the way down.
  addEventListener('error', (event) => {
    if (event.target instanceof HTMLScriptElement) fail();
  }, true);
  addEventListener('comparison-failed', fail);
  const wait = setTimeout(fail, page.patience);
  addEventListener('comparison-shown', () => {
    isOther = false;
    clearTimeout(wait);
  });
}

/** Text of the script for a page, in short, and its hash as a content policy names it. */
export function headScript(page: HeadScriptPage): { text: string; hash: `sha256-${string}` } {
  const text = minifySync('head-script.js', `(${readLink.toString()})(${JSON.stringify(page)})`).code.replaceAll('</', '<\\/');
  return { text, hash: `sha256-${createHash('sha256').update(text, 'utf8').digest('base64')}` };
}
