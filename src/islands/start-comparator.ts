/**
 * Brings the comparator to life. The form first, because it is small; engine and evidence at once where the address
 * asks for another rig than the page holds, or else when the browser is idle or the reader changes something.
 */
import type { Setup } from '../components/comparator/setup.ts';
import { besideOf, serialiseLink } from '../links/serialise-link.ts';
import type { Evidence } from '../strength/types.ts';
import { type Question, startRig } from './comparator-rig.ts';
import type { ShownComparison } from './beside.tsx';

const setup = JSON.parse(document.getElementById('comparator-setup')?.textContent ?? '') as Setup;
const rigRoot = document.getElementById('rig-root');
const resultsRoot = document.getElementById('results-root');

let newest: Question | null = null;
let answer: Promise<void> | null = null;
/** What takes the questions, once engine and evidence are there. */
let put: ((question: Question) => void) | null = null;

/** Loads engine and evidence together, and hands them the newest question. */
async function load(): Promise<void> {
  const [{ startResults }, evidence] = await Promise.all([
    import('./comparator-results.tsx'),
    fetch((document.querySelector('[rel=prefetch]') as HTMLLinkElement).href).then((response) => {
      if (!response.ok) throw new Error(`evidence: ${response.status}`);
      return response.json() as Promise<Evidence>;
    }),
  ]);
  put = startResults(resultsRoot as Element, setup, evidence, newest as Question);
}

/** The next change tries again; until then the head script says on the page what happened. */
function fail(fault: unknown): void {
  answer = null;
  put = null;
  dispatchEvent(new Event('comparison-failed'));
  console.error(fault);
}

function answerNewest(): void {
  answer ??= load().catch(fail);
}

function ask(question: Question): void {
  newest = question;
  if (put) {
    try {
      put(question);
    } catch (fault) {
      fail(fault);
    }
    return;
  }
  const isAsBuilt = serialiseLink(question.rig) === setup.rig && !question.link?.understood.length && !question.link?.notUnderstood.length;
  // Until the engine is there, the results in the page belong to the rig that was built in: they must not stand beside another.
  if (!isAsBuilt) document.documentElement.classList.add('waiting');
  if (answer || !isAsBuilt) answerNewest();
  // A browser that does not tell when it is idle answers at once: to a timer, an object is no delay.
  else (globalThis.requestIdleCallback ?? setTimeout)(answerNewest, { timeout: 2000 } as never);
}

/** A method that is named in the address is opened and shown, once its row is there. */
function openNamed(): void {
  const named = document.getElementById(location.hash.slice(1)) as HTMLDetailsElement | null;
  if (!named) return;
  // A row without a working is only shown.
  named.open = true;
  named.closest('tr')?.scrollIntoView();
  named.querySelector('summary')?.focus();
}

/** A method's page is given the rig, and so can lead back to this comparison. */
function keepRig({ target }: Event): void {
  const link = (target as Element).closest<HTMLAnchorElement>('a[href*="/methods/"]');
  if (link && newest) link.search = serialiseLink(newest.rig);
}

for (const click of ['click', 'auxclick']) resultsRoot?.addEventListener(click, keepRig);
addEventListener('comparison-shown', openNamed, { once: true });
addEventListener('comparison-shown', (event) => {
  const { detail } = event as CustomEvent<ShownComparison>;
  if (besideOf(location.search)) import('./beside.tsx').then(({ showBeside }) => showBeside(detail)).catch(fail);
  if (detail.state.older) import('./then.tsx').then(({ showThen }) => showThen(detail)).catch(fail);
});
if (rigRoot) startRig(rigRoot, setup, ask);
