/** Bare quantities planted in every kind of text that reaches a page, and texts that only look like them. \u00a7 marks the place. */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../src/records/check-project.ts';
import { findQuantities } from '../../src/records/prose/quantity.ts';
import { SOUND, unmarked } from './project.ts';

const NBSP = '\u00a0';
const THIN = '\u202f';

/** Front matter, then a body, as a page of prose. */
const mdx = (body: string, front = 'title: Basket') => `---\n${front}\n---\nimport Fig from '../x.astro';\n\n${body}\n`;

/** [what is planted, file, text, words that are reported] */
const PLANTED: readonly [string, string, string, string][] = [
  // MDX
  ['plain text', 'content/a.mdx', mdx('It broke at \u00a731 kN.'), '31 kN'],
  ['a number in bold', 'content/a.mdx', mdx('It broke at **\u00a731** kN.'), '31 kN'],
  ['a unit in emphasis', 'content/a.mdx', mdx('It broke at \u00a731 *kN*.'), '31 kN'],
  ['a no-break space', 'content/a.mdx', mdx(`It broke at \u00a731${NBSP}kN.`), '31 kN'],
  ['a narrow no-break space', 'content/a.mdx', mdx(`It broke at \u00a731${THIN}kN.`), '31 kN'],
  ['an entity for the space', 'content/a.mdx', mdx('It broke at \u00a731&nbsp;kN.'), '31 kN'],
  ['no space at all', 'content/a.mdx', mdx('It broke at \u00a731kN.'), '31kN'],
  ['a table', 'content/a.mdx', mdx('| force | what |\n|---|---|\n| \u00a731 kN | wire |'), '31 kN'],
  ['a quotation', 'content/a.mdx', mdx('> It broke at \u00a731 kN.'), '31 kN'],
  ['a list', 'content/a.mdx', mdx('- wire\n- \u00a731 kN'), '31 kN'],
  ['a heading', 'content/a.mdx', mdx('## Wires of \u00a73.5 mm'), '3.5 mm'],
  ['the words of a picture', 'content/a.mdx', mdx('![a sling at \u00a731 kN](a.png)'), '31 kN'],
  ['the title of a link', 'content/a.mdx', mdx('[test](http://example.org/ "broke at \u00a731 kN")'), '31 kN'],
  ['code in a line', 'content/a.mdx', mdx('It broke at `\u00a731 kN`.'), '31 kN'],
  ['an attribute', 'content/a.mdx', mdx('<Note title="broke at \u00a731 kN">Wire.</Note>'), '31 kN'],
  ['an attribute over two lines', 'content/a.mdx', mdx('<Note\n  kind="a"\n  title="broke at \u00a731 kN"\n>\n\nWire.\n\n</Note>'), '31 kN'],
  ['an entity in an attribute', 'content/a.mdx', mdx('Text \u00a7<b title="broke at 31&nbsp;kN">wire</b>.'), '31 kN'],
  ['an escaped letter in the words of a picture', 'content/a.mdx', mdx('Text \u00a7![a\\_sling at 31 kN](a.png)'), '31 kN'],
  ['an expression over lines in a quotation', 'content/a.mdx', mdx("> \u00a7{fn(\n>   '31 kN',\n> )}"), '31 kN'],
  ['a footnote', 'content/a.mdx', mdx('Text.[^1]\n\n[^1]: Broke at \u00a731 kN.'), '31 kN'],
  ['raw HTML of a page', 'src/pages/a.astro', '<p set:html={"<b>\u00a731 kN</b>"} />', '31 kN'],
  ['an expression in an attribute', 'content/a.mdx', mdx("<Note title={'broke at \u00a731 kN'}>Wire.</Note>"), '31 kN'],
  ['the content of a component', 'content/a.mdx', mdx('<Note>\n\nIt broke at \u00a731 kN.\n\n</Note>'), '31 kN'],
  ['an expression', 'content/a.mdx', mdx("It broke at {'\u00a731 kN'}."), '31 kN'],
  ['a number in an expression', 'content/a.mdx', mdx('It broke at {\u00a731} kN.'), '31 kN'],
  ['a template', 'content/a.mdx', mdx('It broke at {`\u00a731 kN`}.'), '31 kN'],
  ['a constant of the page', 'content/a.mdx', mdx("export const force = '\u00a731 kN';"), '31 kN'],
  ['an element in an expression', 'content/a.mdx', mdx('{true && <b>broke at \u00a731 kN</b>}'), '31 kN'],
  ['a range', 'content/a.mdx', mdx('It broke at \u00a75-10 kN.'), '5-10 kN'],
  ['a range with a dash', 'content/a.mdx', mdx('It broke at \u00a75\u201310 kN.'), '5\u201310 kN'],
  ['a range in words', 'content/a.mdx', mdx('It broke at \u00a75 to 10 kN.'), '5 to 10 kN'],
  ['spaced thousands', 'content/a.mdx', mdx('It broke at \u00a737 000 N.'), '37 000 N'],
  ['thousands with a comma', 'content/a.mdx', mdx('It broke at \u00a78,300 lbf.'), '8,300 lbf'],
  ['a decimal comma', 'content/a.mdx', mdx('It broke at \u00a712,5 kN.'), '12,5 kN'],
  ['a percentage', 'content/a.mdx', mdx('It kept \u00a760 % of it.'), '60 %'],
  ['a percentage without a space', 'content/a.mdx', mdx('It kept \u00a760% of it.'), '60%'],
  ['a percentage in words', 'content/a.mdx', mdx('It kept \u00a760 per cent of it.'), '60 per cent'],
  ['a percentage in one word', 'content/a.mdx', mdx('It kept \u00a7sixty percent of it.'), 'sixty percent'],
  ['a unit spelled out', 'content/a.mdx', mdx('It broke at \u00a731 kilonewtons.'), '31 kilonewtons'],
  ['a unit in American spelling', 'content/a.mdx', mdx('A wire of \u00a73.5 millimeters.'), '3.5 millimeters'],
  ['pounds-force', 'content/a.mdx', mdx('It broke at \u00a7900 pounds-force.'), '900 pounds-force'],
  ['number words', 'content/a.mdx', mdx('It broke at \u00a7twelve kilonewtons.'), 'twelve kilonewtons'],
  ['number words with a hyphen', 'content/a.mdx', mdx('Slings of \u00a7twenty-two kN.'), 'twenty-two kN'],
  ['years in words', 'content/a.mdx', mdx('Retire it after \u00a7ten years.'), 'ten years'],
  ['a life as an adjective', 'content/a.mdx', mdx('It has a \u00a7ten-year life.'), 'ten-year'],
  ['a width as an adjective', 'content/a.mdx', mdx('Take a \u00a78-mm sling.'), '8-mm'],
  ['degrees', 'content/a.mdx', mdx('It melts at \u00a7145 \u00b0C.'), '145 \u00b0C'],
  ['a ratio', 'content/a.mdx', mdx('Bent at \u00a72:1.'), '2:1'],
  ['money', 'content/a.mdx', mdx('It costs \u00a7\u20ac 40.'), '\u20ac 40'],
  ['a letter far into a line with wide letters', 'content/a.mdx', mdx('\u{1f9d7} \u00e9\u00e9: \u00a731 kN.'), '31 kN'],
  // Front matter
  ['a title', 'content/a.mdx', mdx('Text.', 'title: Slings of \u00a722 kN'), '22 kN'],
  ['a quoted description', 'content/a.mdx', mdx('Text.', 'title: x\ndescription: "Wires of \u00a73.5 mm and less"'), '3.5 mm'],
  ['an entry of a list', 'content/a.mdx', mdx('Text.', 'aims:\n  - know what \u00a760 % means'), '60 %'],
  ['a folded text', 'content/a.mdx', mdx('Text.', 'summary: >\n  Retire it after\n  \u00a7ten years.'), 'ten years'],
  // Astro
  ['text of a page', 'src/pages/a.astro', '---\nconst a = 1;\n---\n<p>It broke at \u00a731 kN.</p>', '31 kN'],
  ['bold text of a page', 'src/pages/a.astro', '<p>It broke at <b>\u00a731</b> kN.</p>', '31 kN'],
  ['an entity of a page', 'src/pages/a.astro', '<p>It broke at \u00a731&nbsp;kN.</p>', '31 kN'],
  ['an attribute of a page', 'src/pages/a.astro', '<Page title="Slings of \u00a722 kN" />', '22 kN'],
  ['the words of a picture on a page', 'src/pages/a.astro', '<img src="a.png" alt="a wire of \u00a73.5 mm">', '3.5 mm'],
  ['an expression of a page', 'src/pages/a.astro', "<p>It broke at {'\u00a731 kN'}.</p>", '31 kN'],
  ['a template of a page', 'src/pages/a.astro', '---\nconst a = 1;\n---\n<p>{`\u0024{a} broke at \u00a731 kN`}</p>', '31 kN'],
  ['a constant in the script of a page', 'src/pages/a.astro', "---\nconst text = 'about \u00a722 kN';\n---\n<p>{text}</p>", '22 kN'],
  ['text of a choice', 'src/pages/a.astro', '---\nconst a = 1;\n---\n<p>{a ? <i>broke at \u00a731 kN</i> : null}</p>', '31 kN'],
  ['a list on a page', 'src/pages/a.astro', '<ul>{[1].map((x) => <li>{x} broke at \u00a731 kN</li>)}</ul>', '31 kN'],
  ['a sum of texts on a page', 'src/pages/a.astro', '<p>{"\u00a714 " + "kN"}</p>', '14 kN'],
  ['a sum apart from its unit', 'src/pages/a.astro', '<p>{"at " + \u00a714} kN</p>', '14 kN'],
  ['a sum in a script', 'src/pages/a.astro', "---\nconst a = 'at ' + ('\u00a714' + ' ') + 'kN';\n---\n<p>{a}</p>", '14 kN'],
  ['a sum in prose', 'content/a.mdx', mdx("At {'\u00a714 ' + 'kN'}."), '14 kN'],
  // Shares, multiples and factors of a strength
  ['a share that is lost', 'content/a.mdx', mdx('A knot \u00a7loses a third.'), 'loses a third'],
  ['a share by which it falls', 'content/a.mdx', mdx('It \u00a7falls by about a quarter.'), 'falls by about a quarter'],
  ['half a strength', 'content/a.mdx', mdx('It has \u00a7half its strength.'), 'half its strength'],
  ['a share of a strength', 'content/a.mdx', mdx('It breaks at \u00a7two thirds of the straight strength.'), 'two thirds of the straight strength'],
  ['a share as one sign', 'content/a.mdx', mdx('It has \u00a7\u00be of strength.'), '\u00be of strength'],
  ['a comparison', 'content/a.mdx', mdx('It is \u00a7three times stronger.'), 'three times stronger'],
  ['a comparison in digits', 'content/a.mdx', mdx('It has \u00a72.5 times the strength.'), '2.5 times the strength'],
  ['a double', 'content/a.mdx', mdx('It is \u00a7twice as strong.'), 'twice as strong'],
  ['a multiple with a letter', 'content/a.mdx', mdx('It is \u00a74x that.'), '4x'],
  ['a multiple with a sign', 'content/a.mdx', mdx('It is \u00a71.5\u00d7 that.'), '1.5\u00d7'],
  ['a decimal share', 'content/a.mdx', mdx('It keeps \u00a70.61 of straight.'), '0.61 of'],
  ['a factor', 'content/a.mdx', mdx('By a \u00a7factor 1.7.'), 'factor 1.7'],
  ['a factor in words', 'content/a.mdx', mdx('By a \u00a7factor of two.'), 'factor of two'],
  ['a power of ten', 'content/a.mdx', mdx('At \u00a71.2e3 N.'), '1.2e3 N'],
  // Keys that name a unit
  ['a key in kilonewtons', 'content/a.mdx', mdx('Text.', 'maxKn: \u00a714'), '14 kN'],
  ['a key with a hyphen', 'content/a.mdx', mdx('Text.', 'wire-mm: \u00a73.5'), '3.5 mm'],
  ['a list under a key with a unit', 'content/a.mdx', mdx('Text.', 'lifeYears: [\u00a710]'), '10 years'],
  // Modules that speak to readers
  ['a string of the wording', 'src/strength/wording.ts', "export const LINE: string = 'up to \u00a714 kN';\n", '14 kN'],
  ['a reason of the comparison', 'src/strength/compare.ts', "const a = <T,>(x: T): T => x;\nexport const why = a('thinner than \u00a73.5 mm');\n", '3.5 mm'],
  ['a word of the pages', 'src/build/words.ts', "export const w: Record<string, string> = { pin: 'a pin of \u00a7ten millimetres' };\n", 'ten millimetres'],
  ['a template of a component', 'src/components/comparator/a.ts', 'export const f = (x: string): string => `${x} loses \u00a730 %`;\n', '30 %'],
  // Islands and drawings
  ['text of a component', 'src/islands/a.tsx', 'export function A() {\n  return <p>It broke at \u00a731 kN.</p>;\n}\n', '31 kN'],
  ['a number apart from its unit', 'src/islands/a.tsx', "export const A = () => <p>\u00a731{' '}kN</p>;\n", '31 kN'],
  ['a label of a component', 'src/islands/a.tsx', 'export const A = () => <input aria-label="up to \u00a730 kN" />;\n', '30 kN'],
  ['a string of a component', 'src/islands/a.tsx', "const hint: string = 'about \u00a715 kN';\nexport const A = () => <p>{hint}</p>;\n", '15 kN'],
  ['an escaped space', 'src/islands/a.tsx', "export const A = () => <p>{'\u00a715\\u00a0kN'}</p>;\n", '15 kN'],
  ['words of a drawing', 'src/drawings/a.tsx', 'export const A = () => <svg><text x="3">\u00a73.5 mm</text></svg>;\n', '3.5 mm'],
];

/** Texts that hold numbers and are no quantity, or have their origin. */
const CLEAN: readonly [string, string, string][] = [
  ['a figure', 'content/a.mdx', mdx('It broke at <Fig id="lab-a/straight" />.')],
  ['a figure with a text inside', 'content/a.mdx', mdx('It broke at <Fig id="lab-a/straight">31 kN</Fig>.')],
  ['a figure in front of a unit', 'content/a.mdx', mdx('It broke at <Fig id="lab-a/straight" /> kN.')],
  ['a standard and its year', 'content/a.mdx', mdx('It follows EN 566:2017, clause 3.3, and EN 12275.')],
  ['a year and a decade', 'content/a.mdx', mdx('In 2010, and in the 1990s.')],
  ['a plain count', 'content/a.mdx', mdx('Of 20 rigs, about 19 would break above it; one in twenty below.')],
  ['an address', 'content/a.mdx', mdx('[test](http://example.org/31-kN/5mm)')],
  ['the name of a source', 'content/a.mdx', mdx('See <cite>Tests on 10 mm slings</cite>.')],
  ['a date', 'content/a.mdx', mdx('Checked <time datetime="2026-01-05">5 days into 2026</time>.')],
  ['an idiom', 'content/a.mdx', mdx('One day it will be known.')],
  ['a time of day', 'content/a.mdx', mdx('At 12:30.')],
  ['letters that are no unit', 'content/a.mdx', mdx('Type 5 S, 4 x 4, size 3 and letter 2 b.')],
  ['a count of rigs', 'content/a.mdx', mdx('Half break below the middle; a third of the rigs were new; flexed ten times.')],
  ['half a sling', 'content/a.mdx', mdx('It is half the sling, and keeps half of the sling outside.')],
  ['a clause with a point', 'content/a.mdx', mdx('See clause 0.3 of EN 566.')],
  ['factors of a class', 'content/a.mdx', mdx('Factors of one class share their scatter.')],
  ['a factor by name', 'content/a.mdx', mdx('The factor of the basket, and a third sling.')],
  ['keys without a unit', 'content/a.mdx', mdx('Text.', 'order: 3\nitem: 4\ncolumn: 5')],
  ['a module that does not speak to readers', 'src/strength/chain.ts', "export const a = '14 kN';\n"],
  ['a computed number of the wording', 'src/strength/wording.ts', 'export const f = (x: number): string => `${x} kN`;\n'],
  ['a sum of numbers', 'src/pages/a.astro', '<p>{1 + 2} kN</p>'],
  ['a comment', 'content/a.mdx', mdx('Text {/* 31 kN */}.')],
  ['an id in front matter', 'content/a.mdx', mdx('Text.', 'order: 3\nfigures: [lab-b/table#under-3-years]')],
  ['class, id and address of a page', 'src/pages/a.astro', '<a class="w-5 mm" id="a-31kN" href="/compare/12/?length=60cm">a</a>'],
  ['style and script of a page', 'src/pages/a.astro', '<p>a</p><style>p { width: 30 mm; font-size: 80%; }</style><script>const a = "31 kN";</script>'],
  ['comments of a page', 'src/pages/a.astro', '---\n// 31 kN\n---\n<p>a<!-- 31 kN --></p>'],
  ["the reader's own input", 'src/pages/a.astro', '<p>Your sling: <span data-input>HMPE 10 mm</span></p>'],
  ['a computed number', 'src/islands/a.tsx', 'export const A = ({ x }: { x: number }) => <p>{x.toFixed(1)} kN, {`\u0024{x} kN`}</p>;\n'],
  ['an axis', 'src/islands/a.tsx', 'export const A = () => <svg viewBox="0 0 30 10"><g data-axis><text>30 kN</text></g></svg>;\n'],
  ['the outline of a drawing', 'src/drawings/a.tsx', "const paths = { a: 'M25 46V28C10 22 9 8 17 8s11 10 10 20V46' };\nexport const A = () => <path d={paths.a} transform=\"rotate(20 5 m)\" />;\n"],
  ['imports, types and comments', 'src/islands/a.tsx', "import x from './5 mm.ts';\ntype A = '31 kN';\n/* 31 kN */\nexport const y: A | undefined = x;\n"],
];

const prose = (file: string, text: string) => checkProject({ ...SOUND, [file]: text }).filter((fault) => fault.at.file === file).map((fault) => `${fault.at.line}:${fault.at.col} ${fault.rule} ${fault.problem}`);

describe('quantities in prose', () => {
  test.each(PLANTED)('%s (%s) is found', (_what, file, text, words) => {
    const { text: plain, marks } = unmarked(text);
    const [mark] = marks as [{ line: number; col: number }];
    expect(prose(file, plain)).toEqual([`${mark.line}:${mark.col} prose "${words}" is a quantity without an origin`]);
  });

  test('all of them are found in one run, in five kinds of file', () => {
    expect(new Set(PLANTED.map(([, file, text]) => (file.endsWith('.mdx') ? (text.indexOf('\u00a7') < text.indexOf('\n---\n') ? 'front matter' : 'mdx') : file.split('.')[1])))).toEqual(new Set(['mdx', 'front matter', 'astro', 'tsx', 'ts']));
    const files = Object.fromEntries(PLANTED.map(([, file, text], i) => [file.replace(/\ba\./, `a-${i}.`), unmarked(text).text]));
    const found = checkProject({ ...SOUND, ...files }).filter((fault) => fault.rule === 'prose');
    expect(new Set(found.map((fault) => fault.at.file)).size).toBe(PLANTED.length);
    expect(found.length).toBe(PLANTED.length);
  });

  test.each(CLEAN)('%s (%s) is let through', (_what, file, text) => {
    expect(prose(file, text)).toEqual([]);
  });

  test('several in one sentence are told one by one', () => {
    expect(findQuantities('Between 5 kN and 7.5 kN, 60 % of it, at 3,5 mm; ten years.').map((q) => q.text)).toEqual(['5 kN', '7.5 kN', '60 %', '3,5 mm', 'ten years']);
  });

  test('carriage returns and tabs do not move the place', () => {
    expect(prose('content/a.mdx', '---\r\ntitle: x\r\n---\r\n\r\n- a\r\n- \tbroke at 31 kN\r\n')).toEqual(['6:13 prose "31 kN" is a quantity without an origin']);
    expect(prose('content/a.mdx', '---\r\ntitle: at 31 kN\r\n---\r\n\r\nText.\r\n')).toEqual(['2:11 prose "31 kN" is a quantity without an origin']);
  });
});
