/**
 * Search in the browser. The address holds what is looked for. The index is fetched when the field is first used, or at
 * once where the address asks; everything is found on the reader's device.
 */
import { createElement, render } from 'preact';
import type { SearchIndex } from '../search/find.ts';
import { KIND_NAMES, type Kind, type SearchPage } from '../search/pages.ts';
import type * as Answering from './search-answer.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const form = find<HTMLFormElement>('.find');
const input = find<HTMLInputElement>('#q');
const says = find('#search-says');
const section = find('#found');
const root = find('#found-root');
const hints = find('#hints');
const { base = '/', pages = '', figures = '' } = form.dataset;

/** Results that stand at once, and that each press of the button adds. */
const STEP = 20;
/** Pages that are added to the index before the browser may do something else. */
const SLICE = 40;
/** A pause in typing after which the count is read out, ms. */
const PAUSE = 500;
const WAITING = 'The index is on its way.';

let index: SearchIndex | null = null;
let answering: typeof Answering | null = null;
let isLoading = false;
let isWaiting = true;
let kind: Kind | null = null;
let most = STEP;
/** Whether the next change of the words is a new entry of the history: so Back leads from search to search, not from letter to letter. */
let isSettled = true;
let announcing: ReturnType<typeof setTimeout> | undefined;

const breathe = (): Promise<void> => new Promise((done) => setTimeout(done));

async function pagesAt(address: string): Promise<SearchPage[]> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address}: ${response.status}`);
  return response.json() as Promise<SearchPage[]>;
}

async function fill(into: SearchIndex, all: readonly SearchPage[]): Promise<void> {
  for (let from = 0; from < all.length; from += SLICE) {
    into.add(all.slice(from, from + SLICE));
    await breathe();
  }
}

/** Fetches everything at once; pages can be found while figures are still on their way. */
async function fetchAll(): Promise<void> {
  const second = pagesAt(figures);
  // A failure of the figures is met when they are waited for, not before.
  second.catch(() => undefined);
  const [code, first] = await Promise.all([import('./search-answer.ts'), pagesAt(pages)]);
  answering = code;
  const made = code.searchIndex();
  await fill(made, first);
  index = made;
  answer();
  await fill(made, await second);
  isWaiting = false;
  answer();
}

function load(): void {
  if (isLoading) return;
  isLoading = true;
  fetchAll().catch((fault) => {
    isLoading = false;
    index = null;
    isWaiting = true;
    render(createElement('p', null, createElement('button', { type: 'button', name: 'again' }, 'Try again')), root);
    section.hidden = false;
    says.textContent = 'The index did not arrive. What you typed stays. Try again, or use the list from A to Z.';
    console.warn(fault);
  });
}

/** Says it to those who listen once they stop typing. */
function announce(words: string): void {
  clearTimeout(announcing);
  announcing = setTimeout(() => { says.textContent = words; }, PAUSE);
}

/** Shows what there is for the words in the field. */
function answer(): void {
  const typed = input.value;
  const isAsked = typed.trim() !== '';
  hints.hidden = isAsked;
  section.hidden = !isAsked;
  if (!isAsked) {
    announce('');
    return;
  }
  if (!index || !answering) {
    load();
    says.textContent = WAITING;
    return;
  }
  const outcome = index.find(typed);
  const shown = { typed, outcome, kind, most, base, isWaiting };
  render(answering.Results({ shown }), root);
  if (says.textContent === WAITING) says.textContent = '';
  announce(answering.countSentence(shown));
}

/** Writes the words into the address. */
function note(): void {
  const address = new URL(location.href);
  address.hash = '';
  address.search = input.value === '' ? '' : `?${new URLSearchParams({ q: input.value, ...(kind ? { kind } : {}) })}`;
  if (address.href === location.href) return;
  if (isSettled) history.pushState(null, '', address);
  else history.replaceState(null, '', address);
  isSettled = false;
}

/** Takes the words from the address. */
function readAddress(): void {
  const query = new URLSearchParams(location.search);
  const asked = query.get('kind') ?? '';
  input.value = query.get('q') ?? '';
  kind = Object.hasOwn(KIND_NAMES, asked) ? (asked as Kind) : null;
  most = STEP;
  isSettled = true;
  answer();
}

input.onfocus = load;
input.oninput = () => {
  kind = null;
  most = STEP;
  note();
  answer();
};
input.onchange = () => { isSettled = true; };
form.onsubmit = (event) => {
  event.preventDefault();
  isSettled = true;
  if (input.value.trim() === '') input.focus();
  else section.focus();
};
root.onclick = (event) => {
  const { target } = event;
  if (!(target instanceof Element)) return;
  const button = target.closest('button');
  if (button?.name === 'again') answer();
  if (button?.name === 'more') {
    most += STEP;
    answer();
    root.querySelectorAll<HTMLElement>('.found > li h3 a')[most - STEP]?.focus();
  }
  const link = target.closest<HTMLElement>('[data-kind]');
  // A click with a key held opens a tab of its own.
  if (!link || event.metaKey || event.ctrlKey || event.shiftKey) return;
  event.preventDefault();
  kind = (link.dataset['kind'] || null) as Kind | null;
  most = STEP;
  isSettled = true;
  note();
  isSettled = true;
  answer();
  root.querySelector<HTMLElement>(`[data-kind="${kind ?? ''}"]`)?.focus();
};
addEventListener('popstate', readAddress);
// What was typed before the script came stays.
if (input.value !== '' && input.value !== (new URLSearchParams(location.search).get('q') ?? '')) {
  note();
  answer();
} else readAddress();
if (document.activeElement === input) load();
