import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { andersonDarlingNormal } from '../../../src/break-tests/anderson-darling.ts';
import { chanceOfBeating } from '../../../src/break-tests/chance-of-beating.ts';
import { type ModePull, linkStrengths, petersonBounds } from '../../../src/break-tests/competing-modes.ts';
import { fitLognormal } from '../../../src/break-tests/fit-lognormal.ts';
import { fitWeibull } from '../../../src/break-tests/fit-weibull.ts';
import { grubbs } from '../../../src/break-tests/grubbs.ts';
import { mannWhitney } from '../../../src/break-tests/mann-whitney.ts';
import { shareInterval, wilsonInterval } from '../../../src/break-tests/mode-shares.ts';
import { orderBound } from '../../../src/break-tests/order-bound.ts';
import { expectedBound } from '../../../src/break-tests/plan-bound.ts';
import { powerOfDifference } from '../../../src/break-tests/plan-difference.ts';
import { productLimit } from '../../../src/break-tests/product-limit.ts';
import { fiellerRatio, ratioOfGeometricMeans } from '../../../src/break-tests/ratio-of-means.ts';
import { readTable } from '../../../src/break-tests/read-table.ts';
import { shapiroWilk } from '../../../src/break-tests/shapiro-wilk.ts';
import { summarise } from '../../../src/break-tests/summary.ts';
import { lowerToleranceBound } from '../../../src/break-tests/tolerance-bound.ts';
import { oneSidedToleranceFactor } from '../../../src/numerics/tolerance-factor.ts';
import { twoSidedToleranceFactor } from '../../../src/numerics/two-sided-tolerance-factor.ts';
import { near } from './near.ts';

/** Forces to a hundredth of a kN, as a load cell prints them; at least two differ. */
const force = fc.integer({ min: 500, max: 4000 }).map((x) => x / 100);
const forces = (minLength: number, maxLength = 12) =>
  fc.array(force, { minLength, maxLength }).filter((x) => new Set(x).size > 1);
const scale = fc.constantFrom(0.001, 0.0980665, 0.22480894, 2, 1000);
const share = fc.double({ min: 0.05, max: 0.995, noNaN: true });
// Where the code is changed to see what notices, each runs a thousand times.
const runs = { numRuns: 'MUTATED_ROOM' in process.env ? 30 : 150 };

/** Fails when anything in a result is not a number. */
function assertNumbers(value: unknown): void {
  if (typeof value === 'number') expect(Number.isNaN(value)).toBe(false);
  else if (value !== null && typeof value === 'object') for (const each of Object.values(value)) assertNumbers(each);
}

describe('another unit changes nothing but the unit', () => {
  it('summary, bounds, fits and ratios scale with the forces', () => {
    fc.assert(fc.property(forces(2), scale, (x, by) => {
      const y = x.map((v) => v * by);
      const [a, b] = [summarise(x), summarise(y)];
      near(b.mean, a.mean * by, 1e-12);
      near(b.spread!.sd, a.spread!.sd * by, 1e-9);
      near(b.spread!.cvInterval.low, a.spread!.cvInterval.low, 1e-7);
      const pair = { coverage: 0.95, confidence: 0.95 };
      const wide = 40 * a.spread!.sd * by;
      expect(Math.abs(lowerToleranceBound(y, pair).bound - by * lowerToleranceBound(x, pair).bound)).toBeLessThan(1e-9 * wide);
      near(lowerToleranceBound(y, pair, 'lognormal').bound, by * lowerToleranceBound(x, pair, 'lognormal').bound, 1e-6);
      near(fitWeibull({ broken: y }).scale, by * fitWeibull({ broken: x }).scale, 1e-9);
      near(fitWeibull({ broken: y }).shape, fitWeibull({ broken: x }).shape, 1e-7);
      near(fitLognormal({ broken: y }).sigmaLog, fitLognormal({ broken: x }).sigmaLog, 1e-7);
    }), runs);
  });

  it('tests of fit and outliers do not see scale, shift or order', () => {
    fc.assert(fc.property(forces(4), scale, fc.integer({ min: -50, max: 50 }), (x, by, shift) => {
      const y = x.map((v) => v * by + shift).reverse();
      near(shapiroWilk(y).w, shapiroWilk(x).w, 1e-7);
      expect(Math.abs(andersonDarlingNormal(y).a2 - andersonDarlingNormal(x).a2)).toBeLessThan(1e-6);
      near(grubbs(y).g, grubbs(x).g, 1e-7);
    }), runs);
  });
});

describe('two series', () => {
  it('turned round, ratio and chance turn round', () => {
    fc.assert(fc.property(forces(2, 8), forces(2, 8), (a, b) => {
      const [one, two] = [ratioOfGeometricMeans(a, b), ratioOfGeometricMeans(b, a)];
      near(one.ratio * two.ratio, 1, 1e-12);
      near(one.interval.low * two.interval.high, 1, 1e-9);
      const [p, q] = [chanceOfBeating(a, b), chanceOfBeating(b, a)];
      expect(p.chance + q.chance).toBeCloseTo(1, 12);
      expect(p.interval.low + q.interval.high).toBeCloseTo(1, 9);
      expect(p.interval.low).toBeLessThanOrEqual(p.chance);
      const [m, w] = [mannWhitney(a, b), mannWhitney(b, a)];
      expect(m.exact!.twoSided).toBeCloseTo(w.exact!.twoSided, 10);
      expect(m.exact!.less).toBeCloseTo(w.exact!.greater, 10);
      expect(m.share).toBeCloseTo(p.chance, 12);
      expect(m.exact!.twoSided).toBeGreaterThanOrEqual(m.smallestP - 1e-12);
      const fieller = fiellerRatio(a, b);
      if (fieller) {
        expect(fieller.interval.low).toBeLessThanOrEqual(fieller.ratio);
        expect(fieller.interval.high).toBeGreaterThanOrEqual(fieller.ratio);
      }
    }), runs);
  });
});

describe('more is known from more', () => {
  it('a further pull narrows the factor; more coverage or confidence widens it', () => {
    fc.assert(fc.property(fc.integer({ min: 2, max: 60 }), fc.double({ min: 0.5, max: 0.99, noNaN: true }), fc.double({ min: 0.5, max: 0.99, noNaN: true }), (n, p, g) => {
      const k = oneSidedToleranceFactor(n, p, g);
      expect(oneSidedToleranceFactor(n + 1, p, g)).toBeLessThan(k + 1e-9);
      expect(oneSidedToleranceFactor(n, p + 0.005, g)).toBeGreaterThan(k);
      expect(oneSidedToleranceFactor(n, p, g + 0.005)).toBeGreaterThan(k);
    }), { numRuns: 60 });
    fc.assert(fc.property(fc.integer({ min: 2, max: 40 }), (n) => {
      const k = twoSidedToleranceFactor(n, 0.9, 0.95);
      expect(twoSidedToleranceFactor(n + 1, 0.9, 0.95)).toBeLessThan(k);
      expect(k).toBeGreaterThan(oneSidedToleranceFactor(n, 0.9, 0.95));
    }), { numRuns: 10 });
  });

  it('a further pull raises power and what a bound may be expected to be', () => {
    fc.assert(fc.property(fc.integer({ min: 2, max: 40 }), fc.double({ min: 0.2, max: 3, noNaN: true }), (n, difference) => {
      expect(powerOfDifference(n + 1, { difference, sd: 1 })).toBeGreaterThan(powerOfDifference(n, { difference, sd: 1 }) - 1e-10);
      expect(expectedBound(n + 1, { coverage: 0.9, confidence: 0.95 }, 0.1).bound).toBeGreaterThan(expectedBound(n, { coverage: 0.9, confidence: 0.95 }, 0.1).bound);
    }), { numRuns: 40 });
  });

  it('exact intervals of shares contain the share, are mirrored, and grow with the level', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0, max: 1, noNaN: true }), share, (n, part, level) => {
      const count = Math.round(part * n);
      const exact = shareInterval(count, n, level);
      expect(exact.low).toBeLessThanOrEqual(count / n);
      expect(exact.high).toBeGreaterThanOrEqual(count / n);
      expect(exact.low).toBeCloseTo(1 - shareInterval(n - count, n, level).high, 9);
      const more = shareInterval(count, n, level + (1 - level) / 2);
      expect(more.low).toBeLessThanOrEqual(exact.low + 1e-12);
      const wilson = wilsonInterval(count, n, level);
      expect(wilson.low).toBeGreaterThanOrEqual(-1e-15);
      expect(wilson.high).toBeLessThanOrEqual(1 + 1e-15);
    }), runs);
  });

  it('the bound from the smallest pulls is one of them, and rises with less confidence', () => {
    fc.assert(fc.property(forces(2, 40), share, (x, confidence) => {
      const found = orderBound(x, { coverage: 0.8, confidence });
      if (found.bound !== null) {
        expect(x).toContain(found.bound);
        expect(found.attained).toBeGreaterThanOrEqual(confidence);
        expect(orderBound(x, { coverage: 0.8, confidence: confidence / 2 }).bound).toBeGreaterThanOrEqual(found.bound);
      } else expect(found.pullsNeeded).toBeGreaterThan(x.length);
    }), runs);
  });
});

describe('censored pulls', () => {
  const censored = fc.array(force, { minLength: 1, maxLength: 6 });

  it('a break told as "at least" never lowers the middle, nor the share above any force', () => {
    fc.assert(fc.property(forces(4), fc.nat(), (x, which) => {
      const i = which % x.length;
      const broken = x.filter((_, j) => j !== i);
      if (new Set(broken).size < 2) return;
      const pulls = { broken, atLeast: [x[i] as number] };
      const whole = fitLognormal({ broken: x });
      const part = fitLognormal(pulls);
      expect(part.muLog).toBeGreaterThanOrEqual(whole.muLog - 1e-9);
      const [a, b] = [productLimit({ broken: x }), productLimit(pulls)];
      for (const step of b) {
        const same = a.find((each) => each.force === step.force);
        if (same) expect(step.above).toBeGreaterThanOrEqual(same.above - 1e-12);
      }
    }), runs);
  });

  it('a further pull of "at least" below every break changes little or lifts: the Weibull scale never falls', () => {
    fc.assert(fc.property(forces(3), censored, (x, atLeast) => {
      const high = Math.max(...x);
      const lifted = fitWeibull({ broken: x, atLeast: atLeast.map((v) => high + v) });
      // All further pulls outlast every break, so the strength that most break at can only rise.
      expect(lifted.scale).toBeGreaterThan(fitWeibull({ broken: x }).scale * (1 - 1e-9));
      assertNumbers(lifted);
    }), runs);
  });

  it('fits stand at the top of the likelihood: no step off them is better', () => {
    fc.assert(fc.property(forces(3), censored, (broken, atLeast) => {
      const fit = fitWeibull({ broken, atLeast });
      const at = (shape: number, size: number): number =>
        broken.reduce((sum, v) => sum + Math.log(shape / v) + shape * Math.log(v / size) - (v / size) ** shape, 0) -
        atLeast.reduce((sum, v) => sum + (v / size) ** shape, 0);
      near(at(fit.shape, fit.scale), fit.logLikelihood, 1e-8);
      for (const [ds, dc] of [[1.001, 1], [0.999, 1], [1, 1.0005], [1, 0.9995]] as const) {
        expect(at(fit.shape * ds, fit.scale * dc)).toBeLessThanOrEqual(fit.logLikelihood + 1e-9 * Math.abs(fit.logLikelihood) + 1e-10);
      }
    }), runs);
  });

  it('Peterson\'s bounds enclose the product limit of independent links and never cross', () => {
    fc.assert(fc.property(fc.array(fc.record({ force, mode: fc.constantFrom('a', 'b') }), { minLength: 2, maxLength: 15 }), (pulls: ModePull[]) => {
      const bounds = petersonBounds(pulls, 'a');
      for (const { share: s, widened } of bounds) {
        expect(s.low).toBeLessThanOrEqual(s.high);
        expect(widened.low).toBeLessThanOrEqual(s.low);
        expect(widened.high).toBeGreaterThanOrEqual(s.high);
      }
      for (const link of linkStrengths(pulls).filter(({ mode }) => mode === 'a')) {
        for (const step of link.productLimit) {
          const bound = bounds.find((each) => each.force === step.force)!;
          expect(1 - step.above).toBeGreaterThanOrEqual(bound.share.low - 1e-12);
          expect(1 - step.above).toBeLessThanOrEqual(bound.share.high + 1e-12);
        }
      }
      assertNumbers(bounds);
    }), runs);
  });
});

describe('reading', () => {
  it('any text at all is a table or a stop with a place', () => {
    fc.assert(fc.property(fc.string({ unit: fc.constantFrom(...'0123456789.,;\t\n\r"\' -+>#kNxa()\u2009'.split('')), maxLength: 60 }), (text) => {
      const reading = readTable(text);
      if ('stop' in reading) {
        expect(reading.stop.row).toBeGreaterThanOrEqual(1);
        expect(reading.stop.column).toBeGreaterThanOrEqual(1);
      } else {
        assertNumbers(reading.table);
        const lengths = new Set(reading.table.columns.map((column) => column.values.length));
        expect(lengths.size).toBe(1);
      }
    }), { numRuns: 5000 });
  });
});
