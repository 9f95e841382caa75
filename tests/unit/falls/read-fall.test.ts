/** What is typed into the form of falls. Expected readings and messages are written by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { blankFall, FALL_CHOICES, FALL_FIELDS, type FallWords, readFall } from '../../../src/falls/read-fall.ts';
import { toldLoads } from '../../../src/falls/told-fall.ts';
import { CONSTANTS } from './constants.ts';

const typed = (words: Partial<FallWords>): FallWords => ({ ...blankFall(), kg: '80', up: '2', out: '12', ...words });
const read = (words: Partial<FallWords>) => readFall(typed(words), CONSTANTS);
const faults = (words: Partial<FallWords>) => {
  const found = read(words);
  return found.ok ? [] : found.faults.map(({ field, why }) => `${field}: ${why}`);
};

test('numbers are read with point or comma, with or without their unit, and nothing chosen means not known', () => {
  expect(read({ kg: '72,5 kg', up: '1.5 m', slack: ' 50 cm ', out: '9,25' })).toEqual({
    ok: true,
    told: { massKg: 72.5, onto: 'piece', aboveM: 1.5, slackM: 0.5, ropeOutM: 9.25, rope: 'single', ratedKn: null, belay: 'unknown', route: 'unknown', condition: 'unknown' },
  });
});

test('pounds and feet are read by their exact definitions (NIST SP 811)', () => {
  const found = read({ kg: '180 lbs', up: '10 ft', out: "60'", kn: '1900 lbf' });
  expect(found.ok && [found.told.massKg, found.told.aboveM, found.told.ropeOutM, found.told.ratedKn]).toEqual([
    expect.closeTo(81.6466266, 9), expect.closeTo(3.048, 12), expect.closeTo(18.288, 12), expect.closeTo(8.45162, 5),
  ]);
});

test('a fall onto the belay needs no length of rope: it is the height and the slack', () => {
  const found = read({ onto: 'belay', up: '4', slack: '0,5', out: '' });
  expect(found.ok && found.told.ropeOutM).toBe(4.5);
});

describe('an impossible fall gets a message at its field that says what is wrong and what to do', () => {
  test.each([
    [{ up: '10', out: '6' }, 'out: a fall of 20 m on 6 m of rope: nobody falls farther than twice the rope that is out. Write all the rope from belayer to climber, at least 10 m, or less height or slack'],
    [{ up: '3', slack: '2', out: '4' }, 'out: 3 m above and 2 m of slack need 5 m of rope, and only 4 m is out. Write all the rope from belayer to climber, slack included, or less height or slack'],
    [{ onto: 'belay', up: '3', out: '8' }, 'out: without a piece the rope is as long as the height above the belay and the slack, 3 m, and 8 m is written. Leave this empty, or write the rest as slack'],
    [{ onto: 'belay', up: '0', out: '' }, 'up: nobody is above the belay and no rope is slack, so nothing falls; write how far above the belay the climber is'],
  ])('%j', (words, message) => expect(faults(words)).toEqual([message]));
});

describe('what cannot be read is told at its field', () => {
  test.each([
    [{ kg: '' }, 'kg: write the weight of the climber with all gear, in kg'],
    [{ up: 'two' }, 'up: no plain number; write one from 0 to 100 m'],
    [{ up: '2 yards' }, 'up: the unit yards is not known here; write m or ft or cm'],
    [{ kg: '8' }, 'kg: outside 20 to 200 kg'],
    [{ slack: '-1' }, 'slack: no plain number; write one from 0 to 50 m'],
    [{ kn: '13' }, 'kn: outside 1.7 to 12 kN'],
    [{ rope: 'half', kn: '9' }, 'kn: outside 1.2 to 8 kN'],
    [{ belay: 'magic' }, 'belay: "magic" is none of unknown, held, hitch, device; choose one of them'],
    [{ onto: 'belay', up: '' }, 'up: write how far the knot at the harness is above the belay, in m'],
  ])('%j', (words, message) => expect(faults(words)).toEqual([message]));

  test('all faults at once, in the order of the fields', () => {
    expect(faults({ kg: 'x', up: '', out: '', route: 'x' }).map((line) => line.split(':')[0])).toEqual(['kg', 'up', 'out', 'route']);
  });
});

test('whatever is typed gives a fall that has loads, or a fault at a field', () => {
  const number = fc.oneof(fc.constantFrom('', '0', '0,0', '80', '2.5 m', '1e3', 'NaN', '-3', '٣', '30 ft', '12 kN'), fc.double({ min: 0, max: 200, noNaN: true }).map((x) => x.toFixed(2)), fc.string({ maxLength: 8 }));
  const words = fc.record(Object.fromEntries(FALL_FIELDS.map((field) => {
    const list = (FALL_CHOICES as Readonly<Record<string, readonly string[]>>)[field];
    return [field, list ? fc.constantFrom('', ...list, 'other') : number];
  }))) as unknown as fc.Arbitrary<FallWords>;
  fc.assert(fc.property(words, (one) => {
    const found = readFall(one, CONSTANTS);
    if (!found.ok) {
      expect(found.faults.length).toBeGreaterThan(0);
      for (const { field, why } of found.faults) expect(FALL_FIELDS.includes(field) && why.length > 0).toBe(true);
      return;
    }
    const { climberKn, factor } = toldLoads(found.told, CONSTANTS);
    expect(climberKn.low).toBeGreaterThan(0);
    expect(climberKn.high).toBeLessThan(Infinity);
    expect(factor).toBeLessThanOrEqual(2 + 1e-9);
  }), { numRuns: 2000 });
});
