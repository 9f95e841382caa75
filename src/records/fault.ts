/** One fault: where it is, what is wrong, what to do. Every check of the project speaks in these. */

/** Place in a file; line and column count from 1, the column in UTF-16 units as editors do. */
export interface Position {
  file: string;
  line: number;
  col: number;
}

/** What a rule says of one fault. Sentences without their closing full stop in `problem`, with it in `advice`. */
export interface Finding {
  at: Position;
  /** Field, figure or word that the fault is about. */
  subject: string;
  /** What is wrong, as the end of a sentence that starts with the subject. */
  problem: string;
  /** What stood there. */
  got?: string | undefined;
  /** What to do, as a whole sentence. */
  advice: string;
}

export interface Fault extends Finding {
  /** Name of the rule that found it. */
  rule: string;
  /** A warning is printed and never fails the check. */
  warning?: boolean;
}

/** Prints a value as it may stand in a message: short, on one line. */
export function shown(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text =
    typeof value === 'string' || typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  const line = text.replace(/\s+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 57)}...` : line;
}

/** `<file>:<line>:<col> <subject>: <what is wrong> (got <x>). <What to do.>` */
export function formatFault(fault: Fault): string {
  const { at, subject, problem, got, advice } = fault;
  const tail = got === undefined ? '' : ` (got ${got})`;
  return `${at.file}:${at.line}:${at.col} ${subject}: ${problem}${tail}. ${advice}`;
}

/** By file, then line, then column, then words: the order of every list of faults. */
export function byPlace(a: Finding, b: Finding): number {
  if (a.at.file !== b.at.file) return a.at.file < b.at.file ? -1 : 1;
  return a.at.line - b.at.line || a.at.col - b.at.col || (a.subject < b.subject ? -1 : a.subject > b.subject ? 1 : 0);
}

/**
 * The whole report: faults grouped by rule with their count, each group by file
 * and line, warnings last, and a closing count.
 */
export function formatReport(faults: readonly Fault[]): string {
  const lines: string[] = [];
  for (const warning of [false, true]) {
    const part = faults.filter((f) => Boolean(f.warning) === warning);
    const rules = [...new Set(part.map((f) => f.rule))].sort();
    for (const rule of rules) {
      const group = part.filter((f) => f.rule === rule).sort(byPlace);
      lines.push(`${rule} (${count(group.length, warning ? 'warning' : 'fault')})`);
      for (const fault of group) lines.push(`  ${formatFault(fault)}`);
      lines.push('');
    }
  }
  const bad = faults.filter((f) => !f.warning).length;
  const soft = faults.length - bad;
  lines.push(`${count(bad, 'fault')}${soft ? `, ${count(soft, 'warning')}` : ''}`);
  return lines.join('\n');
}

function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}
