/** The worked examples for teachers, held against a calculation by hand. */
import { expect, test } from 'vitest';
import { FALL_EXAMPLES, workExample, workSlingExample } from '../../../src/falls/examples.ts';
import { slingFall, slingModulusFromPeak } from '../../../src/falls/sling-fall.ts';
import { CONSTANTS } from './constants.ts';

const worked = (id: string) => workExample(FALL_EXAMPLES.find((one) => one.id === id)!, CONSTANTS);

test('a fall above a clip: 75 kg, 4.5 m on 15 m of a rope of 8.7 kN, by hand', () => {
  const { weightKn, factor, modulusKn, arrested } = worked('crag');
  expect(weightKn).toBeCloseTo(0.7355, 4);
  expect(factor).toBeCloseTo(0.3, 12);
  // 8.7 (8.7 - 1.569064) / (1.569064 x 1.714286)
  expect(modulusKn).toBeCloseTo(23.064, 3);
  // 0.7355 + sqrt(0.5410 + 2 x 0.7355 x 23.064 x 0.3)
  expect(arrested.climberKn).toBeCloseTo(4.0095, 3);
  expect(arrested.connectorsKn[0]).toBeCloseTo(2 * 4.0095, 3);
});

test('each example shows what it says: twice the weight, friction, the same factor, a ceiling', () => {
  expect(worked('let-go').arrested.climberKn / worked('let-go').weightKn).toBeCloseTo(2, 12);
  expect(worked('crag-with-friction').arrested.climberKn).toBeGreaterThan(worked('crag').arrested.climberKn);
  expect(worked('crag-with-friction').arrested.belayerKn).toBeLessThan(worked('crag').arrested.belayerKn);
  expect(worked('crag-twice-as-far').arrested.climberKn / worked('crag').arrested.climberKn).toBeCloseTo(1, 12);
  expect(worked('onto-belay').factor).toBe(2);
  // 0.7355 + sqrt(0.5410 + 2 x 0.7355 x 23.064 x 2)
  expect(worked('onto-belay').arrested.climberKn).toBeCloseTo(9.006, 2);
  const slipping = worked('slipping-belay').arrested;
  expect(slipping.climberKn).toBe(2.5);
  // (0.7355 (6 + 0.3252) - 2.5 x 0.3252 / 2) / (2.5 - 0.7355)
  expect(slipping.slipM).toBeCloseTo(2.406, 3);
});

test('a sling of a stiffer fibre gives a harder fall, and one of HMPE yarn would break first', () => {
  const { hmpe, nylon } = workSlingExample(CONSTANTS);
  // 22 kN x 4 / 0.84 and 22 kN x 175 / 3.1: the yarns' own table.
  expect(nylon.modulusKn).toBeCloseTo(104.76, 2);
  expect(hmpe.modulusKn).toBeCloseTo(1241.9, 1);
  expect(hmpe.peakKn).toBeGreaterThan(nylon.peakKn);
  expect([hmpe.isBeyondBreaking, nylon.isBeyondBreaking]).toEqual([true, false]);
});

test('a stiffness that is worked back from a peak gives that peak again', () => {
  const modulusKn = slingModulusFromPeak(15, 0.784532, 1);
  expect(slingFall({ weightKn: 0.784532, modulusKn, fallM: 1, slingM: 1, breakingKn: 22 }).peakKn).toBeCloseTo(15, 12);
});

test('nobody falls farther than twice the sling', () => {
  expect(() => slingFall({ weightKn: 0.8, modulusKn: 100, fallM: 1.3, slingM: 0.6, breakingKn: 22 })).toThrow(/^fallM must be at most twice the sling/);
});
