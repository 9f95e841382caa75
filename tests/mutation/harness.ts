/**
 * What the tests get in place of vitest while the code is changed: `describe` and `it` that collect, and vitest's own
 * `expect`. Only what the tests of the changed rooms use. One process then tries hundreds of changes without a new start.
 */
export { expect } from 'vitest';

/** One test of a file, ready to be run. */
export interface Collected {
  /** Titles from outside in, and a number where a title stands twice. */
  readonly name: string;
  readonly run: () => unknown;
}

let titles: string[] = [];
let found: Collected[] = [];

/** The tests that loading a file gives, in order. */
export async function collect(load: () => Promise<unknown>): Promise<Collected[]> {
  titles = [];
  found = [];
  await load();
  return found;
}

const add = (title: string, run: () => unknown): void => {
  const name = [...titles, title].join(' ');
  const twins = found.filter((other) => other.name === name || other.name.startsWith(`${name} #`)).length;
  found.push({ name: twins > 0 ? `${name} #${twins + 1}` : name, run });
};

const nothing = (): void => undefined;

/** Runs `body` with each case: a list gives the arguments, anything else is the only one. The place names the test. */
const eachOf = (one: (title: string, run: () => unknown) => void) => (cases: readonly unknown[]) => (title: string, body: (...values: unknown[]) => unknown): void => {
  for (const [i, given] of cases.entries()) one(`${title} [${i}]`, () => (Array.isArray(given) ? body(...given) : body(given)));
};
const each = eachOf(add);

const plainly = (title: string, body: () => unknown): void => add(title, body);
/** As vitest's `it`, without what the tests do not use. */
export const it = Object.assign(plainly, {
  each,
  skipIf: (skipped: boolean) => Object.assign(skipped ? nothing : plainly, { each: skipped ? () => nothing : each }),
});
export const test = it;

const within = (title: string, body: () => unknown): void => {
  titles.push(title);
  body();
  titles.pop();
};
/** As vitest's `describe`. */
export const describe = Object.assign(within, { each: eachOf(within), skipIf: (skipped: boolean) => (skipped ? nothing : within) });
