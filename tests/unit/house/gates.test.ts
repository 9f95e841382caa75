/** Each gate on the built site finds a planted fault, says where it is, and passes a page without it. */
import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { budgetOf, bytes, weigh } from '../../support/gates/bytes.ts';
import { headings } from '../../support/gates/headings.ts';
import { headersFile } from '../../../src/build/steps/hosting.ts';
import { hosting } from '../../support/gates/hosting.ts';
import { links } from '../../support/gates/links.ts';
import { markup } from '../../support/gates/markup.ts';
import { offline } from '../../support/gates/offline.ts';
import { blocksOf, plainWords, sentencesOf, splitSentences, wordCount } from '../../support/gates/plain-words.ts';
import { policy } from '../../support/gates/policy.ts';
import { provenance } from '../../support/gates/provenance.ts';
import { parsePage, siteOfTexts, type Gate } from '../../support/gates/site.ts';
import { thirdParty } from '../../support/gates/third-party.ts';

const page = (body: string, head = '<title>One page</title><meta name="description" content="What it is.">') =>
  `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8">${head}</head><body>${body}</body></html>`;
const FIGURE = page('<main><h1>A figure</h1><a href="/figures/a-source/a-result/" id="wide">10.8 kN</a></main>', '<title>A figure</title><meta name="description" content="A figure.">');

/** Messages of a gate on a page at `/p/`, beside a figure page and what else is given. */
async function faults(gate: Gate, html: string, others: Record<string, string> = {}, base = '/'): Promise<string[]> {
  const site = siteOfTexts({ '/p/': html, '/figures/a-source/a-result/': FIGURE, ...others }, base);
  return (await gate.check(site)).filter((fault) => fault.page === '/p/').map((fault) => fault.message);
}

describe('links', () => {
  test('a page, a file, a fragment and an outside address pass', async () => {
    const body = '<h1 id="a">x</h1><a href="/figures/a-source/a-result/#wide">f</a><a href="#a">a</a><a href="https://example.org/">o</a><img src="/x.svg" alt="">';
    expect(await faults(links, page(body), { '/x.svg': '<svg/>' })).toEqual([]);
  });
  test('a page that was not built is named, with those near it', async () => {
    expect(await faults(links, page('<a href="/figures/a-source/other/">f</a>'))).toEqual([
      'href="/figures/a-source/other/" at a: no page or file /figures/a-source/other/ was built. Near it: /figures/a-source/a-result/.',
    ]);
  });
  test('a missing fragment is named, with the ids there are', async () => {
    expect(await faults(links, page('<main><p class="n"><a href="/figures/a-source/a-result/#wide-2">f</a></p></main>'))).toEqual([
      'href="/figures/a-source/a-result/#wide-2" at main > p.n > a: the page /figures/a-source/a-result/ has no id "wide-2". Near it: wide.',
    ]);
  });
  test('an address without its closing slash, and one outside the base path, are found', async () => {
    expect(await faults(links, page('<a href="/figures/a-source/a-result">f</a>'))).toEqual([
      'href="/figures/a-source/a-result" at a: lacks its closing slash: write the address with one.',
    ]);
    expect(await faults(links, page('<a href="/figures/a-source/a-result/">f</a>'), {}, '/sub/')).toHaveLength(1);
    expect(await faults(links, page('<a href="/sub/figures/a-source/a-result/">f</a>'), {}, '/sub/')).toEqual([]);
  });
});

describe('provenance', () => {
  test.each([
    ['a link to a figure', '<a href="/figures/a-source/a-result/">10.8 kN</a>'],
    ['a cell of a figure', '<a href="/figures/a-source/a-result/#wide"><b>10.8</b> kN</a>'],
    ['a working on the page', '<p data-working="w">about 13 kN</p><div id="w"><a href="/figures/a-source/a-result/">the figure</a></div>'],
    ['a working on another page', '<p><span data-working="/figures/a-source/a-result/#wide">about 13 kN</span></p>'],
    ['what the reader gave', '<p>Rated <b data-input>12 kN</b></p>'],
    ['an axis', '<svg><text data-axis="">30</text></svg>'],
    ['a date', '<time datetime="2026-11-24">24 November 2026</time>'],
    ['a title of a standard', '<cite>EN 12276:2013, 4.2</cite>'],
    ['a version', '<span data-id>2026-12-01.1</span>'],
    ['a spelled-out count', '<p>One in twenty breaks below.</p>'],
    ['style and script', '<style>a{margin:1px}</style><script>x=12</script>'],
  ])('%s passes', async (_, body) => {
    expect(await faults(provenance, page(body))).toEqual([]);
  });

  test.each([
    ['running text', '<main><p class="lead">It breaks at 12 kN.</p></main>', '"It breaks at 12 kN." (main > p.lead)'],
    ['a number beside a marked one', '<p>Rated <b data-input>12</b> of 14</p>', '"of 14" (p)'],
    ['drawn text', '<svg><text>31</text></svg>', '"31" (svg > text)'],
    ['a table', '<table><tbody><tr><td>9,5</td></tr></tbody></table>', '"9,5" (table > tbody > tr > td)'],
    ['an entity', '<p>&#49;&#50; kN</p>', '"12 kN" (p)'],
    ['a fraction', '<p>half is ½</p>', '"half is ½" (p)'],
    ['digits of another script', '<p>١٢ kN</p>', '"١٢ kN" (p)'],
    ['a name that is read out', '<svg role="img" aria-label="12 of 20"></svg>', '"12 of 20" (aria-label of svg)'],
    ['a picture\'s text', '<img alt="broke at 9 kN" src="/x.svg">', '"broke at 9 kN" (alt of img)'],
    ['a hint in a field', '<input placeholder="12">', '"12" (placeholder of input)'],
    ['a preformatted text', '<pre>12 kN</pre>', '"12 kN" (pre)'],
    ['text without script', '<noscript><p>12 kN</p></noscript>', '"12 kN" (noscript > p)'],
    ['an outside link', '<a href="https://example.org/figures/a-source/">12</a>', '"12" (a)'],
    ['the list of figures', '<a href="/figures/">12</a>', '"12" (a)'],
  ])('a bare number is found in %s', async (_, body, start) => {
    const [first, ...more] = await faults(provenance, page(body), { '/x.svg': '' });
    expect(first?.slice(0, start.length)).toBe(start);
    expect(more).toEqual([]);
  });

  test('a figure link must lead to its page and its cell', async () => {
    expect(await faults(provenance, page('<p><a href="/figures/a-source/gone/">9</a></p>'))).toEqual([
      '"9" (p > a) links to /figures/a-source/gone/, but no page /figures/a-source/gone/ was built.',
    ]);
    expect(await faults(provenance, page('<p><a href="/figures/a-source/a-result/#thin">9</a></p>'))).toEqual([
      '"9" (p > a) links to /figures/a-source/a-result/#thin, but /figures/a-source/a-result/ has no cell "thin".',
    ]);
  });
  test('a working must exist and hold a figure that exists', async () => {
    expect(await faults(provenance, page('<p data-working="w">9</p>'))).toEqual(['data-working="w" (p) leads to an id "w" that /p/ does not have.']);
    expect(await faults(provenance, page('<p data-working="w">9</p><div id="w">nothing</div>'))).toEqual([
      'data-working="w" (p) leads to a working (/p/#w) without a link to a figure.',
    ]);
    expect(await faults(provenance, page('<p data-working="w">9</p><div id="w"><a href="/figures/a-source/gone/">f</a></div>'))).toEqual([
      'data-working="w" (p) leads to a working with a figure link, but no page /figures/a-source/gone/ was built.',
    ]);
  });
  test('a marker may not cover more than a quantity', async () => {
    expect(await faults(provenance, page('<div data-id="x"><p>12 kN</p></div>'))).toEqual([
      'data-id at div holds a <p>: it covers more than a quantity. Mark the quantity itself.',
    ]);
  });
  test('a number in the title or description must stand on the page', async () => {
    const head = '<title>Rated 12 kN</title><meta name="description" content="Breaks at 9.5 kN.">';
    expect(await faults(provenance, page('<h1>Rated <span data-input>12 kN</span></h1>', head))).toEqual([
      'the description says 9.5 ("Breaks at 9.5 kN."), which the page itself does not show. Show it in the body with its origin, or leave it out.',
    ]);
  });
});

describe('bytes', () => {
  /** Text that does not compress: numbers from a fixed rule, written in base 36. */
  const noise = (length: number) => {
    let text = '';
    for (let state = 1; text.length < length; state = (state * 48271) % 2147483647) text += state.toString(36);
    return text.slice(0, length);
  };
  test('each kind of page has its own budget', () => {
    expect(budgetOf(parsePage('/compare/12/bare-wire/hmpe-10/', page(''))).kind).toBe('comparator');
    expect(budgetOf(parsePage('/breaks/plan/', page(''))).kind).toBe('interactive page');
    expect(budgetOf(parsePage('/methods/', page('')))).toMatchObject({ kind: 'reading page', htmlAndCss: 14_000, script: 400 });
    const rows = '<tr><td>x</td></tr>'.repeat(101);
    expect(budgetOf(parsePage('/figures/by-source/', page(`<table><tbody>${rows}</tbody></table>`))).htmlAndCss).toBe(20_000);
  });
  test('a reading page over its budget is found, and one that fetches its style', async () => {
    const found = await faults(bytes, page(`<p>${noise(40_000)}</p>`, '<link rel="stylesheet" href="/a.css">'), { '/a.css': 'a{color:red}' });
    expect(found).toHaveLength(2);
    expect(found[0]).toMatch(/^HTML and CSS: \d+ bytes, \d+ over the 14000 of a reading page\.$/);
    expect(found[1]).toBe('fetches /a.css: a reading page is one response. Inline the style.');
  });
  test('script is weighed with all it imports, and what loads on demand apart', () => {
    const texts = {
      '/compare/': page('<astro-island component-url="/_a/island.js" renderer-url="/_a/r.js"></astro-island>'),
      '/_a/island.js': 'import{a}from"./shared.js";const b=()=>import("./later.js");',
      '/_a/shared.js': noise(3_000),
      '/_a/later.js': noise(9_000),
      '/_a/r.js': 'export default 1',
    };
    const site = siteOfTexts(texts);
    const weight = weigh(site, site.pages[0] as never);
    expect(weight.script).toBeGreaterThan(1_500);
    expect(weight.script).toBeLessThan(4_000);
    expect(weight.onDemand).toBeGreaterThan(weight.script + 4_000);
  });
  test('the evidence is a hashed JSON that the page names, within its budget', async () => {
    const named = (file: string) => ({ '/compare/': page(`<link rel="preload" as="fetch" href="${file}">`) });
    const check = async (texts: Record<string, string>) => (await bytes.check(siteOfTexts(texts))).map((fault) => fault.message);
    expect(await check({ '/compare/': page('') })).toEqual([expect.stringMatching(/^names no evidence JSON/)]);
    expect(await check({ ...named('/d/evidence.json'), '/d/evidence.json': '{}' })).toEqual([expect.stringMatching(/^has no hash/)]);
    expect(await check({ ...named('/d/evidence.a1b2c3d4.json'), '/d/evidence.a1b2c3d4.json': '{}' })).toEqual([]);
    expect(await check({ ...named('/d/evidence.a1b2c3d4.json'), '/d/evidence.a1b2c3d4.json': noise(30_000) })).toEqual([expect.stringMatching(/over the 12000/)]);
  });
  test('what search fetches is hashed, named, within its budget, and not asked for with the page', async () => {
    const compare = { '/compare/': page('<link rel="preload" as="fetch" href="/d/evidence.a1b2c3d4.json">'), '/d/evidence.a1b2c3d4.json': '{}' };
    const check = async (html: string, file: string, text = '{}') => (await bytes.check(siteOfTexts({ ...compare, '/search/': html, [file]: text }))).map((fault) => fault.message);
    const named = (file: string) => page(`<form data-pages="${file}"></form>`);
    const hashed = '/search/pages-a1b2c3d4e5f6.json';
    expect(await check(named(hashed), hashed)).toEqual([]);
    expect(await check(named('/search/pages.json'), '/search/pages.json')).toEqual([expect.stringMatching(/^has no hash/)]);
    expect(await check(page(''), hashed)).toEqual([expect.stringMatching(/^is named nowhere/)]);
    expect(await check(page(`<link rel="prefetch" href="${hashed}">`), hashed)).toEqual([expect.stringMatching(/Fetch it on first use/)]);
    expect(await check(named(hashed), hashed, noise(300_000))).toEqual([expect.stringMatching(/over the 150000/)]);
  });
});

describe('offline', () => {
  const sha = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 12);
  const texts = { '/': page('<h1>x</h1><img src="/a.svg" alt="">'), '/a.svg': '<svg/>', '/compare/12/bare-wire/hmpe-8/': page('') };
  const FILES = { '/': sha(texts['/']), '/a.svg': sha('<svg/>') };
  const check = async (files: Record<string, string>, more: Record<string, string> = {}, slings = ['hmpe-8']) =>
    (await offline.check(siteOfTexts({ ...texts, ...more, '/offline-worker.js': `const KEPT_SET = ${JSON.stringify({ evidence: 'e', slings, files })};\n` }))).map((fault) => `${fault.page} ${fault.message}`);
  test('a set that is whole passes, and so does a worker that ends itself', async () => {
    expect(await check(FILES)).toEqual([]);
    expect(await offline.check(siteOfTexts({ ...texts, '/offline-worker.js': 'const KEPT_SET = null;\n' }))).toEqual([]);
  });
  test.each([
    ['a page that was changed after the list', { ...FILES, '/': '000000000000' }, {}, /^\/ has another hash/],
    ['a file that was not built', { ...FILES, '/b.js': '000000000000' }, {}, /^\/b\.js is listed by the worker and was not built/],
    ['a picture that is not in the set', { '/': FILES['/'] }, {}, /^\/ fetches \/a\.svg, which is not in the set/],
    ['a page that readers need', FILES, { '/retire/': page('') }, /^\/retire\/ is not in the set/],
    ['a page that asks for a worker', FILES, { '/about/': page('<script>navigator.serviceWorker.register("/x.js")</script>') }, /^\/about\/ asks for a worker/],
  ])('%s is found', async (_, files, more, message) => {
    expect(await check(files, more)).toEqual([expect.stringMatching(message)]);
  });
  test('a sling with built comparisons that the worker does not know is found, and a worker that is only missing', async () => {
    expect(await check(FILES, {}, [])).toEqual(['/offline-worker.js does not know the sling hmpe-8, which has built comparisons.']);
    expect((await offline.check(siteOfTexts(texts)))[0]?.message).toMatch(/^was not built\. A worker that is only missing stays/);
  });
});

describe('policy', () => {
  const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
  const meta = (script = '', style = '', rest = "require-trusted-types-for 'script';") =>
    `<meta http-equiv="content-security-policy" content="default-src 'none'; base-uri 'none'; ${rest} script-src 'self' ${script}; style-src 'self' ${style}">`;
  test('a policy with the hash of each inline script and style passes', async () => {
    expect(await faults(policy, page('<script>let a = 1 < 2;</script>', `${meta(hash('let a = 1 < 2;'), hash('a{color:red}'))}<style>a{color:red}</style>`))).toEqual([]);
  });
  test.each([
    ['no policy', page('<p>x</p>'), 'has 0 content policies; a page has one.'],
    ['no trusted types', page('', meta('', '', '')), "the policy lacks require-trusted-types-for 'script'."],
    ['a loose source', page('', meta("'unsafe-inline'")), "the policy's script-src allows 'unsafe-inline'."],
    ['a script without its hash', page('<script>other()</script>', meta(hash('let a;'))), 'the policy has no hash of an inline script: "other()". The browser would block it.'],
    ['a style attribute', page('<p style="color:red">x</p>', meta()), 'p has a style attribute, which the policy blocks. Use a class.'],
    ['an inline handler', page('<button onclick="x()">x</button>', meta()), 'button has onclick=, which the policy blocks. Listen from the script.'],
    ['a style fetched before the policy', page('', `<link rel="stylesheet" href="/a.css">${meta()}`), 'a script or style is fetched before the policy in the head, outside its reach.'],
  ])('%s is found', async (_, html, message) => {
    expect(await faults(policy, html)).toEqual([message]);
  });
});

describe('plain words', () => {
  /** A sentence of so many words. */
  const sentence = (words: number) => `One${' word'.repeat(words - 2)} end.`;
  const texts = (body: string) => sentencesOf(parsePage('/p/', page(body))).map(({ text }) => text);

  test('a sentence of 28 words passes, and one of 29 is found', async () => {
    expect(await faults(plainWords, page(`<p>${sentence(28)}</p>`))).toEqual([]);
    expect(await faults(plainWords, page(`<p>${sentence(29)}</p>`))).toEqual([`a sentence of 29 words, 1 too many: "${sentence(29)}". Make two of it.`]);
  });
  test('a mean of 17 words passes, and one above is found', async () => {
    const five = (last: number) => page(`<p>${[17, 17, 17, 17, last].map(sentence).join(' ')}</p>`);
    expect(await faults(plainWords, five(17))).toEqual([]);
    expect(await faults(plainWords, five(18))).toEqual(['its 5 sentences have 17.2 words on average, over 17. Shorten the longest.']);
    expect(await faults(plainWords, page(`<p>${[20, 20, 20, 20].map(sentence).join(' ')}</p>`))).toEqual([]);
  });
  test('items without a full stop do not bring the mean down, and have a length', async () => {
    const items = '<ul><li>two words</li><li>two words</li><li>two words</li><li>two words</li></ul>';
    expect(await faults(plainWords, page(`<p>${[18, 18, 18, 18, 18].map(sentence).join(' ')}</p>${items}`))).toEqual([expect.stringMatching(/^its 5 sentences have 18\.0 words/)]);
    expect(await faults(plainWords, page(`<ul><li>${sentence(29).slice(0, -1)}</li></ul>`))).toEqual([expect.stringMatching(/^a sentence of 29 words/)]);
  });
  test('a second box with a signal word is found', async () => {
    const box = '<div class="warning"><p>Look out.</p></div>';
    expect(await faults(plainWords, page(box))).toEqual([]);
    expect(await faults(plainWords, page(box + box))).toEqual(['has 2 boxes with a signal word; a page has one, at the decision. Say the rest in a sentence.']);
  });
  test.each([
    ['a quotation', `<blockquote><p>${sentence(40)}</p></blockquote>`],
    ['a quotation in a line', `<p>They say <q>${sentence(40)}</q>.</p>`],
    ['the name of a source', `<p>In <cite>${sentence(40)}</cite>.</p>`],
    ['a table', `<table><tbody><tr><td>${sentence(40)}</td></tr></tbody></table>`],
    ['a heading', `<h1>${sentence(40)}</h1>`],
    ['a menu', `<nav><ul><li>${sentence(40)}</li></ul></nav>`],
    ['the words of a figure', `<p>It says: <a class="fig" href="/figures/a-source/a-result/">${sentence(40)}</a></p>`],
    ['the name of a record', `<p>Used in <a href="/methods/basket/">${sentence(40)}</a>.</p>`],
    ['what the reader gave', `<p>For <span data-input>${sentence(40)}</span>.</p>`],
    ['a list of names and counts', `<p>${Array.from({ length: 20 }, (_, i) => `<a href="/methods/m${i}/">a name</a> ${i}`).join(', ')}</p>`],
  ])('%s is not read', async (_, body) => {
    expect(await faults(plainWords, page(body))).toEqual([]);
  });
  test.each([
    ['a link to a term', `<p><a href="/terms/#sling">${sentence(29)}</a></p>`],
    ['a link with more than a name in it', `<ul><li><a href="/methods/basket/"><b>Basket</b><span>${sentence(29)}</span></a></li></ul>`],
    ['a definition', `<dl><dt>Word</dt><dd>${sentence(29)}</dd></dl>`],
    ['an open part', `<details><summary>More</summary><p>${sentence(29)}</p></details>`],
    ['the foot of the page', `<footer><p>${sentence(29)}</p></footer>`],
  ])('%s is read', async (_, body) => {
    expect(await faults(plainWords, page(body))).toEqual([expect.stringMatching(/^a sentence of 29 words/)]);
  });
  test('a page that prints a record: what stands on a second one is ours, the rest is the record\'s', async () => {
    const record = (text: string) => page(`<p>${text}</p>`, '');
    const check = async (one: string, other: string) => (await plainWords.check(siteOfTexts({ '/gaps/a/': record(one), '/gaps/b/': record(other) }))).map((fault) => fault.page);
    expect(await check(sentence(29), sentence(30))).toEqual([]);
    expect(await check(sentence(29), sentence(29))).toEqual(['/gaps/a/', '/gaps/b/']);
  });
  test.each([
    ['One. Two! Three? Four', ['One.', 'Two!', 'Three?', 'Four']],
    ['It broke at 12.5 kN. Then 3.', ['It broke at 12.5 kN.', 'Then 3.']],
    ['Fibres, e.g. HMPE, melt. So does nylon.', ['Fibres, e.g. HMPE, melt.', 'So does nylon.']],
    ['Knots (i.e. Bends) slip, cf. Table two. See p. Four.', ['Knots (i.e. Bends) slip, cf. Table two.', 'See p. Four.']],
    ['It says "No." and stops. "Never." Then?', ['It says "No." and stops.', '"Never."', 'Then?']],
    ['Tape, cord, etc. are textile. Slings, cords, etc.', ['Tape, cord, etc. are textile.', 'Slings, cords, etc.']],
  ])('%s', (text, expected) => {
    expect(splitSentences(text).map((one) => one.text)).toEqual(expected);
  });
  test('a figure that prints a sentence ends ours, and its standing is no word', () => {
    const fig = (words: string) => `<a class="fig" href="/figures/a-source/a-result/">${words}<span class="standing">read</span></a>`;
    expect(texts(`<p>It says: ${fig('Do not pull.')} That is a rule. It broke at ${fig('12.5 kN')}.</p>`)).toEqual(['It says: \ufffc.', 'That is a rule.', 'It broke at \ufffc.']);
  });
  test('texts are joined over inline elements and parted by blocks, and by elements without a space between them', () => {
    const body = page('<p>A <b>bold</b> <i>w</i>ord.</p><p>B</p><ul><li><a href="/x/"><b>Name</b><span>What it is.</span></a></li></ul>');
    expect(blocksOf(parsePage('/p/', body).document.querySelector('body') as never)).toEqual(['A bold word.', 'B', 'Name', 'What it is.']);
  });
  test('words are what stands between spaces: a number and its unit are two, a hyphen makes one', () => {
    expect(wordCount('One-in-twenty breaks below 12\u00a0kN - or so')).toBe(7);
  });
  test('the report has the mean and the five longest sentences, each once, with their pages', () => {
    const lengths = [7, 9, 8, 6, 5, 4];
    const body = (numbers: number[]) => page(`<p>${numbers.map(sentence).join(' ')}</p>`);
    expect(plainWords.says?.(siteOfTexts({ '/a/': body(lengths), '/b/': body([9, 10]) }))).toEqual([
      '7 different sentences, 7.0 words on average; the longest:',
      ...[[10, '/b/'], [9, '/a/'], [8, '/a/'], [7, '/a/'], [6, '/a/']].map(([words, path]) => `${words} words at ${path}: "${sentence(words as number)}"`),
    ]);
  });
});

describe('third party', () => {
  test('own files, data addresses, links and the canonical address pass', async () => {
    const head = '<link rel="canonical" href="https://example.org/p/"><link rel="type" href="https://schema.org/Dataset"><link rel="icon" href="data:image/svg+xml,x">';
    expect(await faults(thirdParty, page('<a href="https://example.org/">x</a><img src="/x.svg" alt="">', head), { '/x.svg': '' })).toEqual([]);
  });
  test.each([
    ['a script', '<script src="https://example.org/a.js"></script>', 'src of script fetches https://example.org/a.js. Keep a copy in the site, or link to it.'],
    ['a picture', '<img srcset="//example.org/a.png 2x" alt="">', 'srcset of img fetches //example.org/a.png. Keep a copy in the site, or link to it.'],
    ['a preconnection', '<link rel="preconnect" href="https://example.org">', 'link rel="preconnect" fetches https://example.org. Keep a copy in the site, or link to it.'],
    ['a style', '<style>a{background:url(https://example.org/x)}</style>', 'a style fetches https://example.org/x. Keep a copy in the site.'],
    ['a font', '<style>@font-face{font-family:x}</style>', "a style brings a font. Use the fonts of the reader's device."],
  ])('%s from elsewhere is found', async (_, body, message) => {
    expect(await faults(thirdParty, page(body))).toEqual([message]);
  });
});

describe('hosting', () => {
  const said = headersFile('/', ['p/', 'embed/', 'x.csv', '_astro/']);
  const check = async (text: string, files: Record<string, string> = {}) => (await hosting.check(siteOfTexts({ '/p/': page(''), '/embed/': page(''), '/x.csv': '', '/_astro/a.js': '', '/_headers': text, ...files })))
    .map((fault) => `${fault.page}: ${fault.message}`);
  test('what is sent with each file stands in the file for hosts', async () => {
    expect(await check(said)).toEqual([]);
  });
  test.each([
    ['an unknown ending', said, { '/p/x.q7': '' }, '/p/x.q7: its ending has no content type. Add .q7 to TYPES in src/build/steps/hosting.ts.'],
    ['a room that is left out', headersFile('/', ['p/', 'embed/', '_astro/']), {}, "/x.csv: _headers gives Content-Security-Policy as nothing, not as frame-ancestors 'none'."],
    ['a header said twice', `${said}\n/x.csv\n  Cache-Control: a\n\n/x*\n  Cache-Control: b\n`, {}, '/x.csv: _headers gives it Cache-Control twice; hosts join the two. Part the paths.'],
    ['a header too many', `${said}\n/embed/*\n  X-Other: a\n`, {}, '/embed/index.html: _headers gives X-Other, and npm start does not.'],
  ])('%s is found', async (_, text, files, message) => {
    expect(await check(text, files)).toContain(message);
  });
});

describe('markup and headings', () => {
  test('valid HTML passes and a wrong nesting is found', async () => {
    expect(await faults(markup, page('<h1>x</h1><ul><li>y</li></ul>'))).toEqual([]);
    expect(await faults(markup, page('<h1>x</h1><ul><p>y</p></ul>'))).not.toEqual([]);
  });
  test('a second first heading, a skipped level, a missing title and a twin are found', async () => {
    expect(await faults(headings, page('<h1>x</h1><h2>y</h2>'))).toEqual([]);
    expect(await faults(headings, page('<h1>x</h1><h3>z</h3><h1>y</h1>'))).toEqual([
      'has 2 first-level headings; a page has one.',
      'heading "z" is level 3 after level 1: one was skipped.',
    ]);
    expect(await faults(headings, page('<h1>x</h1>', ''))).toEqual(['has no title.', 'has no description. Say in a sentence what a reader finds here.']);
    expect(await faults(headings, page('<h1>x</h1>'), { '/a/': page('<h1>x</h1>') })).toEqual([]);
    const twin = siteOfTexts({ '/a/': page('<h1>x</h1>'), '/b/': page('<h1>x</h1>') });
    expect(await headings.check(twin)).toEqual([
      { page: '/b/', message: 'has the same title as /a/: "One page".' },
      { page: '/b/', message: 'has the same description as /a/: "What it is.".' },
    ]);
  });
});
