/** The most likely mean of pulls of which some are known only to exceed a value, against the likelihood written out with @stdlib's normal. */
import normal from '@stdlib/stats-base-dists-normal';
import { describe, expect, it } from 'vitest';
import { byStudy, censoredMean, classValues, scatterOf } from '../../../src/evidence/classes.ts';
import type { Observation, Reading } from '../../../src/evidence/observation.ts';
import type { FactorClassRecord } from '../../../src/records/schema.ts';
import { near } from '../break-tests/near.ts';

const logLikelihood = (broken: readonly number[], held: readonly number[], sd: number) => (mean: number): number =>
  broken.reduce((sum, y) => sum + normal.logpdf(y, mean, sd), 0) + held.reduce((sum, y) => sum + normal.logcdf(-y, -mean, sd), 0);

describe('censored mean', () => {
  const cases: readonly (readonly [string, number[], number[], number])[] = [
    ['one of each', [2.5], [2.5], 0.1],
    ['some held above and below', [2.1, 2.4, 2.2], [2, 2.3, 2.6], 0.2],
    // Fifty that held pull the mean far above all of them.
    ['one broke and fifty held', [2], new Array<number>(50).fill(2), 0.1],
    ['one broke, and held ones far above', [2], [4, 4, 4], 0.3],
  ];
  it.each(cases)('lies where the likelihood is highest, with the variance of its curvature: %s', (_, broken, held, sd) => {
    const { mean, variance } = censoredMean(broken, held, sd);
    const height = logLikelihood(broken, held, sd);
    const step = sd / 200;
    expect((height(mean + step) - height(mean - step)) / (2 * step) * sd).toBeCloseTo(0, 3);
    near(variance, -(step * step) / (height(mean + step) - 2 * height(mean) + height(mean - step)), 1e-4);
  });
  it('without held ones is the mean, with sd^2 / n; of one alone itself', () => {
    const three = censoredMean([2, 2.3, 2.9], [], 0.3);
    near(three.mean, 2.4, 1e-12);
    near(three.variance, 0.03, 1e-12);
    expect(censoredMean([2.3], [], 0.3).mean).toBe(2.3);
  });
});

describe('scatter of a series', () => {
  const group = { cv: 0.06, ceiling: 0.2 };
  it('is its own from ten pulls on, its class\'s below; what a source leaves out narrows nothing', () => {
    const of = (n: number | null, cv: number | null): number => scatterOf({ n, cv }, group);
    expect([of(9, 0.01), of(10, 0.01), of(9, 0.5), of(10, 0.5), of(9, null), of(10, null)]).toEqual([0.06, 0.01, 0.06, 0.5, 0.06, 0.2]);
    expect([of(null, null), of(null, 0.01), of(null, 0.5)]).toEqual([0.2, 0.06, 0.5]);
  });
});

it('series of one study are one number, with both figures named: two of four pulls each weigh alike', () => {
  const seen = (figure: string, study: string, kn: number): Observation => ({ figure, study, logMean: Math.log(kn), n: 4, cv: null });
  const [joined, alone] = byStudy([seen('a', 'x', 8), seen('b', 'y', 10), seen('c', 'x', 18)], { cv: 0.06, ceiling: 0.2 });
  // ln of the geometric mean of 8 and 18 is ln 12; eight pulls in all.
  expect(joined).toMatchObject({ study: 'x', figures: ['a', 'c'], mean: expect.closeTo(Math.log(12), 12), variance: expect.closeTo(0.0036 / 8, 12), scatter2: expect.closeTo(0.0036, 12) });
  expect(alone).toMatchObject({ study: 'y', figures: ['b'] });
});

describe('values of a class', () => {
  const figure = (id: string, value: Reading['value'], study = id): Reading => ({ id, study, kind: 'measured', standing: 'read', value, unit: 'kN' });
  const figures = Object.fromEntries([
    figure('pair', { tests: [9, 11] }), figure('sure', { mean: 10, sd: 1, n: 5 }), figure('no-sd', { mean: 10, n: 5 }), figure('no-n', { mean: 10, sd: 1 }), figure('one', { mean: 10, sd: 1, n: 1 }), figure('words', { statement: 'much' }),
    figure('ten', { mean: 10, sd: 1, n: 5 }), figure('twenty', { mean: 20, sd: 2, n: 5 }),
  ].map((one) => [one.id, one]));
  const made = (cv: unknown, tau: unknown): FactorClassRecord => ({ what: 'a test', ceiling: { cv: 0.15, why: 'a test' }, cv, tau }) as FactorClassRecord;
  const assumed = { assumed: 0.1, why: 'a test' };
  const values = (classes: Record<string, FactorClassRecord>) => classValues(classes, figures);

  it('come from figures, an assumption or another class, and say which', () => {
    const found = values({
      one: made({ from: ['sure', 'pair'] }, { borrowed: 'two', why: 'a test' }),
      two: made(assumed, { groups: [['ten', 'twenty']] }),
      three: made(assumed, assumed),
    });
    // cv of a half: 1 / 10 with 4 degrees; of the pair sqrt(2) / 10 with 1: sqrt((4 x 0.01 + 0.02) / 5).
    expect(found['one']).toMatchObject({ cv: expect.closeTo(Math.sqrt(0.012), 12), cvDf: 5, ceiling: 0.15, tauFrom: 'borrowed', tau: found['two']?.tau, tauInterval: found['two']?.tauInterval });
    // Chi-square of 5 degrees at 0.025 and 0.975: 0.831212 and 12.832502 (any table).
    expect(found['one']?.cvInterval?.map((x) => x ** 2 / 0.012)).toEqual([expect.closeTo(5 / 12.832502, 5), expect.closeTo(5 / 0.831212, 5)]);
    // Two studies with equal errors v: tau^2 = d^2 / 2 - v, with d = ln 2 and v = 0.1^2 / 5.
    expect(found['two']).toMatchObject({ cv: 0.1, cvDf: null, cvInterval: null, tauFrom: 'estimated', tau: expect.closeTo(Math.sqrt(Math.LN2 ** 2 / 2 - 0.002), 10) });
    expect(found['three']).toMatchObject({ tau: 0.1, tauInterval: null, tauFrom: 'assumed' });
    // A ceiling below the class's own scatter gives way.
    expect(values({ one: made({ assumed: 0.3, why: 'a test' }, assumed) })['one']?.ceiling).toBe(0.3);
  });

  it('are refused by class and figure', () => {
    expect(() => values({ one: made({ from: ['words'] }, assumed) })).toThrow('class one: figure words gives no number that may feed');
    expect(() => values({ one: made({ from: ['nowhere'] }, assumed) })).toThrow('class one: figure nowhere gives no number that may feed');
    for (const id of ['no-sd', 'no-n', 'one']) expect(() => values({ one: made({ from: ['sure', id] }, assumed) })).toThrow(`class one: figure ${id} states no scatter with its n`);
    expect(() => values({ one: made(assumed, { borrowed: 'none', why: 'a test' }) })).toThrow('class one: borrows from none, which is no class');
    expect(() => values({ one: made(assumed, { borrowed: 'two', why: 'a test' }), two: made(assumed, { borrowed: 'one', why: 'a test' }) })).toThrow('class one: borrows in a circle (one < two < one)');
  });
});
