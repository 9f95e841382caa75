/**
 * What a reader finds who types as readers type. What has to stand first is a fact of the trade or of language, written
 * here by hand: a lark's foot is a girth hitch, webbing is tape, nylon is a polyamide.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { searchIndex } from '../../../src/search/find.ts';
import { textOf } from '../../../src/search/marked.ts';
import { allPages, first, look, paths } from './site-index.ts';

/** Typed, named first, and why. */
const FIRST: readonly (readonly [typed: string, first: string, why: string])[] = [
  ['girht hitch', 'Girth hitch', 'two letters swapped'],
  ['girth hich', 'Girth hitch', 'a letter missing'],
  ['girthhitch', 'Girth hitch', 'written as one word'],
  ['larks foot', 'Girth hitch', 'another name of the hitch, common practice'],
  ['Lark\u2019s-foot', 'Girth hitch', 'the same with a curly apostrophe and a hyphen'],
  ['lark foot', 'Girth hitch', 'the same in the singular'],
  ['cow hitch', 'Girth hitch', 'the same tie, common practice'],
  ['overhnad', 'Overhand', 'two letters swapped'],
  ['webing', 'Tape', 'webbing is tape; a doubled letter single'],
  ['webbbing', 'Tape', 'a letter too many'],
  ['water knto', 'Ring bend', 'a water knot is a ring bend'],
  ['grapevine knot', "Double fisherman's", 'another name of the bend, common practice'],
  ['double fishermen', "Double fisherman's", 'a letter wrong'],
  ['figure of eight', 'Figure eight', 'as it is called in Britain'],
  ['bowlin on a bight', 'Bowline on a bight', 'a letter missing'],
  ['aramide', 'Aramid', 'as it is spelled in French and German'],
  ['polyamid', 'Nylon (polyamide)', 'nylon is a polyamide'],
  ['nyon', 'Nylon (polyamide)', 'a letter missing'],
  ['polyster', 'Polyester', 'a letter missing'],
  ['UHMWPE', 'HMPE', 'the same fibre by its molecular weight'],
  ['slcd', 'Camming device', 'spring-loaded camming device'],
  ['cam', 'Camming device', 'the usual short form'],
  ['karabiner', 'Connector', 'German spelling, usual in Britain'],
  ['carabeener', 'Connector', 'two edits in a long word'],
  ['quicklink', 'Quick link', 'written as one word'],
  ['ferule', 'Ferrule', 'a doubled letter single'],
  ['tolerence bound', 'Tolerance bound', 'a letter wrong'],
  ['fall facter', 'Fall factor', 'a letter wrong'],
  ['protectve layer', 'Protective layer', 'a letter missing'],
  ['retire wen', 'Has the sling to go?', 'a word too short for tolerance is left out'],
  ['how old', 'Has the sling to go?', 'age is what retires a sling first'],
  ['my sling is old', 'Has the sling to go?', 'the words of the first door'],
  ['frayed', 'Fuzz, or a place worn thin', 'a frayed sling has fuzz'],
  ['law uk', 'What the law says: United Kingdom', 'the usual short form'],
  ['1 in 20', 'One-in-twenty low value', 'in digits'],
  ['safe', 'Caution', 'who asks whether it is so reads the caution first'],
  ['re-sling', 'Who can replace the sling', 'to re-sling is to replace the sling'],
];

test.each(FIRST)('"%s" finds %s first (%s)', (typed, named) => {
  expect(first(typed)).toBe(named);
});

test('American and British spellings find the same', () => {
  for (const [one, other] of [['aluminium', 'aluminum'], ['fibre', 'fiber'], ['high-modulus polyethylene fibre', 'high-modulus polyethylene fiber'], ['carabiner', 'karabiner']] as const) {
    expect(paths(one, 10).length, one).toBeGreaterThan(0);
    expect(paths(other, 10)).toEqual(paths(one, 10));
  }
});

// EN 566 asks 22 kN of a new sling.
test.each(['22 kN', '22kN', '22\u00a0KN', '22.0 kN', '22,0 kN', '22 kilonewtons'])('"%s" finds what a standard asks of a sling', (typed) => {
  expect(paths(typed, 99)).toContain('/figures/en-566/loop-minimum/');
  expect(paths(typed, 99)).toEqual(paths('22 kN', 99));
});

test('a number with its unit finds that number and no other', () => {
  for (const [typed, has] of [['22 kN', /\b22(?:\.0)?\b/], ['11 mm', /\b11\b/], ['hmpe 10mm', /\b10\b/]] as const) {
    const { found } = look(typed);
    expect(found.length, typed).toBeGreaterThan(0);
    for (const { page, places } of found) expect(`${page.title} ${page.says ?? ''} ${JSON.stringify(places)}`, `${typed}: ${page.path}`).toMatch(has);
  }
  // A share of 0.58 is 58 percent: by hand.
  const shares = allPages.flatMap(({ cells }) => cells ?? []).filter(({ more }) => more?.includes('58 %'));
  for (const { value } of shares) expect(value).toMatch(/0\.58|58/);
});

test('numbers and short words are meant as they are typed', () => {
  for (const typed of ['222kn', '22.7319 kN', 'eyq', 'kq']) expect(look(typed).readAs, typed).toEqual([]);
  expect(look('222kn').found).toEqual([]);
});

test('a word that the site has is never read as another', () => {
  for (const typed of ['tape', 'cord', 'wire', 'knot', 'bend', 'eye', 'fall', 'nut']) expect(look(typed).readAs, typed).toEqual([]);
});

test('typing finds more as it goes on: each beginning of a name leads to it', () => {
  for (let length = 4; length <= 'girth hitch'.length; length++) expect(paths('girth hitch'.slice(0, length), 8), 'girth hitch'.slice(0, length)).toContain('/methods/girth-hitch/');
});

test('a standard is found by its number', () => {
  for (const typed of ['EN 566', 'en566', 'EN-566']) expect(paths(typed, 1), typed).toEqual(['/sources/en-566/']);
});

test('what is found nowhere is said word for word, and near names are offered', () => {
  const outcome = look('girth zzqxv');
  expect(outcome.missing).toEqual(['zzqxv']);
  expect(outcome.isPart).toBe(true);
  expect(outcome.found.length).toBeGreaterThan(0);
  // Two edits from ferrule, one too many for seven letters to be read as it.
  expect(look('fxrryle').found).toEqual([]);
  expect(look('fxrryle').near).toContain('Ferrule');
});

test('where few pages have all of the words, those that lack one follow', () => {
  const { found, some } = look('cam sling replacement');
  expect(found.length).toBeLessThan(6);
  expect(some.map(({ page }) => page.path)).toContain('/replace/');
  expect(some.filter(({ page }) => found.some((one) => one.page === page))).toEqual([]);
});

test('a word of a form or of its results leads to the page that has them', () => {
  // Grubbs' test of an outlier and the distribution of Weibull are words of the analysis; a currency is one of costs.
  for (const [typed, path] of [['Grubbs', '/breaks/analyse/'], ['Weibull', '/breaks/analyse/'], ['currency', '/replace/cost/']] as const) expect(paths(typed), typed).toContain(path);
});

test('every page is found by its name among the first three', () => {
  const lost = allPages.filter(({ title, path }) => !paths(title).includes(path)).map(({ title, path }) => `${path}: ${title}`);
  expect(allPages.length).toBeGreaterThan(600);
  expect(lost).toEqual([]);
});

test('any string whatever gives an answer, in order, with finite scores', () => {
  const small = searchIndex();
  small.add(allPages.filter(({ kind }) => kind !== 'figure' && kind !== 'page'));
  const typed = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 200 }), fc.string({ unit: 'grapheme', maxLength: 80 }), fc.stringMatching(/^[.*+?^${}()|[\]\\<>&"'%#-]{0,40}$/),
    fc.constantFrom('a'.repeat(100_000), '1 '.repeat(5000), '🧗 '.repeat(500), 'Шлинг', 'スリング', 'حبل', '__proto__ constructor toString', '<b>x</b>', '%00', '\u0000', "1'1'1", 'kN', '1e999 kN', `${'9'.repeat(400)} kN`),
  );
  fc.assert(fc.property(typed, (text) => {
    const { found } = small.find(text);
    for (const [i, { score, page }] of found.entries()) {
      if (!Number.isFinite(score) || score > (found[i - 1]?.score ?? Number.POSITIVE_INFINITY) || page.path === '') return false;
    }
    return true;
  }), { numRuns: 150 });
});

test('an index that gets its pages in two parts finds what one gets at once', () => {
  const parts = searchIndex();
  const middle = Math.floor(allPages.length / 2);
  parts.add(allPages.slice(0, middle));
  parts.add(allPages.slice(middle));
  for (const typed of ['girth hitch', 'hmpe wire', '22 kN']) expect(parts.find(typed).found.slice(0, 10).map(({ page }) => page.path), typed).toEqual(paths(typed, 10));
});

test('no sentence that is shown has a number outside its figure or its source', () => {
  const shown = allPages.flatMap(({ kind, title, says = '', parts = [], path }) =>
    (kind === 'figure' || kind === 'source' ? [] : [title, says, ...parts.flatMap(({ head, text }) => [head, text])]).map((text) => ({ path, text })));
  const bare = shown.filter(({ text }) => /\p{N}/u.test(text.replace(/\{[^{}]*\}/g, ''))).map(({ path, text }) => `${path}: ${textOf(text).slice(0, 80)}`);
  expect(bare).toEqual([]);
});
