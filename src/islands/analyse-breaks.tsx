/**
 * The analysis in the browser. The fields of the page are its state: what is in the box is read as a table, the address
 * carries the pulls, and the page's history keeps the box word for word. Statistics are worked out in a worker.
 */
import { render } from 'preact';
import { NotUsed } from '../components/breaks-analysis/not-used.tsx';
import type { AnalysisSetup } from '../components/breaks-analysis/setup.ts';
import { type TraceChoice, Traces } from '../components/breaks-analysis/traces.tsx';
import { LIMIT_FLAGS, readWords } from '../components/breaks-analysis/words.ts';
import type { Pull } from '../break-tests/pulls.ts';
import type { DecimalMark } from '../break-tests/read-number.ts';
import type { StopReason, Table, TableOptions, TableStop } from '../break-tests/read-table.ts';
import { FORCE_UNITS, type ForceUnit, inUnit, likelyColumns, mayBeForce, type PullColumns, pullsOfRow, pullsOfTable, readPullTable, type TablePulls } from '../break-tests/table-pulls.ts';
import type { Pair } from '../break-tests/tolerance-bound.ts';
import { STANDARD_PAIRS } from '../break-tests/tolerance-bound.ts';
import { pullsAsTyped, writePulls } from '../break-tests/write-pulls.ts';
import type { Delimiter } from '../break-tests/split-table.ts';
import { nothingAnalysed, parseAnalysisLink, serialiseAnalysis } from '../links/analysis-link.ts';
import { readNumber } from '../links/read-number.ts';
import { BreaksClient } from './breaks-client.ts';
import type { FileRead, Told } from './breaks-asked.ts';
import { save } from './save-file.ts';
import { copy, say } from './take-away.ts';
import { isWrittenIn } from './typed-early.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const setup = JSON.parse(find('#analysis-setup').textContent ?? '') as AnalysisSetup;
const form = find<HTMLFormElement>('.questions');
const tools = find('.tools');
const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement;
const textOf = (name: string): string => field(name).value;
const uses = find<HTMLFieldSetElement>('#use');
/** Fields whose words the history keeps: all but files and those of single records. */
const FIELDS = [...form.elements, ...uses.elements].filter((element): element is HTMLInputElement => 'name' in element && element.name !== '' && (element as HTMLInputElement).type !== 'file' && !(element instanceof HTMLButtonElement));
/** More pulls than that take the worker minutes; a tester has dozens. */
const MOST_PULLS = 1000;
/** Pause after the last key before the statistics are asked for, ms. */
const PAUSE = 250;

/** What was read of one box. */
type BoxRead = { is: 'empty' } | { is: 'stopped'; stop: TableStop } | { is: 'open'; table: Table } | { is: 'read'; table: Table; columns: PullColumns; got: TablePulls; unit: ForceUnit };

const number = (name: string): number | null => {
  const read = textOf(name).trim() === '' ? null : readNumber(textOf(name).trim(), { low: 1e-6, high: 1e6, unit: '' });
  find(`#says-${name}`).textContent = read && !read.ok ? `${textOf(name).trim()}: ${read.why}. Not used.` : '';
  return read?.ok ? read.value : null;
};

/** A share in per cent, strictly between none and all; null where the field is empty or wrong. */
function share(name: string): number | null {
  const value = number(name);
  if (value === null) return null;
  if (value < 100) return value / 100;
  find(`#says-${name}`).textContent = `${textOf(name).trim()}: a share lies below all pieces. Not used.`;
  return null;
}

/** What the reader says of how the box is written. */
const options = (): TableOptions => ({
  ...(textOf('delimiter') && { delimiter: textOf('delimiter') as Delimiter }),
  ...(textOf('decimal') && { decimal: textOf('decimal') as DecimalMark }),
});

/** A column that the reader chose by its name, or what it is likely to be. */
function chosen(table: Table, likely: PullColumns): PullColumns {
  const at = (name: 'force' | 'mode' | 'link', fits: (index: number) => boolean): number | null => {
    const wanted = textOf(name);
    if (wanted === '-') return null;
    const index = wanted === '' ? -1 : table.columns.findIndex((column) => column.name === wanted);
    return index >= 0 && fits(index) ? index : likely[name];
  };
  const isText = (index: number): boolean => table.columns[index]?.kind === 'text';
  return { force: at('force', (index) => mayBeForce(table.columns[index] as Table['columns'][number])), mode: at('mode', isText), link: at('link', isText), note: likely.note };
}

function readBox(name: 'text' | 'text2'): BoxRead {
  const text = textOf(name);
  if (text.trim() === '') return { is: 'empty' };
  let read = readPullTable(text, options());
  // What was chosen for an earlier text may not fit this one; what reads in one way alone needs no choice.
  if ('stop' in read && Object.keys(options()).length > 0) {
    const alone = readPullTable(text);
    if ('table' in alone || alone.stop.reason !== read.stop.reason) read = alone;
  }
  if ('stop' in read) return { is: 'stopped', stop: read.stop };
  const columns = chosen(read.table, likelyColumns(read.table));
  const row = pullsOfRow(read.table);
  if (!row && columns.force === null) return { is: 'open', table: read.table };
  const got = row ?? pullsOfTable(read.table, columns);
  return { is: 'read', table: read.table, columns, got, unit: got.unit ?? (textOf('unit') as ForceUnit) };
}

/** Offers the columns of a table. */
function offerColumns(table: Table | null): void {
  for (const name of ['force', 'mode', 'link'] as const) {
    const select = field(name) as unknown as HTMLSelectElement;
    const { value } = select;
    const names = (table?.columns ?? []).filter((column) => (name === 'force' ? mayBeForce(column) : column.kind === 'text')).map((column) => column.name);
    select.replaceChildren(new Option('found by itself', ''), ...names.map((one) => new Option(one, one)), ...(name === 'force' ? [] : [new Option('none', '-')]));
    select.value = names.includes(value) || value === '-' ? value : '';
  }
}

/** Answers to what a stop asks, to press: field, value, words. */
const ANSWERS: Partial<Record<StopReason, readonly (readonly [string, string, string])[]>> = {
  'delimiter-open': [['delimiter', 'none', 'One number a line'], ['delimiter', 'comma', 'A comma between two cells'], ['delimiter', 'blanks', 'Blanks between two cells']],
  'decimal-mark-open': [['decimal', '.', 'A point before the decimals'], ['decimal', ',', 'A comma before the decimals']],
};

function sayRead(id: string, read: BoxRead): void {
  const says = find(id);
  const isFault = read.is === 'stopped' || read.is === 'open';
  says.className = isFault ? 'fault' : '';
  if (read.is === 'empty') says.textContent = '';
  else if (read.is === 'stopped') says.replaceChildren(`${read.stop.message} Nothing is worked out until then. `, ...(ANSWERS[read.stop.reason] ?? []).map(([name, value, words]) => {
    const button = document.createElement('button');
    Object.assign(button, { type: 'button', name: 'answer', value: `${name}=${value}`, textContent: words });
    return button;
  }));
  else if (read.is === 'open') says.textContent = 'Several columns may be the force. Choose one below, under “How it is read”, or give it a heading such as "force (kN)".';
  else says.textContent = read.got.pulls.length === 0 ? 'No row has a force above nothing.' : readWords(read.got.pulls.length, read.got.pulls.filter(({ atLeast }) => atLeast).length, read.unit, read.got.unit !== null, read.got.leftOut);
  says.dataset['input'] = '';
  if (isFault) find<HTMLDetailsElement>('#reading-options').open = true;
}

/** What is asked now; null while there is nothing to work out. */
let asked: { pulls: Pull[]; notes: readonly string[]; unit: ForceUnit; others: Pull[]; names: [string, string]; own: [string, string] } | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;

/** Reads the form, says what was read, and asks for the statistics. */
function refresh(pause = PAUSE): void {
  const first = readBox('text');
  const second = readBox('text2');
  offerColumns(first.is === 'read' || first.is === 'open' ? first.table : null);
  sayRead('#read', first);
  sayRead('#read2', second);
  const [coverage, confidence] = [share('coverage'), share('confidence')];
  clearTimeout(timer);
  document.documentElement.classList.add('working');
  if (first.is !== 'read' || first.got.pulls.length === 0) {
    asked = null;
    nothing(first.is === 'empty' ? 'It stands here once there is a force.' : 'Nothing is worked out before the box can be read.');
    return;
  }
  if (first.got.pulls.length > MOST_PULLS) {
    asked = null;
    nothing(`There are ${first.got.pulls.length} pulls in the box; at most ${MOST_PULLS} are worked out. If it is one record of force over time, open it as a file.`);
    return;
  }
  const others = second.is === 'read' ? inUnit(second.got.pulls, second.unit, first.unit).slice(0, MOST_PULLS) : [];
  asked = {
    pulls: [...first.got.pulls], notes: first.got.notes, unit: first.unit, others,
    names: [textOf('name').trim() || 'the first series', textOf('other').trim() || 'the second series'], own: [textOf('coverage').trim(), textOf('confidence').trim()],
  };
  const pairs: Pair[] = [...STANDARD_PAIRS, ...(coverage !== null && confidence !== null ? [{ coverage, confidence }] : [])];
  const { pulls } = asked;
  timer = setTimeout(() => client.ask({ kind: 'analysis', pulls, others, pairs }), pause);
}

function nothing(words: string): void {
  cv = null;
  client.cancel();
  document.documentElement.classList.remove('working');
  find('.analysis').classList.remove('answered');
  render(<p>{words}</p>, find('#analysis-root'));
  linkUses();
}

let files: FileRead[] = [];
let choices: TraceChoice[] = [];
let progress: { done: number; of: number } | null = null;
const showTraces = (): void => render(files.length > 0 || progress ? <Traces files={files} choices={choices} progress={progress} /> : null, find('#traces'));

/** Draws an answer with what comes on demand; one that is no longer asked is dropped. */
async function showAnswer({ analysis, compared, further }: Told & { kind: 'analysis' }): Promise<void> {
  const of = asked;
  const { AnalysisResults } = await import('../components/breaks-analysis/results.tsx');
  if (!of || of !== asked) return;
  document.documentElement.classList.remove('working');
  find('.analysis').classList.add('answered');
  cv = analysis.summary.spread?.cv ?? null;
  render(<AnalysisResults {...of} analysis={analysis} compared={compared} further={further} />, find('#analysis-root'));
  linkUses();
}

const lost = (): void => nothing('The part of this page that works this out did not arrive. Reload to try again; what you wrote stays.');

function told(message: Told): void {
  if (message.kind === 'failed') {
    if (progress) {
      progress = null;
      showTraces();
    }
    nothing(`That could not be worked out: ${message.why}`);
  } else if (message.kind === 'analysis') {
    showAnswer(message).catch(lost);
  } else if (message.kind === 'file') {
    const { read } = message;
    files.push(read);
    const isLimit = read.is === 'trace' && read.reading.flags.some((flag) => LIMIT_FLAGS.includes(flag));
    choices.push({ use: read.is === 'trace', atLeast: isLimit, mode: '', link: '' });
    progress = { done: message.at, of: message.of };
    showTraces();
  } else if (message.kind === 'done') {
    progress = null;
    const [only] = files;
    if (files.length === 1 && only?.is === 'table') putIntoBox(only.text);
    else showTraces();
  }
}

const client = new BreaksClient(told, lost);

/** Puts text into the box; what stood there is one step back. */
function putIntoBox(text: string): void {
  [files, choices] = [[], []];
  showTraces();
  if (textOf('text').trim() !== '') history.pushState(null, '');
  field('text').value = text;
  edited(0);
}

/** The query of what is asked now; null where it does not travel. */
const query = (): string | null => asked && serialiseAnalysis({ unit: asked.unit, pulls: asked.pulls, others: asked.others, name: textOf('name'), other: textOf('other'), own: asked.own });

/** Scatter of what is shown; null where nothing is. */
let cv: number | null = null;
/** What is done with the pulls comes when the reader first looks there. */
let showUses: typeof import('./use-breaks.tsx').showUses | null = null;
const linkUses = (): void => showUses?.(asked && { ...asked, cv }, setup);
uses.addEventListener('toggle', () => {
  if (showUses) return;
  import('./use-breaks.tsx').then((part) => {
    ({ showUses } = part);
    linkUses();
  }).catch(lost);
}, { capture: true });
uses.oninput = () => {
  linkUses();
  keep();
};

function edited(pause = PAUSE): void {
  say(tools, '');
  refresh(pause);
  keep();
}

/** The history keeps every field word for word; the address carries the pulls. */
function keep(): void {
  const search = query();
  history.replaceState(Object.fromEntries(FIELDS.map(({ id, value }) => [id, value])), '', search === null ? location.pathname : `?${search}`);
}

/** Fills the form from the history's words, or else from the address. What was typed before the script came stays. */
function restore(isStart: boolean): void {
  const kept = history.state as Record<string, string> | null;
  const notUsed = find('#not-used');
  let pieces: { piece: string; why: string }[] = [];
  if (kept?.['f-text'] !== undefined) for (const element of FIELDS) {
    const value = kept[element.id] ?? '';
    const select = element as unknown as HTMLSelectElement;
    if (element instanceof HTMLSelectElement && ![...select.options].some((option) => option.value === value)) select.append(new Option(value, value));
    element.value = value;
  } else if (!isStart || location.search !== '') {
    const { words, notUnderstood } = parseAnalysisLink(location.search, FORCE_UNITS);
    pieces = notUnderstood;
    const { unit, pulls, others, name, other, own } = words ?? nothingAnalysed(FORCE_UNITS[0]);
    for (const [key, value] of [
      ['unit', unit], ['text', pullsAsTyped(pulls, unit as ForceUnit)], ['text2', pullsAsTyped(others, unit as ForceUnit)], ['name', name], ['other', other], ['coverage', own[0]], ['confidence', own[1]],
      ['delimiter', ''], ['decimal', ''], ['force', ''], ['mode', ''], ['link', ''],
    ] as const) field(key).value = value;
  } else if (isWrittenIn(form)) {
    // What is only in the form would be gone at the next step back.
    keep();
  }
  for (const [id, names] of [['#second', ['text2', 'name', 'other']], ['#own-bound', ['coverage', 'confidence']]] as const) if (names.some((name) => textOf(name) !== '')) find<HTMLDetailsElement>(id).open = true;
  notUsed.hidden = pieces.length === 0;
  render(pieces.length > 0 ? <NotUsed pieces={pieces} /> : null, notUsed);
  refresh(0);
}

form.oninput = ({ target }) => {
  const { name, checked, value } = target as HTMLInputElement;
  const [, what, at] = /^(use|limit|mode|link)-(\d+)$/.exec(name) ?? [];
  const choice = choices[Number(at)];
  if (what !== undefined && choice) {
    if (what === 'use') choice.use = checked;
    else if (what === 'limit') choice.atLeast = checked;
    else choice[what as 'mode' | 'link'] = value;
    return showTraces();
  }
  if (name !== 'files') edited();
};
form.onsubmit = (event) => {
  event.preventDefault();
  find('#answer').focus();
};
form.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement)) return;
  if (target.name === 'example') {
    const { text, name, text2, other } = setup.example;
    for (const [key, words] of [['text2', text2], ['name', name], ['other', other]] as const) field(key).value = words;
    find<HTMLDetailsElement>('#second').open = true;
    putIntoBox(text);
  } else if (target.name === 'answer') {
    const [name = '', value = ''] = target.value.split(/=(.*)/s);
    field(name).value = value;
    edited(0);
    field('text').focus();
  } else if (target.name === 'cancel') {
    client.cancel();
    progress = null;
    showTraces();
    refresh(0);
  } else if (target.name === 'drop') {
    [files, choices] = [[], []];
    showTraces();
  } else if (target.name === 'take') {
    const used = files.flatMap((read, i) => (read.is === 'trace' && choices[i]?.use ? [{ read, choice: choices[i] as TraceChoice }] : []));
    const pulls = used.map(({ read, choice }): Pull => ({ force: Number(read.reading.peakKn.toPrecision(6)), atLeast: choice.atLeast, mode: choice.mode.trim(), link: choice.link.trim() }));
    putIntoBox(writePulls(pulls, 'kN', used.map(({ read }) => read.name)));
    field('text').focus();
  }
};
field('files').onchange = () => {
  const chosenFiles = [...(field('files').files ?? [])];
  if (chosenFiles.length === 0) return;
  [files, choices, progress] = [[], [], { done: 0, of: chosenFiles.length }];
  showTraces();
  clearTimeout(timer);
  client.ask({ kind: 'traces', files: chosenFiles, options: options(), units: { force: textOf('unit') as ForceUnit, time: textOf('time') as 's' | 'ms', hz: number('hz') ?? 100 }, rangeKn: number('range') });
  field('files').value = '';
};
tools.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement) || !asked) return;
  const search = query();
  const address = search === null ? null : new URL(`?${search}`, location.href.replace(/[?#].*/, '')).href;
  if (target.name === 'print') print();
  else if (target.name === 'csv') save('breaks.csv', writePulls(asked.pulls, asked.unit, asked.notes), 'text/csv');
  else if (target.name === 'link') {
    if (address === null) say(tools, 'So many pulls do not fit into a link. Save them as CSV.');
    else copy(tools, address, 'Link copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
  } else {
    const cells = (part: Element): string => (part instanceof HTMLTableRowElement ? [...part.cells].map((cell) => cell.textContent).join('; ') : (part.textContent ?? ''));
    const words = [...document.querySelectorAll('#analysis-root :is(p, h3, caption, tr)')].map((part) => cells(part).replace(/\s+/g, ' ').trim()).filter((text) => text !== '');
    copy(tools, [...words, ...(address === null ? [] : [address])].join('\n'), 'Text copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
  }
};
addEventListener('popstate', () => restore(false));
restore(true);
