/**
 * The verdict in the browser. The fields of the page are its state: form and link are read by one reader, the address
 * follows the answers, and the verdict stands under each group of questions.
 */
import { render } from 'preact';
import type { VerdictSetup } from '../components/retirement/setup.ts';
import { verdictText } from '../components/retirement/verdict-text.ts';
import { NotUsed, SoFar, VerdictView } from '../components/retirement/verdict.tsx';
import { dayWords } from '../components/retirement/words.ts';
import { parseVerdictLink, serialiseVerdict, type VerdictLink } from '../links/verdict-link.ts';
import { type HistoryFaults, type HistoryWords, nothingKnown, QUESTIONS, readHistory, WORD_KEYS, type WordKey } from '../retirement/read-history.ts';
import { type Verdict, verdictOn } from '../retirement/verdict.ts';
import { copy, say } from './take-away.ts';
import { isWrittenIn } from './typed-early.ts';

const setup = JSON.parse(document.getElementById('retire-setup')?.textContent ?? '') as VerdictSetup;
const rules = Object.fromEntries(Object.entries(setup.rules).map(([id, rule]) => [id, { ...rule, figures: [] }]));
const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const form = find<HTMLFormElement>('.questions');
const groups = [...form.querySelectorAll<HTMLDetailsElement>('.group')];
const tools = find('.tools');
/** Keys of what is written, not chosen, with the name that a fault is reported under. */
const MAKER_NAMES: Partial<Record<WordKey, string>> = { makerdate: 'the day', makermade: 'the life from manufacture', makerused: 'the life from first use' };

/** Radio buttons of one name, or a text field. */
const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement | RadioNodeList | null;
const off = (name: string) => field(`no-${name}`) as HTMLInputElement | null;

/** Today where the reader is, `2026-11-24`; never a day before the evidence, for a clock that is behind would make the verdict milder. */
function today(): { on: string; isBehind: boolean } {
  const now = new Date();
  const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
  return day < setup.asOf ? { on: setup.asOf, isBehind: true } : { on: day, isBehind: false };
}

/** The answers as the form holds them. */
function answersOfForm(): HistoryWords {
  const words = Object.fromEntries(WORD_KEYS.map((key) => [key, off(key)?.checked ? '' : (field(key)?.value ?? '')]));
  const answers = Object.fromEntries(QUESTIONS.map((id) => [id, field(id)?.value || 'unknown']));
  return { words, answers } as unknown as HistoryWords;
}

/** Writes answers into the form; what is not known stays open. */
function fill({ words, answers }: HistoryWords): void {
  for (const radio of form.querySelectorAll<HTMLInputElement>('[type=radio]')) {
    const { name, value } = radio;
    const answer = name in answers ? answers[name as keyof typeof answers] : words[name as WordKey];
    radio.checked = value !== '' && value !== 'unknown' && answer === value;
  }
  for (const key of WORD_KEYS) {
    const input = field(key);
    if (input instanceof HTMLInputElement) input.value = words[key];
    const none = off(key);
    if (none) none.checked = false;
  }
}

/** Says at each field what is wrong with it, and at each group how many of its questions are answered. */
function showFields({ words }: HistoryWords, faults: HistoryFaults): void {
  for (const key of WORD_KEYS) {
    const says = document.getElementById(`says-${key}`);
    if (!says) continue;
    const why = faults[key];
    says.textContent = why ? `${words[key].trim()}: ${why}. Not used.` : '';
    (field(key) as HTMLInputElement).ariaInvalid = why ? 'true' : null;
  }
  for (const group of groups) {
    const names = new Set([...group.querySelectorAll<HTMLInputElement>('input')].map(({ name }) => name.replace(/^no-/, '')));
    const done = [...names].filter((name) => {
      const input = field(name);
      const isChosen = input instanceof HTMLInputElement ? input.value.trim() !== '' : Boolean(group.querySelector(`[name="${name}"]:checked`));
      return isChosen || off(name)?.checked;
    });
    (group.querySelector('.state') as HTMLElement).textContent = `${done.length} of ${names.size} answered`;
  }
}

/** What is shown now, for the buttons. */
let shown: { asked: HistoryWords; on: string; verdict: Verdict } | null = null;

/** Judges the answers and shows the verdict. @param link that the answers came with; null once the reader has changed one */
function judge(asked: HistoryWords, link: VerdictLink | null): void {
  const { on, isBehind } = today();
  const { history, faults } = readHistory(asked, on);
  showFields(asked, faults);
  const verdict = verdictOn(rules, history, on);
  shown = { asked, on, verdict };
  const wasOn = link?.on && link.on < on ? link.on : null;
  const then = wasOn === null ? null : { on: wasOn, verdict: verdictOn(rules, readHistory(asked, wasOn).history, wasOn), isOtherEvidence: (link?.d ?? setup.evidence) !== setup.evidence };
  const unread = WORD_KEYS.flatMap((key) => (faults[key] && MAKER_NAMES[key] ? [`${MAKER_NAMES[key]} that the maker prints`] : []));
  render(<VerdictView setup={setup} history={history} verdict={verdict} on={on} then={then} unread={unread} />, find('#verdict-root'));
  for (const group of groups) render(<SoFar verdict={verdict} on={on} base={setup.base} />, group.querySelector('.so-far') as Element);
  find('#clock').textContent = isBehind ? `Your device's clock is behind. The verdict counts from ${dayWords(on)}, the day of our evidence.` : '';
  document.documentElement.classList.add('judged');
}

/** Takes the answers from the address. */
function readAddress(): void {
  const link = parseVerdictLink(location.search, { keys: WORD_KEYS, questions: QUESTIONS });
  const { on } = today();
  const notUsed = [...link.notUnderstood];
  if (link.on && link.on > on) notUsed.push({ piece: `on=${link.on}`, why: `that day is still to come by this device's clock; judged on ${on}` });
  const asked = link.asked ?? nothingKnown();
  // A word that no button has is listed: its field cannot show it.
  for (const key of ['material', 'use'] as const) {
    const why = readHistory(asked, on).faults[key];
    if (why) notUsed.push({ piece: `${key}=${asked.words[key]}`, why });
  }
  const listed = find('#not-used');
  listed.hidden = notUsed.length === 0;
  render(notUsed.length > 0 ? <NotUsed pieces={notUsed} /> : null, listed);
  fill(asked);
  if (link.asked) judge(asked, link);
  else showFields(asked, {});
}

function edited(): void {
  const asked = answersOfForm();
  say(tools, '');
  judge(asked, null);
  history.replaceState(null, '', `?${serialiseVerdict(asked, today().on)}`);
}

form.oninput = ({ target }) => {
  const { name, type } = target as HTMLInputElement;
  // What is typed counts, until the reader says otherwise.
  if (type === 'text') (off(name) as HTMLInputElement).checked = false;
  edited();
};
form.onsubmit = (event) => {
  event.preventDefault();
  find('#verdict').focus();
};
form.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement) || target.type === 'submit') return;
  const group = target.closest('.group') as HTMLDetailsElement;
  if (target.classList.contains('rest')) {
    const open = [...group.querySelectorAll<HTMLInputElement>('.asked [value=no]')].filter(({ name }) => !group.querySelector(`[name="${name}"]:checked`));
    for (const no of open) no.checked = true;
    edited();
    return;
  }
  const next = groups[groups.indexOf(group) + 1];
  if (!next) return;
  next.open = true;
  (next.querySelector('summary') as HTMLElement).focus();
  next.scrollIntoView({ block: 'start' });
};
tools.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement) || !shown) return;
  const { asked, on, verdict } = shown as { asked: HistoryWords; on: string; verdict: Verdict };
  const address = new URL(`?${serialiseVerdict(asked, on, /^[\d.-]+$/.test(setup.evidence) ? setup.evidence : undefined)}`, location.href.replace(/[?#].*/, '')).href;
  if (target.name === 'print') print();
  else if (target.name === 'link') copy(tools, address, 'Link copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
  else copy(tools, verdictText(verdict, setup.rules, on, address), 'Text copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
};
// Paper shows every answer.
addEventListener('beforeprint', () => { for (const group of groups) group.open = true; });
addEventListener('popstate', readAddress);
// What was answered before the script came stays.
if (location.search === '' && isWrittenIn(form)) edited();
else readAddress();
