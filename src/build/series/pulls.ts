/** Reads the pulls of a series from the CSV beside its record, with a place in the file for each fault. */
import type { Pull } from '../../break-tests/pulls.ts';
import { type Column, readTable } from '../../break-tests/read-table.ts';
import { type Cell, splitTable } from '../../break-tests/split-table.ts';
import type { ColumnUnit } from '../../break-tests/column-units.ts';
import { didYouMean } from '../../records/nearest-name.ts';

/** Units of force that the heading of the forces may name. */
export type PullUnit = Extract<ColumnUnit, 'kN' | 'N' | 'daN' | 'kgf' | 'lbf'>;
const PULL_UNITS: readonly string[] = ['kN', 'N', 'daN', 'kgf', 'lbf'] satisfies PullUnit[];

export interface NotedPull extends Pull { readonly note: string }

/** Pulls in the order of the file, in the printed unit. */
export interface SeriesPulls {
  readonly unit: PullUnit;
  readonly pulls: readonly NotedPull[];
  /** Where the force of each stands: line and column of the file, from 1. */
  readonly places: readonly { readonly line: number; readonly col: number }[];
}

/** One fault of a CSV: line and column of the file from 1, what is wrong, and what to do. */
export interface PullsFault { readonly line: number; readonly col: number; readonly problem: string; readonly got?: string; readonly advice: string }

/** Columns of words; the forces stand in a column `force_<unit>`. */
const WORDS = ['pull', 'mode', 'link', 'note'] as const;
const HEADING = 'Write the heading pull,force_kN,mode,link,note; the unit is the one that is printed.';

/** Column of a file at which the cell of a line begins, from 1. */
function colOf(csv: string, line: number, cell: number): number {
  const text = csv.replace(/^\ufeff/, '').split(/\r?\n/)[line - 1] ?? '';
  let at = 0;
  let quoted = false;
  for (let seen = 1; seen < cell && at < text.length; at++) {
    if (text[at] === '"') quoted = !quoted;
    else if (text[at] === ',' && !quoted) seen++;
  }
  return at + 1;
}

/** The names of the columns, or the first fault of the heading. */
function headingFault(head: readonly Cell[], place: (cell: number) => Pick<PullsFault, 'line' | 'col'>): PullsFault | null {
  const names = head.map(({ text }) => text);
  const seen = new Set<string>();
  for (const [i, name] of names.entries()) {
    const plain = name.startsWith('force_') ? 'force' : name;
    if (seen.has(plain)) return { ...place(i + 1), problem: 'the column stands twice', got: name, advice: 'Keep one of them.' };
    seen.add(plain);
    if (plain === 'force' && !PULL_UNITS.includes(name.slice('force_'.length)))
      return { ...place(i + 1), problem: 'names no unit of force', got: name, advice: `Write force_ and one of ${PULL_UNITS.join(', ')}.` };
    if (plain !== 'force' && !(WORDS as readonly string[]).includes(name))
      return { ...place(i + 1), problem: 'is no column of a series', got: name, advice: didYouMean(name, [...WORDS, 'force_kN'], HEADING) };
  }
  return seen.has('force') && seen.has('pull') ? null : { ...place(1), problem: `has no column ${seen.has('force') ? 'pull' : 'of forces'}`, got: names.join(','), advice: HEADING };
}

/**
 * The pulls, or every fault that can be told at once. A pull in which the part in question did not break is written as a
 * lower limit: `>12.3`. Pulls are numbered from 1 in their order.
 */
export function readPulls(csv: string): { series: SeriesPulls } | { faults: PullsFault[] } {
  const plain = csv.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  const place = (line: number) => (cell: number) => ({ line, col: colOf(plain, line, cell) });
  const split = splitTable(plain, 'comma');
  const [top] = 'rows' in split ? split.rows : [];
  if ('rows' in split && !top) return { faults: [{ line: 1, col: 1, problem: 'is empty', advice: HEADING }] };
  if (top) {
    const fault = headingFault(top.cells, place(top.line));
    if (fault) return { faults: [fault] };
  }
  const names = (top?.cells ?? []).map(({ text }) => text);
  const force = names.findIndex((name) => name.startsWith('force_'));
  const reading = readTable(plain, { delimiter: 'comma', decimal: '.', textColumns: names.flatMap((_, i) => (i === force ? [] : [i + 1])) });
  if ('stop' in reading) {
    const { row, column, cell, message } = reading.stop;
    // The reader's own words name row and column once more; the check prints them in front.
    const [, problem = message, advice = ''] = /: (.*?[.:]) (.*)$/s.exec(message) ?? [];
    return { faults: [{ ...place(row)(column), problem: problem.replace(/[.:]$/, ''), got: cell === '' ? 'nothing' : cell, advice }] };
  }
  const { columns, lines } = reading.table;
  const wordsOf = (name: string): readonly string[] => {
    const column = columns[names.indexOf(name)] as Column | undefined;
    return column?.kind === 'text' ? column.values : [];
  };
  const forces = columns[force] as Column;
  if (forces.kind !== 'numbers') return { faults: [{ ...place(lines[0] ?? 1)(force + 1), problem: 'has no force', advice: 'Write one number a row.' }] };
  const [labels, modes, links, notes] = WORDS.map(wordsOf) as [readonly string[], readonly string[], readonly string[], readonly string[]];
  const faults: PullsFault[] = [];
  const pulls = lines.map((line, i): NotedPull => {
    const value = forces.values[i] ?? null;
    if (value === null || !(value > 0))
      faults.push({ ...place(line)(force + 1), problem: value === null ? 'the pull has no force' : 'a force is above 0', got: String(value ?? 'nothing'), advice: 'Write the force at which the pull ended, or leave the pull out and say so in the record’s note.' });
    if (labels[i] !== String(i + 1))
      faults.push({ ...place(line)(names.indexOf('pull') + 1), problem: 'pulls are numbered from 1 in their order', got: labels[i] || 'nothing', advice: `Write ${i + 1}.` });
    return { force: value ?? 0, atLeast: forces.atLeast[i] ?? false, mode: modes[i] ?? '', link: links[i] ?? '', note: notes[i] ?? '' };
  });
  return faults.length > 0 ? { faults } : { series: { unit: names[force]?.slice('force_'.length) as PullUnit, pulls, places: lines.map((line) => place(line)(force + 1)) } };
}
