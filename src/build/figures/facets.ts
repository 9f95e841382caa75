/**
 * Tables of figures by one thing at a time: `/figures/by/<facet>/<value>/`. A figure's own page has two parts behind
 * `/figures/`, a table three or four, so that no name of a source can meet one of these.
 */
import { certaintyOf } from '../../records/certainty.ts';
import { FORMS, KINDS, MATERIALS, RIGGINGS, type SourceRecord, STANDINGS } from '../../records/schema.ts';
import { allFigures, figureBook, type ShownFigure } from './figures.ts';
import { siteRecords } from '../records.ts';
import { sourceTypeWords } from '../source-words.ts';
import { formWords, materialWords, riggingWords, STANDING_WORDS, valueKind } from '../words.ts';

/** How figures are divided: of each figure one value, or none where it says nothing of it. */
export interface Facet {
  id: string;
  /** For headings: "Material". */
  name: string;
  /** What is said of figures without a value. */
  without: string;
  of(figure: ShownFigure): string | null;
  words(value: string): string;
  /** Values in their order; others follow by name. */
  order: readonly string[];
}

/** What the model does with a figure. */
export type FigureUse = 'feeds' | 'left-out' | 'shown' | 'not-used';

const USE_WORDS: Record<FigureUse, string> = {
  feeds: 'feeds the model', 'left-out': 'left out, with the reason', shown: 'shown, never fed', 'not-used': 'not used by the model',
};

/** What the model does with a figure: the first that is true. What the model assumes stands in the model itself. */
export function useOf({ id, source }: Pick<ShownFigure, 'id' | 'source'>): FigureUse {
  const { feeds, leftOut, methods, others } = figureBook();
  const other = others.get(id) ?? [];
  if (source === 'assumed' || feeds.has(id) || other.some(({ kind }) => kind === 'class' || kind === 'floor')) return 'feeds';
  if (leftOut.has(id)) return 'left-out';
  return methods.has(id) || other.some(({ kind }) => kind === 'rule' || kind === 'route' || kind === 'law' || kind === 'material') ? 'shown' : 'not-used';
}

const KIND_WORDS: Record<ShownFigure['kind'], string> = {
  measured: 'measured', required: 'required by a standard', rule: 'a rule', constant: 'a constant', assumed: 'assumed for the model',
};
/** How a value is meant, as an address: the words with hyphens. */
const slugOf = (words: string): string => words.replaceAll(' ', '-');
const plain = (slug: string): string => slug.replaceAll('-', ' ');
const GIVEN = ['single breaks', 'mean', 'lowest and highest', 'range', 'at least', 'at most', 'one number', 'teaching range', 'statement'].map(slugOf);

const sourceType = (figure: ShownFigure): string => siteRecords().sources.get(figure.source)?.type ?? 'no-source';
const typeWords = (type: string): string => (type === 'no-source' ? plain(type) : sourceTypeWords(type as SourceRecord['type']));

/** Ways to divide, in the order of the doors. The first four say what we think of a figure, the others what it is of. */
export const FACETS: readonly Facet[] = [
  { id: 'kind', name: 'Kind', without: '', of: ({ kind }) => kind, words: (value) => KIND_WORDS[value as ShownFigure['kind']], order: KINDS },
  { id: 'standing', name: 'Standing', without: '', of: ({ standing }) => standing, words: (value) => STANDING_WORDS[value as ShownFigure['standing']].mark, order: STANDINGS },
  {
    id: 'certainty', name: 'Certainty', without: 'not judged, because not measured',
    of: (figure) => certaintyOf(figure)?.replace(' ', '-') ?? null, words: plain, order: ['high', 'moderate', 'low', 'very-low'],
  },
  { id: 'use', name: 'Use', without: '', of: useOf, words: (value) => USE_WORDS[value as FigureUse], order: Object.keys(USE_WORDS) },
  { id: 'material', name: 'Material', without: 'not stated', of: ({ rig }) => rig.material ?? null, words: materialWords, order: MATERIALS },
  { id: 'rigging', name: 'Rigging', without: 'not stated', of: ({ rig }) => rig.method ?? null, words: riggingWords, order: RIGGINGS },
  { id: 'form', name: 'Form', without: 'not stated', of: ({ rig }) => rig.form ?? null, words: formWords, order: FORMS },
  { id: 'state', name: 'State', without: 'not stated', of: ({ rig }) => rig.state ?? null, words: plain, order: ['new', 'used', 'exposed', 'wet', 'frozen'] },
  { id: 'given', name: 'How it is given', without: '', of: ({ value }) => slugOf(valueKind(value)), words: plain, order: GIVEN },
  { id: 'source-type', name: 'Type of source', without: '', of: sourceType, words: typeWords, order: ['standard', 'legislation', 'report', 'article-journal', 'paper-conference', 'thesis', 'book', 'chapter', 'article', 'webpage', 'post'] },
];

/** Most rows on one page. A page of so many stays within the byte budget of a page of over 100 rows. */
export const MOST_ROWS = 150;

/** Address of a table, or of a later part of it. */
export function facetPath(facet: string, value: string, part = 1): string {
  return `/figures/by/${facet}/${value}/${part === 1 ? '' : `${part}/`}`;
}

/** One value of a facet, with its figures in the order of their table. */
export interface FacetValue { facet: Facet; value: string; words: string; figures: ShownFigure[]; path: string }

/** One built page of a table. */
export interface FacetPage extends Omit<FacetValue, 'figures'> {
  part: number;
  parts: number;
  /** Of the whole table; `rows` are those of this page. */
  count: number;
  rows: ShownFigure[];
}

const rank = (list: readonly string[], value: string | undefined): number => (value === undefined || !list.includes(value) ? list.length : list.indexOf(value));

/** Order of rows: kind, rigging, material, form, width, then address. */
function inOrder(a: ShownFigure, b: ShownFigure): number {
  const width = ({ rig }: ShownFigure): number => rig.widthMm ?? rig.diameterMm ?? 0;
  return rank(KINDS, a.kind) - rank(KINDS, b.kind) || rank(RIGGINGS, a.rig.method) - rank(RIGGINGS, b.rig.method) ||
    rank(MATERIALS, a.rig.material) - rank(MATERIALS, b.rig.material) || rank(FORMS, a.rig.form) - rank(FORMS, b.rig.form) ||
    width(a) - width(b) || (a.id < b.id ? -1 : 1);
}

/** Values of one facet that some figure has. */
export function valuesOfFacet(facet: Facet, figures: readonly ShownFigure[]): FacetValue[] {
  const groups = new Map<string, ShownFigure[]>();
  for (const figure of figures) {
    const value = facet.of(figure);
    if (value === null) continue;
    const members = groups.get(value);
    if (members) members.push(figure);
    else groups.set(value, [figure]);
  }
  return [...groups]
    .sort(([a], [b]) => rank(facet.order, a) - rank(facet.order, b) || (a < b ? -1 : 1))
    .map(([value, members]) => ({ facet, value, words: facet.words(value), figures: members.sort(inOrder), path: facetPath(facet.id, value) }));
}

/** The pages of one value: as many as its rows need, of nearly the same length. */
export function pagesOfValue({ figures, ...rest }: FacetValue, most = MOST_ROWS): FacetPage[] {
  const parts = Math.ceil(figures.length / most);
  const length = Math.ceil(figures.length / parts);
  return Array.from({ length: parts }, (_, i) => ({ ...rest, part: i + 1, parts, count: figures.length, rows: figures.slice(i * length, (i + 1) * length) }));
}

let cached: FacetValue[] | undefined;

/** Every value of every facet, for all figures of the site. */
export function allFacetValues(): FacetValue[] {
  cached ??= FACETS.flatMap((facet) => valuesOfFacet(facet, allFigures()));
  return cached;
}
