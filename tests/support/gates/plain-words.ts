/**
 * Plain words: short sentences, and one signal word at most where a reader decides.
 *
 * Read is the running text of every page: paragraphs, list items, definitions. Left out are headings, tables, labels,
 * drawings, quotations and code. A figure, a formula, the name of a record or a source and what the reader gave count as
 * one word, whatever they print. A page that prints one record has its words among ours: there, a sentence is ours where
 * another such page has it too. A sentence without its full stop (an item of a list, the name of a link) has a length
 * but does not enter the mean.
 */
import type { HTMLElement, Node, TextNode } from 'node-html-parser';
import { brief, type Fault, type Gate, type Page, type Site } from './site.ts';

/** Words of a sentence: the mean on a page, and the longest. */
export const MEAN_WORDS = 17;
export const MOST_WORDS = 28;
/** Below so many sentences a page has no mean to speak of. */
const SENTENCES_FOR_A_MEAN = 5;
/** Longest sentences in the report. */
const SHOWN = 5;

/** One sentence, or a piece of text that ends without a full stop. */
export interface Sentence {
  text: string;
  words: number;
  /** Whether it ends as a sentence does. */
  whole: boolean;
}

/** Elements without running text of ours. */
const UNREAD: ReadonlySet<string> = new Set([
  'script', 'style', 'template', 'head', 'nav', 'table', 'blockquote', 'pre', 'svg', 'figure', 'select', 'option', 'button', 'label', 'legend',
  'input', 'textarea', 'output', 'dt', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'summary',
]);
/** Pages that print one record each, and the list of factors, which prints them all. */
const PRINTS_RECORDS = /^\/(?:(?:figures|sources|gaps|changes|embed\/figure)\/.|model\/factors\/)/;
/** Links whose words are the name of a record. */
const NAMES_A_RECORD = /\/(?:figures\/by\/|(?:methods|gaps|sources|changes)\/[a-z0-9.-]+\/|model\/factors\/#)/;
const IS_A_FIGURE = /(?:^|\/)figures\/[a-z0-9-]+\/[a-z0-9-]+\/(?:#|$)/;
/** Marks of what is a name or a quantity, no sentence: what the reader gave, versions, ticks. */
const MARKS = ['data-input', 'data-id', 'data-axis'] as const;
/** Elements that stand for one word of a sentence. */
const ONE_WORD: ReadonlySet<string> = new Set(['cite', 'q', 'code', 'math', 'time']);
/** Elements that do not break a line of text. */
const INLINE: ReadonlySet<string> = new Set(['a', 'abbr', 'b', 'bdi', 'data', 'del', 'dfn', 'em', 'i', 'ins', 'kbd', 'mark', 's', 'samp', 'small', 'span', 'strong', 'sub', 'sup', 'u', 'var', 'wbr']);
/** What stands for a figure or a name in the text that is read. */
const WORD = '\ufffc';
/** A point behind one of these ends no sentence. */
const ABBREVIATIONS = /(?:^|[\s(])(?:e\.g|i\.e|etc|cf|vs|approx|ca|no|nos|vol|ed|eds|p|pp|fig|dr|mr|mrs|st)\.$/i;
const END = /[.!?\u2026]+["'\u201d\u2019)\]]*(?=\s|$)/g;

export const plainWords: Gate = {
  name: 'plain words',
  holds: `sentences of ${MEAN_WORDS} words on average and ${MOST_WORDS} at most, one signal word a page`,
  check: (site) => site.pages.flatMap((page) => checkPage(site, page).map((message) => ({ page: page.path, message }) satisfies Fault)),
  says: longestSentences,
};

function checkPage(site: Site, page: Page): string[] {
  const sentences = ours(site, page);
  const faults = sentences
    .filter(({ words }) => words > MOST_WORDS)
    .map(({ text, words }) => `a sentence of ${words} words, ${words - MOST_WORDS} too many: "${brief(text, 160)}". Make two of it.`);
  const whole = sentences.filter((sentence) => sentence.whole);
  const mean = meanWords(whole);
  if (whole.length >= SENTENCES_FOR_A_MEAN && mean > MEAN_WORDS) {
    faults.push(`its ${whole.length} sentences have ${mean.toFixed(1)} words on average, over ${MEAN_WORDS}. Shorten the longest.`);
  }
  const boxes = page.document.querySelectorAll('.warning').length;
  if (boxes > 1) faults.push(`has ${boxes} boxes with a signal word; a page has one, at the decision. Say the rest in a sentence.`);
  return faults;
}

const meanWords = (sentences: readonly Sentence[]): number =>
  sentences.length === 0 ? 0 : sentences.reduce((sum, { words }) => sum + words, 0) / sentences.length;

/** The mean of the whole site, and its longest sentences with the first page of each: no fault, a list to work from. */
function longestSentences(site: Site): string[] {
  const seen = new Map<string, Sentence & { page: string }>();
  for (const page of site.pages) for (const sentence of ours(site, page)) if (!seen.has(sentence.text)) seen.set(sentence.text, { ...sentence, page: page.path });
  const all = [...seen.values()];
  const whole = all.filter((sentence) => sentence.whole);
  const longest = all.sort((a, b) => b.words - a.words).slice(0, SHOWN);
  return [
    `${whole.length} different sentences, ${meanWords(whole).toFixed(1)} words on average; the longest:`,
    ...longest.map(({ words, page, text }) => `${words} words at ${page}: "${brief(text, 220)}"`),
  ];
}

const counts = new WeakMap<Site, Map<string, number>>();

/** The sentences of a page that are not its record's. */
function ours(site: Site, page: Page): readonly Sentence[] {
  if (!PRINTS_RECORDS.test(page.path)) return sentencesOf(page);
  let known = counts.get(site);
  if (!known) {
    known = new Map();
    for (const printing of site.pages.filter(({ path }) => PRINTS_RECORDS.test(path))) {
      for (const text of new Set(sentencesOf(printing).map((sentence) => sentence.text))) known.set(text, (known.get(text) ?? 0) + 1);
    }
    counts.set(site, known);
  }
  const pages = known;
  return sentencesOf(page).filter(({ text }) => (pages.get(text) ?? 0) > 1);
}

const read = new WeakMap<Page, readonly Sentence[]>();

/** The sentences of a page, in order; read once. */
export function sentencesOf(page: Page): readonly Sentence[] {
  const known = read.get(page) ?? blocksOf(page.document.querySelector('body') ?? page.document).flatMap(splitSentences);
  read.set(page, known);
  return known;
}

/** The running text of a page, one text for each paragraph, item or definition. */
export function blocksOf(root: HTMLElement): string[] {
  const blocks: string[] = [];
  let open = '';
  const end = () => {
    const text = open.replace(/\s+/g, ' ').trim();
    if (text !== '') blocks.push(text);
    open = '';
  };
  let beganElement = false;
  const visit = (node: Node): void => {
    if (node.nodeType === 3) {
      const text = (node as TextNode).text;
      // Two elements without a space between them stand apart on the page: a name and what is said of it.
      if (/[\p{L}\p{N}.)]$/u.test(open) && beganElement && /^\p{Lu}/u.test(text)) end();
      open += text;
      beganElement = false;
      return;
    }
    if (node.nodeType !== 1) return;
    const element = node as HTMLElement;
    const tag = element.rawTagName?.toLowerCase() ?? '';
    if (element.hasAttribute?.('hidden') || element.classList?.contains('hidden')) return;
    beganElement = true;
    if (ONE_WORD.has(tag) || MARKS.some((mark) => element.hasAttribute?.(mark))) open += WORD;
    else if (tag === 'a' && isName(element)) open += oneWord(element);
    else if (UNREAD.has(tag)) end();
    else if (tag === 'br') open += ' ';
    else {
      const breaks = !INLINE.has(tag);
      if (breaks) end();
      for (const child of element.childNodes) visit(child);
      if (breaks) end();
    }
  };
  visit(root);
  end();
  return blocks;
}

/** A link that prints a figure, or nothing but the name of a record. */
const isName = (link: HTMLElement): boolean =>
  IS_A_FIGURE.test(link.getAttribute('href') ?? '') || (NAMES_A_RECORD.test(link.getAttribute('href') ?? '') && link.childNodes.every((node) => node.nodeType === 3));

/** A figure as one word; where it prints a sentence of its source, that sentence ends ours. */
function oneWord(figure: HTMLElement): string {
  const words = figure.childNodes.filter((node) => !(node as HTMLElement).classList?.contains('standing')).map((node) => node.text).join('').trim();
  return /[.!?]$/.test(words) ? `${WORD}.` : WORD;
}

/** Cuts a text into sentences. Decimals, initials of a phrase (e.g.) and short forms end none. */
export function splitSentences(text: string): Sentence[] {
  const sentences: Sentence[] = [];
  let from = 0;
  const take = (to: number, whole: boolean) => {
    const piece = text.slice(from, to).trim();
    from = to;
    const words = wordCount(piece);
    if (words > 0 && !isData(piece)) sentences.push({ text: piece, words, whole });
  };
  for (const match of text.matchAll(END)) {
    const to = match.index + match[0].length;
    if (ABBREVIATIONS.test(text.slice(from, match.index + 1)) && to < text.length) continue;
    // A small letter goes on with the sentence.
    if (/^\s+\p{Ll}/u.test(text.slice(to))) continue;
    take(to, true);
  }
  take(text.length, false);
  return sentences;
}

/** A list of names and counts is no sentence: at least two thirds of its words are one or the other. */
function isData(text: string): boolean {
  const words = text.split(/\s+/);
  return words.length > 3 && words.filter((word) => /^[\p{P}]*(?:\ufffc|\p{N}+)[\p{P}]*$/u.test(word)).length >= (2 / 3) * words.length;
}

/** Words of a text: whatever stands between spaces and has a letter or a digit, or stands for a figure. */
export const wordCount = (text: string): number => text.split(/\s+/).filter((word) => /[\p{L}\p{N}\ufffc]/u.test(word)).length;
