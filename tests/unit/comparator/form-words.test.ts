/** The words of the form are the words of a link: what is typed is read by the same parser, and nothing typed is changed. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { axisTicks } from '../../../src/charts/axis-ticks.ts';
import { stripPaths } from '../../../src/charts/lane.ts';
import { rigOf, wordsOf } from '../../../src/components/comparator/form-words.ts';
import { lengthsOf, OLD_LIGHT_NAMES, OLD_USE_NAMES, rigLine } from '../../../src/components/comparator/words.ts';
import { EXAMPLE_RIG, EYE_IDS, OLD_LIGHT_IDS, OLD_SLING_MATERIALS, OLD_USE_IDS } from '../../../src/links/rig-keys.ts';

const slings = ['hmpe-8', 'hmpe-10'];
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });

/** Old slings; one of which nothing is known is no old sling. */
const olds = fc.record({
  material: orNull(fc.constantFrom(...OLD_SLING_MATERIALS)), ageYears: orNull(fc.integer({ min: 0, max: 60 })),
  use: orNull(fc.constantFrom(...OLD_USE_IDS)), light: orNull(fc.constantFrom(...OLD_LIGHT_IDS)),
}).map((old) => (Object.values(old).every((value) => value === null) ? null : old));

it('a rig in the form is the same rig again', () => {
  const rigs = fc.record({
    ratingKn: orNull(fc.integer({ min: 1, max: 40 })), eye: orNull(fc.constantFrom(...EYE_IDS)), bearingMm: orNull(fc.integer({ min: 1, max: 40 })),
    sling: orNull(fc.constantFrom(...slings)), lengthCm: orNull(fc.integer({ min: 5, max: 500 })), slingState: fc.constantFrom('new' as const, 'used' as const),
    demandKn: orNull(fc.integer({ min: 1, max: 60 })), old: olds,
  });
  fc.assert(fc.property(rigs, (rig) => {
    expect(rigOf(wordsOf(rig), {}, slings)).toEqual({ rig, faults: {} });
  }));
});

it('what cannot be read is a fault at its own field and counts as not known; the others stay', () => {
  fc.assert(fc.property(fc.string({ unit: 'binary' }).filter((text) => !/^\s*(\d+([.,]\d+)?|unknown)?\s*$/.test(text)), (text) => {
    const { rig, faults } = rigOf({ ...wordsOf(EXAMPLE_RIG), rating: text }, {}, slings);
    expect(Object.keys(faults)).toEqual(['rating']);
    expect(rig).toEqual({ ...EXAMPLE_RIG, ratingKn: null });
  }));
});

it('ticking "not known" keeps what was typed and does not use it', () => {
  const words = { ...wordsOf(EXAMPLE_RIG), bearing: '3,8' };
  expect(rigOf(words, {}, slings).rig.bearingMm).toBe(3.8);
  expect(rigOf(words, { bearing: true }, slings)).toEqual({ rig: EXAMPLE_RIG, faults: {} });
  expect(words.bearing).toBe('3,8');
});

it('the line that repeats the rig says all that is known of the old sling, and nothing that is not', () => {
  const names = { 'hmpe-10': { name: 'HMPE sewn sling', lengthsCm: [30, 60] } };
  const says = (old: typeof EXAMPLE_RIG.old) => rigLine({ ...EXAMPLE_RIG, old }, names).split(' \u00b7 ').at(-1);
  expect(says({ material: 'nylon', ageYears: 7, use: 'weekly', light: 'sun' })).toBe('old sling nylon, 7 years, used every week, out in the sun for months');
  expect(says({ material: null, ageYears: 0, use: null, light: 'dark' })).toBe('old sling of unknown material, 0 years, kept in the dark');
  expect(says({ material: 'hmpe', ageYears: null, use: 'stored', light: null })).toBe('old sling HMPE, stored, not used');
  expect(says(null)).toBe('HMPE sewn sling 60 cm, new');
  fc.assert(fc.property(olds, (old) => {
    const line = rigLine({ ...EXAMPLE_RIG, old }, names);
    expect(line.includes('old sling')).toBe(old !== null);
    for (const [id, name] of Object.entries(OLD_USE_NAMES)) expect(line.includes(name)).toBe(old?.use === id);
    for (const [id, name] of Object.entries(OLD_LIGHT_NAMES)) expect(line.includes(name)).toBe(old?.light === id);
  }));
});

it('lengths are those of the sling, and one that a link asked for beside them', () => {
  const names = { 'hmpe-10': { name: 'HMPE sewn sling', lengthsCm: [30, 60] } };
  expect(lengthsOf(names, { sling: 'hmpe-10', length: '60' })).toEqual(['30', '60']);
  expect(lengthsOf(names, { sling: 'hmpe-10', length: '75' })).toEqual(['30', '60', '75']);
  expect(lengthsOf(names, { sling: 'hmpe-10', length: '' })).toEqual(['30', '60']);
  expect(lengthsOf(names, { sling: 'unknown', length: '' })).toEqual([]);
});

it('the axis runs from nothing to its end in every unit, in steps of 1, 2 or 5', () => {
  for (const newtons of [1000, 4.4482216152605, 9.80665]) {
    const ticks = axisTicks(newtons);
    const values = ticks.map(({ text }) => Number(text));
    const step = (values[1] ?? 0) - (values[0] ?? 0);
    expect(values[0]).toBe(0);
    expect([1, 2, 5]).toContain(Number(step.toExponential()[0]));
    for (const [i, value] of values.entries()) expect(value).toBeCloseTo(i * step, 9);
    expect(ticks.every(({ kn }) => kn >= 0 && kn <= 30.0001)).toBe(true);
    expect(ticks.length).toBeGreaterThan(4);
  }
});

it('the strip has one path for each kind of link and a mark in each of twenty cells', () => {
  const paths = stripPaths(`${'D'.repeat(7)}${'S'.repeat(12)}K`);
  expect(paths.map(({ letter }) => letter)).toEqual(['D', 'S', 'K']);
  // A knot's mark is two teeth, which begin with one upper and one lower-case move.
  expect(paths.map(({ d }) => d.split('M').length - 1)).toEqual([7, 12, 1]);
  expect(() => stripPaths('X')).toThrow(RangeError);
});
