/** What is written into saved pages. Days: the example of a date in RFC 9110, section 5.6.7; the rest is plain markup. */
import fc from 'fast-check';
import { parse } from 'node-html-parser';
import { expect, test } from 'vitest';
import { dayOfHost, evidenceOf, titleOf, withSavedLine, withVisited } from '../../../src/offline/saved-page.ts';

const PAGE = '<!doctype html><html><head><title>Gaps - what we lack - Second Sling</title></head><body><a class="skip" href="#main">Skip</a><header class="head">x</header><main id="main"><h1>Gaps</h1></main><footer><p> Evidence <span data-id>2026-11-25.4</span>, model </p></footer></body></html>';

/** Text of the line that was written in. */
const line = (html: string): string => parse(html).querySelector('[role=note]')?.text ?? '';

test('a saved page says whose copy it is, at its top, in one line', () => {
  const html = withSavedLine(PAGE, '2026-11-25.4', '2026-12-01');
  expect(line(html)).toBe('Saved copy of 25 November 2026, fetched on 1 December 2026.');
  expect(html.indexOf('Saved copy')).toBeLessThan(html.indexOf('<header'));
  expect(html.indexOf('Saved copy')).toBeGreaterThan(html.indexOf('class="skip"'));
  // Nothing else is touched, and the policy of the page forbids neither: no script, no style.
  expect(html.replace(/<div class="head" role="note">.*?<\/div>/, '')).toBe(PAGE);
  expect(html.match(/<div class="head" role="note">.*?<\/div>/)?.[0]).not.toMatch(/script|style/);
});

test.each([
  [null, null, 'Saved copy.'],
  ['2026-11-25.4', null, 'Saved copy of 25 November 2026.'],
  [null, '2026-12-01', 'Saved copy, fetched on 1 December 2026.'],
  // A host whose clock is off by years is believed no more than that it said so; what is no day is left out.
  ['2026-11-25.4', '1970-01-01', 'Saved copy of 25 November 2026, fetched on 1 January 1970.'],
  ['2026-13-45.1', '2026-00-10', 'Saved copy.'],
])('evidence %s, fetched %s', (evidence, on, says) => {
  expect(line(withSavedLine(PAGE, evidence, on))).toBe(says);
});

test('the day on which something was fetched is what the host said', () => {
  expect(dayOfHost('Sun, 06 Nov 1994 08:49:37 GMT')).toBe('1994-11-06');
  expect(['yesterday', '', null].map(dayOfHost)).toEqual([null, null, null]);
});

test('any text stays whole around the line', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary' }), fc.option(fc.string()), fc.option(fc.string()), (html, evidence, on) => {
    expect(withSavedLine(html, evidence, on).replace(/<div class="head" role="note">.*?<\/span><\/div>/s, '')).toBe(html);
  }), { numRuns: 1000 });
});

test('title and evidence of a page are read from it', () => {
  expect(titleOf(PAGE)).toBe('Gaps - what we lack');
  expect(titleOf('<title>Can&#39;t &lt;b&gt; &amp;lt; - Second Sling</title>')).toBe('Can\'t <b> &lt;');
  expect(evidenceOf(PAGE)).toBe('2026-11-25.4');
  expect([titleOf('none'), evidenceOf('none')]).toEqual(['', null]);
});

test('visited pages are listed, and no title can break out of the list', () => {
  const html = withVisited('<main><div id="visited"></div></main>', [{ address: '/a/"b', title: '<script>1</script> $& & "x"' }, { address: '/c/', title: '' }]);
  expect(parse(html).querySelector('script')).toBeNull();
  expect(parse(html).querySelectorAll('li a').map((link) => link.text)).toEqual(['<script>1</script> $& & "x"', '/c/']);
  expect(withVisited('<div id="visited"></div>', [])).toBe('<div id="visited"></div>');
});
