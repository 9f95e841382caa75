/**
 * The planner of breaks in the browser. The fields of the page are its state: form and link are read by one reader, and the
 * address follows what is written.
 */
import { render } from 'preact';
import { type PlanAnswer, type PlanAsked, type PlanField, planOn } from '../components/breaks-plan/asked.ts';
import { NotUsedPlan, PlanResults } from '../components/breaks-plan/results.tsx';
import { planText } from '../components/breaks-plan/words.ts';
import { type PairWord, parsePlanLink, PLAN_NUMBERS, type PlanNumber, type PlanWords, serialisePlan, type Want, WANTS } from '../links/plan-link.ts';
import { copy, say } from './take-away.ts';
import { isWrittenIn } from './typed-early.ts';

const find = <E extends Element = HTMLElement>(what: string): E => document.querySelector(what) as E;
const form = find<HTMLFormElement>('.questions');
const tools = find('.tools');
const input = (name: string) => form.elements.namedItem(name) as HTMLInputElement;
const text = (name: string): string => input(name).value;

/** Everything as the form holds it. */
const wordsOfForm = (): PlanWords => ({
  want: text('want') as Want, pair: text('pair') as PairWord, own: [text('coverage'), text('confidence')],
  numbers: Object.fromEntries(PLAN_NUMBERS.map((name) => [name, text(name)])) as Record<PlanNumber, string>,
});

/** Writes words into the form. */
function fill({ want, pair, own, numbers }: PlanWords): void {
  input('want').value = want;
  input('pair').value = pair;
  [input('coverage').value, input('confidence').value] = own;
  for (const name of PLAN_NUMBERS) input(name).value = numbers[name];
}

/** Says at each field what is wrong with it. */
function showFaults(faults: PlanAsked['faults']): void {
  for (const says of form.querySelectorAll<HTMLElement>('.fault')) {
    const name = says.id.replace('says-', '') as PlanField;
    const why = faults[name];
    says.textContent = why ? `${text(name).trim()}: ${why}. Not used.` : '';
    input(name).ariaInvalid = why ? 'true' : null;
  }
}

const NAMES: Readonly<Partial<Record<PlanField, string>>> = {
  coverage: 'how many pieces lie above it', confidence: 'how sure you want to be', cv: 'how much pulls scatter', diff: 'the difference not to be missed', share: 'your guess of the share',
};

/** What is shown now, for the buttons. */
let shown: { words: PlanWords; answer: PlanAnswer | null };

function answer(words: PlanWords): void {
  const asked = planOn(words);
  showFaults(asked.faults);
  for (const want of WANTS) find(`#q-${want}`).hidden = want !== words.want;
  find('#q-cv').hidden = words.want === 'share';
  find('#own').hidden = words.pair !== 'own';
  shown = { words, answer: asked.answer };
  const missing = asked.missing.map((field) => NAMES[field]).join(' and ');
  render(asked.answer ? <PlanResults answer={asked.answer} /> : <p>{missing ? `Write ${missing}, and the plan stands here.` : 'Nothing is planned before the marked fields can be read.'}</p>, find('#plan-root'));
  find('.cost').classList.toggle('answered', asked.answer !== null);
}

/** Takes what is written from an address. */
function readAddress(query: string): void {
  const { words, notUnderstood } = parsePlanLink(query);
  const listed = find('#not-used');
  listed.hidden = notUnderstood.length === 0;
  render(notUnderstood.length > 0 ? <NotUsedPlan pieces={notUnderstood} /> : null, listed);
  fill(words);
  answer(wordsOfForm());
}

function edited(): void {
  const words = wordsOfForm();
  say(tools, '');
  answer(words);
  history.replaceState(null, '', `?${serialisePlan(words)}`);
}

form.oninput = edited;
form.onsubmit = (event) => {
  event.preventDefault();
  find('#answer').focus();
};
form.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement) || target.name !== 'take-cv') return;
  input('cv').value = target.value;
  edited();
};
tools.onclick = ({ target }) => {
  if (!(target instanceof HTMLButtonElement) || !shown.answer) return;
  const address = new URL(`?${serialisePlan(shown.words)}`, location.href.replace(/[?#].*/, '')).href;
  if (target.name === 'print') print();
  else if (target.name === 'link') copy(tools, address, 'Link copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
  else copy(tools, planText(shown.answer, address), 'Text copied.').catch(() => say(tools, 'That did not arrive. Try again.'));
};
addEventListener('popstate', () => readAddress(location.search));
// What was typed before the script came stays, here and in the history.
if (location.search === '' && isWrittenIn(form)) edited();
else if (location.search === '') answer(wordsOfForm());
else readAddress(location.search);
