/** The words in which a list of changes is told. Counts are spelled out; numbers stand beside figures only. */
import type { ReadCollection, VersionChanges } from '../../build/versions/changes.ts';
import { conditionPairs, countWord, denominatorWords, STANDING_WORDS, valueWords } from '../../build/words.ts';
import type { CorrectionRecord } from '../../records/schema.ts';
import type { Figure } from '../../strength/types.ts';

/** A count in words, up to nine hundred and ninety-nine. */
export function spelled(n: number): string {
  if (n < 100 || n >= 1000) return countWord(n);
  return `${countWord(Math.floor(n / 100))} hundred${n % 100 === 0 ? '' : ` and ${countWord(n % 100)}`}`;
}

/** Words in a row: a, b and c. */
export function inARow(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** A sentence with its first letter in capitals. */
export const capital = (sentence: string): string => sentence.charAt(0).toUpperCase() + sentence.slice(1);

/** What the records of a collection are called, one and many. */
export const COLLECTION_WORDS: Readonly<Record<ReadCollection, readonly [string, string]>> = {
  figures: ['figure', 'figures'],
  factors: ['factor', 'factors'],
  classes: ['class of factors', 'classes of factors'],
  methods: ['method', 'methods'],
  slings: ['sling', 'slings'],
  gaps: ['gap', 'gaps'],
  rules: ['rule of retirement', 'rules of retirement'],
};
const counted = (n: number, [one, many]: readonly [string, string]): string => `${spelled(n)} ${n === 1 ? one : many}`;

/** Everything but the figures, which are told apart from the rest. */
export const OTHER_COLLECTIONS = ['factors', 'classes', 'methods', 'slings', 'gaps', 'rules'] as const satisfies readonly ReadCollection[];

/** A version in a few sentences, without a digit: for the list of versions and for the feed. */
export function summaryOf({ since, model, records, moved, withdrawn, answers }: VersionChanges): string[] {
  const rest = (which: (collection: ReadCollection) => number, lead: string): string[] => {
    const parts = OTHER_COLLECTIONS.flatMap((collection) => (which(collection) > 0 ? [counted(which(collection), COLLECTION_WORDS[collection])] : []));
    return parts.length > 0 ? [`${lead} ${inARow(parts)}.`] : [];
  };
  const { figures } = records;
  if (since === null) return [`The first version. The model reads ${counted(figures.added.length, COLLECTION_WORDS.figures)}.`, ...rest((one) => records[one].added.length, 'It has')];
  const told = (n: number, one: string, many: string): string[] => (n === 0 ? [] : [`${capital(counted(n, COLLECTION_WORDS.figures))} ${n === 1 ? one : many}.`]);
  const others = [
    ...told(withdrawn.length, 'was withdrawn', 'were withdrawn'),
    ...told(figures.changed.length, 'changed', 'changed'),
    ...told(moved.length, 'moved to another address', 'moved to other addresses'),
    ...told(figures.added.length, 'is newly read by the model', 'are newly read by the model'),
    ...told(figures.dropped.length, 'is no longer read', 'are no longer read'),
    ...rest((one) => records[one].added.length, 'New:'),
    ...rest((one) => records[one].changed.length, 'Changed:'),
    ...rest((one) => records[one].dropped.length, 'Gone:'),
  ];
  const shown = answers.methods.length === 0
    ? 'No shown answer moved.'
    : `Shown answers of ${counted(answers.methods.length, COLLECTION_WORDS.methods)} moved.`;
  return [
    ...(model === since.model ? [] : [`The model number went from ${spelled(since.model)} to ${spelled(model)}.`]),
    ...others, shown,
  ];
}

/** Fields as they are called where they change. */
const FIELD_WORDS: Readonly<Record<string, string>> = {
  acts: 'what it acts on', along: 'the diameter that it runs along', applies: 'where it applies', apart: 'why it is set apart', assumed: 'assumed range',
  blocks: 'what it leaves empty', bridge: 'widths carried over', bulk: 'bulk', ceiling: 'most scatter allowed', class: 'class', closed: 'whether it can be made',
  cv: 'scatter between pieces', cvDf: 'degrees of freedom of the scatter', cvInterval: 'interval of the scatter', due: 'when it falls due', eyes: 'eyes',
  figures: 'figures', floor: 'required minimum', form: 'form', from: 'figures', kind: 'kind', leftOut: 'figures left out', length: 'finished length',
  lengthsCm: 'lengths', links: 'links', material: 'material', name: 'name', nearest: 'nearest figures', oneClipError: 'one clipping error', order: 'place in lists',
  riggings: 'how tests name it', role: 'role', says: 'reason in words', seen: 'how the model reads it', shown: 'figures shown beside it', source: 'source', study: 'study',
  summary: 'summary', takes: 'what it is made from', taken: 'conditions read into figures', tau: 'spread between laboratories', tauFrom: 'origin of that spread',
  tauInterval: 'interval of that spread', times: 'multiplier', verdict: 'verdict', what: 'wording', when: 'condition', widthMm: 'width', years: 'when it falls due',
};
/** A field in words; one that is not known by its own name. */
export const fieldWords = (field: string): string => FIELD_WORDS[field] ?? field;

/** What changed in a figure, in a few words each. They hold numbers: they stand in a link to the figure. */
export function figureChangeWords(was: Figure, now: Figure, fields: readonly string[]): string[] {
  const between = (label: string, before: string, after: string): string => `${label} was ${before}, is ${after}`;
  const words: string[] = [];
  if (fields.includes('value') || fields.includes('unit')) {
    const said = ({ value, unit }: Figure): string => {
      if (value === undefined) return 'not stated';
      // Single breaks may move and leave their mean where it was.
      const each = typeof value === 'object' && 'tests' in value && value.tests.length > 1 ? ` (${value.tests.join(', ')})` : '';
      return `${valueWords(value, unit)}${each}`;
    };
    words.push(between('value', said(was), said(now)));
  }
  for (const field of fields) {
    if (field === 'value' || field === 'unit') continue;
    if (field === 'certainty') words.push(between('certainty', was.certainty ?? 'not judged', now.certainty ?? 'not judged'));
    else if (field === 'standing') words.push(between('standing', STANDING_WORDS[was.standing].mark, STANDING_WORDS[now.standing].mark));
    else if (field === 'of') words.push(between('share', was.of ? `of ${denominatorWords(was.of)}` : 'of nothing stated', now.of ? `of ${denominatorWords(now.of)}` : 'of nothing stated'));
    else if (field === 'rig') words.push(...conditionChanges(was, now));
    // What the model reads follows from the value, and is told only where the value stayed.
    else if (field !== 'seen' || fields.length === 1) words.push(`${fieldWords(field)} changed`);
  }
  return words.length > 0 ? words : ['read otherwise'];
}

/** A figure by its words, and by its cell where it has one. */
export function figureName({ id, what }: Pick<Figure, 'id' | 'what'>): string {
  const cell = id.split('#')[1];
  return cell === undefined ? what : `${what} (${cell.replaceAll('-', ' ')})`;
}

function conditionChanges(was: Figure, now: Figure): string[] {
  const before = new Map(conditionPairs(was.rig));
  const after = new Map(conditionPairs(now.rig));
  const labels = [...new Set([...before.keys(), ...after.keys()])].filter((label) => before.get(label) !== after.get(label));
  return labels.map((label) => `${label.toLowerCase()} was ${before.get(label) ?? 'not stated'}, is ${after.get(label) ?? 'not stated'}`);
}

/** Numbers below a changed field: where they are, what they were and are, to three digits. */
export function numberChanges(label: string, was: unknown, now: unknown): string[] {
  const parts = (value: unknown): [string, unknown][] => (value && typeof value === 'object' ? Object.entries(value) : []);
  const three = (x: number): string => String(Number(x.toPrecision(3)));
  if (typeof was === 'number' || typeof now === 'number') {
    const said = (value: unknown): string => (typeof value === 'number' ? three(value) : 'none');
    return was === now ? [] : [`${label} was ${said(was)}, is ${said(now)}`];
  }
  const [before, after] = [new Map(parts(was)), new Map(parts(now))];
  // Two numbers in a list are a range.
  const range = (value: unknown): string | null => (Array.isArray(value) && value.length === 2 && value.every((end) => typeof end === 'number') ? value.map(three).join(' to ') : null);
  if (range(was) ?? range(now)) return range(was) === range(now) ? [] : [`${label} was ${range(was) ?? 'none'}, is ${range(now) ?? 'none'}`];
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((key) => numberChanges(/^\d+$/.test(key) ? label : `${label}, ${key}`, before.get(key), after.get(key)));
}

/** Addresses of figures in a list of a record, whether they stand alone or with a reason. */
export function addressesIn(value: unknown): string[] {
  return Array.isArray(value) ? value.flatMap((one) => (typeof one === 'string' ? [one] : typeof one?.figure === 'string' ? [one.figure as string] : [])) : [];
}

/** Where a row stands on the page. */
const GROUP_WORDS: Readonly<Record<string, string>> = {
  maker: "the maker's", ranked: 'ranked', unranked: 'computed and not ranked', apart: 'set apart', comparison: 'for comparison', 'no-data': 'no data', 'other-sling': 'made from another sling',
};
export const groupWords = (group: string): string => GROUP_WORDS[group] ?? group;

/** Where a correction stands with its source, besides when it was reported. */
export const STATUS_WORDS: Readonly<Record<CorrectionRecord['status'], string | null>> = {
  open: 'Not reported to the source yet.',
  reported: null,
  acknowledged: 'The source agrees.',
  fixed: 'A later edition of the source prints what we use.',
};
