/** The pages' own scripts name what they import, so that nothing is fetched one after the other. Files are made up for the test. */
import { expect, test } from 'vitest';
import { importsAtOnce, withPreloads } from '../../../src/build/steps/preload-scripts.ts';

const FILES: Readonly<Record<string, string>> = {
  '/base/_astro/page.js': 'import{a as b}from"./shared.js";import"./side.js";const later=()=>import("./later.js");b()',
  '/base/_astro/shared.js': 'import{c}from"./deep.js";export const a=c',
  '/base/_astro/deep.js': 'import{a}from"./shared.js";export const c=1',
  '/base/_astro/side.js': '',
  '/base/_astro/alone.js': 'alert(1)',
};
const read = (address: string): string => {
  const text = FILES[address];
  if (text === undefined) throw new RangeError(`no file ${address}`);
  return text;
};
const page = (name: string) => `<!doctype html><head><title>x</title></head><body><script type="module" src="/base/_astro/${name}.js"></script></body>`;

test('what a script imports at once is found, also by way of others and in a circle; what it loads later is not', () => {
  expect(importsAtOnce('/base/_astro/page.js', read).sort()).toEqual(['deep', 'shared', 'side'].map((name) => `/base/_astro/${name}.js`));
});

test('a page names them in its head', () => {
  const html = withPreloads(page('page'), read);
  for (const name of ['deep', 'shared', 'side']) expect(html.split('</head>')[0]).toContain(`<link rel="modulepreload" href="/base/_astro/${name}.js">`);
  expect(html).not.toContain('rel="modulepreload" href="/base/_astro/page.js"');
});

test('a page whose script stands alone stays as it is', () => {
  expect(withPreloads(page('alone'), read)).toBe(page('alone'));
});
