/** Reading YAML with positions. What YAML lets pass but would change silently is a fault here. */
import { isAlias, isMap, isPair, isScalar, isSeq, LineCounter, parseDocument, Scalar, visit, type Node } from 'yaml';
import type { Fault, Position } from './fault.ts';
import { positionsOf } from './positions.ts';

/** Keys and indexes from the top of a record to one of its values. */
export type Path = readonly (string | number)[];

export interface ParsedYaml {
  data: unknown;
  /** Where the value at a path stands; a path that is absent gives its nearest parent. */
  at(path?: Path): Position;
  /** Where the key of a path stands. */
  keyAt(path: Path): Position;
  /** The scalar at a path as written, or nothing. */
  written(path: Path): string | undefined;
  faults: Fault[];
}

const SYNTAX: Record<string, [string, string]> = {
  DUPLICATE_KEY: ['stands twice in the same record', 'Keep one of them.'],
  TAB_AS_INDENT: ['a tab stands where YAML wants spaces', 'Indent with two spaces.'],
  MULTIPLE_DOCS: ['a second document starts here', 'Write one record a file, without a line of three hyphens.'],
  MISSING_CHAR: ['a quote or bracket is not closed', 'Close it on the same value.'],
  BLOCK_AS_IMPLICIT_KEY: [
    'a second colon, or an indent too many',
    'Quote a text that contains a colon and a space; check the indentation.',
  ],
};

/** Parses one record. `offset` moves positions, for front matter inside a longer text given as `whole`. */
export function parseYaml(file: string, text: string, whole: string = text, offset = 0): ParsedYaml {
  const faults: Fault[] = [];
  const place = positionsOf(file, whole);
  const where = (at: number) => place(at + offset);
  const document = parseDocument(text, { lineCounter: new LineCounter(), prettyErrors: false });
  const seen = new Set<number>();
  for (const error of document.errors) {
    const position = where(error.pos[0]);
    if (seen.has(position.line)) continue; // a broken line gives several errors; the first says it
    seen.add(position.line);
    const [problem, advice] = SYNTAX[error.code] ?? [
      error.message.toLowerCase().replace(/\.$/, ''),
      'Correct the YAML.',
    ];
    const word = /^[^\s:,[\]{}]+/.exec(text.slice(error.pos[0]))?.[0];
    faults.push({
      rule: 'yaml',
      at: position,
      subject: error.code === 'DUPLICATE_KEY' && word ? word : 'YAML',
      problem,
      advice,
    });
  }
  for (const match of text.matchAll(/^[ ]*\t+/gm)) {
    const position = where(match.index + match[0].indexOf('\t'));
    if (seen.has(position.line)) continue;
    seen.add(position.line);
    const [problem, advice] = SYNTAX['TAB_AS_INDENT'] as [string, string];
    faults.push({ rule: 'yaml', at: position, subject: 'YAML', problem, advice });
  }

  const root = document.contents as Node | null;
  const find = (path: Path): { key: Node | undefined; value: Node | undefined; whole: boolean } => {
    let value: Node | undefined = root ?? undefined;
    let key: Node | undefined;
    for (const step of path) {
      if (isMap(value)) {
        const pair = value.items.find((item) => isScalar(item.key) && String(item.key.value) === String(step));
        if (!pair) return { key, value, whole: false };
        key = pair.key as Node;
        value = (pair.value as Node | null) ?? key;
      } else if (isSeq(value) && value.items[Number(step)] !== undefined) {
        value = value.items[Number(step)] as Node;
        key = value;
      } else return { key, value, whole: false };
    }
    return { key, value, whole: true };
  };
  const start = (node: Node | undefined) => where(node?.range?.[0] ?? 0);

  visit(document, {
    Alias: (_key, node) => {
      faults.push({
        rule: 'yaml',
        at: start(node),
        subject: `*${node.source}`,
        problem: 'is a reference inside YAML',
        advice: 'Write the value out, so that a record reads alone.',
      });
    },
  });
  if (!document.errors.length) {
    visit(document, (_key, node, ancestors) => {
      if (!isScalar(node) || node.type !== Scalar.PLAIN) return;
      const source = node.source ?? '';
      const parent = ancestors.at(-1);
      if (isPair(parent) && parent.key === node) return;
      const key = isPair(parent) && isScalar(parent.key) ? String(parent.key.value) : 'value';
      if (/^\d{4}-\d{1,2}-\d{1,2}$/.test(source)) {
        faults.push({
          rule: 'yaml-dates',
          at: start(node),
          subject: key,
          problem: 'a date without quotes is read as a moment in time by some readers',
          got: source,
          advice: `Write "${source}", in quotes.`,
        });
      } else if (typeof node.value === 'number' && String(node.value) !== source) {
        // Only figures are printed somewhere: elsewhere a lost zero is no loss, but 1e3 or 0x10 still is a riddle.
        const figure = file.startsWith('data/figures/');
        const kept = figure ? ancestors.some((a) => isMap(a) && a.has('asPrinted')) : /^-?\d+\.\d+$/.test(source);
        if (!kept) {
          faults.push({
            rule: 'yaml-numbers',
            at: start(node),
            subject: key,
            problem: `YAML reads this as ${node.value} and loses how it was printed`,
            got: source,
            advice: figure ? `Write ${node.value}, and beside it asPrinted: "${source}".` : `Write ${node.value}.`,
          });
        }
      }
    });
  }
  let data: unknown;
  try {
    let alias = false;
    visit(document, {
      Alias: () => {
        alias = true;
      },
    });
    data = alias ? undefined : document.toJS();
  } catch {
    data = undefined;
  }
  return {
    data: isAlias(root) ? undefined : data,
    at: (path = []) => start(find(path).value),
    keyAt: (path) => start(find(path).key ?? root ?? undefined),
    written: (path) => {
      const { value, whole: complete } = find(path);
      return complete && isScalar(value) ? (value.source ?? String(value.value)) : undefined;
    },
    faults,
  };
}
