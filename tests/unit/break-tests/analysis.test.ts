import { describe, expect, it } from 'vitest';
import { analyse, isNone } from '../../../src/break-tests/analysis.ts';
import { compareSeries } from '../../../src/break-tests/compare-series.ts';
import { andersonDarlingLognormal, andersonDarlingNormal, andersonDarlingWeibull } from '../../../src/break-tests/anderson-darling.ts';
import { dixon } from '../../../src/break-tests/dixon.ts';
import { fitLognormal, lognormalQuantileInterval } from '../../../src/break-tests/fit-lognormal.ts';
import { fitNormal } from '../../../src/break-tests/fit-normal.ts';
import { fitWeibull } from '../../../src/break-tests/fit-weibull.ts';
import { grubbs } from '../../../src/break-tests/grubbs.ts';
import { orderBound } from '../../../src/break-tests/order-bound.ts';
import { shapiroWilk } from '../../../src/break-tests/shapiro-wilk.ts';
import { promiseOfMeanLess } from '../../../src/break-tests/three-sigma.ts';
import { lowerToleranceBound } from '../../../src/break-tests/tolerance-bound.ts';
import { nextPulls } from '../../../src/break-tests/next-pulls.ts';
import { type Pull, seenByPart } from '../../../src/break-tests/pulls.ts';
import checks from '../../reference/published-checks.json' with { type: 'json' };
import { near } from './near.ts';

const pullsOf = (forces: readonly number[], rest: Partial<Pull> = {}): Pull[] => forces.map((force) => ({ force, atLeast: false, mode: '', link: '', ...rest }));
const entry = (id: string) => checks.find((check) => check.id === id) as unknown as { inputs: { strength: number[]; mode: string[] }; expected: Record<'bond' | 'wire', { lognormal: { mu_log: number } }> };
/** The smallest pulls that can be such a bound alone: NIST/SEMATECH handbook and CMH-17-1G, table 8.5.13, as in published-checks.json (tol-nonparam). */
const ALONE = [29, 59, 299];

describe('what a series says', () => {
  it('one pull has a minimum and a mean, and says of each other part why it is not there', () => {
    const { summary, promise, bounds, fits, outliers, modes, competing, dots } = analyse(pullsOf([12.3]));
    expect([summary.n, summary.mean, summary.minimum]).toEqual([1, 12.3, 12.3]);
    expect([promise, fits, outliers, modes, competing, dots].map((part) => (isNone(part) ? part.why : 'given'))).toEqual(['one-pull', 'no-break', 'one-pull', 'unnamed', 'unnamed', 'too-few']);
    expect(bounds.map(({ normal, lognormal }) => [isNone(normal), isNone(lognormal)])).toEqual([[true, true], [true, true], [true, true]]);
    expect(bounds.map(({ order }) => [order.bound, order.pullsNeeded])).toEqual(ALONE.map((needed) => [null, needed]));
  });

  it('pulls that all stopped at the limit of the machine have no scatter, and no distribution', () => {
    const { summary, promise, fits } = analyse(pullsOf([20, 20, 20], { atLeast: true }));
    expect(summary.noSpread).toBe('all-equal');
    expect([promise, fits].map((part) => isNone(part) && part.why)).toEqual(['all-equal', 'no-break']);
  });

  it('each part is what its own function says of the pulls; those are tested by themselves', () => {
    const forces = [21.3, 20.1, 22.4, 19.8, 21.9];
    const pair = { coverage: 0.9, confidence: 0.95 };
    const logs = forces.map(Math.log);
    const { bounds, fits, outliers, dots, promise } = analyse(pullsOf(forces), { level: 0.9, pairs: [pair] });
    expect(promise).toEqual(promiseOfMeanLess(5));
    expect(bounds).toEqual([{ pair, normal: lowerToleranceBound(forces, pair, 'normal'), lognormal: lowerToleranceBound(forces, pair, 'lognormal'), order: orderBound(forces, pair) }]);
    const [normal, lognormal, weibull] = [fitNormal({ broken: forces }), fitLognormal({ broken: forces }), fitWeibull({ broken: forces })];
    if (isNone(fits)) throw new Error('five breaks differ');
    expect(fits.all.map(({ family, parameters, logLikelihood, shapiroWilk: w, andersonDarling: a, untested }) => [family, parameters, logLikelihood, w, a, untested])).toEqual([
      ['normal', [normal.mean, normal.sd], normal.logLikelihood, shapiroWilk(forces), andersonDarlingNormal(forces), null],
      ['lognormal', [lognormal.muLog, lognormal.sigmaLog], lognormal.logLikelihood, shapiroWilk(logs), andersonDarlingLognormal(forces), null],
      ['weibull', [weibull.shape, weibull.scale], weibull.logLikelihood, null, andersonDarlingWeibull(forces), null],
    ]);
    expect(outliers).toEqual({ grubbs: grubbs(forces), grubbsOfLogs: grubbs(logs), dixon: dixon(forces) });
    expect(dots).toEqual({ forces: nextPulls({ broken: forces }) });
  });

  it('says of what it leaves out why, and how many pulls it takes', () => {
    const all = (forces: readonly number[]) => analyse(pullsOf(forces));
    const untested = (forces: readonly number[]) => {
      const { fits } = all(forces);
      return isNone(fits) ? fits : fits.all[0]?.untested;
    };
    expect(all([12]).promise).toEqual({ why: 'one-pull', needed: 2 });
    expect(all([12, 12]).promise).toEqual({ why: 'all-equal' });
    expect(untested([12, 13])).toEqual({ why: 'too-few', needed: 3 });
    expect(untested([12, 13, 14])).toBeNull();
    expect(all([12, 13]).outliers).toEqual({ why: 'too-few', needed: 3 });
    expect(all([12, 13, 14]).outliers).toMatchObject({ grubbs: grubbs([12, 13, 14]) });
    const many = (count: number) => all(Array.from({ length: count }, (_, i) => 10 + i)).outliers;
    expect(many(10)).toMatchObject({ dixon: dixon([10, 11, 12, 13, 14, 15, 16, 17, 18, 19]) });
    expect(many(11)).toMatchObject({ dixon: null });
    expect(all([12, 13, 14, 15]).dots).toEqual({ why: 'too-few', needed: 5 });
    expect(all([12, 12, 12, 12, 12]).dots).toEqual({ why: 'all-equal' });
  });

  it('counts the pulls that nobody named, and takes one link with a limit of none for one link', () => {
    expect(analyse([...pullsOf([10, 11], { mode: 'cut' }), ...pullsOf([12])]).modes).toMatchObject({ unnamed: 1 });
    expect(analyse([...pullsOf([10, 11], { link: 'sling' }), ...pullsOf([12], { atLeast: true })]).competing).toEqual({ why: 'one-link' });
    const { competing } = analyse([...pullsOf([10, 11, 12], { link: 'sling' }), ...pullsOf([12.5, 13], { link: 'knot' })]);
    if (isNone(competing)) throw new Error('two links compete');
    for (const { mode, pulls, half, twentieth } of competing.links) {
      expect([half, twentieth], String(mode)).toEqual([lognormalQuantileInterval(pulls, 0.5), lognormalQuantileInterval(pulls, 0.05)]);
    }
  });

  it('a part sees its own breaks, and what it came to without one', () => {
    expect(seenByPart([...pullsOf([11, 9]), ...pullsOf([12], { atLeast: true })])).toEqual({ broken: [11, 9], atLeast: [12] });
  });

  it('a bound counts a lower limit as if the part had broken there, and a fit does not', () => {
    const broken = [10.1, 11.2, 9.8, 10.6, 10.9];
    const without = analyse(pullsOf(broken));
    const limited = analyse([...pullsOf(broken), ...pullsOf([10.2], { atLeast: true })]);
    const counted = analyse(pullsOf([...broken, 10.2]));
    expect(limited.bounds).toEqual(counted.bounds);
    const middle = ({ fits }: typeof limited) => (isNone(fits) ? Number.NaN : (fits.all[1]?.half.best as number));
    // A pull that was still whole at 10.2 says that the part is stronger than a break at 10.2 would.
    expect(middle(limited)).toBeGreaterThan(middle(counted));
    expect(middle(limited)).toBeGreaterThan(middle(without) * 0.99);
    expect(isNone(limited.fits) || limited.fits.all.every(({ untested }) => untested?.why === 'censored')).toBe(true);
  });

  it('the published bond-or-wire pulls: each link with the other censored, and Peterson’s ends around its middle', () => {
    // Data and fits of published-checks.json, id competing-bond-wire; its source is named there.
    const { inputs, expected } = entry('competing-bond-wire');
    const names = { b: 'bond', w: 'wire' } as const;
    const { competing, links } = analyse(inputs.strength.map((force, i) => ({ force, atLeast: false, mode: '', link: names[inputs.mode[i] as 'b' | 'w'] })));
    if (isNone(competing) || isNone(links)) throw new Error('two links break in these pulls');
    expect(Object.fromEntries(links.shares.map(({ mode, count }) => [mode, count]))).toEqual({ bond: 10, wire: 10 });
    for (const link of competing.links) {
      near(Math.log(link.half?.best as number), expected[link.mode as 'bond' | 'wire'].lognormal.mu_log, 1e-6);
      expect(link.halfAnyway?.low).toBeLessThanOrEqual(link.half?.best as number);
      expect(link.halfAnyway?.high).toBeGreaterThanOrEqual(link.half?.best as number);
    }
  });

  it('a break of which nobody wrote down the part stops the competition; a lower limit without one does not', () => {
    const two = [...pullsOf([10, 11], { link: 'sling' }), ...pullsOf([12, 13], { link: 'knot' })];
    expect(analyse([...two, ...pullsOf([12.5])]).competing).toEqual({ why: 'unnamed' });
    const stopped = analyse([...two, ...pullsOf([12.5], { atLeast: true })]).competing;
    expect(isNone(stopped)).toBe(false);
    expect(isNone(stopped) || stopped.links.every(({ halfAnyway }) => halfAnyway === null)).toBe(true);
    expect(analyse(pullsOf([10, 11], { link: 'sling' })).competing).toEqual({ why: 'one-link' });
  });

  it('refuses by name', () => {
    expect(() => analyse([])).toThrow('pulls must hold at least 1 (got 0).');
    expect(() => analyse(pullsOf([3, 0]))).toThrow('pulls[1] must be positive (got 0).');
    expect(() => analyse(pullsOf([3]), { level: 1 })).toThrow('level must lie strictly between 0 and 1 (got 1).');
  });
});

describe('the next pulls', () => {
  it('the outermost of twenty stand at Student’s 95 % prediction', () => {
    const forces = [10, 11, 12, 13, 14].map(Math.exp);
    const dots = nextPulls({ broken: forces });
    expect(dots).toHaveLength(20);
    // Printed tables of t: 2.776 at 0.975 with 4 degrees of freedom. Mean 12, variance 2.5 by hand.
    const half = 2.776 * Math.sqrt(2.5) * Math.sqrt(1.2);
    near(Math.log(dots[0] as number), 12 - half, 2e-4);
    near(Math.log(dots[19] as number), 12 + half, 2e-4);
  });

  it('one lower limit far below all breaks changes next to nothing', () => {
    const broken = [10.1, 11.2, 9.8, 10.6, 10.9];
    const [without, withLimit] = [nextPulls({ broken }), nextPulls({ broken, atLeast: [1] })];
    for (const [i, force] of without.entries()) near(withLimit[i] as number, force, 1e-9);
  });

  it('with limits, half of them stand above the middle of the fit, and all above where they stood without', () => {
    const pulls = { broken: [10.1, 11.2, 9.8, 10.6, 10.9], atLeast: [11.5, 12] };
    near(nextPulls(pulls, 1)[0] as number, Math.exp(fitLognormal(pulls).muLog), 1e-12);
    const without = nextPulls({ broken: [...pulls.broken, ...pulls.atLeast] });
    for (const [i, force] of nextPulls(pulls).slice(10).entries()) expect(force).toBeGreaterThan(without[i + 10] as number);
  });

  it('are not drawn from four breaks', () => {
    expect(() => nextPulls({ broken: [1, 2, 3, 4] })).toThrow('broken must hold at least 5 (got 4).');
  });
});

describe('two series', () => {
  it('of one pull each give pairs and ranks, and no ratio', () => {
    const found = compareSeries(pullsOf([12]), pullsOf([10], { atLeast: true }));
    expect([found.means, found.noMeans, found.chance.chance, found.atLeast]).toEqual([null, 'one-pull', 1, [0, 1]]);
  });

  it('give no ratio where one has a single pull or neither scatters, and one where only one of them does', () => {
    const [one, two, equal] = [pullsOf([12]), pullsOf([10, 11]), pullsOf([12, 12])];
    const whyNot = (a: Pull[], b: Pull[]) => {
      const { n, means, noMeans } = compareSeries(a, b);
      return [n, means !== null, noMeans];
    };
    expect(whyNot(one, two)).toEqual([[1, 2], false, 'one-pull']);
    expect(whyNot(two, one)).toEqual([[2, 1], false, 'one-pull']);
    expect(whyNot(equal, pullsOf([10, 10]))).toEqual([[2, 2], false, 'all-equal']);
    expect(whyNot(equal, two)).toEqual([[2, 2], true, null]);
    expect(whyNot(two, equal)).toEqual([[2, 2], true, null]);
  });

  it('are refused by name where one is empty or the level is no share', () => {
    expect(() => compareSeries([], pullsOf([1]))).toThrow(/^a must hold at least 1/);
    expect(() => compareSeries(pullsOf([1]), [])).toThrow(/^b must hold at least 1/);
    for (const level of [0, 1]) expect(() => compareSeries(pullsOf([1, 2]), pullsOf([1, 2]), level)).toThrow(/^level must lie strictly between 0 and 1/);
  });

  it('give the ratio, Welch, ranks and pairs of the same pulls', () => {
    const found = compareSeries(pullsOf([21.3, 20.1, 22.4, 19.8, 21.9]), pullsOf([15.2, 17.9, 16.4, 14.8]));
    // SciPy 1.17.1, as in two-series.test.ts; all 20 pairs and all 126 deals by hand.
    near(found.means?.geometric.ratio as number, 1.314728420752479, 1e-12);
    expect(found.chance.chance).toBe(1);
    near(found.rank.exact?.twoSided as number, 2 / 126, 1e-12);
  });
});
