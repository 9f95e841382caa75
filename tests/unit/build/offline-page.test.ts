/** A built page made to stand by itself: every link leads on or out, and nothing is asked for. */
import { describe, expect, test } from 'vitest';
import { fileSize } from '../../../src/build/file-size.ts';
import { type Kit, offlinePage } from '../../../src/build/kit/offline-page.ts';

const kit: Kit = {
  places: new Map([['/teach/kit/', 'index.html'], ['/teach/falls/', 'lessons/falls.html'], ['/teach/falls/answers/', 'answers/falls.html'], ['/drawings/basket/right.png', 'drawings/basket/right.png']]),
  base: '/slings', address: (path) => `https://example.org/slings${path}`, version: '2026-11-25.4',
};
const built = (main: string, head = ''): string => `<!DOCTYPE html><html lang="en" class="wide"><head><title>Falls - Second Sling</title>${head}<style>p{margin:0}</style><link rel="icon" href="/slings/favicon.svg"></head><body><header><a href="/slings/">Second Sling</a></header><main id="main">${main}</main><footer></footer></body></html>`;
const page = (main: string, head?: string): string => offlinePage(built(main, head), '/teach/falls/', 'lessons/falls.html', kit);
const linkTo = (link: string): string | undefined => /<main[^>]*><a href="([^"]*)"/.exec(page(`<a href="${link}">x</a>`))?.[1];

test.each([
  ['another page of the kit', '/slings/teach/falls/answers/', '../answers/falls.html'],
  ['a place on such a page', '/slings/teach/falls/answers/#key', '../answers/falls.html#key'],
  ['the first page', '/slings/teach/kit/#plans', '../index.html#plans'],
  ['the page itself', '/slings/teach/falls/', 'falls.html'],
  ['a file of the kit', '/slings/drawings/basket/right.png', '../drawings/basket/right.png'],
  ['a page of the site', '/slings/figures/dav-2015/half-below/#cell', 'https://example.org/slings/figures/dav-2015/half-below/#cell'],
  ['a page with a query', '/slings/compare/?v=1', 'https://example.org/slings/compare/?v=1'],
  ['a place on this page', '#key', '#key'],
  ['another site', 'https://example.com/', 'https://example.com/'],
])('a link to %s leads there', (_, link, there) => {
  expect(linkTo(link)).toBe(there);
});

describe('a page', () => {
  test('brings its title, style, language and the maker first; scripts and what is for the site alone stay behind', () => {
    const html = page('<h1>Falls</h1><section data-online><p>download</p></section><p data-online>all</p>', '<script>alert(1)</script>');
    expect(html).toMatch(/<html lang="en" class="wide"><head>.*<title>Falls - Second Sling<\/title>/s);
    expect(html).toContain('p{margin:0}');
    expect(html).toContain("The maker's instruction and a professional replacement come first.");
    expect(html).not.toMatch(/<script|favicon|download|>all</);
  });

  test('shows a drawing as SVG inside it, with its words', () => {
    expect(page('<img src="/slings/drawings/basket/right.svg" alt="x" loading="lazy">')).toMatch(/<svg class="d"[^>]*role="img" aria-label="[^"]{20,}"/);
  });

  test.each([
    ['a picture that is no drawing', '<img src="/slings/picture.png" alt="">', 'would ask for a file'],
    ['a drawing that nobody drew', '<img src="/slings/drawings/basket/left.svg" alt="">', 'drawings/basket/left.svg'],
    ['a style that fetches', '<p>x</p><style>p{background:url(/a.png)}</style>', 'would ask for a file'],
    ['a frame', '<iframe src="/slings/embed/"></iframe>', 'would ask for a file'],
  ])('with %s is refused', (_, main, message) => {
    expect(() => page(main)).toThrow(message);
  });

  test('without a main region is refused', () => {
    expect(() => offlinePage('<html><title>x</title></html>', '/x/', 'x.html', kit)).toThrow('html: has no main region');
  });
});

test.each([[1, '1 kB'], [999_499, '999 kB'], [999_500, '1.0 MB'], [2_706_424, '2.7 MB']])('%i bytes are %s', (bytes, words) => {
  expect(fileSize(bytes)).toBe(words);
});

test('a size is a whole number above 0', () => {
  for (const bytes of [0, -1, 1.5, Number.NaN]) expect(() => fileSize(bytes)).toThrow('bytes: must be a whole number above 0');
});
