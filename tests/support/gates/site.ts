/** The built site as the gates see it: every page parsed, every file known. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { type HTMLElement, parse } from 'node-html-parser';

/** One built HTML page. */
export interface Page {
  /** Address under the base path: `/`, `/compare/`, `/404.html`. */
  path: string;
  html: string;
  document: HTMLElement;
  ids: ReadonlySet<string>;
}

/** A built site in a folder. */
export interface Site {
  directory: string;
  /** Path that the site lives under, with a slash at both ends. */
  base: string;
  /** Origin and base under which the site is published, as its pages name it. */
  pages: readonly Page[];
  /** Addresses of all files, under the base path: `/_astro/a.js`. */
  files: ReadonlySet<string>;
  /** Page at an address under the base path, if there is one. */
  page(path: string): Page | undefined;
  /** Bytes of a file, by its address under the base path. */
  read(path: string): Buffer;
}

/** What is wrong, and on which page. The message tells what to do about it. */
export interface Fault {
  page: string;
  message: string;
}

/** One requirement on all built pages. */
export interface Gate {
  name: string;
  /** What holds when the gate is passed. */
  holds: string;
  check(site: Site): Fault[] | Promise<Fault[]>;
  /** What is worth saying of the site even where nothing is wrong, a line each. */
  says?(site: Site): string[];
}

/** Parses one page. Text of `<pre>` is parsed like any other; comments are no text. */
export function parsePage(path: string, html: string): Page {
  const document = parse(html, { comment: false, blockTextElements: { script: true, style: true } });
  const ids = new Set(document.querySelectorAll('[id]').map((element) => element.getAttribute('id') ?? ''));
  return { path, html, document, ids };
}

/** Reads every file under `directory`. Throws when there is no page: an empty site passes nothing. */
export function readSite(directory: string, base = '/'): Site {
  const files = new Map<string, string>();
  for (const entry of readdirSync(directory, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const file = join(entry.parentPath, entry.name);
    files.set(`/${relative(directory, file).split(sep).join('/')}`, file);
  }
  const pages = [...files]
    .filter(([address]) => address.endsWith('.html'))
    .map(([address, file]) => parsePage(address.replace(/\/index\.html$/, '/'), readFileSync(file, 'utf8')))
    .sort((a, b) => (a.path < b.path ? -1 : 1));
  if (pages.length === 0) throw new Error(`${directory} holds no built page. Run \`npm run build\` first.`);
  return siteOf(directory, base, pages, new Set(files.keys()), (path) => {
    const file = files.get(path);
    if (file === undefined) throw new RangeError(`path: no built file ${path}`);
    return readFileSync(file);
  });
}

/** A site from pages in memory, for the tests of the gates. Other files are given as address and text. */
export function siteOfTexts(texts: Readonly<Record<string, string>>, base = '/'): Site {
  const pages = Object.entries(texts)
    .filter(([path]) => path.endsWith('/') || path.endsWith('.html'))
    .map(([path, html]) => parsePage(path, html));
  const files = new Set(Object.keys(texts).map((path) => (path.endsWith('/') ? `${path}index.html` : path)));
  return siteOf('', base, pages, files, (path) => Buffer.from(texts[path] ?? ''));
}

function siteOf(directory: string, base: string, pages: readonly Page[], files: ReadonlySet<string>, read: Site['read']): Site {
  const byPath = new Map(pages.map((page) => [page.path, page]));
  return { directory, base, pages, files, page: (path) => byPath.get(path), read };
}

/** An address on a page, resolved: where it leads inside the site, or that it leads out of it. */
export type Target = { inside: true; path: string; fragment: string } | { inside: false; url: string };

/** Any origin will do: it only tells inside from outside. */
const ORIGIN = 'https://site.invalid';

/** Resolves an `href` or `src` as a browser on that page would; null when it is no address at all. */
export function resolveAddress(site: Site, page: Page, address: string): Target | null {
  const here = ORIGIN + site.base.replace(/\/$/, '') + page.path;
  if (!URL.canParse(address, here)) return null;
  const url = new URL(address, here);
  if (url.origin !== ORIGIN) return { inside: false, url: url.href };
  const inBase = url.pathname.startsWith(site.base) || `${url.pathname}/` === site.base;
  // A path of this origin but outside the base path is a broken address: it is kept with a mark that no file matches.
  const path = inBase ? `/${url.pathname.slice(site.base.length)}` : `(outside ${site.base})${url.pathname}`;
  return { inside: true, path: decodeURIComponent(path), fragment: decodeURIComponent(url.hash.slice(1)) };
}

/** Where an element stands, in words that find it in the source: `main > section#rows > p.note:nth-of-type(2)`. */
export function selectorOf(element: HTMLElement): string {
  const parts: string[] = [];
  for (let at: HTMLElement | null = element; at?.rawTagName; at = at.parentNode as HTMLElement | null) {
    const tag = at.rawTagName.toLowerCase();
    if (tag === 'html' || tag === 'body') break;
    const id = at.getAttribute('id');
    if (id) {
      parts.unshift(`${tag}#${id}`);
      break;
    }
    const first = at.getAttribute('class')?.split(/\s+/)[0];
    const twins = (at.parentNode?.childNodes ?? []).filter((node) => 'rawTagName' in node && node.rawTagName === at?.rawTagName);
    const place = twins.length > 1 ? `:nth-of-type(${twins.indexOf(at) + 1})` : '';
    parts.unshift(`${tag}${first ? `.${first}` : ''}${place}`);
  }
  return parts.join(' > ');
}

/** A text cut to a length that fits on a line, with spaces joined. */
export function brief(text: string, most = 90): string {
  const joined = text.replace(/\s+/g, ' ').trim();
  return joined.length > most ? `${joined.slice(0, most - 3)}...` : joined;
}
