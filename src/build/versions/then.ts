/**
 * What an older link of a comparison can be told: for each frozen version, the answers of the prebuilt comparisons as shown
 * then, and what has changed since. Made from the frozen files and today's records; the browser fetches it only for such a link.
 */
import { EXAMPLE_RIG } from '../../links/rig-keys.ts';
import { rigWords } from '../../links/serialise-link.ts';
import type { Evidence } from '../../strength/types.ts';
import { GROUP_HEADINGS } from '../../strength/wording.ts';
import { changesBetween } from './changes.ts';
import { siteVersions } from './changes-page.ts';
import { pageEvidence } from '../comparator/page.ts';
import { contentHash } from '../content-hash.ts';
import { siteRecords } from '../records.ts';
import { dayOf, type FrozenVersion, type GoneFigure, type ListedVersion, readVersion, type ShownSpread } from './versions.ts';

/** All versions with their files below `/compare/`, oldest first, and the inputs that every prebuilt comparison has at one value. */
export interface ThenIndex { versions: { version: string; model: number; file: string }[]; fixed: Record<string, string> }

/** A row that had a number: method, group, and low, middle and high value of the attachment, kN. */
export type ThenRow = [method: string, group: string, ...spread: ShownSpread];

/** One version as an older link needs it. */
export interface ThenVersion {
  version: string;
  model: number;
  /** Day on which it was frozen, and the SHA-256 of its file. */
  day: string;
  sha256: string;
  /** Names of methods then, and today's words for groups. */
  names: Record<string, string>;
  groups: Record<string, string>;
  /** By path `<rating>/<eye>/<sling>`: the rows that had a number. */
  answers: Record<string, ThenRow[]>;
  /** Figures that were read then and have been withdrawn since, with the methods that they fed. */
  withdrawn: { id: string; on: string; why: string; methods: string[] }[];
  /** Factors and slings that read otherwise today, or are new; a factor also where its class changed. */
  factors: string[];
  slings: string[];
  /** What later models compute otherwise, in words. */
  models: { version: string; says: string }[];
}

const FIXED = new Set(['rating', 'eye', 'sling']);

export const thenIndex = (): ThenIndex => ({
  versions: [...siteThen().values()].map((told) => ({ version: told.version, model: told.model, file: thenFile(told).name })).reverse(),
  fixed: Object.fromEntries(rigWords(EXAMPLE_RIG).filter(([key]) => !FIXED.has(key))),
});

/** Methods one of whose factors lists a figure, in the order of their ids. */
function methodsFedBy({ methods, factors }: Evidence, figures: readonly string[]): string[] {
  const fed = (factor: string): boolean => factors[factor]?.from.some((figure) => figures.includes(figure)) ?? false;
  return Object.entries(methods).flatMap(([id, { links }]) => (links.some((link) => link.factors.some(fed)) ? [id] : [])).sort();
}

/**
 * One version beside what is read today.
 * @param entry its line in the index, with its words
 * @param then its frozen file
 * @param now what is read today; answers are not looked at
 * @param later versions after it, in any order
 */
export function thenVersion(entry: Pick<ListedVersion, 'version' | 'model' | 'sha256'>, then: FrozenVersion, now: FrozenVersion, later: readonly Pick<ListedVersion, 'version' | 'model' | 'words'>[]): ThenVersion {
  const { records, withdrawn } = changesBetween({ ...then, answers: {} }, { ...now, answers: {} });
  const classes = new Set(records.classes.changed.map(({ id }) => id));
  const changed = new Set([...records.factors.added, ...records.factors.changed.map(({ id }) => id)]);
  return {
    version: entry.version, model: entry.model, day: dayOf(entry.version), sha256: entry.sha256,
    names: Object.fromEntries(Object.entries(then.evidence.methods).map(([id, { name }]) => [id, name])),
    groups: { ...GROUP_HEADINGS },
    answers: Object.fromEntries(Object.entries(then.answers).map(([path, rows]) => [path, rows.flatMap(({ method, group, attachment }): ThenRow[] => (attachment ? [[method, group, ...attachment]] : []))])),
    withdrawn: withdrawn.map(({ id, on, why, read }) => ({ id, on, why, methods: methodsFedBy(then.evidence, read) })),
    factors: Object.entries(now.evidence.factors).flatMap(([id, factor]) => (changed.has(id) || classes.has(factor.class) ? [id] : [])).sort(),
    slings: [...records.slings.added, ...records.slings.changed.map(({ id }) => id)].sort(),
    models: later.filter(({ model }) => model > entry.model).flatMap(({ version, words }) => (words?.model ? [{ version, says: words.model }] : [])),
  };
}

/** Records of figures that lead elsewhere today, or were withdrawn. */
function goneToday(): Record<string, GoneFigure> {
  const { figures, withdrawn } = siteRecords();
  const elsewhere = [...figures].flatMap(([id, record]): [string, GoneFigure][] => ('what' in record ? [] : [[id, record]]));
  return Object.fromEntries([...elsewhere, ...withdrawn]);
}

let known: Map<string, ThenVersion> | null = null;

/** The versions of the site, by version, newest first. */
export function siteThen(): ReadonlyMap<string, ThenVersion> {
  if (known) return known;
  const now: FrozenVersion = { evidence: pageEvidence(), answers: {}, gone: goneToday() };
  const all = siteVersions();
  known = new Map(all.map((entry, i) => [entry.version, thenVersion(entry, readVersion(entry.version, process.cwd()), now, all.slice(0, i))]));
  return known;
}

/** A version as it is sent, under a name that changes with its content. */
export function thenFile(told: ThenVersion): { name: string; text: string } {
  const text = JSON.stringify(told);
  return { name: `then-${told.version}.${contentHash(text)}.json`, text };
}
