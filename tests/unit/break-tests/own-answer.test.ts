/** A reader's own series beside the comparison, worked by hand. Quantiles of t and normal: NIST/SEMATECH e-Handbook, 1.3.6.7, tables of the t and normal distributions. */
import { describe, expect, test } from 'vitest';
import { ownAnswer } from '../../../src/break-tests/own-answer.ts';
import { parseOwnTests, serialiseOwnTests } from '../../../src/links/own-tests-link.ts';

/**
 * Five breaks: 9, 10, 10, 11, 12.5 kN. Logarithms 2.197225, 2.302585, 2.302585, 2.397895, 2.525729; sum 11.726019,
 * mean 2.345204; squared deviations 0.0218979, 0.0018164, 0.0018164, 0.0027763, 0.0325896, sum 0.0608966; over 4:
 * 0.0152242, sd 0.123386. Middle exp(2.345204) = 10.4354.
 * Next pull, one in twenty: t(0.95, 4) = 2.131847 (table: 2.132); 2.131847 x 0.123386 x sqrt(1.2) = 0.288144; exp(2.345204 - 0.288144) = 7.8230.
 */
const FIVE = [9, 10, 10, 11, 12.5];

describe('five breaks of several lots, each on a rig of its own', () => {
  const answer = ownAnswer({ name: 'mine', brokenKn: FIVE, oneLot: false }, 0.08, 0.05);
  test('the middle and the low value are those worked by hand', () => {
    // On rigs of their own nothing would be added; here 0.05 is, so the low value is compared without it below.
    expect(answer.spread.middle).toBeCloseTo(10.4354, 3);
    const alone = ownAnswer({ name: 'mine', brokenKn: FIVE, oneLot: false }, 0.08, 0);
    expect(alone.spread.low).toBeCloseTo(7.823, 2);
    expect(alone.own.scatterFrom).toBe('series');
  });
  test('the scatter between rigs widens it as a sum of squares', () => {
    // 0.288144 / 1.644854 = 0.175179; sqrt(0.175179^2 + 0.05^2) = 0.182175; x 1.644854 = 0.299651; exp(2.345204 - 0.299651) = 7.7334.
    expect(answer.spread.low).toBeCloseTo(7.733, 2);
  });
});

test('its twenty forces are the middles of twenty equal slices: the outermost at 1.959964 sd, by hand', () => {
  const { dots } = ownAnswer({ name: 'mine', brokenKn: FIVE, oneLot: false }, 0.08, 0);
  expect(dots).toHaveLength(20);
  // exp(2.345204 -+ 1.959964 x 0.175180), and in the middle one fortieth on each side of one half: z = 0.062707.
  expect(dots[0]).toBeCloseTo(7.4028, 2);
  expect(dots[19]).toBeCloseTo(14.7103, 2);
  expect((dots[9] as number) * (dots[10] as number)).toBeCloseTo(10.4354 ** 2, 2);
  expect(Math.log((dots[10] as number) / (dots[9] as number))).toBeCloseTo(2 * 0.062707 * 0.17518, 5);
});

test('three breaks borrow the scatter of their class, and the doubt of the mean is a third of it', () => {
  // Three at 10: mean ln 2.302585. Class 0.10: sigma^2 = ln 1.01 = 0.00995033; with a third: 0.01326711, sd 0.115183; low exp(2.302585 - 1.644854 x 0.115183) = 8.2743.
  const answer = ownAnswer({ name: 'mine', brokenKn: [10, 10, 10], oneLot: false }, 0.1, 0);
  expect(answer.own.scatterFrom).toBe('class');
  expect(answer.spread.low).toBeCloseTo(8.274, 2);
  expect(answer.spread.middle).toBeCloseTo(10, 9);
});

test('of one lot, a scatter smaller than that of the class is not believed', () => {
  // Five pulls within 1 %: their own scatter is far below 0.10.
  const pulls = [10, 10.05, 9.95, 10.02, 9.98];
  const lot = ownAnswer({ name: 'mine', brokenKn: pulls, oneLot: true }, 0.1, 0);
  const lots = ownAnswer({ name: 'mine', brokenKn: pulls, oneLot: false }, 0.1, 0);
  expect(lot.own.understated).toBe(true);
  expect(lot.spread.low).toBeLessThan(lots.spread.low - 1);
});

test('it beats dots that all lie at its middle in half of the pairs, and dots at nothing in all', () => {
  const answer = ownAnswer({ name: 'mine', brokenKn: FIVE, oneLot: false }, 0.08, 0);
  expect(answer.beats(Array.from({ length: 20 }, () => answer.spread.middle))).toBeCloseTo(0.5, 9);
  expect(answer.beats([0.001])).toBeCloseTo(1, 6);
  expect(answer.above(answer.spread.low)).toBeCloseTo(0.95, 6);
});

describe('the link of own tests', () => {
  const words = { methods: ['girth-hitch', 'basket'], slings: ['hmpe-10'] };
  const tests = { method: 'girth-hitch', sling: 'hmpe-10', eye: 'bare-wire' as const, bearingMm: 3.8, oneLot: true, oneRig: false, broken: [11.2, 9.166], atLeast: [12] };
  test('written and read, it is the same', () => {
    expect(serialiseOwnTests(tests)).toBe('girth-hitch~hmpe-10~bare-wire~3.8~lot~11.2~9.166~>12');
    expect(parseOwnTests(serialiseOwnTests(tests), words)).toEqual({ tests });
  });
  test.each([
    ['', 'no method is called ""'],
    ['knot~hmpe-10~bare-wire~4~-~9', 'no method is called "knot"'],
    ['basket~rope~bare-wire~4~-~9', 'no sling is called "rope"'],
    ['basket~hmpe-10~ring~4~-~9', 'a kind of eye is bare-wire, sleeved-wire, wire-under-bar, metal-bar, twin-eye'],
    ['basket~hmpe-10~bare-wire~400~-~9', 'the bearing is outside 1 to 40 mm'],
    ['basket~hmpe-10~bare-wire~4~all~9', 'what is known of lots and rigs is -, lot, rig, lot-rig'],
    ['basket~hmpe-10~bare-wire~4~-~nine', 'the force "nine" is not a plain number; write one from 0.01 to 1000 kN'],
    ['basket~hmpe-10~bare-wire~4~-~>9', 'in no pull did the attachment break'],
    ['basket~hmpe-10~bare-wire~4~-', 'in no pull did the attachment break'],
  ])('%j is not used, and says why', (value, why) => {
    expect(parseOwnTests(value, words)).toEqual({ why });
  });
});
