/** Pulls as a table of text: the columns of a series record, read back by `readTable`. */
import type { Pull } from './pulls.ts';
import type { ForceUnit } from './table-pulls.ts';

/** A cell between commas; quoted where it must be. */
const cell = (text: string): string => (/[",\n\r;\t]|^\s|\s$/.test(text) ? `"${text.replaceAll('"', '""').replace(/[\r\n]+/g, ' ')}"` : text);

/** One force as a cell: `11.2`, or `>11.2` where the part did not break. */
export const forceCell = ({ force, atLeast }: Pick<Pull, 'force' | 'atLeast'>): string => `${atLeast ? '>' : ''}${Number(force.toPrecision(12))}`;

/**
 * The file of a series: `pull,force_kN,mode,link,note`, one pull a line, a line end at its end.
 * @param notes one for each pull; fewer leave the rest empty
 */
export function writePulls(pulls: readonly Pull[], unit: ForceUnit, notes: readonly string[] = []): string {
  const rows = pulls.map((pull, i) => [String(i + 1), forceCell(pull), pull.mode, pull.link, notes[i] ?? ''].map(cell).join(','));
  return [`pull,force_${unit},mode,link,note`, ...rows, ''].join('\n');
}

/** What a reader would type: one force a line where nothing else is known, else the file of a series. */
export function pullsAsTyped(pulls: readonly Pull[], unit: ForceUnit): string {
  const isBare = pulls.every(({ mode, link }) => mode === '' && link === '');
  return isBare ? pulls.map(forceCell).join('\n') : writePulls(pulls, unit);
}
