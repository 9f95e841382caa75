/**
 * A built page as one that stands by itself: opened from a folder it asks for nothing. Its style stands inside it, its
 * drawings as SVG; links to other pages of the kit are relative, all others lead to the site. It is made from the page
 * alone, so that no text is written twice.
 */
import { createHash } from 'node:crypto';
import { posix } from 'node:path';
import { drawingsOf, pathOfDrawing } from '../../drawings/drawings.ts';
import { PAGE_STYLE } from '../../drawings/style.ts';
import { inlineSvg } from '../../drawings/svg.ts';
import { MAKER_FIRST } from '../downloads/readme.ts';

/** What all pages of a kit share. */
export interface Kit {
  /** Path in the kit by a path of the site: `/teach/falls/` is `lessons/falls.html`. */
  places: ReadonlyMap<string, string>;
  /** Folder that the site is served from, without a closing slash; empty for the top. */
  base: string;
  /** Full address of a path of the site. */
  address(path: string): string;
  /** Version of the evidence. */
  version: string;
}

/** Beyond the style of the page: that of the drawings inside it. On paper a lesson goes without the address of each link, since all of them lead out. */
const OWN_STYLE = `${PAGE_STYLE}\n@media print{main a[href^="http"]::after{content:none}}`;

/** A part of a page. @throws RangeError where the page has none */
function partOf(html: string, pattern: RegExp, name: string): string {
  const found = pattern.exec(html);
  if (!found) throw new RangeError(`html: has no ${name}`);
  return found[1] ?? found[0];
}

/** Pictures of drawings as the drawings themselves. @throws RangeError where a picture is none of them */
function withDrawings(main: string): string {
  return main.replace(/<img\b[^>]*\bsrc="[^"]*?\/(drawings\/([^/"]+)\/[^"]+)"[^>]*>/g, (_, path: string, method: string) => {
    const drawing = drawingsOf(method).find((one) => pathOfDrawing(one) === path);
    if (!drawing) throw new RangeError(`html: shows ${path}, which is no drawing of a method`);
    return inlineSvg(drawing.scene, drawing.alt);
  });
}

/** Where a link leads from a page of the kit. */
function linkFrom(from: string, link: string, { places, base, address }: Kit): string {
  if (!link.startsWith('/')) return link;
  const [, path = '', rest = ''] = /^([^?#]*)(.*)$/.exec(link.slice(base.length)) ?? [];
  const place = places.get(path);
  return place === undefined ? `${address(path)}${rest}` : `${posix.relative(posix.dirname(from), place)}${rest}`;
}

/**
 * The page.
 * @param html the built page
 * @param path its path on the site
 * @param from its path in the kit
 * @throws RangeError where the page lacks a part, or would ask for a file
 */
export function offlinePage(html: string, path: string, from: string, kit: Kit): string {
  const open = partOf(html, /<html[^>]*>/, 'html element');
  const title = partOf(html, /<title>([^<]*)<\/title>/, 'title');
  const style = `${[...html.matchAll(/<style[^>]*>([\s\S]*?)<\/style>/g)].map(([, text]) => text).join('\n')}\n${OWN_STYLE}`;
  const main = withDrawings(partOf(html, /<main[\s\S]*<\/main>/, 'main region'))
    .replace(/<(section|p) data-online[^>]*>[\s\S]*?<\/\1>/g, '')
    .replace(/<script\b[\s\S]*?<\/script>/g, '')
    .replace(/\bhref="([^"]*)"/g, (_, link: string) => `href="${linkFrom(from, link, kit)}"`);
  const asks = /<(?!a\b)[a-z]+\b[^>]*\s(?:src|srcset|href|data|action)="(?!#)[^"]*"|url\((?!#)|@import/.exec(`${main}${style}`);
  if (asks) throw new RangeError(`html: ${path} would ask for a file (${asks[0].slice(0, 80)})`);
  const policy = `default-src 'none'; style-src 'sha256-${createHash('sha256').update(style, 'utf8').digest('base64')}'; base-uri 'none'; form-action 'none'`;
  const home = posix.relative(posix.dirname(from), 'index.html');
  return `<!doctype html>
${open}<head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${title}</title><meta name="color-scheme" content="light dark"><meta http-equiv="content-security-policy" content="${policy}"><style>${style}</style></head>
<body><a class="skip" href="#main">Skip to the text</a>
<header class="head"><a class="mark" href="${home}">Second Sling: course kit</a></header>
${main}
<footer class="foot"><p>${MAKER_FIRST} Local law decides.</p><p>Evidence ${kit.version}. Text and data <a href="https://creativecommons.org/licenses/by/4.0/" rel="license">CC BY</a>, code MIT. <a href="${kit.address(path)}">This page on the site</a>, where it may be newer.</p></footer>
</body></html>
`;
}
