/**
 * What the worker answers, and what stands in where the network does not. The tables are decisions of DESIGN ("Links that last",
 * "Budgets"); odd addresses are drawn at random. The set is made up.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseLink } from '../../../src/links/parse-link.ts';
import { parsePath, PREBUILT_EYES, PREBUILT_RATINGS_KN, queryOfPrebuilt } from '../../../src/links/prebuilt-path.ts';
import { isKeptOnVisit, isWorthTheWait, REST_MS, type Route, routeOf, standIns } from '../../../src/offline/routing.ts';
import type { KeptSet } from '../../../src/offline/kept-set.ts';

const SLINGS = ['hmpe-8', 'nylon-16'];
const files = ['/', '/compare/', '/methods/', '/methods/basket/', '/terms/', '/offline/', '/offline/not-kept/', '/favicon.svg', '/rack/example.json', '/_astro/a.js', '/compare/evidence-2026-11-25.4.6810e83b9944.json'];
const SET: KeptSet = { build: 'b', evidence: '2026-11-25.4', slings: SLINGS, files: Object.fromEntries(files.map((path) => [path, 'h'])) };
const ORIGIN = 'https://site.example';

const route = (url: string, change: Partial<Parameters<typeof routeOf>[0]> = {}, base = '/'): string => {
  const decided: Route = routeOf({ method: 'GET', url, isPage: true, isPart: false, ...change }, { origin: ORIGIN, base }, SET);
  return 'path' in decided ? `${decided.is} ${decided.path}` : decided.is;
};
const file = { isPage: false };

describe('which requests the worker answers', () => {
  test.each([
    ['/', 'page /'],
    ['/compare/?v=1&rating=9', 'page /compare/'],
    ['/compare/12/bare-wire/hmpe-8/', 'page /compare/12/bare-wire/hmpe-8/'],
    // Spellings of one address that hosts answer alike.
    ['/methods/basket', 'page /methods/basket/'],
    ['/methods/basket/index.html', 'page /methods/basket/'],
    ['/m%65thods/basket/', 'page /methods/basket/'],
    ['/figures/ibarra-2021/girth-on-wire/#x', 'page /figures/ibarra-2021/girth-on-wire/'],
    // A download or a picture that the browser goes to is no page.
    ['/data/figures.csv', 'leave'],
    ['/compare/12/bare-wire/hmpe-8/picture.png', 'leave'],
    ['/rack/example.json', 'file /rack/example.json'],
    // What others show in frames stays today's.
    ['/embed/compare/12/bare-wire/hmpe-8/', 'leave'],
    ['/offline-worker.js', 'leave'],
    ['/%E0%A4%A', 'leave'],
    ['//', 'page //'],
  ])('a page: %s', (path, decided) => {
    expect(route(ORIGIN + path)).toBe(decided);
  });

  test.each([
    ['/_astro/new-in-another-build.js', 'hashed /_astro/new-in-another-build.js'],
    ['/compare/evidence-2027-01-02.1.0123456789ab.json', 'hashed /compare/evidence-2027-01-02.1.0123456789ab.json'],
    ['/compare/then-2026-11-25.1.24414708bf52.json', 'hashed /compare/then-2026-11-25.1.24414708bf52.json'],
    ['/rack/rules-df2aed5802f5.json', 'hashed /rack/rules-df2aed5802f5.json'],
    ['/search/index-pages-4bb0db5d710f.json', 'hashed /search/index-pages-4bb0db5d710f.json'],
    // Names without a hash are never taken for the newest.
    ['/compare/evidence.json', 'leave'],
    ['/rack/rules.json', 'leave'],
    ['/favicon.svg', 'file /favicon.svg'],
    ['/drawings/basket/right.svg', 'file /drawings/basket/right.svg'],
    ['/data/figures.csv', 'leave'],
    ['/constructor', 'leave'],
    ['/__proto__', 'leave'],
  ])('a file: %s', (path, decided) => {
    expect(route(ORIGIN + path, file)).toBe(decided);
  });

  test('anything but plain reading of the own folder is left alone', () => {
    expect(route(`${ORIGIN}/`, { method: 'POST' })).toBe('leave');
    expect(route(`${ORIGIN}/`, { isPart: true })).toBe('leave');
    expect(route('https://elsewhere.example/')).toBe('leave');
    expect(route('http://site.example/')).toBe('leave');
    expect(route('not an address')).toBe('leave');
  });

  test('under a folder, only that folder is its own', () => {
    expect(route(`${ORIGIN}/club/slings/compare/?v=1`, {}, '/club/slings/')).toBe('page /compare/');
    expect(route(`${ORIGIN}/club/slings/_astro/a.js`, file, '/club/slings/')).toBe('hashed /_astro/a.js');
    expect(route(`${ORIGIN}/club/`, {}, '/club/slings/')).toBe('leave');
    expect(route(`${ORIGIN}/club/slings-of-others/`, {}, '/club/slings/')).toBe('leave');
    expect(route(`${ORIGIN}/compare/`, {}, '/club/slings/')).toBe('leave');
  });
});

describe('what stands in for a page', () => {
  test.each([
    ['/compare/', '?v=1&rating=9', [{ is: 'kept', path: '/compare/' }]],
    ['/compare/12/bare-wire/hmpe-8/', '', [{ is: 'elsewhere', to: '/compare/?v=1&rating=12&eye=bare-wire&sling=hmpe-8' }]],
    ['/compare/12/bare-wire/hmpe-8/', '?rating=10&wings=2', [{ is: 'elsewhere', to: '/compare/?v=1&eye=bare-wire&sling=hmpe-8&rating=10&wings=2' }]],
    // No such page is built: nobody can say what it would be, so no rig is made up for it.
    ['/compare/12.5/bare-wire/hmpe-8/', '', [{ is: 'visited', path: '/compare/12.5/bare-wire/hmpe-8/' }]],
    ['/compare/12/bare-wire/hemp-8/', '', [{ is: 'visited', path: '/compare/12/bare-wire/hemp-8/' }]],
    ['/compare/12/bare-wire/', '', [{ is: 'visited', path: '/compare/12/bare-wire/' }]],
    ['/compare/12/bare-wire/hmpe-8/more/', '', [{ is: 'visited', path: '/compare/12/bare-wire/hmpe-8/more/' }]],
    ['/compare/x/compare/12/bare-wire/hmpe-8/', '', [{ is: 'visited', path: '/compare/x/compare/12/bare-wire/hmpe-8/' }]],
    ['/terms/bartack/', '', [{ is: 'visited', path: '/terms/bartack/' }, { is: 'elsewhere', to: '/terms/#bartack' }]],
    ['/about/', '', [{ is: 'visited', path: '/about/' }]],
    ['/constructor/', '', [{ is: 'visited', path: '/constructor/' }]],
  ] as const)('%s%s', (path, query, expected) => {
    expect(standIns(path, query, SET)).toEqual(expected);
  });

  test('what is opened stays only where nothing of the set stands in for it', () => {
    expect(['/about/', '/terms/bartack/'].map((path) => isKeptOnVisit(path, SET))).toEqual([true, true]);
    expect(['/compare/', '/compare/12/bare-wire/hmpe-8/', '/offline/not-kept/'].map((path) => isKeptOnVisit(path, SET))).toEqual([false, false, false]);
  });
});

test('after a page that did not come, the next are not waited for, until the rest is over', () => {
  expect([[5, null], [0, 0], [REST_MS - 1, 0], [REST_MS, 0], [REST_MS + 7, 7]].map(([now, missed]) => isWorthTheWait(now as number, missed as number | null))).toEqual([true, false, false, true, true]);
});

describe('odd addresses', () => {
  const oddPath = fc.oneof(fc.string({ unit: 'binary' }), fc.webPath(), fc.array(fc.constantFrom('compare', '12', 'bare-wire', 'hmpe-8', '..', '.', '', '%2e', '%2F', 'index.html', 'terms', '_astro', 'embed', '%', '__proto__', 'a.js')).map((parts) => `/${parts.join('/')}`));
  const oddQuery = fc.oneof(fc.webQueryParameters().map((query) => `?${query}`), fc.string({ unit: 'binary' }), fc.array(fc.constantFrom('v=1', 'v=9', 'rating=9', 'rating=', 'rating=10&rating=11', 'eye=wire', 'sling=nylon-16', 'sling=%', '%=1', 'd=2026-11-25.1', 'm=1', 't=8~9', '=', '+rating=3', 'demand=8')).map((pieces) => `?${pieces.join('&')}`));

  test('every one gets a decision, and what is answered lies in the own folder', () => {
    fc.assert(fc.property(oddPath, oddQuery, fc.constantFrom('/', '/club/'), fc.boolean(), (path, query, base, isPage) => {
      const url = `${ORIGIN}${path.startsWith('/') ? '' : '/'}${path}${query}`;
      const decided = routeOf({ method: 'GET', url, isPage, isPart: false }, { origin: ORIGIN, base }, SET);
      if (decided.is === 'leave') return;
      expect(new URL(url).pathname.startsWith(base)).toBe(true);
      expect(decided.path.startsWith('/')).toBe(true);
      if (decided.is === 'page') for (const one of standIns(decided.path, decided.query, SET)) if (one.is === 'kept') expect(files).toContain(one.path);
    }), { numRuns: 5000 });
  });

  test('a built comparison with any query leads to the rig that its page shows, with every piece that the page would list', () => {
    const vocabulary = { slings: SLINGS };
    fc.assert(fc.property(fc.constantFrom(...PREBUILT_RATINGS_KN), fc.constantFrom(...PREBUILT_EYES), fc.constantFrom(...SLINGS), oddQuery, (rating, eye, sling, query) => {
      const path = `/compare/${rating}/${eye}/${sling}/`;
      // As a browser writes it, before it is read.
      const { search } = new URL(query.startsWith('?') ? query : `?${query}`, ORIGIN);
      const onPage = parseLink(search, vocabulary, parsePath(path, vocabulary).rig);
      const led = parseLink(new URL(`/compare/?${queryOfPrebuilt(path, search, vocabulary)}`, ORIGIN).search, vocabulary);
      expect(led.rig).toEqual(onPage.rig);
      expect(led.notUnderstood).toEqual(onPage.notUnderstood);
      expect([led.d, led.m]).toEqual([onPage.d, onPage.m]);
    }), { numRuns: 5000 });
  });
});
