/** Falls as climbers tell them: limits that follow from definitions, and what known inputs leave open. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../../src/build/evidence.ts';
import { fallConstantsOf, fallFigureAddresses } from '../../../src/build/fall-evidence.ts';
import { demandOfFall } from '../../../src/falls/demand.ts';
import { FALL_GAPS, fallConstants, ROPE_KINDS, ROUTES } from '../../../src/falls/evidence.ts';
import { measuredDrop } from '../../../src/falls/measured-drop.ts';
import { BELAYS, CONDITIONS, type ToldFall, toldLoads } from '../../../src/falls/told-fall.ts';
import { readAll } from '../../../src/records/read.ts';
import { CONSTANTS, CRAG } from './constants.ts';

const amount = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Any fall that a form lets through. */
const told: fc.Arbitrary<ToldFall> = fc.record({
  massKg: amount(20, 200), aboveM: amount(0, 40), slackM: amount(0, 5), more: amount(0.3, 60), rope: fc.constantFrom(...ROPE_KINDS),
  ratedKn: fc.option(amount(4, 8), { nil: null }), belay: fc.constantFrom(...BELAYS), route: fc.constantFrom(...ROUTES), condition: fc.constantFrom(...CONDITIONS),
}).map(({ more, ...one }) => ({ ...one, onto: 'piece' as const, ropeOutM: one.aboveM + one.slackM + more }));

test('a fall like the standard drop gives the rated force back, since that is what the rated force is', () => {
  const { climberKn, factor } = toldLoads({ ...CRAG, massKg: 80, aboveM: 2.3, slackM: 0.2, ropeOutM: 2.8, ratedKn: 8.4 }, { ...CONSTANTS, friction: { low: 0.1, middle: 0.1, high: 0.1 } });
  expect(factor).toBeCloseTo(1.7143, 4);
  // What is left is the turning below the top piece, which the standard drop does not have.
  expect(climberKn.middle / 8.4).toBeCloseTo(1, 3);
});

test('hanging on a tight rope that is let go costs twice the weight, with any rope', () => {
  fc.assert(fc.property(told, (one) => {
    const { climberKn, fallM } = toldLoads({ ...one, aboveM: 0, slackM: 0, belay: 'held' }, CONSTANTS);
    expect(fallM).toBe(0);
    const twice = 2 * one.massKg * 9.80665e-3;
    for (const load of [climberKn.low, climberKn.middle, climberKn.high]) expect(load / twice).toBeCloseTo(1, 12);
  }), { numRuns: 50 });
});

test('every middle lies between its ends, the top piece bears more than the climber and at most twice as much, and the belayer no more than the climber', () => {
  fc.assert(fc.property(told, (one) => {
    const { climberKn, belayerKn, topPieceKn, stretchM, slipM, middle } = toldLoads(one, CONSTANTS);
    for (const { low, middle: between, high } of [climberKn, belayerKn, stretchM, slipM]) {
      expect(low).toBeLessThanOrEqual(between);
      expect(between).toBeLessThanOrEqual(high);
    }
    expect(topPieceKn?.middle ?? 0).toBeGreaterThan(climberKn.middle);
    expect(topPieceKn?.middle ?? 0).toBeLessThanOrEqual(2 * climberKn.middle);
    expect(belayerKn.high).toBeLessThanOrEqual(climberKn.high);
    expect(middle.arrested.energy.off).toBeLessThan(1e-9);
  }), { numRuns: 100 });
});

test('without friction the top piece bears twice the climber\'s share', () => {
  const { climberKn, topPieceKn } = toldLoads(CRAG, { ...CONSTANTS, friction: { low: 0, middle: 0, high: 0 } });
  for (const end of ['low', 'middle', 'high'] as const) expect((topPieceKn?.[end] ?? 0) / climberKn[end]).toBeCloseTo(2, 12);
});

test('more rope out makes a fall softer, a heavier climber a harder one', () => {
  const load = (one: Partial<ToldFall>) => toldLoads({ ...CRAG, ...one }, CONSTANTS).climberKn.middle;
  expect(load({ ropeOutM: 30 })).toBeLessThan(load({}));
  expect(load({ massKg: 90 })).toBeGreaterThan(load({}));
});

test('what is not known widens the range and is named among what drives it; what is known is not', () => {
  // Short enough a rope that a belay can slip at all.
  const known = toldLoads({ ...CRAG, ropeOutM: 8 }, CONSTANTS);
  const unknown = toldLoads({ ...CRAG, ropeOutM: 8, ratedKn: null, belay: 'unknown', route: 'unknown', condition: 'unknown' }, CONSTANTS);
  expect(unknown.topPieceKn?.low).toBeLessThan(known.topPieceKn?.low ?? 0);
  expect(unknown.topPieceKn?.high).toBeGreaterThan(known.topPieceKn?.high ?? 0);
  expect(known.drivers.map(({ name }) => name).sort()).toEqual(['friction', 'geometry', 'route']);
  expect(unknown.drivers.map(({ name }) => name).sort()).toEqual(['belay', 'condition', 'friction', 'geometry', 'rope', 'route']);
  const widths = unknown.drivers.map(({ low, high }) => high - low);
  expect(widths).toEqual(widths.toSorted((a, b) => b - a));
});

test('a fall onto the belay has no top piece, and is the hardest there is: factor two', () => {
  const { topPieceKn, factor, climberKn, belayerKn } = toldLoads({ ...CRAG, onto: 'belay', aboveM: 5, slackM: 0, ropeOutM: 5 }, CONSTANTS);
  expect(topPieceKn).toBeNull();
  expect(factor).toBe(2);
  expect(belayerKn).toEqual(climberKn);
});

test('a belayer\'s hitch that slips keeps the belayer\'s side at what the book prints, about 2.5 kN (C. Warner, 1996)', () => {
  const { belayerKn, slipM } = toldLoads({ ...CRAG, massKg: 80, aboveM: 4, slackM: 0, ropeOutM: 10, belay: 'hitch' }, CONSTANTS);
  expect([belayerKn.low, belayerKn.middle]).toEqual([expect.closeTo(2.5, 12), expect.closeTo(2.5, 12)]);
  expect(belayerKn.high).toBeGreaterThan(2.5);
  expect(slipM.middle).toBeGreaterThan(0);
});

test('each open question that a fall touches is a gap of the project', () => {
  const { gaps } = readAll(ROOT);
  expect(Object.values(FALL_GAPS).filter((id) => gaps.get(id)?.data.page !== 'falls')).toEqual([]);
  expect([...gaps].filter(([, { data }]) => data.page === 'falls').map(([id]) => id).sort()).toEqual(Object.values(FALL_GAPS).toSorted());
  expect(toldLoads({ ...CRAG, condition: 'wet', belay: 'device' }, CONSTANTS).gaps).toEqual(['topPiece', 'belay', 'wet']);
  expect(toldLoads(CRAG, CONSTANTS).gaps).toEqual(['topPiece']);
});

test.each([
  [{ ropeOutM: 2 }, /^ropeOutM must be at least what is above and slack/], [{ onto: 'belay' as const }, /^ropeOutM must be what is above and slack/],
  [{ massKg: 0 }, /^massKg/], [{ aboveM: -1 }, /^aboveM/], [{ ratedKn: 1.2 }, /^ratedKn must be above twice the weight/],
])('a fall that cannot be is refused by its name: %j', (change, message) => expect(() => toldLoads({ ...CRAG, ...change }, CONSTANTS)).toThrow(message));

describe('the figures behind it', () => {
  test('are records, each with a value in a unit that the engine takes', () => {
    const records = readAll(ROOT);
    expect(fallFigureAddresses().filter((address) => records.cells.get(address)?.figure.value === undefined)).toEqual([]);
    expect(fallConstantsOf(records)).toEqual(CONSTANTS);
  });

  test('say what the trade knows of the standard: 80 and 55 kg, 12 and 8 kN', () => {
    expect(CONSTANTS.ropes.single).toMatchObject({ massKg: 80, limitKn: 12 });
    expect(CONSTANTS.ropes.half).toMatchObject({ massKg: 55, limitKn: 8 });
    expect(CONSTANTS.ropes.twin).toMatchObject({ massKg: 80, limitKn: 12 });
  });

  test('the friction of a carabiner that was measured by hand lies between the ends that are used (53 %, G. Prattley, 2016)', () => {
    const coefficient = -Math.log(0.53) / Math.PI;
    expect(coefficient).toBeGreaterThan(CONSTANTS.friction.low);
    expect(coefficient).toBeLessThan(CONSTANTS.friction.high);
  });

  test('a figure that is missing, or of another form, is named', () => {
    expect(() => fallConstants(() => undefined)).toThrow('wikipedia-standard-drop/geometry#behind-edge must be one number.');
    expect(() => fallConstants(() => ({ statement: 'about so much' }))).toThrow(/must be one number/);
    expect(() => fallConstants(() => 3)).toThrow(/must be a range/);
  });
});

test('in the standard drop of a rope of 8.4 kN the model lies above the 11.7 kN that a paper measured on the top piece (T. Moyer and others, 2000)', () => {
  const { ratedKn, measuredKn, modelKn, above } = measuredDrop(CONSTANTS);
  expect([ratedKn, measuredKn]).toEqual([8.4, 11.7]);
  // By hand: 8.4 (1 + e^(-0.24 pi)) = 12.35; 8.4 x 1.7 = 14.28.
  expect(modelKn.low).toBeCloseTo(12.35, 2);
  expect(modelKn.high).toBeCloseTo(14.28, 10);
  expect(above.low).toBeCloseTo(12.35 / 11.7 - 1, 3);
  expect(above.high).toBeCloseTo(14.28 / 11.7 - 1, 10);
});

test('the demand of a fall has nine loads in ten between its ends: one in twenty below, one in twenty above', () => {
  const loads = toldLoads(CRAG, CONSTANTS);
  const { muLog, sigmaLog } = demandOfFall(loads);
  const { low, high } = loads.topPieceKn ?? { low: 0, high: 0 };
  // 1.6449: the 95 % point of the standard normal, any table.
  expect(Math.exp(muLog - 1.6449 * sigmaLog) / low).toBeCloseTo(1, 4);
  expect(Math.exp(muLog + 1.6449 * sigmaLog) / high).toBeCloseTo(1, 4);
});
