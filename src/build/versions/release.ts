/** What a release must satisfy before anything is written. Nothing here touches a file. */
import { isNothing, type VersionChanges, type VersionWords } from './changes.ts';
import { isDay } from '../day.ts';
import { dayOf, type VersionEntry, wordsFile } from './versions.ts';

/**
 * Name of the next version.
 * @param day yyyy-mm-dd; an input, because nothing here reads the clock
 * Throws a RangeError where the day is none, or before the newest version.
 */
export function nextVersion(day: string | undefined, index: readonly VersionEntry[]): string {
  if (!day || !isDay(day)) {
    throw new RangeError(`say the day of the version as yyyy-mm-dd, for example: npm run release -- 2026-11-25${day ? ` (got ${day})` : ''}`);
  }
  const newest = index.at(-1)?.version;
  if (newest && dayOf(newest) > day) throw new RangeError(`${day} is before the newest version ${newest}. Give that day or a later one.`);
  return `${day}.${index.filter(({ version }) => dayOf(version) === day).length + 1}`;
}

export interface Release {
  changes: VersionChanges;
  words: VersionWords | null;
  /** Whether the engine of today gives the newest version's evidence the answers that were frozen with it. */
  answersReplay: boolean;
}

/** Why a version is not released, as a whole sentence with what to do; null where nothing stands against it. */
export function refusal({ changes, words, answersReplay }: Release): string | null {
  const { version, model, since } = changes;
  const file = wordsFile(version);
  const raised = since !== null && model > since.model;
  if (since !== null && model < since.model) return `the model number goes back from ${since.model} to ${model}. It only ever goes up.`;
  if (!raised && !answersReplay) {
    return `the evidence of ${since?.version} gives other answers today than were frozen with it, and the model number is still ${model}. `
      + `If that is meant, raise MODEL in src/build/evidence.ts and say why in ${file}; otherwise the code is wrong.`;
  }
  if (raised && words?.model === undefined) {
    return `the model number goes from ${since.model} to ${model}, and nobody says why. Write ${file} with model: what is computed otherwise, and why.`;
  }
  if (!raised && words?.model !== undefined) {
    return `${file} speaks of another model, and the model number is ${model}${since ? ' as before' : ', the first'}. Raise MODEL in src/build/evidence.ts, or take the line out.`;
  }
  if (isNothing(changes)) return `nothing has changed since ${since?.version}, so there is nothing to release.`;
  return null;
}
