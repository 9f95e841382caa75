/**
 * The form of the comparator in the browser. The fields of the page are its state: it reads links and fields by one
 * parser, lets the address follow, and asks for the answer. It knows nothing of the engine, which comes later.
 */
import { type Faults, isNumberKey, type Off, rigOf, type Words, wordsOf } from '../components/comparator/form-words.ts';
import type { Setup } from '../components/comparator/setup.ts';
import { FOLD_WORDS, lengthsOf, ORIGIN_WORDS, type Origin, rigLine } from '../components/comparator/words.ts';
import { type ParsedLink, parseLink } from '../links/parse-link.ts';
import { RIG_KEYS, type RigKey } from '../links/rig-keys.ts';
import { besideOf, serialiseLink } from '../links/serialise-link.ts';
import type { Rig } from '../strength/types.ts';

/** What the form asks: a rig, and the link that it was read from, if it was. */
export interface Question { rig: Rig; link: ParsedLink | null }

/** Pause after the last key before the address follows, ms: short enough to copy the address, long enough not to flood it. */
const ADDRESS_PAUSE = 300;

/**
 * Takes over the form of the page.
 * @param panel holds the line that repeats the rig, the button that folds the form, and the form
 */
export function startRig(panel: Element, setup: Setup, ask: (question: Question) => void): void {
  const vocabulary = { slings: Object.keys(setup.slings) };
  const find = (what: string): HTMLElement => panel.querySelector(what) as HTMLElement;
  const form = find('form') as HTMLFormElement;
  const change = find('.change');
  /** A field, by its key; radio buttons of one key answer together. */
  const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement;
  /** Input that the newest entry of the history stands for: a run of edits to one input is one step back. */
  let lastEdited: RigKey | null = null;
  let pause: ReturnType<typeof setTimeout> | undefined;

  const wordsNow = () => Object.fromEntries(RIG_KEYS.map((key) => [key, field(key).value])) as Words;

  /** Shows where the rig comes from, what it is, and what is wrong with each input. Nothing typed is touched. */
  const show = (rig: Rig, faults: Faults, origin: Origin): void => {
    find('h2').textContent = ORIGIN_WORDS[origin];
    find('.rig-line').textContent = rigLine(rig, setup.slings);
    for (const key of RIG_KEYS) {
      const says = document.getElementById(`says-${key}`);
      if (!says) continue;
      const { value, ariaInvalid } = field(key);
      const fault = faults[key];
      if (fault || ariaInvalid) {
        says.textContent = fault ? `${value.trim()}: ${fault}. Not used; it counts as not known. Write it like 9.5 or 9,5.` : '';
        field(key).ariaInvalid = fault ? 'true' : null;
      }
      if (value.trim() === '') field(`no-${key}`).checked = true;
    }
  };

  /** Offers the lengths of the chosen sling, and the one that is asked for. */
  const offerLengths = (words: Words): void => {
    const select = field('length') as unknown as HTMLSelectElement;
    const known = select.options;
    const none = known[known.length - 1] as HTMLOptionElement;
    select.replaceChildren(...lengthsOf(setup.slings, words).map((cm) => new Option(`${cm} cm`, cm)), none);
    select.value = words.length;
  };

  const fold = (isFolded: boolean): void => {
    find('.rig').classList.toggle('folded', isFolded);
    change.textContent = FOLD_WORDS[Number(isFolded)] as string;
    change.ariaExpanded = String(!isFolded);
  };

  /** Takes the rig from the address: what the page was built for, then its query. */
  const readAddress = (): void => {
    const { pathname, search } = location;
    const link = parseLink(search, vocabulary, parseLink(setup.rig, vocabulary).rig);
    const words = wordsOf(link.rig);
    // What could not be used stays in its field as it was asked for, so that it can be mended there.
    const asked = new URLSearchParams(search);
    for (const key of RIG_KEYS) {
      const [one, ...more] = asked.getAll(key);
      const isRefused = link.notUnderstood.some(({ piece }) => piece.startsWith(`${key}=`));
      // A length is chosen from a list, which offers only what it can be.
      if (key !== 'length' && isNumberKey(key) && one !== undefined && more.length === 0 && isRefused) words[key] = one;
    }
    offerLengths(words);
    for (const key of RIG_KEYS) {
      field(key).value = words[key];
      const none = field(`no-${key}`);
      if (none) none.checked = false;
    }
    const hasRig = link.understood.length + link.notUnderstood.length > 0;
    const isPage = /\/compare\/[^/]/.test(pathname);
    clearTimeout(pause);
    lastEdited = null;
    show(link.rig, rigOf(words, {}, vocabulary.slings).faults, hasRig ? 'reader' : isPage ? 'page' : 'example');
    fold(hasRig || isPage);
    ask({ rig: link.rig, link });
  };

  /** Asks again after an edit, and lets the address follow. */
  form.oninput = ({ target }) => {
    const { name, type } = target as HTMLInputElement;
    const key = name.replace('no-', '') as RigKey;
    const isNumber = isNumberKey(key);
    // What is typed counts, until the reader says otherwise.
    if (type === 'text') field(`no-${key}`).checked = false;
    const words = wordsNow();
    if (key === 'sling') offerLengths(words);
    const off: Off = Object.fromEntries(RIG_KEYS.map((one) => [one, field(`no-${one}`)?.checked]));
    const { rig, faults } = rigOf(words, off, vocabulary.slings);
    show(rig, faults, 'reader');
    ask({ rig, link: null });
    clearTimeout(pause);
    const write = (): void => {
      const address = `${setup.base}compare/?${serialiseLink(rig)}${besideOf(location.search)}`;
      if (lastEdited === key) history.replaceState(null, '', address);
      else history.pushState(null, '', address);
      lastEdited = key;
      document.title = `${rigLine(rig, setup.slings)} - ${setup.title}`;
    };
    if (isNumber) pause = setTimeout(write, ADDRESS_PAUSE);
    else write();
  };

  form.onsubmit = (event) => {
    event.preventDefault();
    fold(true);
    document.getElementById('results-heading')?.focus();
  };
  change.onclick = () => fold(change.ariaExpanded === 'true');
  addEventListener('popstate', readAddress);
  // What was chosen before the script came stays, on top of what the address says.
  const built = wordsOf(parseLink(setup.rig, vocabulary).rig);
  const early = RIG_KEYS.map((key) => ({ key, value: field(key).value, isOff: field(`no-${key}`)?.checked }))
    .filter(({ key, value, isOff }) => value !== built[key] || (isOff && value !== ''));
  readAddress();
  if (early.length === 0) return;
  for (const { key, value, isOff } of early) {
    field(key).value = value;
    const none = field(`no-${key}`);
    if (none) none.checked = value === built[key] && isOff === true;
  }
  offerLengths(wordsNow());
  form.dispatchEvent(new Event('input'));
}
