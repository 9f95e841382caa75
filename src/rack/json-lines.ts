/** Where things stand in a JSON text (RFC 8259): the line of the first fault of grammar, of a key written twice, and of each value. Read only where a file is refused or was written by hand. */
import { pointerStep } from './shape.ts';

/** Line from 1, and why the text cannot be read there. */
export interface LineFault { line: number; why: string }

/** What a look at a text gives. `lines`: pointer to the line where its value begins. */
export interface JsonLines { fault: LineFault | null; lines: ReadonlyMap<string, number> }

/** No register is nested deeper than this. */
const DEEPEST = 12;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids just these inside a string
const STRING = /"(?:[^"\\\u0000-\u001f]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"/y;
const WORD = /true|false|null/y;
const BLANK = /[ \t\n\r]*/y;

class Fault extends Error {}

/** Goes through a text once. Total: any text gives lines, and a fault or none. */
export function jsonLines(text: string): JsonLines {
  const lines = new Map<string, number>();
  let at = 0;
  let line = 1;
  let counted = 0;
  const lineHere = (): number => {
    for (let next = text.indexOf('\n', counted); next >= 0 && next < at; next = text.indexOf('\n', counted)) {
      line += 1;
      counted = next + 1;
    }
    return line;
  };
  const take = (pattern: RegExp): string | null => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (!found) return null;
    at += found[0].length;
    return found[0];
  };
  const blanks = (): void => { take(BLANK); };
  const here = (): string => (at >= text.length ? 'the file ends' : `there is ${JSON.stringify([...text.slice(at, at + 2)][0])}`);
  const expected = (what: string): never => { throw new Fault(`${here()} where ${what} should stand`); };
  const list = (close: string, entry: (index: number) => void): void => {
    at += 1;
    blanks();
    if (text[at] === close) { at += 1; return; }
    for (let index = 0; ; index += 1) {
      entry(index);
      blanks();
      if (text[at] === close) { at += 1; return; }
      if (text[at] !== ',') expected(`"," or "${close}"`);
      at += 1;
      blanks();
    }
  };
  const value = (pointer: string, depth: number): void => {
    if (depth > DEEPEST) throw new Fault('the file is nested deeper than a register');
    blanks();
    lines.set(pointer, lineHere());
    if (text[at] === '{') {
      const keys = new Set<string>();
      list('}', () => {
        lineHere();
        const written = take(STRING) ?? expected('a key in quotes');
        const key = JSON.parse(written) as string;
        if (keys.has(key)) throw new Fault(`the key ${written} stands twice in one object`);
        keys.add(key);
        blanks();
        if (text[at] !== ':') expected('":"');
        at += 1;
        value(pointer + pointerStep(key), depth + 1);
      });
    } else if (text[at] === '[') list(']', (index) => value(pointer + pointerStep(index), depth + 1));
    else if (take(STRING) === null && take(NUMBER) === null && take(WORD) === null) expected('a value');
  };
  try {
    value('', 0);
    blanks();
    if (at < text.length) expected('the end of the file');
    return { fault: null, lines };
  } catch (error) {
    if (!(error instanceof Fault)) throw error;
    return { fault: { line: lineHere(), why: error.message }, lines };
  }
}
