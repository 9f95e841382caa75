/** What a verdict hands on to the comparison. Widths are those that the model takes as one: under 2 mm of tape, half a millimetre of cord. */
import { describe, expect, test } from 'vitest';
import { ageOn, compareAddress, sameSling } from '../../../src/components/retirement/next-steps.ts';
import { parseLink } from '../../../src/links/parse-link.ts';
import { KNOWN, ON, RECORDS, UNKNOWN } from './history.ts';

const slings = Object.fromEntries([...RECORDS.slings].map(([id, { data: { material, form, widthMm, lengthsCm } }]) => [id, { material, form, widthMm, lengthsCm }]));
const setup = { base: '/', slings };
const rigOf = (address: string) => {
  const link = parseLink(new URL(address, 'http://localhost').search, { slings: Object.keys(slings) });
  expect(link.notUnderstood).toEqual([]);
  return link.rig;
};

describe('the same sling', () => {
  test.each([
    ['hmpe', 10, 'hmpe-10'], ['hmpe', 8, 'hmpe-8'], ['hmpe', 12, 'hmpe-10'], ['nylon', 16, 'nylon-16'], ['nylon', 6, 'nylon-cord-6'],
    ['hmpe', 25, null], ['polyester', 16, null], ['nylon', null, null], [null, 10, null],
  ] as const)('of %s, %s mm is %s', (material, widthMm, id) => expect(sameSling({ material, widthMm }, slings)).toBe(id));
});

test('the comparison is asked for with this sling, and with the old one as it was described', () => {
  const rig = rigOf(compareAddress({ ...KNOWN, material: 'hmpe', widthMm: 10, made: '2019-11-24', use: 'weekly', exposures: { ...KNOWN.exposures, light: 'yes' } }, ON, setup));
  // Seven years to the day; of the device nothing was asked, so nothing is said.
  expect(rig).toEqual({ ratingKn: null, eye: null, bearingMm: null, sling: 'hmpe-10', lengthCm: 60, slingState: 'new', demandKn: null, old: { material: 'hmpe', ageYears: 7, use: 'weekly', light: 'sun' } });
});

test('a sling of which nothing is known leaves all as not known', () => {
  expect(rigOf(compareAddress(UNKNOWN, ON, setup))).toMatchObject({ sling: null, lengthCm: null, old: null });
});

test('a label counts from its earliest day', () => {
  expect(ageOn('2020', '2026-11-24')).toBeGreaterThan(ageOn('2020-11', '2026-11-24'));
  expect(ageOn('2026-11-24', '2026-11-24')).toBe(0);
});
