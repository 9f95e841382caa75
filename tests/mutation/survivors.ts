/** The changes that no test notices: how one is named, and the list of those that are accepted. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';

/** A changed place in a source, as the mutation tool gives it: lines from 1, columns from 1. */
export interface Change {
  readonly fileName: string;
  readonly mutatorName: string;
  readonly replacement?: string | undefined;
  readonly location: { readonly start: Position; readonly end: Position };
}

interface Position {
  readonly line: number;
  readonly column: number;
}

/** Reasons of one file: each with the changes that it covers. */
export interface Accepted {
  readonly file: string;
  readonly why: string;
  /** As `nameOfChange` writes them; one that stands twice is accepted twice. */
  readonly changes: readonly string[];
}

const short = (text: string): string => {
  const flat = text.replace(/\s+/g, ' ').trim();
  return flat.length <= 150 ? flat : `${flat.slice(0, 147)}...`;
};

/**
 * The line as it is and as it becomes, `before => after`. Without a line number, so that the name outlives edits
 * elsewhere in the file. A change over several lines is named by its first line.
 */
export function nameOfChange(source: string, change: Change): string {
  const lines = source.split('\n');
  const { start, end } = change.location;
  const first = lines[start.line - 1] ?? '';
  const last = lines[end.line - 1] ?? '';
  const rest = start.line === end.line ? last.slice(end.column - 1) : ' ...';
  return `${short(first)} => ${short(first.slice(0, start.column - 1) + (change.replacement ?? '') + rest)}`;
}

/** The accepted survivors, as survivors.yaml lists them: `file: [{ why, changes: [...] }]`. */
export function acceptedSurvivors(): Accepted[] {
  const text = readFileSync(new URL('./survivors.yaml', import.meta.url), 'utf8');
  const listed = (parse(text) ?? {}) as Record<string, { why: string; changes: string[] }[]>;
  return Object.entries(listed).flatMap(([file, reasons]) => reasons.map((reason) => ({ file, ...reason })));
}
