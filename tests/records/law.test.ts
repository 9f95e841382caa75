/** Every legal sentence has its source, its day and a region; the ways to a new sling say what the page asks of them. */
import { expect, test } from 'vitest';
import { readAll } from '../../src/records/read.ts';
import { ROOT } from '../support/step.ts';

const records = readAll(ROOT);
const sentences = [...records.law].flatMap(([id, { data }]) => data.sentences.map((sentence, at) => ({ name: `${id}, sentence ${at + 1}`, ...sentence })));

test('all four regions are there, and each says what it covers', () => {
  expect([...records.law.values()].map(({ data }) => data.region).sort()).toEqual(['elsewhere', 'eu', 'uk', 'us']);
  for (const { data } of records.law.values()) expect(data.covers).not.toBe('');
  expect(records.law.get('eu')?.data.covers).toContain('European Economic Area');
});

test.each(sentences)('$name is one sentence, rests on a rule with a source, and has a day', ({ says, figures, checked }) => {
  expect(says).toMatch(/^[A-Z][^.]*\.$/);
  expect(says.split(/\s+/).length).toBeLessThanOrEqual(28);
  expect(checked).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  for (const address of figures) {
    const { data } = records.figures.get(address) ?? {};
    expect(data?.kind === 'rule' || data?.kind === 'required' || address === 'bmc/inspection', address).toBe(true);
    expect(records.sources.has(address.split('/')[0] as string), address).toBe(true);
    expect((data as { checked: string } | undefined)?.checked, address).toMatch(/^\d{4}-\d{2}-\d{2}$/);
  }
});

test('the ways stand in the order to ask: maker, workshop, new; home last, and only where both refused', () => {
  const ways = [...records.replacements].sort(([, a], [, b]) => a.data.order - b.data.order);
  expect(ways.map(([id]) => id)).toEqual(['maker', 'workshop', 'buy-new', 'keep-and-watch', 'recycle', 'attach-at-home']);
  expect(Object.fromEntries(ways.map(([id, { data }]) => [id, data.only]))).toEqual({
    maker: undefined, workshop: undefined, 'buy-new': undefined, 'keep-and-watch': 'not-retire-now', recycle: undefined, 'attach-at-home': 'maker-and-workshop-refused',
  });
});

test.each(['maker', 'workshop'])('%s: asks for a protective layer and an age, says what is refused, and how to clean and pack', (id) => {
  const { data } = records.replacements.get(id) ?? {};
  expect(data?.ask.join(' ')).toMatch(/sew a protective layer/);
  expect(data?.ask.join(' ')).toMatch(/Over which age do you refuse/);
  expect(data?.refuses).toBeTruthy();
  expect(data?.packing?.join(' ')).toMatch(/Wash the metal.*bag of its own/);
  expect(data?.figures).toContain('common-practice/clean-before-sending');
});
