/**
 * The page of falls in the browser. The fields of the page are its state: form and link are read by one reader, the address
 * follows what is written, and drawing and loads move with it.
 */
import { render } from 'preact';
import { FallResults, NotUsedFall } from '../components/falls/results.tsx';
import { fallText } from '../components/falls/words.ts';
import type { FallConstants } from '../falls/evidence.ts';
import { blankFall, FALL_CHOICES, FALL_FIELDS, type FallWords, readFall } from '../falls/read-fall.ts';
import { type ToldFall, type ToldLoads, toldLoads } from '../falls/told-fall.ts';
import { parseFallLink, rigOfAddress, serialiseFall } from '../links/fall-link.ts';
import { copy, say } from './take-away.ts';
import { isWrittenIn } from './typed-early.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const { base, constants, first } = JSON.parse(find('#fall-setup').textContent ?? '') as { base: string; constants: FallConstants; first: FallWords };
const form = find<HTMLFormElement>('.questions');
const tools = find('.tools');
const input = (name: string) => form.elements.namedItem(name) as HTMLInputElement;
const VOCABULARY = { fields: FALL_FIELDS, choices: FALL_CHOICES };
/** Query of the comparison that the reader came from: it has no field. */
let rig: string | null = null;

const wordsOfForm = (): FallWords => Object.fromEntries(FALL_FIELDS.map((name) => [name, input(name).value])) as FallWords;
const query = (words: FallWords): string => serialiseFall(words, VOCABULARY, { rig });

/** Says at each field what is wrong with it. */
function showFaults(faults: readonly { field: string; why: string }[]): void {
  for (const says of form.querySelectorAll<HTMLElement>('.fault')) {
    const name = says.id.replace('says-', '');
    const why = faults.find(({ field }) => field === name)?.why;
    says.textContent = why ? `${why}.`.replace(/^./, (letter) => letter.toUpperCase()) : '';
    input(name).ariaInvalid = why ? 'true' : null;
  }
}

/** What is shown now, for the buttons; null where nothing is. */
let shown: { told: ToldFall; loads: ToldLoads } | null = null;

function answer(words: FallWords): void {
  const read = readFall(words, constants);
  showFaults(read.ok ? [] : read.faults);
  find('#ask-route').hidden = words.onto === 'belay';
  shown = read.ok ? { told: read.told, loads: toldLoads(read.told, constants) } : null;
  render(shown ? <FallResults {...shown} gravity={constants.gravity} base={base} rig={rig} query={serialiseFall(words, VOCABULARY)} /> : <p>No load is worked out before the marked fields can be read.</p>, find('#fall-root'));
  find('.told').classList.toggle('answered', shown !== null);
}

/** Takes what is written from the address; without anything there, the fall that the page begins with, but at the start what the form says. */
function readAddress(isStart: boolean): void {
  const link = parseFallLink(location.search, VOCABULARY);
  const { words } = link;
  rig = link.rig;
  const listed = find('#not-used');
  listed.hidden = link.notUnderstood.length === 0;
  render(listed.hidden ? null : <NotUsedFall pieces={link.notUnderstood} />, listed);
  // What was typed before the script came stays, here and in the history.
  if (words || !isStart) for (const name of FALL_FIELDS) input(name).value = words === null ? first[name] : words[name] || blank[name];
  if (!words && isStart && isWrittenIn(form)) edited();
  else answer(wordsOfForm());
}
/** What an empty choice stands for. */
const blank: FallWords = { ...blankFall(), ...Object.fromEntries(Object.entries(FALL_CHOICES).map(([field, [word]]) => [field, word])) };

function edited(): void {
  const words = wordsOfForm();
  say(tools, '');
  answer(words);
  history.replaceState(null, '', `?${query(words)}`);
}

form.oninput = edited;
form.onsubmit = (event) => {
  event.preventDefault();
  find('#answer').focus();
};
tools.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement) || !shown) return;
  const address = new URL(`?${query(wordsOfForm())}`, location.href.replace(/[?#].*/, '')).href;
  if (target.name === 'print') print();
  else if (target.name === 'link') copy(tools, address, 'Link copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
  else copy(tools, fallText(shown.told, shown.loads, address), 'Text copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
};
addEventListener('popstate', () => readAddress(false));
// From here on they are those of the fall that is told.
find('#answer').textContent = 'The loads';
// What was drawn at build gives way to what the address says: a first render would leave it standing beside another answer.
find('#fall-root').replaceChildren();

// Who comes from the comparator finds the way back to the same rig; from then on it stands in the address.
if (document.referrer && !/[?&]rig=/.test(location.search)) {
  const { origin, pathname, search } = new URL(document.referrer);
  const came = origin === location.origin ? rigOfAddress(pathname, search) : null;
  if (came) history.replaceState(null, '', `${location.search || '?v=1'}&rig=${encodeURIComponent(came)}${location.hash}`);
}
readAddress(true);
