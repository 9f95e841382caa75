/** Which files a reader keeps, found in a site that is made up for the test; hashes of its texts by a shell tool (sha256sum). */
import { describe, expect, test } from 'vitest';
import { type BuiltSite, keptSet, pathsOfSet, workerText } from '../../../src/build/steps/offline-set.ts';

const page = (body = '', head = ''): string => `<html><head>${head}</head><body>${body}</body></html>`;
const site = (texts: Readonly<Record<string, string>>): BuiltSite => ({ paths: new Set(Object.keys(texts)), read: (path) => new TextEncoder().encode(texts[path]) });
const ROOMS = Object.fromEntries(['/', '/compare/', '/methods/', '/retire/', '/rack/', '/replace/', '/falls/', '/terms/', '/send/', '/caution/', '/offline/', '/offline/not-kept/'].map((path) => [path, page()]));

describe('the paths of the set', () => {
  const texts = {
    ...ROOMS,
    '/compare/': page('<script type="module" src="/base/_astro/start.js"></script><a href="/base/about/">x</a>', '<link rel="prefetch" crossorigin="anonymous" href="/base/compare/evidence-2026-11-25.4.0123456789ab.json"><link rel="canonical" href="/base/seldom.json">'),
    '/methods/basket/': page('<img src="/base/drawings/basket.svg" alt="x" loading="lazy"><a href="/base/data/figures.csv">x</a>', '<link rel="icon" href="/base/favicon.svg">'),
    '/methods/basket/more/': page(),
    '/replace/form/': page('<section id="from-rack" data-rules="/base/rack/rules-0123456789ab.json"></section>'),
    '/compare/12/bare-wire/hmpe-8/': page(), '/about/': page(), '/terms/bartack/': page(), '/embed/chain/basket/': page(),
    '/_astro/start.js': 'import"./shared.js";const later=()=>import(`./later.js`);new Worker("/base/_astro/breaks-worker-x.js")',
    '/_astro/shared.js': '', '/_astro/later.js': 'import"./start.js"', '/_astro/breaks-worker-x.js': '', '/_astro/of-other-pages.js': '',
    '/compare/evidence-2026-11-25.4.0123456789ab.json': '{}', '/compare/then-2026-11-25.1.0123456789ab.json': '{}', '/rack/example.json': '{}', '/rack/rules-0123456789ab.json': '{}',
    '/drawings/basket.svg': '', '/drawings/other.svg': '', '/favicon.svg': '', '/seldom.json': '', '/data/figures.csv': '',
  };

  test('are its pages and all that they fetch, on demand too, and nothing that they only lead to', () => {
    expect(pathsOfSet(site(texts), '/base/').filter((path) => !(path in ROOMS))).toEqual([
      '/_astro/breaks-worker-x.js', '/_astro/later.js', '/_astro/shared.js', '/_astro/start.js',
      '/compare/evidence-2026-11-25.4.0123456789ab.json', '/compare/then-2026-11-25.1.0123456789ab.json',
      '/drawings/basket.svg', '/favicon.svg', '/methods/basket/', '/rack/example.json', '/rack/rules-0123456789ab.json', '/replace/form/',
    ]);
  });

  test('have their content hash; evidence and slings are read from names of files', () => {
    const set = keptSet(site(texts), '/base/');
    // printf '{}' | sha256sum; printf '' | sha256sum
    expect(set.files['/rack/example.json']).toBe('44136fa355b3');
    expect(set.files['/favicon.svg']).toBe('e3b0c44298fc');
    expect([set.evidence, set.slings]).toEqual(['2026-11-25.4', ['hmpe-8']]);
  });

  test('make another build once one of them changes, and the same once it is back', () => {
    const build = (change: Record<string, string>) => keptSet(site({ ...texts, ...change }), '/base/').build;
    expect(build({ '/caution/': page('renewed') })).not.toBe(build({}));
    expect(build({ '/about/': page('renewed') })).toBe(build({}));
  });
});

test('a site without a page that readers are told of is no site to keep', () => {
  const { '/caution/': _, ...rest } = ROOMS;
  expect(() => keptSet(site(rest), '/')).toThrow('site: /caution/ was not built');
  expect(() => keptSet(site(ROOMS), '/')).toThrow('site: no evidence was built');
});

test('the list stands in front of the worker once, however often it is written; none ends the worker', () => {
  const set = { build: 'b', evidence: 'e', slings: [], files: {} };
  const once = workerText(set, 'serve();\n');
  expect(once).toBe('const KEPT_SET = {"build":"b","evidence":"e","slings":[],"files":{}};\nserve();\n');
  expect(workerText({ ...set, build: 'c' }, once)).toBe(once.replace('"b"', '"c"'));
  expect(workerText(null, once)).toBe('const KEPT_SET = null;\nserve();\n');
});
