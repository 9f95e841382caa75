/** The address of an analysis: any string gives a page, and what is written is read back. Old links only grow. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FORCE_UNITS } from '../../../src/break-tests/table-pulls.ts';
import { MOST_PULLS_IN_LINK, nothingAnalysed, parseAnalysisLink, serialiseAnalysis } from '../../../src/links/analysis-link.ts';

const OLD = JSON.parse(readFileSync(join(import.meta.dirname, 'analysis-links.json'), 'utf8')) as { query: string; pulls: number[]; unit: string }[];

test.each(OLD)('an old link still gives its pulls: $query', ({ query, pulls, unit }) => {
  const { words, notUnderstood } = parseAnalysisLink(query, FORCE_UNITS);
  expect(notUnderstood).toEqual([]);
  expect(words?.unit).toBe(unit);
  expect(words?.pulls.map(({ force }) => force)).toEqual(pulls);
});

const word = fc.stringMatching(/^[a-z ,&=+%é]{0,20}$/).map((text) => text.trim());
const pull = fc.record({ force: fc.integer({ min: 1, max: 60_000 }).map((n) => n / 1000), atLeast: fc.boolean(), mode: word, link: word });

test('what is written is read back the same', () => {
  fc.assert(fc.property(fc.array(pull, { minLength: 1, maxLength: 20 }), fc.array(pull, { maxLength: 5 }), word, fc.constantFrom(...FORCE_UNITS), (pulls, others, name, unit) => {
    const asked = { ...nothingAnalysed(unit), pulls, others: others.map((one) => ({ ...one, mode: '', link: '' })), name };
    const query = serialiseAnalysis(asked);
    expect(query).not.toBeNull();
    expect(parseAnalysisLink(query ?? '', FORCE_UNITS)).toEqual({ words: asked, notUnderstood: [] });
  }));
});

test('any string gives words or none, and never throws', () => {
  fc.assert(fc.property(fc.oneof(fc.string(), fc.stringMatching(/^[vpmlq]=[~>\d.%a-z]{0,30}(&[vpmlq]=[~>\d.%a-z]{0,30}){0,3}$/)), (query) => {
    const { words } = parseAnalysisLink(query, FORCE_UNITS);
    expect(words === null || words.pulls.every(({ force }) => force > 0)).toBe(true);
  }));
});

test('pieces that are not understood are listed word for word', () => {
  const { words, notUnderstood } = parseAnalysisLink('p=9~10&m=cut&unit=t&colour=red&q=9~x', FORCE_UNITS);
  expect(words?.pulls).toHaveLength(2);
  expect(notUnderstood.map(({ piece }) => piece).sort()).toEqual(['colour=red', 'm=cut', 'q=9~x', 'unit=t']);
});

test('more pulls than travel make no link', () => {
  const many = Array.from({ length: MOST_PULLS_IN_LINK + 1 }, () => ({ force: 9, atLeast: false, mode: '', link: '' }));
  expect(serialiseAnalysis({ ...nothingAnalysed('kN'), pulls: many })).toBeNull();
});
