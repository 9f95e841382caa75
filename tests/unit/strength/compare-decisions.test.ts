/** What the comparison decides of a method before it computes: its state, its gap, the nearest test, ticks, words. On made-up evidence; every expectation follows from the few records beside it. */
import { describe, expect, test } from 'vitest';
import type { GapRecord, MethodRecord, RigConditions } from '../../../src/records/schema.ts';
import { compare } from '../../../src/strength/compare.ts';
import type { Figure, Rig, Row } from '../../../src/strength/types.ts';
import { near } from '../break-tests/near.ts';
import { assumed, factor, figure, link, method, type Parts, RIG, rowIn, world } from './small-evidence.ts';

describe('a row without numbers', () => {
  const made = method('nothing', { shown: ['seen'], name: 'By hand' });

  test('is complete: nothing computed, and what the record says of the method', () => {
    expect(rowIn(world({ methods: { m: made } }), { sling: null })).toEqual({
      method: 'm', name: 'By hand', state: 'no-data', group: 'no-data', reasons: ['Choose a sling first.'], attachment: null, rig: null, aboveRating: null, aboveDemand: null,
      dots: [], ticks: [], links: [], strip: '', certainty: null, figures: [], shown: ['seen'], moves: [], oneClipError: { what: 'falls off', releases: false },
      closed: { possible: true, why: 'by hand' }, finishedCm: null, bulk: 'one strand',
    });
    const { bulk, ...older } = made;
    expect(rowIn(world({ methods: { m: older as MethodRecord } })).bulk).toBe('');
  });

  // An along-factor tested on 4 mm reaches half a millimetre to either side, and the width less than 2 mm.
  const parts: Parts = {
    figures: [figure('on-4', 10, { bearingMm: 4 })],
    factors: { along: factor({ along: 'bearingMm', from: ['on-4'] }), nylon: assumed(10, 0, { applies: { materials: ['nylon'] } }), pins: assumed(10, 0, { applies: { bearings: ['pin'] } }), both: assumed(10, 0, { applies: { bearings: ['bare-wire', 'pin'] } }) },
  };
  const cases: [string, MethodRecord, Partial<Rig>, Partial<Row>][] = [
    ['no figure', method('nothing'), {}, { state: 'no-data', group: 'no-data', reasons: ['We found no test of this.'] }],
    ['another material', method('nylon'), {}, { group: 'no-data', reasons: ['We found no test of this method with this material.'] }],
    ['another width', method('along'), { sling: 'nylon' }, { group: 'no-data', reasons: ['We found no test of this method with a sling of this width.'] }],
    ['thinner', method('along'), { bearingMm: 3.4 }, { group: 'no-data', reasons: ['The bearing is thinner than any that we found a test on with this sling.'] }],
    ['thicker', method('along'), { bearingMm: 4.6 }, { group: 'no-data', reasons: ['The bearing is thicker than any that we found a test on with this sling.'] }],
    ['just as tested', method('along'), { bearingMm: 4.5 }, { state: 'result', group: 'ranked', reasons: [] }],
    ['another sling', method('on-4', { takes: ['cord', 'tape'] }), {}, { state: 'other-sling', group: 'other-sling', reasons: ['It is made from another kind of sling than this one.'] }],
    ['an unknown sling', method('on-4', { takes: ['cord'] }), { sling: 'none' }, { state: 'no-data', group: 'no-data', reasons: ['Choose a sling first.'] }],
    ['a used sling', method('on-4'), { slingState: 'used' }, { group: 'no-data', reasons: ['The tests were made with new slings; we found none that says what a used one keeps in a hitch or a knot.'] }],
    ['the one other eye', method('on-4', { eyes: ['metal-bar'] }), {}, { group: 'no-data', reasons: ['It is for another kind of eye than this one.'] }],
    ['several other eyes', method('on-4', { eyes: ['metal-bar', 'twin-eye'] }), {}, { group: 'no-data', reasons: ['We found no test of this method on this kind of eye.'] }],
    ['an eye that is not known is a bare wire', method('on-4', { eyes: ['bare-wire'] }), { eye: null }, { state: 'result', group: 'unranked' }],
    ['pins alone at the eye', method('pins'), {}, { group: 'no-data', reasons: ['We found no test of this on a wire.'] }],
    ['pins alone, among other links', method([link('connector', 'on-4'), link('eye', 'pins'), link('knot', 'on-4')]), {}, { group: 'no-data' }],
    ['pins alone, on a bar', method('pins'), { eye: 'metal-bar' }, { state: 'result', reasons: [] }],
    ['pins alone, at the connector', method([link('eye', 'on-4'), link('connector', 'pins')]), {}, { state: 'result' }],
    ['pins and wire', method('both'), {}, { state: 'result' }],
    ['pins alone beneath what multiplies it', method('half'), {}, { group: 'no-data', reasons: ['We found no test of this on a wire.'] }],
    ['the maker\'s without a rating', method('on-4', { role: 'reference' }), { ratingKn: null }, { state: 'result', group: 'maker', attachment: null, reasons: ['Its strength is known only as the rating on the device; without a readable rating there is no number.'] }],
    ['the maker\'s on another eye', method('on-4', { role: 'reference', eyes: ['metal-bar'] }), { ratingKn: null }, { group: 'no-data' }],
    ['the maker\'s, whatever the sling', method('on-4', { role: 'reference', takes: ['cord'] }), { slingState: 'used' }, { state: 'result', group: 'maker', reasons: [] }],
    ['the maker\'s without a sling', method('on-4', { role: 'reference' }), { sling: null }, { state: 'result', group: 'maker' }],
    ['the old sling without a rating', method('on-4', { role: 'comparison', takes: ['cord'] }), { ratingKn: null, sling: null, slingState: 'used' }, { state: 'result', group: 'comparison', reasons: [] }],
    ['the old sling without a figure', method('nothing', { role: 'comparison', shown: ['on-4'] }), {}, { state: 'no-data', group: 'comparison', reasons: ['We found no test of this.'] }],
    ['the old sling with nothing to show', method('nothing', { role: 'comparison' }), {}, { group: 'comparison', reasons: ['We found no published test of a used sling of this material and age.'] }],
  ];
  test('has a state, a group and words of its own for each cause', () => {
    const factors = { ...parts.factors, half: assumed(1, 0, { acts: { multiplies: 'pins' } }) };
    for (const [cause, m, rig, expected] of cases) expect(rowIn(world({ ...parts, factors, methods: { m } }), rig), cause).toMatchObject(expected);
  });

  test('the finished length is a share of the sling less what knots take: of 60 cm the half, less 10 widths of 10 mm', () => {
    const length = (more: Partial<MethodRecord['length']>, rig: Partial<Rig> = {}) => rowIn(world({ figures: [figure('ten', 10)], methods: { m: method('ten', { length: { words: '', ...more } }) } }), rig);
    expect(length({ share: 0.5, lessWidths: 10 }).finishedCm).toBe(20);
    expect(length({ share: 0.5, lessWidths: 10 }, { sling: 'nylon' }).finishedCm).toBe(14);
    expect(length({ share: 0.5 }).finishedCm).toBe(30);
    expect([length({}).finishedCm, length({ share: 0.5 }, { lengthCm: null }).finishedCm, length({ share: 0.5 }, { sling: null }).finishedCm, length({ share: 0.5 }, { sling: 'none' }).finishedCm]).toEqual([null, null, null, null]);
    // 30 cm less 31 widths is nothing, not less.
    expect(length({ share: 0.5, lessWidths: 31 })).toMatchObject({ finishedCm: 0, state: 'apart', group: 'apart', reasons: ['A sling of this length is too short: its knots and turns use it up.'] });
    expect(length({ share: 0.5, lessWidths: 29 })).toMatchObject({ finishedCm: 1, state: 'result', reasons: [] });
  });
});

describe('what sets a method apart', () => {
  const why = 'It slips.';
  const apart = (more: Partial<MethodRecord['apart'][number]>): MethodRecord['apart'] => [{ why, figures: [], published: [], ...more }];
  const cases: [Partial<MethodRecord['apart'][number]>, Partial<Rig>, boolean][] = [
    [{}, {}, true],
    [{ when: {} }, {}, true],
    [{ when: { eyes: ['bare-wire'] } }, {}, true],
    [{ when: { eyes: ['bare-wire'] } }, { eye: 'metal-bar' }, false],
    [{ when: { materials: ['hmpe'] } }, {}, true],
    [{ when: { materials: ['hmpe'] } }, { sling: 'nylon' }, false],
    // The sling is 10 mm wide; both limits are inclusive.
    [{ widthMm: [10, 12] }, {}, true],
    [{ widthMm: [8, 10] }, {}, true],
    [{ widthMm: [10.1, 12] }, {}, false],
    [{ widthMm: [8, 9.9] }, {}, false],
    [{ when: { eyes: ['bare-wire'], materials: ['nylon'] } }, {}, false],
    [{ when: { eyes: ['bare-wire'] }, widthMm: [8, 9] }, {}, false],
  ];
  test('is a reason that speaks of this eye, this material and this width; it has its numbers all the same', () => {
    for (const [reason, rig, expected] of cases) {
      const row = rowIn(world({ factors: { ten: assumed(10) }, methods: { m: method('ten', { apart: apart(reason) }) } }), rig);
      expect([row.state, row.group, row.reasons], JSON.stringify([reason, rig])).toEqual(expected ? ['apart', 'apart', [why]] : ['result', 'unranked', []]);
      expect(row.attachment).not.toBeNull();
    }
  });

  test('published breaks keep it on the page where nothing can be computed; figures behind the reason alone do not', () => {
    const of = (factors: string, published: string[], rig: Partial<Rig> = {}) => rowIn(world({ factors: { pins: assumed(10, 0, { applies: { bearings: ['pin'] } }) },
      methods: { m: method(factors, { shown: ['first', 'twice'], apart: apart({ published, figures: ['twice', 'behind'] }) }) } }), rig);
    for (const factors of ['nothing', 'pins']) {
      expect(of(factors, ['range'])).toMatchObject({ state: 'apart', group: 'apart', reasons: [why], attachment: null, shown: ['first', 'twice', 'range', 'behind'] });
      expect(of(factors, [])).toMatchObject({ state: 'no-data', group: 'no-data', shown: ['first', 'twice'] });
    }
    expect(of('pins', ['range'], { eye: 'metal-bar' })).toMatchObject({ group: 'apart' });
    expect(of('pins', ['range'], { eye: 'metal-bar' }).attachment).not.toBeNull();
  });

  test('is said of home methods alone', () => {
    for (const [role, group] of [['reference', 'maker'], ['comparison', 'comparison']] as const) {
      expect(rowIn(world({ factors: { ten: assumed(10) }, methods: { m: method('ten', { role, apart: apart({}) }) } }))).toMatchObject({ state: 'result', group, reasons: [] });
    }
  });
});

describe('what is shown beside the old sling', () => {
  const OLD: NonNullable<Rig['old']> = { material: null, ageYears: null, use: null, light: null };
  const shows = (rig: RigConditions, change: Partial<Rig>, role: MethodRecord['role'] = 'comparison'): boolean =>
    rowIn(world({ figures: [figure('old', 10, rig)], methods: { m: method('old', { role, shown: ['old'] }) } }), change).shown.includes('old');
  const used = (more: RigConditions): RigConditions => ({ material: 'nylon', state: 'used', ...more });
  const cases: [RigConditions, Partial<NonNullable<Rig['old']>> | null, boolean][] = [
    [used({}), null, true],
    [used({}), {}, true],
    [used({}), { material: 'nylon' }, true],
    [used({}), { material: 'hmpe' }, false],
    [used({ material: undefined }), { material: 'hmpe' }, true],
    [used({ state: 'new' }), { material: 'hmpe' }, true],
    [used({ ageYears: 5 }), {}, true],
    [used({ ageYears: 5 }), { ageYears: 5 }, true],
    [used({ ageYears: 5 }), { ageYears: 6 }, false],
    [used({ ageYears: 5 }), { ageYears: 5, material: 'hmpe' }, false],
    [used({}), { ageYears: 5 }, true],
    // From three years on, to less than five.
    [used({ ageYears: { from: 3, to: 5 } }), { ageYears: 2.9 }, false],
    [used({ ageYears: { from: 3, to: 5 } }), { ageYears: 3 }, true],
    [used({ ageYears: { from: 3, to: 5 } }), { ageYears: 4.9 }, true],
    [used({ ageYears: { from: 3, to: 5 } }), { ageYears: 5 }, false],
  ];
  test('is what speaks for its material and age, as far as both are told; a home method shows all that its record says', () => {
    for (const [rig, given, expected] of cases) {
      const old = given && { ...OLD, ...given };
      expect([shows(rig, { old }), shows(rig, { old }, 'home')], JSON.stringify([rig, given])).toEqual([expected, true]);
    }
  });

  test('breaks of a wire are shown beside wire eyes, not beside a metal bar; what has no record stays', () => {
    for (const eye of ['bare-wire', 'metal-bar'] as const) {
      expect(shows({ form: 'wire' }, { eye })).toBe(eye === 'bare-wire');
      expect(shows({ form: 'sewn-loop' }, { eye })).toBe(true);
      expect(rowIn(world({ methods: { m: method('nothing', { role: 'comparison', shown: ['gone'] }) } }), { eye, old: OLD }).shown).toEqual(['gone']);
    }
  });

  test('the nearest test of it speaks for the old sling, too, or is not named', () => {
    const nearest = (role: MethodRecord['role'], material: 'hmpe' | 'nylon') => rowIn(world({ figures: [figure('old', 10, used({}))], gaps: { g: { nearest: ['old'] } },
      methods: { m: method('nothing', { role }) } }), { old: { ...OLD, material } }).nearest?.figure;
    expect([nearest('comparison', 'nylon'), nearest('comparison', 'hmpe'), nearest('home', 'hmpe')]).toEqual(['old', undefined, 'old']);
  });
});

describe('the gap of a row', () => {
  type Blocks = GapRecord['blocks'];
  const gapIn = (gaps: Record<string, Blocks>, rig: Partial<Rig> = {}, role: MethodRecord['role'] = 'home') =>
    rowIn(world({ gaps: Object.fromEntries(Object.entries(gaps).map(([id, blocks]) => [id, { blocks }])), methods: { m: method('nothing', { role }) } }), rig);
  const cases: [Blocks, Partial<Rig>, boolean][] = [
    [[{}], {}, true],
    [[], {}, false],
    [[{ used: true }], {}, false],
    [[{ used: true }], { slingState: 'used' }, true],
    [[{ methods: ['x', 'm'] }], {}, true],
    [[{ methods: ['x'] }], {}, false],
    [[{ slings: ['x', 'loop'] }], {}, true],
    [[{ slings: ['x'] }], {}, false],
    [[{ eyes: ['metal-bar', 'bare-wire'] }], {}, true],
    [[{ eyes: ['metal-bar'] }], {}, false],
    [[{ belowMm: 4 }], { bearingMm: 3.9 }, true],
    [[{ belowMm: 4 }], { bearingMm: 4 }, false],
    [[{ aboveMm: 4 }], { bearingMm: 4.1 }, true],
    [[{ aboveMm: 4 }], { bearingMm: 4 }, false],
    [[{ aboveMm: 4, belowMm: 6 }], { bearingMm: 5 }, true],
    [[{ aboveMm: 4, belowMm: 6 }], { bearingMm: 6 }, false],
    [[{ methods: ['m'], eyes: ['metal-bar'] }], {}, false],
    [[{ methods: ['x'] }, { eyes: ['bare-wire'] }], {}, true],
  ];
  test('is one of which a block covers it: all that the block names, both limits left out', () => {
    for (const [blocks, rig, expected] of cases) {
      const row = gapIn({ g: blocks }, rig);
      expect(['gap' in row, row.gap], JSON.stringify([blocks, rig])).toEqual([expected, expected ? 'g' : undefined]);
    }
  });

  test('without a sling is none that names slings', () => {
    expect(gapIn({ g: [{ slings: ['loop'] }] }, { sling: null }, 'comparison').gap).toBeUndefined();
    expect(gapIn({ g: [{ slings: ['loop'] }, {}] }, { sling: null }, 'comparison').gap).toBe('g');
  });

  test('is the first of several, but with a used sling one that speaks of used ones', () => {
    const gaps: Record<string, Blocks> = { other: [{ methods: ['x'] }], first: [{}], elsewhere: [{}, { used: true, methods: ['x'] }], used: [{ methods: ['x'] }, { used: true }] };
    expect(gapIn(gaps).gap).toBe('first');
    expect(gapIn(gaps, { slingState: 'used' }).gap).toBe('used');
  });
});

describe('the nearest tested case', () => {
  /** The nearest of some figures that a gap names, none of which feeds the method. */
  const nearestOf = (rigs: Record<string, RigConditions>, rig: Partial<Rig> = {}) => {
    const figures = Object.entries(rigs).map(([id, conditions]) => ({ ...figure(id, 10), rig: conditions }));
    return rowIn(world({ figures, gaps: { g: { nearest: ['gone', ...Object.keys(rigs)] } }, methods: { m: method('nothing', { role: 'comparison' }) } }), rig).nearest;
  };
  const hmpe = (more: RigConditions): RigConditions => ({ material: 'hmpe', bearingMm: 4, widthMm: 10, ...more });
  const without = (field: keyof RigConditions, more: RigConditions = {}): RigConditions => ({ ...hmpe(more), [field]: undefined });
  const cases: [string, RigConditions, RigConditions, Partial<Rig>, 'a' | 'b'][] = [
    ['ln(8/4) = 0.69 is more than ln(4/2.1) = 0.64', hmpe({ bearingMm: 8 }), hmpe({ bearingMm: 2.1 }), {}, 'b'],
    ['and less than ln(4/1.9) = 0.74', hmpe({ bearingMm: 8 }), hmpe({ bearingMm: 1.9 }), {}, 'a'],
    ['a bearing that is not told counts 2, 19 mm of width 1.9', without('bearingMm'), hmpe({ widthMm: 29 }), {}, 'b'],
    ['21 mm of width 2.1', without('bearingMm'), hmpe({ widthMm: 31 }), {}, 'a'],
    ['a width that is not told counts 1, 9 mm 0.9', without('widthMm'), hmpe({ widthMm: 1 }), {}, 'b'],
    ['11 mm 1.1', without('widthMm'), hmpe({ widthMm: 21 }), {}, 'a'],
    ['bearing 0.69 and width 0.5 add up to more than 1.1', hmpe({ bearingMm: 8, widthMm: 15 }), hmpe({ widthMm: 21 }), {}, 'b'],
    ['bearing 0.69 and width 0.3 to less', hmpe({ bearingMm: 8, widthMm: 13 }), hmpe({ widthMm: 21 }), {}, 'a'],
    ['of two alike the first', hmpe({}), hmpe({}), {}, 'a'],
    ['the same material before all', hmpe({ material: 'nylon' }), hmpe({ bearingMm: 40, widthMm: 60 }), {}, 'b'],
    ['and before one that is not told', without('material'), hmpe({ bearingMm: 40, widthMm: 60 }), {}, 'b'],
    ['a material that is not told before another', hmpe({ material: 'nylon' }), without('material', { bearingMm: 40 }), {}, 'b'],
    ['another material counts 10, 101 mm of width 10.1', hmpe({ material: 'nylon' }), without('material', { widthMm: 111 }), {}, 'a'],
    ['without a sling neither material nor width', hmpe({ bearingMm: 5, widthMm: 10 }), hmpe({ material: 'nylon', widthMm: 90 }), { sling: null }, 'b'],
    ['nor whether it is told', hmpe({ bearingMm: 5 }), without('material', { bearingMm: 8 }), { sling: null }, 'a'],
  ];
  test('of several is of the same material, then the nearest by ln bearing and width in centimetres', () => {
    for (const [why, a, b, rig, expected] of cases) expect(nearestOf({ a, b }, rig)?.figure, why).toBe(expected);
  });

  test('is told with its words, what it bore, and its bearing where that is more than half a millimetre away', () => {
    const found = nearestOf({ a: hmpe({}) });
    near(found?.kn ?? 0, 10, 1e-12);
    expect(found).toEqual({ figure: 'a', why: 'what of a', kn: found?.kn, weakerThan: false });
    for (const [bearingMm, onMm] of [[4.5, undefined], [3.5, undefined], [4.51, 4.51], [3.49, 3.49], [undefined, undefined]] as const) expect(nearestOf({ a: { bearingMm } })?.onMm).toBe(onMm);
    const unfed = world({ figures: [figure('a', 10, {}, { seen: null })], gaps: { g: { nearest: ['a'] } }, methods: { m: method('nothing') } });
    expect(rowIn(unfed).nearest?.kn).toBeNull();
    expect(nearestOf({})).toBeUndefined();
  });

  /** On a 2 mm wire, where the method was broken on 8 mm, and on what else is given. */
  const onThinWire = (own: RigConditions, { more = [], rig = {}, factors = {}, links = 'along', record = {}, listed = [] as string[] }: { more?: Figure[]; rig?: Partial<Rig>; factors?: Parts['factors']; links?: string | MethodRecord['links']; record?: Partial<MethodRecord>; listed?: string[] } = {}) => {
    const from = ['own', ...more.filter(({ id }) => id.startsWith('own')).map(({ id }) => id)];
    return rowIn(world({ figures: [{ ...figure('own', 10), rig: { material: 'hmpe', widthMm: 10, bearingMm: 8, method: 'girth-hitch', ...own } }, ...more],
      factors: { along: factor({ along: 'bearingMm', from }), ...factors }, gaps: { g: { nearest: listed } }, methods: { 'girth-hitch': method(links, record) } }), { bearingMm: 2, ...rig }, 'girth-hitch').nearest;
  };
  test('on a thinner wire is its own break on the thicker one, before what the gap names; elsewhere what the gap names comes first', () => {
    const listed = { more: [figure('listed', 9, { bearingMm: 2 })], listed: ['listed'] };
    expect(onThinWire({}, listed)).toMatchObject({ figure: 'own', weakerThan: true, onMm: 8 });
    expect(onThinWire({}, { ...listed, rig: { bearingMm: 20 } })).toMatchObject({ figure: 'listed', weakerThan: false });
    expect(onThinWire({ method: 'basket' }, listed)).toMatchObject({ figure: 'listed', weakerThan: false });
    expect(onThinWire({ method: undefined }, listed)).toMatchObject({ figure: 'listed', weakerThan: false });
    // Without one that the gap names, what feeds the method; the ids that tests give it are those of its record.
    expect(onThinWire({ method: 'basket' })).toMatchObject({ figure: 'own', weakerThan: false });
    expect(onThinWire({ method: 'basket' }, { ...listed, record: { riggings: ['doubled', 'basket'] } })).toMatchObject({ figure: 'own', weakerThan: true });
    expect(onThinWire({}, { ...listed, record: { riggings: ['basket'] } })).toMatchObject({ figure: 'listed' });
  });

  test('"weaker than" is said only of a thicker wire, of the same material and width', () => {
    const says = (...given: Parameters<typeof onThinWire>) => { const found = onThinWire(...given); return [found?.figure, found?.weakerThan]; };
    expect(says({})).toEqual(['own', true]);
    expect(says({}, { rig: { bearingMm: 20 } })).toEqual(['own', false]);
    expect(says({}, { record: { eyes: ['twin-eye'] } })).toEqual(['own', false]);
    expect(says({ material: 'nylon' })).toEqual(['own', false]);
    // Less than 2 mm apart is one width. 8.1 mm is read by the factor and is the same; 22 mm apart is not, but nearer to 2 mm: 0.05 + 1.2 against ln 4 = 1.39.
    expect(says({ widthMm: 8.1 })).toEqual(['own', true]);
    expect(says({}, { more: [figure('own-wide', 10, { method: 'girth-hitch', widthMm: 22, bearingMm: 2.1 })] })).toEqual(['own-wide', false]);
    // A bearing that its source does not say, taken by the factor as 8 mm: 2 + 0 for the nearest, and no thicker wire.
    const taken = { along: factor({ along: 'bearingMm', from: ['own'], taken: [{ figure: 'own', bearingMm: 8 }] }) };
    expect(says({ bearingMm: undefined }, { factors: taken })).toEqual(['own', false]);
    // One of a cord, which does not apply here, on this very wire or a thinner one: thinner than the other, not than this.
    const cord = { cord: factor({ from: ['own-cord'], applies: { forms: ['cord'] } }) };
    for (const [bearingMm, weaker] of [[2, false], [1.9, false], [2.1, true]] as const) {
      expect(says({}, { links: [link('eye', ['along', 'cord'])], factors: { along: factor({ along: 'bearingMm', from: ['own'] }), ...cord }, more: [figure('own-cord', 10, { method: 'girth-hitch', bearingMm })] })).toEqual(['own-cord', weaker]);
    }
    // Without a sling, of none.
    expect(says({}, { rig: { sling: null }, record: { role: 'comparison' } })).toEqual(['own', false]);
  });

  test('is of the eye, not of a knot or a connector', () => {
    const nearest = (links: MethodRecord['links']) => rowIn(world({ figures: [figure('wide', 10, { widthMm: 30 }), figure('far', 10, { widthMm: 90 })], methods: { m: method(links) } })).nearest?.figure;
    expect(nearest([link('knot', 'wide'), link('eye', 'far')])).toBe('far');
    expect(nearest([link('knot', 'wide'), link('eye', 'nothing')])).toBeUndefined();
    const elsewhere = world({ methods: { m: method('gone', { eyes: ['twin-eye'] }) } });
    expect(rowIn(elsewhere).nearest).toBeUndefined();
  });
});

describe('ticks', () => {
  // Two breaks of 1000 and 4000 lbf: the mean of ln is that of 2000 lbf, 8.896 kN; 1 lbf is 0.0044482216 kN (NIST SP 811).
  const LBF = 0.0044482216152605;
  const ticks = (broken: Partial<RigConditions>, rig: Partial<Rig> = {}, record: Partial<MethodRecord> = {}, more: Partial<Figure> = {}) => {
    const one: Figure = { ...figure('broken', 2000 * LBF), value: { tests: [1000, 4000] }, unit: 'lbf', rig: { method: 'girth-hitch', material: 'hmpe', bearing: 'bare-wire', bearingMm: 4, widthMm: 10, ...broken }, ...more };
    return rowIn(world({ figures: [one, figure('number', 10, {}, { value: 10 }), figure('none', 10, {}, { value: undefined as never }), figure('mean', 10, one.rig)], factors: { ten: assumed(10) },
      methods: { 'girth-hitch': method('ten', record) } }), rig, 'girth-hitch').ticks;
  };
  test('are single breaks in kN, as printed', () => {
    const [one] = ticks({});
    expect(one?.figure).toBe('broken');
    near(one?.kn[0] ?? 0, 1000 * LBF, 1e-12);
    near(one?.kn[1] ?? 0, 4000 * LBF, 1e-12);
  });

  const cases: [Partial<RigConditions>, Partial<Rig>, Partial<MethodRecord>, number][] = [
    [{}, {}, {}, 1],
    [{ method: 'basket' }, {}, {}, 0],
    [{ method: undefined }, {}, {}, 0],
    [{ method: 'basket' }, {}, { riggings: ['doubled', 'basket'] }, 1],
    [{}, {}, { riggings: ['basket'] }, 0],
    [{ material: 'nylon' }, {}, {}, 0],
    [{ bearing: 'pin' }, {}, {}, 0],
    [{ bearing: 'pin' }, { eye: 'metal-bar' }, {}, 1],
    [{}, { eye: 'metal-bar' }, {}, 0],
    [{}, { eye: 'sleeved-wire' }, {}, 0],
    [{ bearing: 'pin' }, { eye: 'sleeved-wire' }, {}, 0],
    [{ bearing: undefined }, { eye: 'sleeved-wire' }, {}, 0],
    [{ bearing: undefined }, {}, {}, 0],
    // Half a millimetre to either side is near.
    [{ bearingMm: 4.5 }, {}, {}, 1],
    [{ bearingMm: 3.5 }, {}, {}, 1],
    [{ bearingMm: 4.51 }, {}, {}, 0],
    [{ bearingMm: 3.49 }, {}, {}, 0],
    [{ bearingMm: undefined }, {}, {}, 0],
    // Less than 2 mm apart is one width; a diameter stands for a width that is not told.
    [{ widthMm: 11.9 }, {}, {}, 1],
    [{ widthMm: 12 }, {}, {}, 0],
    [{ widthMm: undefined }, {}, {}, 0],
    [{ widthMm: undefined, diameterMm: 10 }, {}, {}, 1],
    [{ widthMm: 10, diameterMm: 30 }, {}, {}, 1],
    [{}, { sling: null }, { role: 'comparison' }, 0],
  ];
  test('are of the same method, material, width and kind of eye, on a bearing as thick', () => {
    for (const [i, [broken, rig, record, count]] of cases.entries()) expect(ticks(broken, rig, record), `case ${i}`).toHaveLength(count);
  });

  test('of a figure that may not feed are none', () => {
    expect(ticks({}, {}, {}, { seen: null })).toEqual([]);
  });
});

describe('the page', () => {
  test('has the maker, ranked, unranked, apart, the old sling, without data, another sling; each by the order of the records', () => {
    const order = ['maker', 'ranked', 'unranked', 'apart', 'comparison', 'no-data', 'other-sling'];
    const made = [method('ten', { role: 'reference' }), method('ten'), method('guess'), method('ten', { apart: [{ why: 'It slips.', figures: [], published: [] }] }), method('ten', { role: 'comparison' }), method('nothing'), method('ten', { takes: ['cord'] })];
    // Two of each group: named backwards, ordered by their records.
    const methods = Object.fromEntries([1, 0].flatMap((second) => made.map((one, i) => [`${order[i]} ${second}`, { ...one, order: 10 - i + 100 * second }] as const)));
    const answer = compare(world({ figures: [figure('ten', 10)], factors: { guess: assumed(10) }, methods }), RIG);
    expect(answer.rows.map((row) => row.method)).toEqual(order.flatMap((group) => [`${group} 0`, `${group} 1`]));
    expect(answer.rows.map((row) => row.group)).toEqual(order.flatMap((group) => [group, group]));
    expect({ ...answer, rows: [] }).toEqual({ evidence: '2026-01-01.1', model: 7, rig: RIG, bearing: { mm: 4, measured: true }, rows: [],
      summary: 'On this eye with this sling two home methods can be ranked. Two computed on too little to rank, two set apart, two without data and two made from another sling.' });
  });

  test('computes with the thinnest tested bearing where none was measured', () => {
    const evidence = world({ figures: [figure('on-3', 10, { bearingMm: 3 }), figure('on-9', 10, { bearingMm: 9 })], factors: { along: factor({ along: 'bearingMm', from: ['on-9', 'on-3'] }) } });
    expect(compare(evidence, { ...RIG, bearingMm: null }).bearing).toEqual({ mm: 3, measured: false });
  });

  test('counts in words up to twenty', () => {
    const words = ['one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen', 'twenty', '21'];
    const summary = (count: number, factors: string, rig: Partial<Rig> = {}) => compare(world({ figures: [figure('ten', 10)], methods: Object.fromEntries(Array.from({ length: count }, (_, i) => [`m${i}`, method(factors)])) }), { ...RIG, ...rig }).summary;
    for (const [i, word] of words.entries()) {
      expect(summary(i + 1, 'nothing')).toBe(`On this eye with this sling no home method can be ranked. ${word.charAt(0).toUpperCase()}${word.slice(1)} without data.`);
    }
    expect(summary(1, 'ten')).toBe('On this eye with this sling one home method can be ranked.');
    expect(summary(2, 'ten')).toBe('On this eye with this sling two home methods can be ranked.');
    expect(summary(0, 'ten')).toBe('On this eye with this sling no home method can be ranked.');
    for (const sling of [null, 'none']) expect(summary(1, 'ten', { sling })).toBe('Choose a sling to see what has been tested with it.');
  });
});

test('what rating and demand leave alone is kept: the same object, for the eight newest settings', () => {
  const evidence = world({ methods: { m: method('nothing') } });
  const at = (bearingMm: number, more: Partial<Rig> = {}) => rowIn(evidence, { bearingMm, ...more });
  const [first, second] = [at(1), at(2)];
  for (let mm = 3; mm <= 8; mm++) at(mm);
  expect(at(1, { ratingKn: 20, demandKn: 3 })).toBe(first);
  // The ninth setting puts out the oldest, and no other.
  at(1, { ratingKn: null });
  expect(at(2)).toBe(second);
  expect(at(1)).not.toBe(first);
  expect(at(1)).toEqual(first);
});
