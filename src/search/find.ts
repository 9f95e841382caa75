/**
 * Finding pages by what a reader typed. Every word is looked for as it stands, as the beginning of a longer one, under the
 * other names of the same thing, and, where the site has no such word, under its nearest ones.
 */
import MiniSearch from 'minisearch';
import { edits, editsAllowed, nearWords } from './nearness.ts';
import type { Cell, Kind, Part, SearchPage } from './pages.ts';
import { textOf } from './marked.ts';
import { TRADE_WORDS } from './trade-words.ts';
import { askedWords, isEmpty, keyOf, wordsOf } from './words.ts';

/** What one unit of a search is worth under another name, one or two edits off, or as the beginning of a word. */
const WEIGHTS = { otherName: 0.7, oneEdit: 0.6, twoEdits: 0.4 } as const;
/** What the fields of a place are worth. */
const BOOST = { title: 3, head: 2, under: 0.8, text: 1, more: 0.6 } as const;
/** What is to read and to do comes before single numbers that have the same words. */
const KIND_WORTH: Readonly<Record<Kind, number>> = {
  page: 1.4, guide: 1.4, method: 1.5, material: 1.4, lesson: 1.1, term: 1.1, rule: 1.1, route: 1.2, law: 1, model: 0.9, figure: 1, source: 0.9, gap: 1, breaks: 1,
};
/** What the model assumes, and what is invented to show how pages work, come behind what somebody measured. */
const UNMEASURED_WORTH = 0.6;
const isUnmeasured = ({ path, title }: SearchPage): boolean => path.startsWith('/figures/assumed/') || title.endsWith('(invented)');
/** So few pages with all of the words are followed by those that lack one. */
const FEW = 6;
/** A page whose name is what was typed stands first. */
const NAMED = 40;
/** Most words that a name has. */
const NAME_WORDS = 7;
const SHORTEST_BEGINNING = 3;

/** A page that was found. */
export interface Found {
  page: SearchPage;
  score: number;
  /** Its parts or cells that have the words, the best first. */
  places: (Part | Cell)[];
  /** Whether the best of them says more of the words than title and sentence of the page. */
  isInPart: boolean;
  /** Words of the index that were found in it, for marking. */
  words: ReadonlySet<string>;
}

/** What a search came to. */
export interface Outcome {
  /** The best first: pages with all of the words, or with as many as any page has. */
  found: Found[];
  /** Where these are few: pages that lack one of the words. */
  some: Found[];
  /** Words as they were typed, in whose place others were looked for, and the nearest of these. */
  readAs: { typed: string; as: string }[];
  /** Words that are found nowhere. */
  missing: string[];
  /** Whether no page has all of the words. */
  isPart: boolean;
  /** Names near to what was typed, where nothing or not all was found. */
  near: string[];
}

/** An index that pages are added to, and that is asked. */
export interface SearchIndex {
  add(pages: readonly SearchPage[]): void;
  find(typed: string): Outcome;
}

interface Place { page: number; part: Part | Cell | null }
interface Fields { id: number; title: string; head: string; under: string; text: string; more: string }
/** Score by place, and the words that earned it. */
type Hits = Map<number, { score: number; words: Set<string> }>;
/** One thing that was asked for: its words as typed, its alternatives, and what it was read as where it is not known. */
interface Unit { typed: string[]; ways: { words: string[]; weight: number; isOwn: boolean }[]; as: string | null }

const isCell = (part: Part | Cell): part is Cell => 'value' in part;

/** An empty index. */
export function searchIndex(): SearchIndex {
  const pages: SearchPage[] = [];
  const places: Place[] = [];
  const vocabulary = new Set<string>();
  /** Other names by the key of each. */
  const names = new Map<string, string[][]>();
  /** Names as they are shown, by their key. */
  const shown = new Map<string, string>();
  /** Keys of each page's own names. */
  const keys: Set<string>[] = [];
  const index = new MiniSearch<Fields>({
    fields: Object.keys(BOOST),
    tokenize: (text) => text.split(' '),
    processTerm: (term) => term,
    searchOptions: { boost: BOOST, tokenize: (text) => [text] },
  });
  call(TRADE_WORDS);

  /** Joins names that mean the same. */
  function call(groups: readonly (readonly string[])[]): void {
    for (const group of groups) {
      const lists = group.map((name) => wordsOf(name)).filter((list) => list.length > 0);
      const known = lists.flatMap((list) => names.get(keyOf(list)) ?? []);
      const all = [...new Map([...known, ...lists].map((list) => [keyOf(list), list])).values()];
      for (const list of all) names.set(keyOf(list), all);
    }
  }

  /** Words of a text for the index; each is noted as known. */
  function indexed(text: string): string {
    const words = wordsOf(text, true);
    for (const word of words) vocabulary.add(word);
    return words.join(' ');
  }

  function add(more: readonly SearchPage[]): void {
    const fields: Fields[] = [];
    const place = (page: number, part: Place['part'], rest: Omit<Fields, 'id'>): void => {
      fields.push({ id: places.length, ...rest });
      places.push({ page, part });
    };
    for (const page of more) {
      const at = pages.push(page) - 1;
      const own = [page.title, ...(page.also ?? [])];
      keys.push(new Set(own.map((name) => keyOf(wordsOf(name)))));
      if (page.kind === 'term' || page.kind === 'method' || page.kind === 'material') call([own]);
      if (page.kind === 'source') call((page.also ?? []).map((number) => [number]));
      if (page.kind !== 'figure') for (const name of own) if (!shown.has(keyOf(wordsOf(name)))) shown.set(keyOf(wordsOf(name)), name);
      const under = indexed(page.title);
      const by = page.by ?? '';
      place(at, null, { title: indexed(own.join(' . ')), head: '', under: '', text: indexed(textOf(page.says ?? '')), more: indexed(`${by} ${page.more ?? ''}`) });
      for (const part of page.parts ?? []) place(at, part, { title: '', head: indexed(part.head), under, text: indexed(textOf(part.text)), more: '' });
      for (const cell of page.cells ?? []) {
        place(at, cell, {
          title: '', head: indexed(cell.at.replaceAll('-', ' ')), under: indexed(`${page.title} . ${by}`),
          text: indexed(`${cell.value} . ${cell.where ?? ''}`), more: indexed(`${cell.note ?? ''} . ${cell.more ?? ''} . ${cell.standing} . ${cell.certainty ?? ''}`),
        });
      }
    }
    index.addAll(fields);
  }

  const begins = (word: string): boolean => {
    if (vocabulary.has(word)) return true;
    for (const known of vocabulary) if (known.startsWith(word)) return true;
    return false;
  };
  const isBeginning = (word: string, isLast: boolean): boolean => !/^\d/.test(word) && (isLast || word.length >= SHORTEST_BEGINNING);
  const isKnown = (word: string, isLast: boolean): boolean => vocabulary.has(word) || (isBeginning(word, isLast) && begins(word));

  /** Places that have all of the words. */
  function placesWith(words: readonly string[], isOpen: boolean): Hits {
    let all: Hits | null = null;
    for (const [i, word] of words.entries()) {
      const prefix = isOpen && isBeginning(word, i === words.length - 1);
      const these: Hits = new Map();
      for (const { id, score, terms } of index.search(word, { prefix })) {
        const before = all?.get(id);
        if (all === null || before) these.set(id, { score: score + (before?.score ?? 0), words: new Set([...terms, ...(before?.words ?? [])]) });
      }
      all = these;
    }
    return all ?? new Map();
  }

  /** Cuts what was typed into units: the longest names first, then single words. Those that say nothing count only where there are no others. */
  function unitsOf(words: readonly string[]): Unit[] {
    const units: Unit[] = [];
    for (let from = 0; from < words.length;) {
      const unit = nameAt(words, from) ?? wordAt(words, from);
      units.push(unit);
      from += unit.typed.length;
    }
    const telling = units.filter(({ typed }) => typed.length > 1 || !isEmpty(typed[0] as string));
    return telling.length > 0 ? telling : units;
  }

  function nameAt(words: readonly string[], from: number): Unit | null {
    for (let length = Math.min(NAME_WORDS, words.length - from); length > 0; length--) {
      const typed = words.slice(from, from + length);
      const key = keyOf(typed);
      const group = names.get(key);
      if (group) return { typed, ways: waysOf(group, key), as: null };
      if (length === 1 || typed.every((word) => isKnown(word, false))) continue;
      const [near] = nearWords(key, names.keys(), Math.min(length, editsAllowed(key)));
      if (near) return { typed, ways: waysOf(names.get(near.word) as string[][], near.word, near.off), as: shown.get(near.word) ?? (names.get(near.word)?.find((list) => keyOf(list) === near.word) ?? []).join(' ') };
    }
    return null;
  }

  /** Each name of a group. That which is meant is worth most; written in one or in two, it is the name as the site parts it. */
  function waysOf(group: readonly string[][], meant: string, off = 0): Unit['ways'] {
    const worth = off === 0 ? 1 : off === 1 ? WEIGHTS.oneEdit : WEIGHTS.twoEdits;
    return group.map((words) => (keyOf(words) === meant ? { words, weight: worth, isOwn: off === 0 } : { words, weight: worth * WEIGHTS.otherName, isOwn: false }));
  }

  function wordAt(words: readonly string[], from: number): Unit {
    const word = words[from] as string;
    const own = { words: [word], weight: 1, isOwn: true };
    if (isKnown(word, from === words.length - 1)) return { typed: [word], ways: [own], as: null };
    const near = nearWords(word, new Set([...vocabulary, ...names.keys()]));
    const nearest = near.filter(({ off }) => off === near[0]?.off);
    const ways = nearest.flatMap(({ word: one, off }) => {
      const group = names.get(one);
      return group ? waysOf(group, one, off) : [{ words: [one], weight: off === 1 ? WEIGHTS.oneEdit : WEIGHTS.twoEdits, isOwn: false }];
    });
    const first = nearest[0]?.word;
    return { typed: [word], ways: [own, ...ways], as: first === undefined ? null : (shown.get(first) ?? first) };
  }

  function hitsOf({ ways }: Unit): Hits {
    const best: Hits = new Map();
    for (const { words, weight, isOwn } of ways) {
      for (const [id, { score, words: found }] of placesWith(words, isOwn)) {
        const before = best.get(id);
        if (before) for (const word of found) before.words.add(word);
        if (!before) best.set(id, { score: score * weight, words: found });
        else before.score = Math.max(before.score, score * weight);
      }
    }
    return best;
  }

  /** Whether a unit is a short word that is still being typed: it lifts pages that have it, and leaves out none. */
  const beginsOnly = ({ typed }: Unit, words: readonly string[]): boolean => {
    const [word = ''] = typed;
    return typed.length === 1 && words.length > 1 && word === words.at(-1) && word.length <= SHORTEST_BEGINNING && !/\p{N}/u.test(word) && !vocabulary.has(word) && begins(word);
  };

  function find(typed: string): Outcome {
    const words = askedWords(typed);
    if (words.length === 0) return { found: [], some: [], readAs: [], missing: [], isPart: false, near: [] };
    const units = unitsOf(words);
    const hits = units.map(hitsOf);
    const begun = new Set(units.length > 1 ? units.filter((unit) => beginsOnly(unit, words)) : []);
    const isBegun = (unit: Unit): boolean => begun.has(unit);
    const met = new Map<number, { score: number; count: number; words: Set<string> }>();
    for (const [i, each] of hits.entries()) {
      for (const [id, { score, words: found }] of each) {
        const before = met.get(id) ?? { score: 0, count: 0, words: new Set<string>() };
        for (const word of found) before.words.add(word);
        met.set(id, { score: before.score + score, count: before.count + (isBegun(units[i] as Unit) ? 0 : 1), words: before.words });
      }
    }
    const most = Math.max(0, ...[...met.values()].map(({ count }) => count));
    const all = units.length - units.filter(isBegun).length;
    const asked = new Set([keyOf(words), ...(units.length === 1 ? (units[0] as Unit).ways.map((way) => keyOf(way.words)) : [])]);
    const withWords = (wanted: number): Found[] => {
      const groups = Map.groupBy([...met].filter(([, { count }]) => count === wanted).map(([id, hit]) => ({ ...(places[id] as Place), ...hit })), ({ page }) => page);
      return [...groups].map(([at, members]): Found => {
        const page = pages[at] as SearchPage;
        members.sort((a, b) => b.score - a.score);
        const [best] = members as [(typeof members)[number]];
        const isNamed = [...(keys[at] as Set<string>)].some((key) => asked.has(key));
        return {
          page,
          score: best.score * KIND_WORTH[page.kind] * (isUnmeasured(page) ? UNMEASURED_WORTH : 1) + (isNamed ? NAMED : 0),
          places: members.flatMap(({ part }) => part ?? []),
          isInPart: best.part !== null && !isCell(best.part),
          words: new Set(members.flatMap((member) => [...member.words])),
        };
      }).sort((a, b) => b.score - a.score || (a.page.path < b.page.path ? -1 : 1));
    };
    const found = withWords(most);
    const shownAlready = new Set(found.map(({ page }) => page));
    const some = most > 1 && found.length < FEW ? withWords(most - 1).filter(({ page }) => !shownAlready.has(page)) : [];
    const missing = units.filter((_, i) => hits[i]?.size === 0).map((unit) => unit.typed.join(' '));
    return {
      found,
      some,
      readAs: units.flatMap(({ typed: as, as: read }, i) => (read !== null && (hits[i]?.size ?? 0) > 0 ? [{ typed: as.join(' '), as: read }] : [])),
      missing,
      isPart: most < all && found.length > 0,
      near: missing.length > 0 || found.length === 0 ? nearNames(missing.length > 0 ? missing : [words.join(' ')]) : [],
    };
  }

  /** Names of pages that come near to what is found nowhere: at most four. */
  function nearNames(missing: readonly string[]): string[] {
    const near: { name: string; off: number }[] = [];
    for (const typed of missing) {
      const key = keyOf(typed.split(' '));
      if (key.length < 3) continue;
      const most = Math.max(2, Math.floor(key.length / 3));
      for (const [other, name] of shown) {
        const off = edits(key, other, most);
        if (off <= most && off < other.length) near.push({ name, off });
      }
    }
    return [...new Set(near.sort((a, b) => a.off - b.off || (a.name < b.name ? -1 : 1)).map(({ name }) => name))].slice(0, 4);
  }

  return { add, find };
}
