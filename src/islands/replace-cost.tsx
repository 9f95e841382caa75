/**
 * The calculator of costs in the browser. The fields of the page are its state: form and link are read by one reader, the
 * address follows what is written, and amounts are printed as the reader's own country writes them.
 */
import { render } from 'preact';
import { costText, CostResults, NotUsedCost } from '../components/replacement/results.tsx';
import { type Printer, PLAIN } from '../components/replacement/words.ts';
import { parseCostLink, serialiseCost } from '../links/cost-link.ts';
import { answerOn, type CostAnswer } from '../replacement/answer.ts';
import { blankKind, type CostAsked, type CostWords, GENERAL_KEYS, type GeneralKey, type KindWords, MOST_KINDS, nothingWritten, OFFER_FIELDS, readCost, WAYS } from '../replacement/read-words.ts';
import { kindsOfRack } from '../replacement/kinds-of-rack.ts';
import type { HandedDevice } from './rack-handover.ts';
import { copy, say } from './take-away.ts';
import { isWrittenIn } from './typed-early.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const { base, example } = JSON.parse(find('#cost-setup').textContent ?? '') as { base: string; example: string };
const form = find<HTMLFormElement>('.questions');
const tools = find('.tools');
const input = (name: string) => form.elements.namedItem(name) as HTMLInputElement | null;
const text = (name: string): string => input(name)?.value ?? '';
const VOCABULARY = { general: GENERAL_KEYS, offers: OFFER_FIELDS, ways: WAYS, mostKinds: MOST_KINDS };
/** What has no field of its own: when the sling has to go, as the verdict's link says. */
let retire = '';

const kindAt = (at: number): KindWords => ({
  count: text(`count-${at}`), name: text(`name-${at}`), fresh: text(`fresh-${at}`),
  refused: `${input(`m-${at}`)?.checked ? 'm' : ''}${input(`w-${at}`)?.checked ? 'w' : ''}` as KindWords['refused'],
});
const shownKinds = (): number => [...form.querySelectorAll<HTMLElement>('.kind')].filter((kind) => !kind.hidden).length;

/** Whether the kinds in the form are as counted from a rack: then a new choice takes the place of the last one. */
let isFromRack = false;

/** Everything as the form holds it. */
function wordsOfForm(): CostWords {
  const words = nothingWritten();
  for (const key of GENERAL_KEYS) words.general[key] = key === 'retire' ? retire : text(key);
  words.kinds = Array.from({ length: shownKinds() }, (_, at) => kindAt(at));
  for (const way of WAYS) for (const field of OFFER_FIELDS) words.offers[way][field] = text(`${way}-${field}`);
  return words;
}

function fillKinds(kinds: readonly KindWords[]): void {
  for (let at = 0; at < MOST_KINDS; at += 1) {
    const { count, name, fresh, refused } = kinds[at] ?? blankKind();
    find(`#kind-${at}`).hidden = at > 0 && at >= kinds.length;
    for (const [field, word] of [['count', count], ['name', name], ['fresh', fresh]] as const) (input(`${field}-${at}`) as HTMLInputElement).value = word;
    for (const who of ['m', 'w']) (input(`${who}-${at}`) as HTMLInputElement).checked = refused.includes(who);
  }
}

/** Writes words into the form. */
function fill({ general, kinds, offers }: CostWords): void {
  retire = general.retire;
  for (const key of GENERAL_KEYS) {
    const field = input(key);
    if (field) field.value = general[key];
  }
  fillKinds(kinds);
  for (const way of WAYS) {
    for (const field of OFFER_FIELDS) {
      const one = input(`${way}-${field}`);
      if (one) one.value = offers[way][field];
    }
    if (Object.entries(offers[way]).some(([field, word]) => /least|from|lower/.test(field) && word !== '')) find<HTMLDetailsElement>(`#way-${way} .more`).open = true;
  }
}

/** Languages of the reader that the browser itself can format: some systems name one that is no tag. */
const LANGUAGES = navigator.languages.filter((tag) => {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length > 0;
  } catch {
    return false;
  }
});

/** Prints amounts as the reader's country does; a code of three letters as money, any other sign behind the number. */
function printerOf(currency: string): Printer {
  const count = new Intl.NumberFormat(LANGUAGES, { maximumFractionDigits: 2 });
  if (/^[A-Za-z]{3}$/.test(currency)) {
    try {
      const money = new Intl.NumberFormat(LANGUAGES, { style: 'currency', currency });
      return { money: (amount) => money.format(amount), count: (n) => count.format(n) };
    } catch {
      return { ...PLAIN, money: (amount) => `${PLAIN.money(amount)} ${currency}` };
    }
  }
  const cents = new Intl.NumberFormat(LANGUAGES, { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  const money = (amount: number): string => (Math.abs(amount - Math.round(amount)) < 0.005 ? count : cents).format(Math.abs(amount - Math.round(amount)) < 0.005 ? Math.round(amount) : amount);
  return { money: (amount) => (currency === '' ? money(amount) : `${money(amount)}\u00a0${currency}`), count: (n) => count.format(n) };
}

/** Says at each field what is wrong with it. */
function showFaults(faults: CostAsked['faults']): void {
  for (const says of form.querySelectorAll<HTMLElement>('.fault')) {
    const name = says.id.replace('says-', '');
    const field = input(name);
    const why = faults[name];
    says.textContent = why ? `${text(name).trim() === '' ? '' : `${text(name).trim()}: `}${why}. Not used.` : '';
    if (field) field.ariaInvalid = why ? 'true' : null;
    // A fault must not stand in a closed part.
    if (why && field) for (let part = field.closest('details'); part; part = part.parentElement?.closest('details') ?? null) part.open = true;
  }
}

/** What is shown now, for the buttons. */
let shown: { words: CostWords; asked: CostAsked; answer: CostAnswer; printer: Printer } | null = null;

function answer(words: CostWords): void {
  const asked = readCost(words);
  showFaults(asked.faults);
  const isHomeOpen = asked.kinds.some((kind) => kind.isHomeOpen) || words.kinds.some(({ refused }) => refused === 'mw');
  find('#home-closed').hidden = isHomeOpen;
  for (const part of form.querySelectorAll<HTMLElement>('#way-home .row, #way-home .more')) part.hidden = !isHomeOpen;
  const home = find<HTMLDetailsElement>('#way-home');
  if (isHomeOpen && home.dataset['was'] !== 'open') home.open = true;
  home.dataset['was'] = isHomeOpen ? 'open' : 'shut';
  const said = answerOn(asked.isStopped ? { ...asked, kinds: [], offers: {} } : asked);
  const printer = printerOf(asked.currency);
  shown = { words, asked, answer: said, printer };
  render(<CostResults asked={asked} answer={said} printer={printer} base={base} />, find('#cost-root'));
  find('.cost').classList.toggle('answered', !asked.isStopped && said.rows.length > 0);
  (form.elements.namedItem('more') as HTMLButtonElement).disabled = words.kinds.length >= MOST_KINDS;
}

/** Takes what is written from an address. */
function readAddress(query: string): void {
  const { words, notUnderstood } = parseCostLink(query, VOCABULARY);
  const notUsed = [...notUnderstood];
  const asked = words ?? nothingWritten();
  for (const key of ['retire'] as const satisfies readonly GeneralKey[]) {
    const why = readCost(asked).faults[key];
    if (!why) continue;
    notUsed.push({ piece: `${key}=${asked.general[key]}`, why });
    asked.general[key] = '';
  }
  // An offer has fields for some of what a link can say.
  for (const way of WAYS) {
    for (const field of OFFER_FIELDS) {
      if (input(`${way}-${field}`) || asked.offers[way][field] === '' || /^0+$/.test(asked.offers[way][field])) continue;
      notUsed.push({ piece: asked.offers[way][field], why: 'this way asks for no post there' });
      asked.offers[way][field] = '';
    }
  }
  const listed = find('#not-used');
  listed.hidden = notUsed.length === 0;
  render(notUsed.length > 0 ? <NotUsedCost pieces={notUsed} /> : null, listed);
  fill(asked);
  answer(wordsOfForm());
}

function edited(): void {
  const words = wordsOfForm();
  say(tools, '');
  answer(words);
  history.replaceState(null, '', `?${serialiseCost(words)}`);
}

form.oninput = () => {
  isFromRack = false;
  edited();
};
form.onsubmit = (event) => {
  event.preventDefault();
  find('#answer').focus();
};
form.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement)) return;
  if (target.name === 'example') {
    readAddress(example);
    edited();
    return;
  }
  const kinds = wordsOfForm().kinds;
  if (target.name === 'more') kinds.push(blankKind());
  else if (target.name === 'remove') kinds.splice(Number(target.value), 1);
  else return;
  fillKinds(kinds);
  edited();
  input(`count-${kinds.length - 1}`)?.focus();
};
tools.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement) || !shown) return;
  const address = new URL(`?${serialiseCost(shown.words)}`, location.href.replace(/[?#].*/, '')).href;
  if (target.name === 'print') print();
  else if (target.name === 'link') copy(tools, address, 'Link copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
  else copy(tools, costText(shown, address), 'Text copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
};
/** Counts the kinds of device from what was ticked. */
function countFromRack(ticked: readonly HandedDevice[]): void {
  const words = wordsOfForm();
  const { kinds, isJoined } = kindsOfRack(ticked.map(({ form: { name }, count }) => ({ name, count })), words.kinds);
  // What the reader wrote stays one step back.
  if (!isFromRack) history.pushState(null, '', location.href);
  isFromRack = true;
  fillKinds(kinds);
  find('#rack-joined').hidden = !isJoined;
  edited();
}

/** What reads a rack comes with the first thing that is asked of it. */
function wakeRack({ type, target }: Event): void {
  if (!(target instanceof HTMLButtonElement || (target instanceof HTMLInputElement && type === 'change'))) return;
  rack.removeEventListener('click', wakeRack);
  rack.removeEventListener('change', wakeRack);
  import('./from-rack.ts').then(({ chooseFromRack }) => {
    chooseFromRack(countFromRack);
    if (type === 'click') target.click();
    else target.dispatchEvent(new Event(type, { bubbles: true }));
  }, () => {
    find('#rack-says').textContent = 'The part of this page that reads a rack did not arrive. Reload to try again; what you wrote stays.';
  });
}

const rack = find('#from-rack');
rack.addEventListener('click', wakeRack);
rack.addEventListener('change', wakeRack);
addEventListener('popstate', () => {
  isFromRack = false;
  readAddress(location.search);
});
// What was typed before the script came stays, here and in the history.
if (location.search === '' && isWrittenIn(form)) edited();
else if (location.search === '') answer(wordsOfForm());
else readAddress(location.search);
