/** The changes that no test notices: how one is named, and the list of those that are accepted. */
import { readFileSync } from 'node:fs';
import { parse } from 'yaml';

/** A changed place in a source, as the mutation tool gives it: lines and columns from 1. */
export interface Change {
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

const short = (text: string, most: number): string => {
  const flat = text.replace(/\s+/g, ' ').trim();
  return flat.length <= most ? flat : `${flat.slice(0, most - 3)}...`;
};

/**
 * The line, and in it what was and what it became: `line | was => became`. Without a line number, so that the name
 * outlives edits elsewhere in the file. A change over several lines stands under its first line.
 */
export function nameOfChange(source: string, { location: { start, end }, replacement = '' }: Change): string {
  const lines = source.split('\n').slice(start.line - 1, end.line);
  const line = lines[0] ?? '';
  const last = lines.length - 1;
  lines[last] = (lines[last] ?? '').slice(0, end.column - 1);
  lines[0] = (lines[0] ?? '').slice(start.column - 1);
  return `${short(line, 100)} | ${short(lines.join(' '), 60)} => ${short(replacement, 60)}`;
}

/** The accepted survivors, as survivors.yaml lists them: `file: [{ why, changes: [...] }]`. */
export function acceptedSurvivors(): Accepted[] {
  const text = readFileSync(new URL('./survivors.yaml', import.meta.url), 'utf8');
  const listed = (parse(text) ?? {}) as Record<string, { why: string; changes: string[] }[]>;
  return Object.entries(listed).flatMap(([file, reasons]) => reasons.map((reason) => ({ file, ...reason })));
}
