/** What the pages of changes and the feed are made from, read once. */
import { siteRecords } from '../records.ts';
import { type FrozenVersion, type ListedVersion, listedVersions, readVersion } from './versions.ts';

let listed: ListedVersion[] | undefined;

/** Every version with what changed in it, newest first. The build runs in the project's folder. */
export function siteVersions(): ListedVersion[] {
  listed ??= listedVersions(process.cwd());
  return listed;
}

/** A version's own evidence beside that of the version before it. */
export function versionPair({ changes }: ListedVersion): { newer: FrozenVersion['evidence']; older: FrozenVersion['evidence'] | null } {
  const read = (version: string) => readVersion(version, process.cwd()).evidence;
  return { newer: read(changes.version), older: changes.since && read(changes.since.version) };
}

/** Corrections of a figure, or of any cell of its record. */
export function correctionsOf(record: string) {
  return [...siteRecords().corrections].filter(([, { figure }]) => figure.split('#')[0] === record);
}
