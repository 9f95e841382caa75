/** Which caches and files stay, go or are fetched. Builds and hashes are made up; what must hold is DESIGN's: nothing of two builds, nothing fetched twice, nothing of others touched. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cacheNames, fillPlan, type Held, type KeptSet, ownCaches, setCaches, staleCaches, surplus } from '../../../src/offline/kept-set.ts';

const set = (files: Record<string, string>): KeptSet => ({ build: 'new', evidence: '2026-11-25.4', slings: [], files });
const OWN = cacheNames('/', 'new').set;
const OLD = cacheNames('/', 'old').set;

test('two sites on one host keep apart, and caches of others are never named', () => {
  const names = ['someone-else', 'second-sling-offline', ...Object.values(cacheNames('/', 'a')), ...Object.values(cacheNames('/club/', 'a')), ...Object.values(cacheNames('/club/slings/', 'b'))];
  expect(ownCaches(names, '/club/')).toEqual(Object.values(cacheNames('/club/', 'a')));
  expect(ownCaches(names, '/')).toEqual(Object.values(cacheNames('/', 'a')));
  expect(setCaches(names, '/club/slings/')).toEqual([cacheNames('/club/slings/', 'b').set]);
});

test('a build that takes over lets go of every other set, whole or half there; what was visited stays', () => {
  const { set: own, pages, files } = cacheNames('/', 'b');
  const others = ['a', 'c'].map((build) => cacheNames('/', build).set);
  expect(staleCaches([own, pages, files, ...others, cacheNames('/club/', 'a').set, 'someone-else'], '/', 'b')).toEqual(others);
});

test.each<[string, Held[], { there: string[]; copied: string[]; fetched: string[] }]>([
  ['a first try', [], { there: [], copied: [], fetched: ['/', '/a.js', '/b.js'] }],
  ['a try that broke off', [{ cache: OWN, path: '/a.js', hash: '2' }], { there: ['/a.js'], copied: [], fetched: ['/', '/b.js'] }],
  ['an update', [{ cache: OLD, path: '/', hash: '0' }, { cache: OLD, path: '/a.js', hash: '2' }, { cache: OLD, path: '/b.js', hash: '3' }], { there: [], copied: ['/a.js', '/b.js'], fetched: ['/'] }],
  ['a file that moved', [{ cache: OLD, path: '/c.js', hash: '3' }], { there: [], copied: ['/b.js'], fetched: ['/', '/a.js'] }],
  ['an older build that comes back', [{ cache: OWN, path: '/', hash: '1' }, { cache: OWN, path: '/a.js', hash: '2' }, { cache: OWN, path: '/b.js', hash: '3' }], { there: ['/', '/a.js', '/b.js'], copied: [], fetched: [] }],
  ['its own path with other content', [{ cache: OWN, path: '/', hash: '0' }], { there: [], copied: [], fetched: ['/', '/a.js', '/b.js'] }],
])('what is still to do: %s', (_, held, expected) => {
  const plan = fillPlan(set({ '/': '1', '/a.js': '2', '/b.js': '3' }), held, OWN);
  expect({ ...plan, copied: plan.copied.map(({ path }) => path) }).toEqual(expected);
});

test('whatever is held, each file is there, copied with the right content, or fetched: once', () => {
  const hash = fc.constantFrom('1', '2', '3', '4');
  const path = fc.constantFrom('/', '/a.js', '/b.js', '/c/');
  fc.assert(fc.property(fc.dictionary(path, hash), fc.array(fc.record({ cache: fc.constantFrom(OWN, OLD), path, hash })), (files, held) => {
    const plan = fillPlan(set(files), held, OWN);
    expect([...plan.there, ...plan.copied.map((one) => one.path), ...plan.fetched].sort()).toEqual(Object.keys(files).sort());
    for (const one of plan.copied) expect(one.from.hash).toBe(files[one.path]);
    for (const one of plan.fetched) expect(held.some((other) => other.hash === files[one])).toBe(false);
    for (const one of plan.there) expect(held).toContainEqual({ cache: OWN, path: one, hash: files[one] });
  }), { numRuns: 2000 });
});

test('of what is kept on a visit, the oldest goes', () => {
  expect(surplus(['a', 'b', 'c', 'd'], 3)).toEqual(['a']);
  expect(surplus(['a', 'b'], 3)).toEqual([]);
  expect(surplus(['a', 'b'], 0)).toEqual(['a', 'b']);
});
