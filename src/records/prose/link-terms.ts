/**
 * Links the first use of each term in a text to its meaning. Nobody has to remember it: the prose is written without
 * these links, and the build puts them in. Headings, links, code, quotations and components are left alone; the longest
 * name wins; a plural counts as its word.
 */
import { mdxToMdast } from 'satteri';
import { formsOf, type Term } from '../terms.ts';

/** The names of all terms, as one pattern, longest first. */
export interface Lexicon {
  pattern: RegExp;
  /** Id of a term by any of its forms, in lower case, with single spaces. */
  ids: ReadonlyMap<string, string>;
}

/** A use of a term in a text. */
export interface Use {
  start: number;
  end: number;
  id: string;
}

interface Node {
  type: string;
  position?: { start: { offset?: number }; end: { offset?: number } };
  children?: Node[];
  name?: string | null;
  url?: string;
}

/** The one address of a term. */
export const TERM_ADDRESS = '/terms/#';

/** Parts of prose that are left alone. */
const LEFT_ALONE: ReadonlySet<string> = new Set([
  'heading', 'link', 'linkReference', 'definition', 'image', 'imageReference', 'inlineCode', 'code', 'blockquote',
  'mdxjsEsm', 'mdxTextExpression', 'mdxFlowExpression', 'yaml', 'toml',
]);
/** HTML elements in prose that are left alone; components, which begin with a capital, all are. */
const ELEMENTS_LEFT_ALONE: ReadonlySet<string> = new Set(['a', 'button', 'cite', 'code', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'kbd', 'pre', 'q', 'summary', 'svg', 'time']);

/** The plural of a form: the trade's words are all regular. A possessive has none. */
export function pluralOf(form: string): string | null {
  if (/['\u2019]s$/.test(form)) return null;
  if (/[^aeiou]y$/.test(form)) return `${form.slice(0, -1)}ies`;
  return /(?:s|x|z|ch|sh)$/.test(form) ? `${form}es` : `${form}s`;
}

const key = (words: string): string => words.toLowerCase().replace(/\u2019/g, "'").replace(/\s+/g, ' ');

/** Prepares the names of terms for finding them. */
export function lexiconOf(terms: Iterable<Pick<Term, 'id' | 'name' | 'also' | 'forms'>>): Lexicon {
  const ids = new Map<string, string>();
  for (const term of terms) {
    for (const form of formsOf(term)) {
      const plural = pluralOf(form);
      ids.set(key(form), term.id);
      if (plural && !ids.has(key(plural))) ids.set(key(plural), term.id);
    }
  }
  const words = [...ids.keys()]
    .sort((a, b) => b.length - a.length)
    .map((form) => form.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/'/g, "['\u2019]").replace(/ /g, '\\s+'));
  // Part of a longer word is no use: neither "slinging" nor "girth-hitched" nor "sling-to-sling" speaks of the term. "The maker's" does.
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}'\u2019-])(?:${words.join('|') || '(?!)'})(?![\\p{L}\\p{N}]|-\\p{L}|['\u2019](?!s(?!\\p{L}))\\p{L})`, 'giu');
  return { pattern, ids };
}

/** Uses of terms in a text that are not in `seen` yet, in order; each is added to `seen`. */
export function firstUses(text: string, { pattern, ids }: Lexicon, seen: Set<string>): Use[] {
  const uses: Use[] = [];
  for (const match of text.matchAll(pattern)) {
    const id = ids.get(key(match[0])) as string;
    if (seen.has(id)) continue;
    seen.add(id);
    uses.push({ start: match.index, end: match.index + match[0].length, id });
  }
  return uses;
}

/**
 * An MDX text with the first use of each term linked, and its own links inside the site set under `base`.
 * `seen` are terms that need no link here: the one that the text is about, and those linked before it on the page.
 * Lines stay where they are. A text that cannot be read comes back as it was: its parser says why.
 */
export function linkTerms(source: string, lexicon: Lexicon, base = '', seen: Iterable<string> = []): string {
  let tree: Node;
  try {
    tree = mdxToMdast(source) as Node;
  } catch {
    return source;
  }
  const known = new Set(seen);
  const edits: { start: number; end: number; text: string }[] = [];
  // A link that the author wrote is the term's link: no second one is added.
  visit(tree, (node) => {
    if (node.type !== 'link' || !node.url?.startsWith('/') || node.url.startsWith('//')) return true;
    if (node.url.startsWith(TERM_ADDRESS)) known.add(node.url.slice(TERM_ADDRESS.length));
    const { start, end } = place(node);
    const at = source.lastIndexOf(`](${node.url}`, end);
    if (base !== '' && at >= start) edits.push({ start: at + 2, end: at + 2, text: base });
    return true;
  });
  visit(tree, (node) => {
    if (node.type === 'text') {
      const { start, end } = place(node);
      for (const use of firstUses(source.slice(start, end), lexicon, known)) {
        const words = source.slice(start + use.start, start + use.end);
        edits.push({ start: start + use.start, end: start + use.end, text: `[${words}](${base}${TERM_ADDRESS}${use.id})` });
      }
    }
    if (LEFT_ALONE.has(node.type)) return false;
    const name = node.type.startsWith('mdxJsx') ? (node.name ?? '') : '';
    return !/^[A-Z]/.test(name) && !ELEMENTS_LEFT_ALONE.has(name);
  });
  return edits.sort((a, b) => b.start - a.start).reduce((text, edit) => text.slice(0, edit.start) + edit.text + text.slice(edit.end), source);
}

const place = (node: Node) => ({ start: node.position?.start.offset ?? 0, end: node.position?.end.offset ?? 0 });

/** Goes through a tree in the order of reading, into the children of every node for which `enter` says so. */
function visit(node: Node, enter: (node: Node) => boolean): void {
  if (enter(node)) for (const child of node.children ?? []) visit(child, enter);
}
