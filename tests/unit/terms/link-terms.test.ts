/** Terms are linked where a text first uses them, and nowhere else. The expected texts are written by hand. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { mdxToMdast } from 'satteri';
import { describe, expect, test } from 'vitest';
import { cutAtTerms, linkedBefore, readTermBook } from '../../../src/build/terms.ts';
import { lexiconOf, linkTerms, pluralOf } from '../../../src/records/prose/link-terms.ts';
import { ROOT } from '../../support/step.ts';
import { filesUnder } from '../../support/tree.ts';

const term = (id: string, name: string, also: string[] = [], forms?: string[]) => ({ id, name, also, forms });
const LEXICON = lexiconOf([
  term('sling', 'sling'), term('eye', 'eye'), term('hitch', 'hitch'), term('girth-hitch', 'girth hitch', ["lark's foot"]), term('hmpe', 'HMPE'),
  term('bend', 'bend', [], []), term('ring-bend', 'ring bend', ['water knot']), term('double-fishermans', "double fisherman's"), term('maker', 'maker'),
  term('lot', 'lot', ['batch'], ['batch']), term('assembly', 'assembly'),
]);
const linked = (text: string, base = '', seen: string[] = []) => linkTerms(text, LEXICON, base, seen);

describe('the first use of a term', () => {
  test.each([
    ['is linked once', 'A sling is a sling.', 'A [sling](/terms/#sling) is a sling.'],
    ['is linked in its plural', 'Slings, batches and assemblies.', '[Slings](/terms/#sling), [batches](/terms/#lot) and [assemblies](/terms/#assembly).'],
    ['is linked under another name', 'A water knot.', 'A [water knot](/terms/#ring-bend).'],
    ['keeps its capitals', 'An hmpe Sling.', 'An [hmpe](/terms/#hmpe) [Sling](/terms/#sling).'],
    ['is linked across the end of a line', 'A girth\nhitch.', 'A [girth\nhitch](/terms/#girth-hitch).'],
    ['is linked in a list, in bold and in an element of HTML', '- a **sling**\n- an <b>eye</b>', '- a **[sling](/terms/#sling)**\n- an <b>[eye](/terms/#eye)</b>'],
    ['is linked in a table', '| part |\n|---|\n| eye |', '| part |\n|---|\n| [eye](/terms/#eye) |'],
    ['is the longest name: a hitch in a girth hitch is none', 'A girth hitch is a hitch.', 'A [girth hitch](/terms/#girth-hitch) is a [hitch](/terms/#hitch).'],
    ['is the longest name again, when that has its link already', 'A girth hitch. A girth hitch.', 'A [girth hitch](/terms/#girth-hitch). A girth hitch.'],
    ['is found in a possessive', "The maker's eye.", "The [maker](/terms/#maker)'s [eye](/terms/#eye)."],
    ['is found with a typographic apostrophe', 'A double fisherman\u2019s.', 'A [double fisherman\u2019s](/terms/#double-fishermans).'],
    ['is no part of a longer word', 'Slinging, an eyelet, girth-hitched, sling-to-sling.', 'Slinging, an eyelet, girth-hitched, sling-to-sling.'],
    ['is not linked where the term names no form', 'A bend in a lot of wire.', 'A bend in a lot of wire.'],
    ['is not a heading', '## The sling\n\nA sling.', '## The sling\n\nA [sling](/terms/#sling).'],
    ['is not inside a link', 'See [the sling](/x/). A sling.', 'See [the sling](/x/). A [sling](/terms/#sling).'],
    ['is not inside a link of HTML', 'See <a href="/x/">the sling</a>. A sling.', 'See <a href="/x/">the sling</a>. A [sling](/terms/#sling).'],
    ['is not code', 'Write `sling`.\n\n```\nsling\n```\n', 'Write `sling`.\n\n```\nsling\n```\n'],
    ['is not an expression or an attribute', 'A {"sling"} <b title="sling">x</b>', 'A {"sling"} <b title="sling">x</b>'],
    ['is not inside a component', '<Warning hazard="A sling">A sling.</Warning>', '<Warning hazard="A sling">A sling.</Warning>'],
    ['is not in a quotation', '> A sling.\n\nA <q>sling</q>, a <cite>sling</cite>.', '> A sling.\n\nA <q>sling</q>, a <cite>sling</cite>.'],
    ['is not in front matter', '---\ntitle: sling\n---\n\nA sling.', '---\ntitle: sling\n---\n\nA [sling](/terms/#sling).'],
    ['is the link that the author wrote, wherever that stands', 'A sling. Its [sling](/terms/#sling).', 'A sling. Its [sling](/terms/#sling).'],
  ])('%s', (_, text, expected) => {
    expect(linked(text)).toBe(expected);
  });

  test('is not linked where the text is about it, or a text above has linked it', () => {
    expect(linked('A sling in an eye.', '', ['sling'])).toBe('A sling in an [eye](/terms/#eye).');
  });
  test('leads under the folder that the site is served from, like every link inside the site', () => {
    expect(linked('A sling, [here](/gaps/), [there](https://example.org/x/).', '/folder')).toBe('A [sling](/folder/terms/#sling), [here](/folder/gaps/), [there](https://example.org/x/).');
  });
  test('a text that cannot be read comes back as it was', () => {
    expect(linked('A sling <b>')).toBe('A sling <b>');
  });
  test('lines stay where they are, so that a fault in a text is told at its place', () => {
    const text = 'A sling.\n\nAn eye\nand a girth\nhitch.\n';
    expect(linked(text).split('\n')).toHaveLength(text.split('\n').length);
  });
});

test.each([['sling', 'slings'], ['hitch', 'hitches'], ['batch', 'batches'], ['assembly', 'assemblies'], ['eye', 'eyes'], ["lark's foot", "lark's foots"], ["double fisherman's", null]])('the plural of %s is %s', (form, plural) => {
  expect(pluralOf(form)).toBe(plural);
});

test('a plain text is cut at first uses', () => {
  expect(cutAtTerms('A sling, a sling.', LEXICON, new Set())).toEqual([{ words: 'A ' }, { words: 'sling', id: 'sling' }, { words: ', a sling.' }]);
});

/** The project's own texts, linked, read back by the parser: an account of the links that knows nothing of how they were made. */
describe('in every text of the project', () => {
  interface Node { type: string; url?: string; name?: string | null; value?: string; children?: Node[]; position?: { start: { offset?: number }; end: { offset?: number } } }
  const book = readTermBook(ROOT);
  const ids = new Set(book.terms.map(({ id }) => id));
  const texts = filesUnder('content').filter((path) => path.endsWith('.mdx')).map((path) => {
    const source = readFileSync(join(ROOT, path), 'utf8');
    const text = linkTerms(source, book.lexicon, '', linkedBefore(path, book));
    const links: { id: string; inside: string[] }[] = [];
    const walk = (node: Node, inside: string[]): void => {
      const id = node.type === 'link' ? /^\/terms\/#(.*)$/.exec(node.url ?? '')?.[1] : undefined;
      if (id !== undefined) links.push({ id, inside });
      for (const child of node.children ?? []) walk(child, [...inside, node.type, node.name ?? '']);
    };
    walk(mdxToMdast(text) as Node, []);
    return { path, source, text, links };
  });

  test('there are links', () => {
    expect(texts.length).toBeGreaterThan(100);
    expect(texts.reduce((sum, { links }) => sum + links.length, 0)).toBeGreaterThan(300);
  });
  test('a term has one link at most', () => {
    expect(texts.flatMap(({ path, links }) => links.filter(({ id }, i) => links.findIndex((other) => other.id === id) !== i).map(({ id }) => `${path}: ${id}`))).toEqual([]);
  });
  test('no link stands in a link, a heading, code, a quotation or a component', () => {
    const wrong = /^(?:link|heading|code|inlineCode|blockquote|a|h\d|cite|q|[A-Z].*)$/;
    expect(texts.flatMap(({ path, links }) => links.filter(({ inside }) => inside.some((type) => wrong.test(type))).map(({ id }) => `${path}: ${id}`))).toEqual([]);
  });
  test('every link leads to a term', () => {
    expect(texts.flatMap(({ path, links }) => links.filter(({ id }) => !ids.has(id)).map(({ id }) => `${path}: ${id}`))).toEqual([]);
  });
  test('no term links to itself', () => {
    expect(texts.flatMap(({ path, links }) => links.filter(({ id }) => path === `content/terms/${id}.mdx`).map(() => path))).toEqual([]);
  });
  test('taking the new links out gives the text as it was written', () => {
    for (const { path, source, text } of texts) {
      const out = (words: string) => words.replace(/\[([^\]]+)\]\(\/terms\/#[a-z-]+\)/g, '$1');
      expect(out(text), path).toBe(out(source));
    }
  });
});
