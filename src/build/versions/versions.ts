/** Frozen versions of the evidence: what the engine read, and the answers of the prebuilt comparisons as shown. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PREBUILT_EYES, PREBUILT_RATINGS_KN } from '../../links/prebuilt-path.ts';
import { EXAMPLE_RIG } from '../../links/rig-keys.ts';
import type { Records } from '../../records/read.ts';
import type { Moved, Split, Withdrawn } from '../../records/schema.ts';
import { compare } from '../../strength/compare.ts';
import type { Comparison, Evidence } from '../../strength/types.ts';
import { changesBetween, parseVersionWords, type VersionChanges, type VersionWords } from './changes.ts';
import { ROOT } from '../evidence.ts';

/** One line of `data/versions/index.json`, which only grows. */
export interface VersionEntry { version: string; model: number; sha256: string }

/** Low, middle and high value: forces to one decimal in kN. */
export type ShownSpread = [string, string, string];
/** A row as shown; `null` where there is no force. */
export interface ShownAnswer { method: string; state: string; group: string; attachment: ShownSpread | null; rig: ShownSpread | null }

/** A figure whose address leads elsewhere, or that was withdrawn. */
export type GoneFigure = Moved | Split | Withdrawn;

export interface FrozenVersion {
  evidence: Evidence;
  /** By path `<rating>/<eye>/<sling>`. */
  answers: Record<string, ShownAnswer[]>;
  /** Records of figures that had moved or been withdrawn by then, by id. The first version has none. */
  gone?: Record<string, GoneFigure>;
}

const shown = (spread: { low: number; middle: number; high: number } | null): ShownSpread | null =>
  spread && [spread.low.toFixed(1), spread.middle.toFixed(1), spread.high.toFixed(1)];

/** The rows of a comparison to the last digit shown. */
export function shownAnswers(comparison: Comparison): ShownAnswer[] {
  return comparison.rows.map((row) => ({ method: row.method, state: row.state, group: row.group, attachment: shown(row.attachment), rig: shown(row.rig) }));
}

/** Every prebuilt comparison of an evidence, as shown. */
export function prebuiltAnswers(evidence: Evidence): Record<string, ShownAnswer[]> {
  const answers: Record<string, ShownAnswer[]> = {};
  for (const ratingKn of PREBUILT_RATINGS_KN) for (const eye of PREBUILT_EYES) for (const sling of Object.keys(evidence.slings)) {
    answers[`${ratingKn}/${eye}/${sling}`] = shownAnswers(compare(evidence, { ...EXAMPLE_RIG, ratingKn, eye, sling }));
  }
  return answers;
}

/** Records of figures that lead elsewhere or were withdrawn, in the order of their ids. */
export function goneFigures({ moved, withdrawn }: Pick<Records, 'moved' | 'withdrawn'>): Record<string, GoneFigure> {
  const all = [...moved, ...withdrawn].map(([id, { data }]): [string, GoneFigure] => [id, data]);
  return Object.fromEntries(all.sort(([a], [b]) => (a < b ? -1 : 1)));
}

export function frozenVersion(evidence: Evidence, gone: Record<string, GoneFigure>): FrozenVersion {
  return { evidence, answers: prebuiltAnswers(evidence), gone };
}

/** SHA-256 of a frozen file's text, hexadecimal. */
export function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/** Day of a version, yyyy-mm-dd. */
export function dayOf(version: string): string {
  return version.slice(0, 10);
}

/** All versions, oldest first; none before the first is frozen. */
export function versionIndex(root = ROOT): VersionEntry[] {
  const file = join(root, 'data/versions/index.json');
  return existsSync(file) ? (JSON.parse(readFileSync(file, 'utf8')) as VersionEntry[]) : [];
}

/** Text of one frozen version. */
export function versionText(version: string, root = ROOT): string {
  return readFileSync(join(root, 'data/versions', `${version}.json`), 'utf8');
}

/** One frozen version. */
export function readVersion(version: string, root = ROOT): FrozenVersion {
  return JSON.parse(versionText(version, root)) as FrozenVersion;
}

/** Place of the words about a version, in the project. */
export const wordsFile = (version: string): string => `data/changes/${version}.yaml`;
/** Place of a version's generated list. */
export const listFile = (version: string): string => `data/changes/${version}.json`;

/** What people say of a version; null where they say nothing. Throws a RangeError with every fault of the file. */
export function readVersionWords(version: string, root = ROOT): VersionWords | null {
  const file = wordsFile(version);
  return existsSync(join(root, file)) ? parseVersionWords(file, readFileSync(join(root, file), 'utf8')) : null;
}

/** A version beside the one before it. */
export interface ListedVersion extends VersionEntry { changes: VersionChanges; words: VersionWords | null }

/** Every version with what changed in it, newest first: worked out from the frozen files. */
export function listedVersions(root = ROOT): ListedVersion[] {
  let older: FrozenVersion | null = null;
  const listed: ListedVersion[] = [];
  for (const entry of versionIndex(root)) {
    const newer = readVersion(entry.version, root);
    listed.unshift({ ...entry, changes: changesBetween(older, newer), words: readVersionWords(entry.version, root) });
    older = newer;
  }
  return listed;
}

/** Text of a generated list, as it is kept beside the words about the version. */
export function listText(changes: VersionChanges): string {
  return `${JSON.stringify(changes, null, 1)}\n`;
}
