/**
 * Walks a part of DEVELOPERS.md as it is written, in a copy of the project: runs its commands, writes its files, looks for
 * what it says is printed, and sees that its last command leaves the copy as it was.
 */
import { exec } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { copyProject } from '../../src/commands/bench-copy.ts';
import { ROOT } from './step.ts';

/** A block of code of the guide: commands, what they print, or lines of a file whose name stands in its first line. */
export interface Block { kind: 'sh' | 'text' | 'file'; lines: string[] }

/** Commands of one block: exit codes, what was printed, and what stood for `<...>` in the lines that the guide says are printed. */
export interface Step { codes: number[]; printed: string; groups: Record<string, string>[] }

export const GUIDE = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');

const CHECK = 'npm run check';

/** The text below a heading, up to the next one of its level or above; a comment in a block of code is none. @throws RangeError when there is no such heading */
function section(markdown: string, heading: string): string {
  const lines = markdown.split('\n');
  const start = lines.indexOf(heading) + 1;
  if (start === 0) throw new RangeError(`heading: the guide has no "${heading}"`);
  const next = new RegExp(`^#{1,${heading.indexOf(' ')}} `);
  let inBlock = false;
  const end = lines.findIndex((line, i) => {
    if (/^ *```/.test(line)) inBlock = !inBlock;
    return i >= start && !inBlock && next.test(line);
  });
  return lines.slice(start, end < 0 ? undefined : end).join('\n');
}

/** Blocks of code in their order, without the indent of the list that they stand in. */
function blocksOf(markdown: string): Block[] {
  return [...markdown.matchAll(/^( *)```(\w+)\n([\s\S]*?)\n\1```$/gm)].map(([, indent = '', kind, body = '']) => ({
    kind: kind === 'sh' || kind === 'text' ? kind : 'file', lines: body.split('\n').map((line) => line.slice(indent.length)),
  }));
}

/**
 * The blocks of a walk.
 * @throws RangeError when there is none, a block of a file does not name it, no check that prints `0 faults` follows the
 * last file, or the walk does not end with a command
 */
export function walkOf(markdown: string, part: string, heading: string): Block[] {
  const blocks = blocksOf(section(section(markdown, part), heading));
  for (const { kind, lines } of blocks) if (kind === 'file') placeOf(lines[0]);
  const lastFile = blocks.findLastIndex(({ kind }) => kind === 'file');
  const isGreen = ({ kind, lines }: Block, i: number): boolean => i > lastFile && kind === 'text' && lines.includes('0 faults') && (blocks[i - 1]?.lines.includes(CHECK) ?? false);
  if (lastFile < 0 || !blocks.some(isGreen)) throw new RangeError(`${part}: the walk does not end in a check that prints "0 faults"`);
  if (blocks.at(-1)?.kind !== 'sh') throw new RangeError(`${part}: the walk does not end with the command that takes it out`);
  return blocks;
}

/** First line of a block of a file: the name behind the sign of a comment, and where in the file the lines go. */
const HEAD = /^(?:#|\/\/|\{\/\*) (?<file>[\w./-]+)(?:, (?<how>below|in place of|in order|at the end)(?: (?<line>.+?))?)?(?: \*\/\})?$/;

function placeOf(head = ''): { file: string; how?: string; line?: string } {
  const place = HEAD.exec(head)?.groups;
  if (place?.file === undefined) throw new RangeError(`file: the block "${head}" does not begin with the name of its file`);
  return { ...place, file: place.file };
}

/** A line of the guide as a pattern: `<...>` stands for anything, and columns may be set wider. */
function patternOf(line: string): RegExp {
  const names = /<([a-z]+)>/g;
  const literal = (text: string): string => RegExp.escape(text).replace(/(?:\\x20| )+/g, ' +');
  let pattern = '';
  let from = 0;
  for (const match of line.matchAll(names)) {
    pattern += `${literal(line.slice(from, match.index))}(?<${match[1]}>.+?)`;
    from = match.index + match[0].length;
  }
  return new RegExp(`^${pattern}${literal(line.slice(from))}$`);
}

/** What stands for `<...>` in the lines of the guide, line by line. @throws RangeError at the first line that is not printed in its order */
export function found(lines: readonly string[], printed: string): Record<string, string>[] {
  const rest = printed.split('\n');
  return lines.map((line) => {
    const at = rest.findIndex((each) => patternOf(line).test(each));
    if (at < 0) throw new RangeError(`printed: "${line}" is not printed, or not in its place, in:\n${printed}`);
    const groups = patternOf(line).exec(rest[at] as string)?.groups ?? {};
    rest.splice(0, at + 1);
    return groups;
  });
}

/** Whether a line of a file is the one that the guide names: `...` at the end stands for the rest of it. */
const isNamed = (text: string, name: string): boolean => (name.endsWith('...') ? text.trim().startsWith(name.slice(0, -3)) : text.trim() === name);

/**
 * Writes a block into its file: a new file as a whole; below a line, in its place, at the end, or each line before the first
 * that comes after it by the alphabet; or, into a record that is there, each field in the place of its empty one.
 */
function write(root: string, [head, ...lines]: readonly string[]): void {
  const { file, how, line = '' } = placeOf(head);
  const path = join(root, file);
  if (how === undefined && !existsSync(path)) {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, `${lines.join('\n')}\n`);
    return;
  }
  let text = readFileSync(path, 'utf8').split('\n');
  const put = (is: (line: string) => boolean, what: string, by: (line: string) => readonly string[]): void => {
    const places = text.flatMap((one, i) => (is(one) ? [i] : []));
    if (places.length !== 1) throw new RangeError(`file: ${file} has ${places.length} lines "${what}", not one, in:\n${text.join('\n')}`);
    text = text.flatMap((one, i) => (i === places[0] ? by(one) : [one]));
  };
  if (how === 'at the end') text = [...text.slice(0, -1), ...lines, ''];
  else if (how === 'in order') for (const each of lines) text.splice(text.findIndex((one, i) => i > 0 && (one > each || one === '')), 0, each);
  else if (how !== undefined) put((one) => isNamed(one, line), line, (one) => (how === 'below' ? [one, ...lines] : lines));
  else for (const field of lines) {
    const name = field.slice(0, field.indexOf(':'));
    // A field that must be filled stands there empty; one that is optional stands behind a sign, with no value.
    const empty = new RegExp(`^(?:${name}:(?: \\{\\}| \\[\\]| "[YMD-]+")?|# ${name}:)$`);
    put((one) => empty.test(one), `${name}:`, () => [field]);
  }
  writeFileSync(path, text.join('\n'));
}

/** Neither the git of the project nor the test runner that runs this may be seen from inside the copy. */
const ENV = { ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(?:GIT_|VITEST|FORCE_COLOR)/.test(name))), NO_COLOR: '1' };

/** Runs one line in a shell, beside whatever else runs: walks do not wait for each other. */
const run = (root: string, line: string) => new Promise<{ code: number; stdout: string; stderr: string }>((done) => {
  exec(line, { cwd: root, env: ENV, encoding: 'utf8', maxBuffer: 2 ** 24 }, (error, stdout, stderr) => done({ code: error ? (error.code ?? 1) : 0, stdout, stderr }));
});

/** Files of the copy that are new or changed, in order. */
const changed = async (root: string): Promise<string[]> => (await run(root, 'git status --porcelain --untracked-files=all')).stdout.split('\n').filter(Boolean).map((line) => line.slice(3)).sort();

/** A copy of the project in a folder of its own, committed. */
async function copyToWalkIn(): Promise<string> {
  const root = mkdtempSync(join(tmpdir(), 'guide-walk-'));
  copyProject(ROOT, root);
  await commit(root);
  return root;
}

/** Makes a folder a clone in which nothing is uncommitted. */
export async function commit(root: string): Promise<void> {
  const { code, stderr } = await run(root, 'git init -q && git add -A && git -c user.name=walk -c user.email=walk@example.org -c commit.gpgsign=false commit -qm walk');
  if (code !== 0) throw new RangeError(`root: cannot be committed: ${stderr}`);
}

/**
 * Walks blocks in a committed copy.
 * @param after called behind each block of commands, and behind what the guide says of it
 * @throws RangeError when a command fails of which the guide prints no fault, a line is not printed, files changed that the
 * walk does not name, or the last command leaves something behind
 */
export async function walk(blocks: readonly Block[], root: string, after: (step: Step) => void = () => {}): Promise<Step[]> {
  const steps: Step[] = [];
  const named = new Set(blocks.filter(({ kind }) => kind === 'file').map(({ lines }) => placeOf(lines[0]).file));
  for (const [i, { kind, lines }] of blocks.entries()) {
    if (kind === 'file') write(root, lines);
    if (kind !== 'sh') continue;
    if (i === blocks.length - 1) {
      const files = await changed(root);
      if (String(files) !== String([...named].sort())) throw new RangeError(`root: other files changed than the walk names: ${files.join(', ')}`);
    }
    const ran: Awaited<ReturnType<typeof run>>[] = [];
    for (const line of lines) ran.push(await run(root, line));
    const step: Step = { codes: ran.map(({ code }) => code), printed: ran.map(({ stdout, stderr }) => stdout + stderr).join(''), groups: [] };
    const next = blocks[i + 1];
    const says = next?.kind === 'text' ? next.lines : [];
    step.groups = found(says, step.printed);
    if (step.codes.some((code) => code !== 0) && !says.some((line) => /^[1-9]\d* faults?\b/.test(line))) throw new RangeError(`sh: "${lines.join('; ')}" failed:\n${step.printed}`);
    steps.push(step);
    after(step);
  }
  const left = await changed(root);
  if (left.length > 0) throw new RangeError(`root: the walk leaves behind: ${left.join(', ')}`);
  return steps;
}

/** Walks one walk of the guide in a copy of its own, which is then removed. */
export async function walkGuide(part: string, heading: string, after: (step: Step, root: string) => void = () => {}): Promise<{ blocks: Block[]; steps: Step[] }> {
  const blocks = walkOf(GUIDE, part, heading);
  const root = await copyToWalkIn();
  try {
    return { blocks, steps: await walk(blocks, root, (step) => after(step, root)) };
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
}
