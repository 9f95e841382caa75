/** Text into rows of cells, for one delimiter. Nothing is interpreted here. */

/** What stands between cells. `blanks`: any run of them; `none`: one cell a line. */
export type Delimiter = 'tab' | 'semicolon' | 'comma' | 'blanks' | 'none';

export interface Cell {
  readonly text: string;
  readonly quoted: boolean;
  /** True where a blank stands between the delimiter and the cell. */
  readonly spaced: boolean;
}

export interface SplitRow {
  /** Line of the text, from 1. */
  readonly line: number;
  readonly cells: readonly Cell[];
}

/** A quote that is not closed, or text behind one. */
export interface QuoteFault {
  readonly line: number;
  /** Cell in the row, from 1. */
  readonly column: number;
  readonly text: string;
}

const MARK: Readonly<Record<Delimiter, string>> = { tab: '\t', semicolon: ';', comma: ',', blanks: ' ', none: '' };

/** Line ends as one kind, without the byte-order mark. */
export function plainText(text: string): string {
  return text.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
}

/** Cells of a line without quotes: long records have nothing else, so it goes fast. */
function unquotedCells(line: string, delimiter: Delimiter): Cell[] {
  const pieces = delimiter === 'none' ? [line] : delimiter === 'blanks' ? line.trim().split(/[ \t]+/) : line.split(MARK[delimiter]);
  return pieces.map((piece) => ({ text: piece.trim(), quoted: false, spaced: /^[ \t]/.test(piece) }));
}

/** Rows of a text. Empty lines and lines that begin with # are left out; doubled quotes inside quotes are one. */
export function splitTable(plain: string, delimiter: Delimiter): { rows: SplitRow[] } | { fault: QuoteFault } {
  const mark = MARK[delimiter];
  const isMark = (c: string): boolean => (delimiter === 'blanks' ? c === ' ' || c === '\t' : c === mark);
  const rows: SplitRow[] = [];
  let line = 1;
  let at = 0;
  while (at < plain.length) {
    const end = plain.indexOf('\n', at) < 0 ? plain.length : plain.indexOf('\n', at);
    const rest = plain.slice(at, end);
    if (rest.trim() === '' || /^\s*#/.test(rest)) {
      at = end + 1;
      line++;
      continue;
    }
    if (!rest.includes('"')) {
      rows.push({ line, cells: unquotedCells(rest, delimiter) });
      at = end + 1;
      line++;
      continue;
    }
    const first = line;
    const cells: Cell[] = [];
    if (delimiter === 'blanks') while (isMark(plain[at] ?? '')) at++;
    for (;;) {
      const from = at;
      while ((plain[at] === ' ' || plain[at] === '\t') && !isMark(plain[at] as string)) at++;
      const spaced = at > from;
      if (plain[at] === '"') {
        let text = '';
        const opened = line;
        at++;
        for (;;) {
          if (at >= plain.length) return { fault: { line: opened, column: cells.length + 1, text } };
          if (plain[at] === '"' && plain[at + 1] === '"') {
            text += '"';
            at += 2;
          } else if (plain[at] === '"') {
            at++;
            break;
          } else {
            if (plain[at] === '\n') line++;
            text += plain[at++];
          }
        }
        const behind = at;
        while (at < plain.length && plain[at] !== '\n' && !isMark(plain[at] as string)) at++;
        if (plain.slice(behind, at).trim() !== '') {
          return { fault: { line: first, column: cells.length + 1, text: plain.slice(from, at) } };
        }
        cells.push({ text, quoted: true, spaced });
      } else {
        const begin = at;
        while (at < plain.length && plain[at] !== '\n' && !isMark(plain[at] as string)) at++;
        cells.push({ text: plain.slice(begin, at).trim(), quoted: false, spaced });
      }
      if (at >= plain.length || plain[at] === '\n') break;
      at++;
      if (delimiter === 'blanks') {
        while (isMark(plain[at] ?? '')) at++;
        if (at >= plain.length || plain[at] === '\n') break;
      }
    }
    rows.push({ line: first, cells });
    at++;
    line++;
  }
  return { rows };
}
