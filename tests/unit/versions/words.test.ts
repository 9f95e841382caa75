/** The words in which changes are told, on lists made by hand. */
import { describe, expect, test } from 'vitest';
import { changesBetween, type VersionChanges } from '../../../src/build/versions/changes.ts';
import type { FrozenVersion } from '../../../src/build/versions/versions.ts';
import { addressesIn, figureChangeWords, figureName, inARow, numberChanges, spelled, summaryOf } from '../../../src/components/changes/words.ts';
import type { Figure } from '../../../src/strength/types.ts';

const many = (n: number, word = 'x') => Array.from({ length: n }, (_, i) => `${word}-${i}`);
const EMPTY = changesBetween(
  { evidence: { version: '2026-01-05.1', model: 1 }, answers: {} } as unknown as FrozenVersion,
  { evidence: { version: '2026-01-06.1', model: 1, figures: {} }, answers: {} } as unknown as FrozenVersion,
);
const changes = (edit: (list: VersionChanges) => void): VersionChanges => {
  const list = structuredClone(EMPTY);
  edit(list);
  return list;
};

describe('a version in a few sentences', () => {
  const FULL = changes((list) => {
    list.model = 2;
    list.records.figures = { added: many(26), changed: [{ id: 'lab-a/x', fields: [] }], dropped: many(2), newlyRead: [], noLongerRead: [] };
    list.records.factors.added = many(14);
    list.records.rules.added = many(1);
    list.records.gaps.changed = [{ id: 'a', fields: [] }, { id: 'b', fields: [] }];
    list.records.slings.dropped = many(1);
    list.moved = [{ id: 'lab-a/y', to: ['lab-b/y'], on: '2026-01-06', why: '', read: [] }];
    list.withdrawn = [{ id: 'lab-a/z', on: '2026-01-06', why: '', was: '', read: [] }];
    list.answers.methods = many(3).map((method) => ({ method, compared: 1, moved: ['a'], gained: 0, lost: 0, regrouped: [], largest: null }));
  });

  test('tells what was withdrawn first, then what changed, and what came of it', () => {
    expect(summaryOf(FULL)).toEqual([
      'The model number went from one to two.',
      'One figure was withdrawn.',
      'One figure changed.',
      'One figure moved to another address.',
      'Twenty-six figures are newly read by the model.',
      'Two figures are no longer read.',
      'New: fourteen factors and one rule of retirement.',
      'Changed: two gaps.',
      'Gone: one sling.',
      'Shown answers of three methods moved.',
    ]);
  });

  test('says so where no answer moved', () => {
    expect(summaryOf(EMPTY)).toEqual(['No shown answer moved.']);
  });

  test('counts what the first version has', () => {
    const first = changes((list) => {
      list.since = null;
      list.records.figures.added = many(131);
      list.records.methods.added = many(8);
      list.records.slings.added = many(1);
    });
    expect(summaryOf(first)).toEqual(['The first version. The model reads one hundred and thirty-one figures.', 'It has eight methods and one sling.']);
  });

  test('has no digit, which would need an origin, and no sentence of more than 28 words', () => {
    const most = changes((list) => {
      for (const collection of Object.values(list.records)) Object.assign(collection, { added: many(199), dropped: many(199), changed: many(199).map((id) => ({ id, fields: [] })) });
    });
    for (const sentence of [FULL, most].flatMap(summaryOf)) {
      expect(sentence).not.toMatch(/\p{N}/u);
      // Counts of three words in all six kinds of record at once are longer than any version will be.
      if (!/hundred/.test(sentence)) expect(sentence.split(' ').length).toBeLessThanOrEqual(28);
    }
  });

  test.each<[number, string]>([[0, 'no'], [1, 'one'], [99, 'ninety-nine'], [100, 'one hundred'], [101, 'one hundred and one'], [240, 'two hundred and forty'], [999, 'nine hundred and ninety-nine'], [1000, '1000']])('%d is %s', (n, words) => {
    expect(spelled(n)).toBe(words);
  });

  test.each([[[], ''], [['a'], 'a'], [['a', 'b'], 'a and b'], [['a', 'b', 'c'], 'a, b and c']])('%j in a row', (parts, words) => {
    expect(inARow(parts)).toBe(words);
  });
});

describe('a changed figure', () => {
  const figure = (more: Partial<Figure> = {}): Figure => ({ id: 'lab-a/x', source: 'lab-a', what: 'A pull', kind: 'measured', value: { mean: 12, n: 3 }, unit: 'kN', rig: {}, study: 'lab-a', standing: 'read', certainty: 'low', seen: null, ...more });
  // No-break spaces stand between a number and its unit.
  const said = (now: Partial<Figure>, ...fields: string[]) => figureChangeWords(figure(), figure(now), fields).map((words) => words.replaceAll('\u00a0', ' '));

  test('says its value before and after, with its unit', () => {
    expect(said({ value: { mean: 13, n: 3 } }, 'seen', 'value')).toEqual(['value was mean 12 kN of 3 pulls, is mean 13 kN of 3 pulls']);
    expect(said({ unit: 'lbf' }, 'unit')).toEqual(['value was mean 12 kN of 3 pulls, is mean 12 lbf of 3 pulls']);
  });

  test('says each break, where breaks may move and their mean stay', () => {
    expect(said({ value: { tests: [11, 13] } }, 'value')).toEqual(['value was mean 12 kN of 3 pulls, is mean 12 kN of 2 pulls (11, 13)']);
  });

  test('says its judgement, its conditions and what it is a share of', () => {
    expect(said({ certainty: null, standing: 'quoted', of: 'unknotted', rig: { widthMm: 10 } }, 'certainty', 'of', 'rig', 'standing')).toEqual([
      'certainty was low, is not judged', 'share was of nothing stated, is of the same piece without the knot', 'width was not stated, is 10 mm', 'standing was read, is quoted',
    ]);
  });

  test('says that the model reads it otherwise where nothing else changed', () => {
    expect(said({}, 'seen')).toEqual(['how the model reads it changed']);
    expect(said({}, 'kind')).toEqual(['kind changed']);
  });

  test('is called by its cell, too', () => {
    expect(figureName({ id: 'lab-a/x#wide-2', what: 'A pull' })).toBe('A pull (wide 2)');
    expect(figureName({ id: 'lab-a/x', what: 'A pull' })).toBe('A pull');
  });
});

describe('numbers below a changed field', () => {
  test.each<[unknown, unknown, string[]]>([
    [0.19975, 0.17396, ['tau was 0.2, is 0.174']],
    [[0.10942, 0.75534], [0.10942, 0.43464], ['tau was 0.109 to 0.755, is 0.109 to 0.435']],
    [null, [1, 2], ['tau was none, is 1 to 2']],
    [undefined, 3, ['tau was none, is 3']],
    [{ low: 1, high: 2, why: 'a' }, { low: 1, high: 3, why: 'b' }, ['tau, high was 2, is 3']],
    [['a', 'b'], ['a'], []],
    [{ low: 1 }, { low: 1 }, []],
  ])('%j to %j', (was, now, words) => {
    expect(numberChanges('tau', was, now)).toEqual(words);
  });

  test('addresses are found whether they stand alone or with a reason', () => {
    expect(addressesIn(['lab-a/x', { figure: 'lab-a/y', why: 'old' }, 3, null])).toEqual(['lab-a/x', 'lab-a/y']);
    expect(addressesIn('lab-a/x')).toEqual([]);
  });
});
