/**
 * What is sent with a file. The rules are those of the standards named beside them; the file of headers is read here by
 * a reader of its own, written from the rule that all paths which match add up.
 */
import { expect, test } from 'vitest';
import { headersFile, headersOf, nginxConfiguration } from '../../../src/build/steps/hosting.ts';

/** What a host that reads the file sends with a path; two values for one header are an error. */
function readHeaders(file: string, path: string): Record<string, string> {
  const sent: Record<string, string> = {};
  for (const block of file.trim().split('\n\n')) {
    const [pattern = '', ...lines] = block.split('\n');
    const [before = '', after] = pattern.split('*');
    if (after === undefined ? path !== pattern : !path.startsWith(before)) continue;
    for (const line of lines) {
      const [, name = '', value = ''] = /^ {2}([\w-]+): (.+)$/.exec(line) ?? [];
      expect(name, line).not.toBe('');
      expect(sent[name], `${path}: ${name} twice`).toBeUndefined();
      sent[name] = value;
    }
  }
  return sent;
}

const ROOMS = ['404.html', '_astro/', 'changes/', 'cite/', 'compare/', 'data/', 'drawings/', 'embed/', 'index.html', 'methods/', 'robots.txt'];
const PATHS = ['/', '/index.html', '/404.html', '/robots.txt', '/methods/basket/index.html', '/compare/12/bare-wire/hmpe-8/index.html', '/compare/evidence-2026-11-25.4.abc.json', '/_astro/x.js', '/embed/fall/index.html', '/data/figures.csv', '/cite/site.bib', '/changes/feed.xml'];

test('hashed files are kept for good and all others are asked again (RFC 9111, RFC 8246)', () => {
  const kept = (path: string) => headersOf(path)['Cache-Control'];
  for (const path of ['/_astro/Ab.js', '/compare/evidence-2026-11-25.4.0123456789ab.json', '/search/index-pages-0123456789ab.json']) expect(kept(path)).toBe('public, max-age=31536000, immutable');
  for (const path of ['/index.html', '/compare/index.html', '/compare/then.json', '/data/figures.csv', '/x/_astro/Ab.js']) expect(kept(path)).toBe('no-cache');
});

test('only pages made for it may stand in a frame elsewhere (Content Security Policy 3, frame-ancestors)', () => {
  for (const path of ['/index.html', '/compare/index.html', '/embedded/index.html', '/404.html']) expect(headersOf(path)['Content-Security-Policy']).toBe("frame-ancestors 'none'");
  expect(headersOf('/embed/fall/index.html')['Content-Security-Policy']).toBeUndefined();
});

test('other programs may read data, citations, drawings and the feed, and nothing else (Fetch standard, CORS protocol)', () => {
  for (const path of ['/data/figures.csv', '/cite/site.bib', '/changes/feed.xml']) expect(headersOf(path)['Access-Control-Allow-Origin']).toBe('*');
  expect(headersOf('/compare/index.html')['Access-Control-Allow-Origin']).toBeUndefined();
});

for (const folder of ['/', '/slings/']) {
  test(`the file for hosts says the same under ${folder}, and never one header twice`, () => {
    const file = headersFile(folder, ROOMS);
    for (const path of PATHS) {
      const { 'Cache-Control': kept, ...others } = headersOf(path);
      const { 'Cache-Control': told, ...sent } = readHeaders(file, `${folder.replace(/\/$/, '')}${path}`);
      expect(sent, path).toEqual(others);
      // Where nothing is told, a host lets a browser ask again.
      expect(told ?? 'no-cache', path).toBe(kept);
    }
    expect(readHeaders(file, '/elsewhere/x')['Content-Security-Policy']).toBeUndefined();
  });
}

test('what would have to be quoted stays out of the configuration, and the message names it', () => {
  const site = { directory: '/srv/sling', folder: '/', port: 80, name: '_' };
  for (const [part, message] of [
    [{ directory: '/srv/a b' }, /directory: only letters.*"\/srv\/a b"/], [{ name: 'x; root /' }, /name: only letters/], [{ folder: '/a"/' }, /folder: only letters/],
    [{ folder: 'slings/' }, /folder: begins and closes with a slash/],
  ] as const) expect(() => nginxConfiguration({ ...site, ...part })).toThrow(message);
});
