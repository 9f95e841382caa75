/** Brings the comparator of the page to life: reads what the page holds, fetches its evidence, takes over the markup. */
import { hydrate } from 'preact';
import type { Setup } from '../components/comparator/setup.ts';
import type { Evidence } from '../strength/types.ts';
import { ComparatorIsland } from './comparator.tsx';

async function start(): Promise<void> {
  const setup = JSON.parse(document.getElementById('comparator-setup')?.textContent ?? '') as Setup;
  const root = document.getElementById('comparator');
  const answer = await fetch(setup.evidence);
  if (!answer.ok || !root) throw new Error(`the evidence did not arrive (${answer.status})`);
  hydrate(<ComparatorIsland setup={setup} evidence={await answer.json() as Evidence} />, root);
}

// The head script says on the page that the comparison could not be computed, and what to open instead.
start().catch((fault: unknown) => {
  dispatchEvent(new Event('comparison-failed'));
  throw fault;
});
