/** In which frozen versions of the evidence a figure stands, and since which one it says what it says today. */
import type { Figure } from '../../strength/types.ts';
import { loadEvidence, ROOT } from '../evidence.ts';
import { versionIndex, versionText } from '../versions/versions.ts';

/** What the versions say of one figure. */
export type FigureHistory =
  /** The model and its pages read it nowhere, so no version has it. */
  | { state: 'never read' }
  /** It came, or came to be read, after the newest version. */
  | { state: 'after'; newest: string | null }
  /** It stands in versions; `since` is the first that says what is said today, null where today's differs from the newest. */
  | { state: 'stands'; first: string; since: string | null; changed: string[]; newest: string };

/** The figures of one version by address. */
export interface VersionFigures { version: string; figures: Readonly<Record<string, Figure>> }

/** What must stay the same for a figure to count as unchanged. */
const said = ({ value, unit, of, rig, study, standing, certainty }: Figure): string => JSON.stringify([value, unit, of, Object.entries(rig).sort(), study, standing, certainty]);

/**
 * Reads a figure's history out of the versions, oldest first. `changed` names the versions in which it said something
 * else than in the one before.
 */
export function historyOf(address: string, today: Readonly<Record<string, Figure>>, versions: readonly VersionFigures[]): FigureHistory {
  const inVersions = versions.flatMap(({ version, figures }) => (figures[address] ? [{ version, says: said(figures[address]) }] : []));
  const [first] = inVersions;
  const last = inVersions.at(-1);
  const now = today[address];
  if (!first || !last) return now ? { state: 'after', newest: versions.at(-1)?.version ?? null } : { state: 'never read' };
  const changed = inVersions.filter(({ says }, i) => i > 0 && says !== inVersions[i - 1]?.says).map(({ version }) => version);
  const since = now && said(now) === last.says ? (changed.at(-1) ?? first.version) : null;
  return { state: 'stands', first: first.version, since, changed, newest: last.version };
}

let read: VersionFigures[] | undefined;

/** Every frozen version's figures, oldest first; each file is read once. */
export function versionFigures(root = ROOT): VersionFigures[] {
  read ??= versionIndex(root).map(({ version }) => ({ version, figures: (JSON.parse(versionText(version, root)) as { evidence: { figures: Record<string, Figure> } }).evidence.figures }));
  return read;
}

/** History of a figure of this site. */
export function siteHistory(address: string): FigureHistory {
  return historyOf(address, loadEvidence().figures, versionFigures());
}

/** A history as sentences. */
export function historyWords(history: FigureHistory): string {
  if (history.state === 'never read') return 'The frozen versions have what the model reads. It does not read this, so no version has it.';
  if (history.state === 'after') return history.newest === null ? 'No version is frozen yet.' : `It came after version ${history.newest}, the newest that is frozen.`;
  const { first, since, changed, newest } = history;
  if (since === null) return `It stands in the versions from ${first} on. After ${newest} it was changed.`;
  return changed.length === 0 ? `Unchanged since version ${since}, the first that has it.` : `It stands in the versions from ${first} on, and is unchanged since ${since}.`;
}
