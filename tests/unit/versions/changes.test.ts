/** The list of changes between two frozen versions. The versions are tiny and made by hand; so is every expected list. */
import { describe, expect, test } from 'vitest';
import { type CollectionChanges, changesBetween, isNothing, parseVersionWords, READ_COLLECTIONS } from '../../../src/build/versions/changes.ts';
import type { FrozenVersion, GoneFigure, ShownAnswer } from '../../../src/build/versions/versions.ts';

const NONE: CollectionChanges = { added: [], changed: [], dropped: [], newlyRead: [], noLongerRead: [] };

interface Parts { version?: string; model?: number; gone?: Record<string, GoneFigure>; answers?: Record<string, ShownAnswer[]>; [collection: string]: unknown }
/** A frozen version with a few records; every collection that is not given is empty. */
function version({ version: name = '2026-01-05.1', model = 1, gone, answers = {}, ...collections }: Parts = {}): FrozenVersion {
  const all = Object.fromEntries(READ_COLLECTIONS.map((collection) => [collection, collections[collection] ?? {}]));
  return freeze({ evidence: { version: name, model, ...all }, answers, ...(gone ? { gone } : {}) }) as unknown as FrozenVersion;
}
function freeze<T>(value: T): T {
  if (value && typeof value === 'object') for (const part of Object.values(value)) freeze(part);
  return Object.freeze(value);
}
const figure = (id: string, more: object = {}) => ({ id, source: id.split('/')[0], what: 'a pull', rig: {}, ...more });
const listed = (...figures: { id: string }[]) => Object.fromEntries(figures.map((one) => [one.id, one]));
const row = (method: string, more: Partial<ShownAnswer> = {}): ShownAnswer => ({ method, state: 'result', group: 'ranked', attachment: ['10.0', '12.0', '14.0'], rig: ['9.0', '11.0', '13.0'], ...more });

describe('the list of changes', () => {
  test('of the first version has everything as new and nothing to compare with', () => {
    const changes = changesBetween(null, version({ figures: listed(figure('lab-b/x'), figure('lab-a/x')), answers: { '12/bare-wire/hmpe-10': [row('basket')] } }));
    expect(changes).toEqual({
      version: '2026-01-05.1', model: 1, since: null, moved: [], withdrawn: [],
      records: { figures: { ...NONE, added: ['lab-a/x', 'lab-b/x'] }, factors: NONE, classes: NONE, methods: NONE, slings: NONE, gaps: NONE, rules: NONE },
      answers: { compared: 0, added: 1, dropped: 0, methods: [] },
    });
    expect(isNothing(changes)).toBe(false);
  });

  test('of two versions that say the same in another order of fields is empty', () => {
    const was = version({ figures: listed(figure('lab-a/x', { value: { mean: 12, n: 3 } })), answers: { a: [row('basket')] } });
    const now = version({ version: '2026-01-06.1', figures: { 'lab-a/x': { rig: {}, value: { n: 3, mean: 12 }, what: 'a pull', source: 'lab-a', id: 'lab-a/x' } }, answers: { a: [row('basket')] } });
    const changes = changesBetween(was, now);
    expect(changes.since).toEqual({ version: '2026-01-05.1', model: 1 });
    expect(changes.records.figures).toEqual(NONE);
    expect(isNothing(changes)).toBe(true);
    expect(isNothing(changesBetween(was, version({ ...{ model: 2 }, figures: was.evidence.figures, answers: was.answers })))).toBe(false);
  });

  test('names each field that changed, from what to what, and leaves out the side that has none', () => {
    const was = version({ figures: listed(figure('lab-a/x', { value: 12, unit: 'kN', certainty: 'low' }), figure('lab-a/y', { of: 'unknotted' }), figure('lab-a/z')) });
    const now = version({ figures: listed(figure('lab-a/z'), figure('lab-a/y', { certainty: 'high' }), figure('lab-a/x', { value: { tests: [12, 13] }, unit: 'kN', certainty: 'low' })) });
    expect(changesBetween(was, now).records.figures.changed).toEqual([
      { id: 'lab-a/x', fields: [{ field: 'value', was: 12, now: { tests: [12, 13] } }] },
      { id: 'lab-a/y', fields: [{ field: 'certainty', now: 'high' }, { field: 'of', was: 'unknotted' }] },
    ]);
  });

  test.each(READ_COLLECTIONS)('tells what came, changed and went among the %s', (collection) => {
    const was = version({ [collection]: { b: { what: 'one' }, gone: { what: 'two' }, same: { what: 'three' } } });
    const now = version({ [collection]: { same: { what: 'three' }, new: { what: 'four' }, b: { what: 'five' } } });
    expect(changesBetween(was, now).records[collection]).toEqual({
      ...NONE, added: ['new'], dropped: ['gone'], changed: [{ id: 'b', fields: [{ field: 'what', was: 'one', now: 'five' }] }],
    });
  });

  test('a field that all records gain or lose is told once, and one that some gain at each of them', () => {
    const was = version({ gaps: { a: { blocks: [], question: 'How?' }, b: { blocks: [], question: 'Why?' } } });
    const now = version({ gaps: { a: { blocks: [], nearest: [] }, b: { blocks: [], nearest: [], when: 'wet' }, c: { blocks: [], nearest: [] } } });
    expect(changesBetween(was, now).records.gaps).toEqual({
      added: ['c'], dropped: [], newlyRead: ['nearest'], noLongerRead: ['question'], changed: [{ id: 'b', fields: [{ field: 'when', now: 'wet' }] }],
    });
  });

  test('an older version that knows nothing of a collection has none of its records', () => {
    const was = version({ figures: listed(figure('lab-a/x')) });
    const { rules: _rules, ...evidence } = was.evidence;
    const changes = changesBetween({ ...was, evidence: evidence as FrozenVersion['evidence'] }, version({ figures: listed(figure('lab-a/x')), rules: { age: { years: 10 } } }));
    expect(changes.records.rules).toEqual({ ...NONE, added: ['age'] });
  });
});

describe('figures that left', () => {
  const MOVED = { kind: 'moved', to: 'lab-b/x', on: '2026-01-06', why: 'another edition' } as const;
  const WITHDRAWN = { kind: 'withdrawn', on: '2026-01-06', why: 'The cell was out of order.', was: 'a pull' } as const;

  test('one that moved is neither new nor lost, and says what changed on the way', () => {
    const was = version({ figures: listed(figure('lab-a/x', { value: 12 })) });
    const now = version({ figures: listed(figure('lab-b/x', { value: 13 })), gone: { 'lab-a/x': MOVED } });
    const changes = changesBetween(was, now);
    expect(changes.records.figures).toEqual(NONE);
    expect(changes.moved).toEqual([{ id: 'lab-a/x', to: ['lab-b/x'], on: '2026-01-06', why: 'another edition', read: [{ was: 'lab-a/x', now: 'lab-b/x', fields: [{ field: 'value', was: 12, now: 13 }] }] }]);
  });

  test('cells of a table that moved are followed to the cells of the same name', () => {
    const was = version({ figures: listed(figure('lab-a/x#narrow'), figure('lab-a/x#wide')) });
    const now = version({ figures: listed(figure('lab-b/x#wide')), gone: { 'lab-a/x': MOVED } });
    const changes = changesBetween(was, now);
    expect(changes.records.figures).toEqual(NONE);
    expect(changes.moved[0]?.read).toEqual([{ was: 'lab-a/x#narrow', now: null, fields: [] }, { was: 'lab-a/x#wide', now: 'lab-b/x#wide', fields: [] }]);
  });

  test('one that was split leads to its parts, and none of them is the old one with a change', () => {
    const was = version({ figures: listed(figure('lab-a/x')) });
    const now = version({ figures: listed(figure('lab-a/one'), figure('lab-a/two')), gone: { 'lab-a/x': { kind: 'split', to: ['lab-a/one', 'lab-a/two'], on: '2026-01-06', why: 'two results' } } });
    const changes = changesBetween(was, now);
    expect(changes.moved).toEqual([{ id: 'lab-a/x', to: ['lab-a/one', 'lab-a/two'], on: '2026-01-06', why: 'two results', read: [{ was: 'lab-a/x', now: null, fields: [] }] }]);
    expect(changes.records.figures).toEqual({ ...NONE, added: ['lab-a/one', 'lab-a/two'] });
  });

  test('one that was withdrawn is listed with its reason, and not among those that are no longer read', () => {
    const was = version({ figures: listed(figure('lab-a/x#wide'), figure('lab-a/y')) });
    const now = version({ gone: { 'lab-a/x': WITHDRAWN } });
    const changes = changesBetween(was, now);
    expect(changes.withdrawn).toEqual([{ id: 'lab-a/x', on: '2026-01-06', why: 'The cell was out of order.', was: 'a pull', read: ['lab-a/x#wide'] }]);
    expect(changes.records.figures.dropped).toEqual(['lab-a/y']);
  });

  test('one that the model never read is listed all the same when it is withdrawn', () => {
    expect(changesBetween(version(), version({ gone: { 'lab-a/x': WITHDRAWN } })).withdrawn).toMatchObject([{ id: 'lab-a/x', read: [] }]);
  });

  test('what an earlier version told is not told again; a figure that moved and was then withdrawn is', () => {
    const was = version({ gone: { 'lab-a/x': WITHDRAWN, 'lab-a/y': MOVED } });
    const changes = changesBetween(was, version({ gone: { 'lab-a/y': WITHDRAWN, 'lab-a/x': WITHDRAWN } }));
    expect(changes.withdrawn.map(({ id }) => id)).toEqual(['lab-a/y']);
    expect(changes.moved).toEqual([]);
  });
});

describe('shown answers', () => {
  const answers = (was: Record<string, ShownAnswer[]>, now: Record<string, ShownAnswer[]>) => changesBetween(version({ answers: was }), version({ answers: now })).answers;

  test('are compared where both versions have the comparison', () => {
    expect(answers({ a: [row('basket')], old: [row('basket')] }, { a: [row('basket')], new: [row('basket')], newer: [row('basket')] }))
      .toEqual({ compared: 1, added: 2, dropped: 1, methods: [] });
  });

  // By hand: attachment low 10.0 to 10.3 is 0.3, rig high 13.0 to 12.1 is 0.9; in b the middle 12.0 to 12.9 is 0.9 as well.
  test('a method that moved says in which, and the largest step, the first of equals', () => {
    const was = { a: [row('basket'), row('girth-hitch')], b: [row('basket')], c: [row('basket')] };
    const now = { a: [row('girth-hitch'), row('basket', { attachment: ['10.3', '12.0', '14.0'], rig: ['9.0', '11.0', '12.1'] })], b: [row('basket', { attachment: ['10.0', '12.9', '14.0'] })], c: [row('basket')] };
    expect(answers(was, now)).toEqual({
      compared: 3, added: 0, dropped: 0,
      methods: [{
        method: 'basket', compared: 3, moved: ['a', 'b'], gained: 0, lost: 0, regrouped: [],
        largest: { path: 'a', of: 'rig', at: 'high', was: '13.0', now: '12.1', kn: 0.9 },
      }],
    });
  });

  test('numbers that come and go are counted, and make no step', () => {
    const none = { state: 'no-data', group: 'no-data', attachment: null, rig: null };
    expect(answers({ a: [row('basket', none)], b: [row('basket')] }, { a: [row('basket')], b: [row('basket', none)] }).methods).toEqual([{
      method: 'basket', compared: 2, moved: ['a', 'b'], gained: 1, lost: 1, largest: null,
      regrouped: [
        { was: { state: 'no-data', group: 'no-data' }, now: { state: 'result', group: 'ranked' }, paths: ['a'] },
        { was: { state: 'result', group: 'ranked' }, now: { state: 'no-data', group: 'no-data' }, paths: ['b'] },
      ],
    }]);
  });

  test('rows that stand elsewhere for the same reason are told together', () => {
    const apart = { group: 'unranked' };
    expect(answers({ a: [row('basket')], b: [row('basket')] }, { a: [row('basket', apart)], b: [row('basket', apart)] }).methods[0]?.regrouped)
      .toEqual([{ was: { state: 'result', group: 'ranked' }, now: { state: 'result', group: 'unranked' }, paths: ['a', 'b'] }]);
  });

  test('a method that only one version has is no moved answer', () => {
    expect(answers({ a: [row('basket'), row('old')] }, { a: [row('basket'), row('new')] }).methods).toEqual([]);
  });
});

describe('words about a version', () => {
  const FILE = 'data/changes/2026-01-06.1.yaml';
  test('are a line on the model and reasons, both optional', () => {
    expect(parseVersionWords(FILE, 'model: Legs share unevenly.\nsays:\n  - A source printed a new edition.\n')).toEqual({ model: 'Legs share unevenly.', says: ['A source printed a new edition.'] });
    expect(parseVersionWords(FILE, 'model: Legs share unevenly.\n')).toEqual({ model: 'Legs share unevenly.', says: [] });
  });

  test.each([
    ['says: [""]\n', `${FILE}:1:8 says.0: is empty (got ). Write words.`],
    ['says: one\n', `${FILE}:1:7 says: is not a list (got one). Write a list: [a, b].`],
    ['modle: x\n', `${FILE}:1:1 modle: is no field of this record. Did you mean model?`],
    ['model: 2\nsays: [12]\n', `${FILE}:1:8 model: is not a text (got 2). Write words; put quotes round a text that looks like a number.\n${FILE}:2:8 says.0: is not a text (got 12). Write words; put quotes round a text that looks like a number.`],
    ['model: "a\n', `${FILE}:2:1 YAML: a quote or bracket is not closed. Close it on the same value.`],
  ])('%j is refused with its place', (text, message) => {
    let said = '';
    try { parseVersionWords(FILE, text); } catch (error) { said = (error as RangeError).message; }
    expect(said.split('\n').slice(0, message.split('\n').length).join('\n')).toBe(message);
  });
});
