/** What the comparison computes of a method, and whether and where it ranks it. On made-up evidence, with the closed forms of one and two lognormal links (@stdlib). */
import normal from '@stdlib/stats-base-dists-normal';
import { describe, expect, test } from 'vitest';
import type { MethodRecord } from '../../../src/records/schema.ts';
import { compare, pairsOf, wins } from '../../../src/strength/compare.ts';
import type { Evidence, Rig, Row, Spread } from '../../../src/strength/types.ts';
import { near } from '../break-tests/near.ts';
import { assumed, factor, figure, link, method, type Parts, RIG, rowIn, world } from './small-evidence.ts';

const z = (p: number): number => normal.quantile(p, 0, 1);
const below = (x: number): number => normal.cdf(x, 0, 1);
const nearSpread = (got: Spread | null | undefined, at: (p: number) => number): void => {
  for (const [end, p] of [['low', 0.05], ['middle', 0.5], ['high', 0.95]] as const) near(got?.[end] ?? 0, at(p), 1e-8);
};
const nearDots = (got: readonly number[], at: (p: number) => number): void => {
  expect(got).toHaveLength(20);
  for (const [i, kn] of got.entries()) near(kn, at((i + 0.5) / 20), 1e-8);
};
/** Quantile of one lognormal, and of the smaller of two alike: 1 - (1 - F)^2 = p. */
const one = (middle: number, sd = 0.1) => (p: number): number => middle * Math.exp(sd * z(p));
const smallerOfTwo = (middle: number, sd = 0.1) => (p: number): number => one(middle, sd)(1 - Math.sqrt(1 - p));

describe('numbers of a row', () => {
  test('of one link are its own: a middle of 10 kN, an sd of ln of 0.1, and a rating of 12 kN', () => {
    const row = rowIn(world({ figures: [figure('ten', 10, {}, { certainty: 'moderate' })], methods: { m: method('ten') } }), { ratingKn: 12 });
    for (const spread of [row.attachment, row.rig, row.links[0]?.spread]) nearSpread(spread, one(10));
    nearDots(row.dots, one(10));
    near(row.aboveRating ?? 0, below(Math.log(10 / 12) / 0.1), 1e-9);
    expect(row).toMatchObject({ aboveDemand: row.aboveRating, strip: 'S'.repeat(20), certainty: 'moderate', figures: ['ten'] });
    expect(row.links).toHaveLength(1);
    expect(row.links[0]).toMatchObject({ name: 'eye: ten', part: 'sling', letter: 'S', certainty: 'moderate', first: 1, factors: [{ factor: 'ten', figures: ['ten'], certainty: 'moderate' }] });
    expect('legs' in (row.links[0] ?? {})).toBe(false);
  });

  test('of two links alike are those of the smaller one, and each goes first in half the rigs', () => {
    const links = [{ ...link('eye', 'ten'), legs: 2 }, link('knot', ['none', 'half'])];
    // The knot is half of a sling of 20 kN; together they scatter by 0.06 and 0.08, 0.1 by Pythagoras.
    const row = rowIn(world({ figures: [figure('ten', 10), figure('twenty', 20, {}, { sd: 0.08 }), figure('ratio', 0.5, {}, { sd: 0.06, certainty: 'moderate' })],
      factors: { none: assumed(1, 0, { applies: { materials: ['nylon'] } }), half: factor({ acts: { multiplies: 'twenty' }, from: ['ratio', 'ratio'] }) }, methods: { m: method(links) } }));
    for (const spread of [row.attachment, row.rig]) nearSpread(spread, smallerOfTwo(10));
    nearDots(row.dots, smallerOfTwo(10));
    near(row.aboveRating ?? 0, 0.25, 1e-8);
    for (const { first, spread } of row.links) {
      near(first, 0.5, 1e-6);
      nearSpread(spread, one(10));
    }
    expect(row.links.map(({ letter, legs, certainty }) => [letter, legs, certainty])).toEqual([['S', 2, 'low'], ['K', undefined, 'low']]);
    expect(row).toMatchObject({ strip: 'S'.repeat(10) + 'K'.repeat(10), certainty: 'low', figures: ['ten', 'ratio', 'twenty'] });
  });

  const withDevice: Parts = { figures: [figure('ten', 10)], factors: { device: assumed(1, 0, { acts: 'rating' }) }, methods: { m: method([link('device', 'device'), link('eye', 'ten')]) } };
  test('with a device as strong as its rating: against the rating the attachment counts, against a demand the whole rig', () => {
    const evidence = world(withDevice);
    // Both have a middle of 10 kN.
    const plain = rowIn(evidence, { ratingKn: 10 });
    nearSpread(plain.attachment, one(10));
    nearSpread(plain.rig, smallerOfTwo(10));
    nearDots(plain.dots, one(10));
    near(plain.aboveRating ?? 0, 0.5, 1e-9);
    expect([plain.aboveDemand, plain.strip]).toEqual([plain.aboveRating, 'D'.repeat(10) + 'S'.repeat(10)]);
    const demanded = rowIn(evidence, { ratingKn: 10, demandKn: 9 });
    nearSpread(demanded.attachment, one(10));
    nearSpread(demanded.rig, smallerOfTwo(10));
    nearDots(demanded.dots, smallerOfTwo(10));
    near(demanded.aboveRating ?? 0, 0.5, 1e-9);
    near(demanded.aboveDemand ?? 0, below(Math.log(10 / 9) / 0.1) ** 2, 1e-8);
    // A device of 20 kN hardly ever goes first; it alone moves with the rating.
    const strong = rowIn(evidence, { ratingKn: 20 });
    nearSpread(strong.links[0]?.spread, one(20));
    nearSpread(strong.links[1]?.spread, one(10));
    near(strong.links[0]?.first ?? 0, below(-Math.log(2) / Math.hypot(0.1, 0.1)), 1e-6);
    expect(strong.strip).toBe('S'.repeat(20));
  });

  test('without a rating leave the device out, and know no rig', () => {
    const row = rowIn(world(withDevice), { ratingKn: null, demandKn: 9 });
    nearSpread(row.attachment, one(10));
    nearDots(row.dots, one(10));
    near(row.aboveDemand ?? 0, below(Math.log(10 / 9) / 0.1), 1e-9);
    expect([row.rig, row.aboveRating, row.strip, row.links.length]).toEqual([null, null, 'S'.repeat(20), 1]);
    expect(rowIn(world(withDevice), { ratingKn: null })).toMatchObject({ rig: null, aboveRating: null, aboveDemand: null });
  });

  test('of the maker\'s sling are multiples of the rating, without a word of certainty', () => {
    const evidence = world({ factors: { over: assumed(1.1, 0, { acts: 'rating' }) }, methods: { m: method('over', { role: 'reference' }) } });
    for (const ratingKn of [8, 12]) {
      const row = rowIn(evidence, { ratingKn });
      for (const spread of [row.attachment, row.rig, row.links[0]?.spread]) nearSpread(spread, one(1.1 * ratingKn));
      nearDots(row.dots, one(1.1 * ratingKn));
      near(row.aboveRating ?? 0, below(Math.log(1.1) / 0.1), 1e-9);
      expect([row.group, row.certainty]).toEqual(['maker', null]);
    }
  });

  test('of a link that goes with the rating beside one that does not: at 10 kN both are alike', () => {
    const evidence = world({ figures: [figure('ten', 10)], factors: { like: assumed(1, 0, { acts: 'rating' }) }, methods: { m: method([link('eye', 'like'), link('connector', 'ten')], { role: 'reference' }) } });
    nearSpread(rowIn(evidence, { ratingKn: 10 }).attachment, smallerOfTwo(10));
    nearSpread(rowIn(evidence, { ratingKn: 1000 }).attachment, one(10));
  });

  test('of a link have what is not known of it beside what scatters: 0.03 and 0.04 between pieces, 0.12 not known, 0.13 in all', () => {
    const row = rowIn(world({ figures: [figure('ten', 10, {}, { sd: 0.03 }), figure('one', 1, {}, { sd: 0.04 })],
      factors: { over: factor({ acts: { multiplies: 'ten' }, from: ['one'], times: { by: 1, spread: 0.12 } }) }, methods: { m: method('over') } }));
    for (const spread of [row.attachment, row.links[0]?.spread]) nearSpread(spread, one(10, 0.13));
  });

  test('a link is lettered by its part', () => {
    const parts = { device: 'D', sling: 'S', knot: 'K', eye: 'E', connector: 'C' } as const;
    for (const [part, letter] of Object.entries(parts)) {
      expect(rowIn(world({ figures: [figure('ten', 10)], methods: { m: method([link('eye', 'ten'), link('connector', 'ten', part as keyof typeof parts)]) } })).links[1]?.letter).toBe(letter);
    }
  });
});

describe('what moves a row most', () => {
  const moves = (parts: Parts, links: string | MethodRecord['links']) => rowIn(world({ ...parts, methods: { m: method(links) } })).moves;
  const nearMoves = (got: Row['moves'], expected: [string, number][]): void => {
    expect(got.map((move) => move.factor)).toEqual(expected.map(([id]) => id));
    for (const [i, { share }] of got.entries()) near(share, expected[i]?.[1] ?? 0, 1e-6);
  };
  test('is told by two factors, the larger first: variances of 0.01, 0.04 and 0.09, and 0.01 between pieces', () => {
    const got = moves({ figures: [figure('ten', 10)], factors: {
      outer: assumed(1, 0.1, { acts: { multiplies: 'middle' }, class: 'sure' }), middle: assumed(1, 0.2, { acts: { multiplies: 'inner' }, class: 'sure' }), inner: factor({ from: ['ten'], times: { by: 1, spread: 0.3 } }) } }, 'outer');
    nearMoves(got, [['inner', 0.09 / 0.15], ['middle', 0.04 / 0.15]]);
    expect(got.map(({ figures }) => figures)).toEqual([['ten'], []]);
  });

  test('adds up over links, each by how often it goes first: half and half of two alike', () => {
    const factors = { common: assumed(10, 0.3, { class: 'sure' }), a: assumed(1, 0.1, { acts: { multiplies: 'common' } }), b: assumed(1, 0.1, { acts: { multiplies: 'common' } }) };
    // 0.5 x 0.09 twice of the common one, 0.5 x 0.01 of each other one, 0.5 x 0.01 twice between pieces: 0.11.
    nearMoves(moves({ factors }, [link('eye', 'a'), link('connector', 'b')]), [['common', 0.09 / 0.11], ['a', 0.005 / 0.11]]);
    // Of 1 and 100 kN the first always goes first: 0.09 of 0.1.
    nearMoves(moves({ factors: { weak: assumed(1, 0.3), strong: assumed(100, 0.3) } }, [link('connector', 'strong'), link('eye', 'weak')]), [['weak', 0.9], ['strong', 0]]);
  });
});

/** How many times the middle of an alike link another has that goes first in this share of rigs: P = cdf(-ln ratio / (0.1 sqrt 2)). */
const timesFor = (share: number): number => Math.exp(-z(share) * 0.1 * Math.SQRT2);

describe('certainty', () => {
  const known = (links: MethodRecord['links'], parts: Parts = {}, rig: Partial<Rig> = {}) => rowIn(world({ ...parts, figures: [figure('ten', 10), ...(parts.figures ?? [])], methods: { m: method(links) } }), rig);
  test('is that of links that go first in one rig of four', () => {
    for (const [share, certainty, group] of [[0.26, 'very low', 'unranked'], [0.24, 'low', 'ranked']] as const) {
      expect(known([link('eye', 'ten'), link('connector', 'guess')], { factors: { guess: assumed(10 * timesFor(share)) } })).toMatchObject({ certainty, group });
    }
    // Four links that surely break at the same force go first in a quarter each.
    const alike = { four: assumed(4, 0, { class: 'sure' }) };
    expect(known(Array.from({ length: 4 }, () => link('connector', 'four')), { factors: alike })).toMatchObject({ certainty: 'very low' });
  });

  test('a link at the eye that is very uncertain is not ranked, however rarely it goes first; one at the connector does no harm', () => {
    const factors = { guess: assumed(1000) };
    expect(known([link('eye', 'guess'), link('connector', 'ten')], { factors })).toMatchObject({ certainty: 'low', group: 'unranked' });
    expect(known([link('eye', 'ten'), link('connector', 'guess')], { factors })).toMatchObject({ certainty: 'low', group: 'ranked' });
  });

  test('a width carried over is not ranked where it goes first in one rig of twenty; the device\'s does not count', () => {
    const bridged = (share: number, more: Record<string, unknown> = {}): Parts => ({ figures: [figure('wide', 10 * timesFor(share), { widthMm: 30 })],
      factors: { over: factor({ from: ['wide'], bridge: { widthMm: [5, 40], spread: 0 }, ...more }), hardly: assumed(1000, 0, { acts: 'rating' }) } });
    for (const [share, group] of [[0.06, 'unranked'], [0.04, 'ranked']] as const) {
      expect(known([link('eye', 'ten'), link('connector', 'over')], bridged(share))).toMatchObject({ certainty: 'low', group });
      expect(known([link('device', 'hardly'), link('connector', 'over'), link('eye', 'ten')], bridged(share)).group).toBe(group);
    }
    const device = known([link('device', 'over'), link('eye', 'ten')], bridged(0.2));
    expect(device).toMatchObject({ group: 'ranked', links: [{ factors: [{ bridged: true }] }, {}] });
    near(device.links[0]?.first ?? 0, 0.2, 1e-4);
  });

  test('is that of all that a link is made of: a width carried over beneath what multiplies it', () => {
    const parts: Parts = { figures: [figure('wide', 10 * timesFor(0.06), { widthMm: 30 })], factors: { over: factor({ from: ['wide'], bridge: { widthMm: [5, 40], spread: 0 } }), times: assumed(1, 0, { acts: { multiplies: 'over' }, class: 'sure' }) } };
    expect(known([link('eye', 'ten'), link('connector', 'times')], parts)).toMatchObject({ group: 'unranked', links: [{}, { certainty: 'very low', factors: [{ bridged: false }, { bridged: true }] }] });
  });

  test('is not enough: nothing is ranked on a bearing or an eye that is not known, where one clipping error releases it, or where it cannot be made', () => {
    const group = (more: Partial<MethodRecord>, rig: Partial<Rig> = {}) => rowIn(world({ figures: [figure('ten', 10)], methods: { m: method('ten', more) } }), rig).group;
    expect(group({})).toBe('ranked');
    expect([group({}, { bearingMm: null }), group({}, { eye: null }), group({ oneClipError: { what: '', releases: true } }), group({ closed: { possible: false, why: '' } })]).toEqual(Array(4).fill('unranked'));
  });
});

describe('places', () => {
  /** Methods of one link each: middle in kN, sd of ln, certainty, and place in the records where that is another. */
  const ranked = (given: Record<string, [number, number, ('moderate' | 'low')?, number?]>): [string, number | undefined][] => {
    const figures = Object.entries(given).map(([id, [kn, sd, certainty = 'low']]) => figure(id, kn, {}, { sd, certainty }));
    return compare(world({ figures, methods: Object.fromEntries(Object.entries(given).map(([id, [, , , order]], i) => [id, method(id, { order: order ?? i + 1 })])) }), RIG).rows.map((row) => [row.method, row.place]);
  };
  test('rows less than half a kilonewton apart share a place, though one always wins; each is held against the strongest of its place', () => {
    expect(ranked({ a: [10, 1e-4], b: [9.6, 1e-4], c: [9.2, 1e-4] })).toEqual([['a', 1], ['b', 1], ['c', 3]]);
    expect(ranked({ c: [9.2, 1e-4], b: [9.4, 1e-4], a: [10, 1e-4] })).toEqual([['a', 1], ['c', 2], ['b', 2]]);
    expect(ranked({ a: [10, 1e-4], b: [9.51, 1e-4], c: [9.4, 1e-4], d: [8, 1e-4] })).toEqual([['a', 1], ['b', 1], ['c', 3], ['d', 4]]);
  });

  test('so do rows of which the stronger wins fewer of twenty pairs than thirteen', () => {
    // ln ratio over 0.1 sqrt 2 is 0.385 for 13 of 20 pairs; low values of 20 kN and a twentieth less are 0.9 kN apart.
    const ratio = (share: number): number => Math.exp(z(share) * 0.1 * Math.SQRT2);
    expect(ranked({ a: [20, 0.1], b: [20 / ratio(0.645), 0.1] })).toEqual([['a', 1], ['b', 1]]);
    expect(ranked({ a: [20, 0.1], b: [20 / ratio(0.655), 0.1] })).toEqual([['a', 1], ['b', 2]]);
    // One that is stronger in the middle, but weaker at its low end.
    expect(ranked({ wide: [10.2, 0.2], sure: [10, 1e-4] })).toEqual([['wide', 1], ['sure', 1]]);
  });

  test('within a place the more certain come first, then the order of the records', () => {
    expect(ranked({ a: [10, 1e-4, 'low', 1], b: [9.8, 1e-4, 'moderate', 4], c: [9.7, 1e-4, 'moderate', 3], d: [9.9, 1e-4, 'low', 2] })).toEqual([['c', 1], ['b', 1], ['a', 1], ['d', 1]]);
  });

  test('high comes before moderate, and moderate before low', () => {
    const words = ['high', 'moderate', 'low'] as const;
    const figures = words.map((certainty, i) => figure(certainty, 10 + i / 10, {}, { sd: 1e-4, certainty }));
    expect(compare(world({ figures, methods: Object.fromEntries(words.map((id) => [id, method(id)])) }), RIG).rows.map((row) => row.method)).toEqual([...words]);
  });
});

describe('pairs of methods', () => {
  const parts: Parts = {
    figures: [figure('ten', 10), figure('twelve', 12)],
    factors: { over: assumed(1.1, 0, { acts: 'rating' }), device: assumed(0.1, 0, { acts: 'rating' }), common: assumed(10, 0.5, { class: 'sure' }), a: assumed(1.2, 0, { acts: { multiplies: 'common' } }), b: assumed(1, 0, { acts: { multiplies: 'common' } }) },
    methods: {
      maker: method('over', { role: 'reference' }), ten: method([link('device', 'device'), link('eye', 'ten')], { name: 'Ten' }), twelve: method('twelve', { name: 'Twelve' }), a: method('a'), b: method('b'), old: method('ten', { role: 'comparison' }), none: method('nothing'),
    },
  };
  const evidence: Evidence = world(parts);
  const winsOf = (a: string, b: string, rig: Partial<Rig> = {}) => wins(evidence, { ...RIG, ...rig }, a, b);

  test('are held against each other without the device: ln 1.2 over 0.1 sqrt 2', () => {
    const ahead = below(Math.log(1.2) / (0.1 * Math.SQRT2));
    near(winsOf('twelve', 'ten') ?? 0, ahead, 1e-6);
    near(winsOf('ten', 'twelve') ?? 0, 1 - ahead, 1e-6);
    // What both rest on is the same unknown for both.
    near(winsOf('a', 'b') ?? 0, ahead, 1e-6);
    for (const ratingKn of [8, 12]) near(winsOf('maker', 'ten', { ratingKn }) ?? 0, below(Math.log((1.1 * ratingKn) / 10) / (0.1 * Math.SQRT2)), 1e-6);
  });

  test('are none where either has no number, and one without a record is named', () => {
    expect([winsOf('none', 'ten'), winsOf('ten', 'none'), winsOf('none', 'none')]).toEqual([null, null, null]);
    expect(() => winsOf('gone', 'ten')).toThrow(new RangeError('method gone: no such record'));
    expect(() => winsOf('ten', 'gone')).toThrow(new RangeError('method gone: no such record'));
  });

  test('on the page: each home method with a number but itself, in the order of the rows', () => {
    const answer = compare(evidence, RIG);
    const pairs = pairsOf(evidence, answer, 'ten');
    expect(pairs.map(({ method: id, name }) => [id, name])).toEqual([['twelve', 'Twelve'], ['a', 'Made up'], ['b', 'Made up']]);
    for (const pair of pairs) expect(pair.wins).toBe(winsOf('ten', pair.method));
    for (const id of ['maker', 'old', 'none', 'gone']) expect(pairsOf(evidence, answer, id)).toEqual([]);
    // A row of a method that this evidence does not have.
    const row = answer.rows.find(({ method: id }) => id === 'ten') as Row;
    expect(pairsOf(evidence, { ...answer, rows: [...answer.rows, { ...row, method: 'gone' }] }, 'ten')).toEqual(pairs);
  });
});
