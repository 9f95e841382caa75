/** Frozen versions of the evidence: what the engine read, and the answers of the prebuilt comparisons as shown. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PREBUILT_EYES, PREBUILT_RATINGS_KN } from '../links/prebuilt-path.ts';
import { EXAMPLE_RIG } from '../links/rig-keys.ts';
import { compare } from '../strength/compare.ts';
import type { Comparison, Evidence } from '../strength/types.ts';
import { ROOT } from './evidence.ts';

/** One line of `data/versions/index.json`, which only grows. */
export interface VersionEntry { version: string; model: number; sha256: string }

/** A row as shown: forces to one decimal in kN, `null` where there is none. */
export interface ShownAnswer { method: string; state: string; group: string; attachment: [string, string, string] | null; rig: [string, string, string] | null }

export interface FrozenVersion {
  evidence: Evidence;
  /** By path `<rating>/<eye>/<sling>`. */
  answers: Record<string, ShownAnswer[]>;
}

const shown = (spread: { low: number; middle: number; high: number } | null): [string, string, string] | null =>
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

export function frozenVersion(evidence: Evidence): FrozenVersion {
  return { evidence, answers: prebuiltAnswers(evidence) };
}

/** SHA-256 of a frozen file's text, hexadecimal. */
export function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

export function versionIndex(root = ROOT): VersionEntry[] {
  return JSON.parse(readFileSync(join(root, 'data/versions/index.json'), 'utf8')) as VersionEntry[];
}

/** Text of one frozen version. */
export function versionText(version: string, root = ROOT): string {
  return readFileSync(join(root, 'data/versions', `${version}.json`), 'utf8');
}
