/** Whatever an argument may not be is refused by its name: below, at and above the ends of its range, and NaN. */
import { describe, expect, it } from 'vitest';
import { andersonDarlingLognormal, andersonDarlingNormal, andersonDarlingWeibull } from '../../../src/break-tests/anderson-darling.ts';
import { asObservation, ownRig } from '../../../src/break-tests/as-evidence.ts';
import { chanceInterval, chanceOfBeating } from '../../../src/break-tests/chance-of-beating.ts';
import { linkStrengths, petersonBounds, petersonQuantile } from '../../../src/break-tests/competing-modes.ts';
import { dixon, dixonCritical } from '../../../src/break-tests/dixon.ts';
import { fitLognormal, lognormalQuantileInterval, sigmaLogInterval } from '../../../src/break-tests/fit-lognormal.ts';
import { fitNormal, normalQuantileInterval, normalSdInterval } from '../../../src/break-tests/fit-normal.ts';
import { fitWeibull, weibullFitQuantile, weibullQuantileInterval, weibullShapeInterval } from '../../../src/break-tests/fit-weibull.ts';
import { boundWithMore } from '../../../src/break-tests/further-pulls.ts';
import { grubbs, grubbsCritical } from '../../../src/break-tests/grubbs.ts';
import { cvInterval, meanInterval, nextPull, nextPullFactor, sdInterval } from '../../../src/break-tests/intervals.ts';
import { mannWhitney } from '../../../src/break-tests/mann-whitney.ts';
import { jeffreysInterval, modeShares, shareInterval, wilsonInterval } from '../../../src/break-tests/mode-shares.ts';
import { nextPulls } from '../../../src/break-tests/next-pulls.ts';
import { orderBound, orderConfidence, pullsForOrderBound } from '../../../src/break-tests/order-bound.ts';
import { expectedBound, pullsForBound, whatFurtherPullsBuy } from '../../../src/break-tests/plan-bound.ts';
import { powerOfDifference, pullsByNormalFormula, pullsByStudentFormula, pullsForDifference } from '../../../src/break-tests/plan-difference.ts';
import { expectedShareWidth, pullsForShare } from '../../../src/break-tests/plan-share.ts';
import { planBound, planDifference, planShare } from '../../../src/break-tests/plan-steps.ts';
import { productLimit } from '../../../src/break-tests/product-limit.ts';
import { fiellerRatio, ratioOfGeometricMeans } from '../../../src/break-tests/ratio-of-means.ts';
import { shapiroWilk } from '../../../src/break-tests/shapiro-wilk.ts';
import { summarise } from '../../../src/break-tests/summary.ts';
import { promiseOfMeanLess } from '../../../src/break-tests/three-sigma.ts';
import { lowerToleranceBound, toleranceInterval } from '../../../src/break-tests/tolerance-bound.ts';
import { traceOutline } from '../../../src/break-tests/trace-outline.ts';
import { readTrace } from '../../../src/break-tests/trace.ts';
import { welch } from '../../../src/break-tests/welch.ts';

const share = [0, -0.1, 1, 1.1, Number.NaN];
const positive = [0, -1, Infinity, Number.NaN];
const from = (least: number): number[] => [least - 1, least + 0.5, Infinity, Number.NaN];
const five = [20, 21.5, 19.2, 22, 20.4];
const pulls = { broken: [20, 21, 19], atLeast: [22] };
const plan = { difference: 2, sd: 1 };
const pair = { coverage: 0.9, confidence: 0.95 };

/** Name of the argument, what calls with a value of it, values that it takes, and values that it does not. */
type Range = readonly [name: string, call: (value: number) => unknown, taken: readonly number[], refused: readonly number[]];

const NUMBERS: Readonly<Record<string, readonly Range[]>> = {
  intervals: [
    ['n', (n) => meanInterval(20, 1, n), [2], from(2)], ['sd', (sd) => meanInterval(20, sd, 3), [1], positive], ['level', (level) => meanInterval(20, 1, 3, level), [0.5], share],
    ['n', (n) => sdInterval(1, n), [2], from(2)], ['sd', (sd) => sdInterval(sd, 3), [1], positive], ['level', (level) => sdInterval(1, 3, level), [0.5], share],
    ['n', (n) => cvInterval(0.1, n), [2], from(2)], ['cv', (cv) => cvInterval(cv, 3), [0.1], positive], ['level', (level) => cvInterval(0.1, 3, level), [0.5], share],
    ['n', (n) => nextPull(20, 1, n), [2], from(2)], ['sd', (sd) => nextPull(20, sd, 3), [1], positive], ['level', (level) => nextPullFactor(3, level, 'one'), [0.5], share],
  ],
  'shares of modes': [shareInterval, wilsonInterval, jeffreysInterval].flatMap((interval): Range[] => [
    ['n', (n) => interval(0, n), [1], from(1)], ['count', (count) => interval(count, 3), [0, 3], [-1, 1.5, 4]], ['level', (level) => interval(1, 3, level), [0.5], share],
  ]),
  'bounds from the smallest pulls': [
    ['n', (n) => orderConfidence(n, 1, 0.9), [1], from(1)], ['rank', (rank) => orderConfidence(3, rank, 0.9), [1, 3], [0, 1.5, 4]], ['coverage', (coverage) => orderConfidence(3, 1, coverage), [0.5], share],
    ['rank', (rank) => pullsForOrderBound(rank, pair), [1], from(1)], ['confidence', (confidence) => pullsForOrderBound(1, { ...pair, confidence }), [0.5], share],
    ['coverage', (coverage) => orderBound(five, { ...pair, coverage }), [0.5], share],
  ],
  'tolerance bounds': [
    ['coverage', (coverage) => lowerToleranceBound(five, { ...pair, coverage }), [0.5], share], ['confidence', (confidence) => lowerToleranceBound(five, { ...pair, confidence }), [0.5], share],
    ['coverage', (coverage) => toleranceInterval(five, { ...pair, coverage }), [0.5], share], ['confidence', (confidence) => toleranceInterval(five, { ...pair, confidence }), [0.5], share],
  ],
  'mean - k sd': [
    ['n', (n) => promiseOfMeanLess(n), [2], from(2)], ['k', (k) => promiseOfMeanLess(3, { k }), [0, -1], [Infinity, Number.NaN]],
    ['confidence', (confidence) => promiseOfMeanLess(3, { confidence }), [0.5], share], ['wantedCoverage', (wantedCoverage) => promiseOfMeanLess(3, { wantedCoverage }), [0.5], share],
  ],
  plans: [
    ['n', (n) => expectedBound(n, pair, 0.1), [2], from(2)], ['cv', (cv) => expectedBound(3, pair, cv), [0.1], positive], ['coverage', (coverage) => expectedBound(3, { ...pair, coverage }, 0.1), [0.5], share],
    ['shortfall', (shortfall) => pullsForBound(pair, 0.1, shortfall), [0.1], [...positive, 1e-9]], ['more', (more) => whatFurtherPullsBuy(3, more, pair, 0.1), [0, 2], from(0)],
    ['n', (n) => powerOfDifference(n, plan), [1.5, 2], [1, 0, Infinity, Number.NaN]],
    ...[powerOfDifference, pullsForDifference, pullsByNormalFormula, pullsByStudentFormula].flatMap((each): Range[] => {
      const first = each === powerOfDifference ? 5 : 0.9;
      return [
        ['difference', (difference) => each(first, { ...plan, difference }), [2], positive], ['sd', (sd) => each(first, { ...plan, sd }), [1], positive], ['alpha', (alpha) => each(first, { ...plan, alpha }), [0.5], share],
        ...(each === powerOfDifference ? [] : [['power', (power: number) => each(power, { ...plan, alpha: 0.2 }), [0.5], share] as const]),
      ];
    }),
    ['power', (power) => pullsForDifference(power, plan), [0.06], [0.05, 0.04]],
    ['n', (n) => expectedShareWidth(n, 0.5), [1], from(1)], ['share', (p) => expectedShareWidth(3, p), [0.5], share], ['level', (level) => expectedShareWidth(3, 0.5, level), [0.5], share],
    ['width', (width) => pullsForShare(0.5, width, 0.5), [0.4], [...share, 0.001]],
  ],
  'steps of plans': [
    ['shortfall', (shortfall) => planBound(pair, 0.1, shortfall), [0.1], positive], ['power', (power) => planDifference(0.1, 0.1, power), [0.06], [...share, 0.05]],
    ['share', (p) => planShare(p, null), [0.5], share], ['width', (width) => planShare(0.5, width), [0.5], share],
  ],
  'further and next pulls': [
    ['more', (more) => boundWithMore(five, more, pair), [0, 2], from(0)], ['coverage', (coverage) => boundWithMore(five, 1, { ...pair, coverage }), [0.5], share], ['confidence', (confidence) => boundWithMore(five, 1, { ...pair, confidence }), [0.5], share],
    ['count', (count) => nextPulls({ broken: five }, count), [1], from(1)],
  ],
  'two series': [
    ['level', (level) => welch(five, [1, 2], level), [0.5], share], ['level', (level) => ratioOfGeometricMeans(five, [1, 2], level), [0.5], share], ['level', (level) => fiellerRatio(five, [1, 2], level), [0.5], share],
    ['level', (level) => mannWhitney(five, [1, 2], level), [0.5], share], ['level', (level) => chanceOfBeating(five, [1, 2], level), [0.5], share],
    ['chance', (chance) => chanceInterval(chance, 3, 3), [0, 0.5, 1], [-0.1, 1.1, Number.NaN]],
  ],
  outliers: [
    ['n', (n) => grubbsCritical(n, 0.05, 'either'), [3], from(3)], ['alpha', (alpha) => grubbsCritical(5, alpha, 'lowest'), [0.5], share], ['n', (n) => dixonCritical(n, 0.05), [3, 10], [2, 11, 3.5, Number.NaN]],
  ],
  fits: [
    ['p', (p) => weibullFitQuantile({ shape: 2, scale: 1 }, p), [0.5], share], ['p', (p) => weibullQuantileInterval(pulls, p), [0.5], share], ['level', (level) => weibullQuantileInterval(pulls, 0.1, level), [0.5], share],
    ['level', (level) => weibullShapeInterval(pulls, level), [0.5], share], ['p', (p) => normalQuantileInterval(pulls, p), [0.5], share], ['level', (level) => normalSdInterval(pulls, level), [0.5], share],
    ['p', (p) => lognormalQuantileInterval(pulls, p), [0.5], share], ['level', (level) => sigmaLogInterval(pulls, level), [0.5], share],
    ['p', (p) => petersonQuantile([{ force: 20, mode: 'sling' }], 'sling', p), [0.5], share],
  ],
  'the rest': [
    ['level', (level) => summarise(five, level), [0.5], share], ['stretches', (stretches) => traceOutline([0, 1], [0, 1], stretches), [1], from(1)],
    ['rangeKn', (rangeKn) => readTrace([0, 1, 2], [0, 1, 0], { rangeKn }), [Infinity, 3], [0, -1, Number.NaN]], ['restS', (restS) => readTrace([0, 1, 2], [0, 1, 0], { restS }), [0.1], positive],
    ['dropoutS', (dropoutS) => readTrace([0, 1, 2], [0, 1, 0], { dropoutS }), [0, 1], [-0.1, Infinity, Number.NaN]],
    ['rigToRig', (rigToRig) => ownRig({ name: 'a', brokenKn: five, oneLot: false }, { cv: 0.1 }, rigToRig), [0, 0.1], [-0.1, Infinity, Number.NaN]],
    ['group.cv', (cv) => ownRig({ name: 'a', brokenKn: five, oneLot: false }, { cv }, 0), [0.1], positive],
  ],
};

describe('numbers out of range are refused by name, and those at its ends are taken', () => {
  it.each(Object.entries(NUMBERS))('%s', (_, ranges) => {
    for (const [name, call, taken, refused] of ranges) {
      for (const value of taken) expect(() => call(value), `${name} = ${value}: ${call}`).not.toThrow();
      for (const value of refused) {
        expect(() => call(value), `${name} = ${value}: ${call}`).toThrow(RangeError);
        expect(() => call(value), `${name} = ${value}: ${call}`).toThrow(new RegExp(`^${name} `));
      }
    }
  });
});

/** Name of the list, what calls with one, the fewest that it takes, whether its values must be positive, and must differ. */
const LISTS: readonly (readonly [name: string, call: (values: number[]) => unknown, least: number, positive: boolean, differ: boolean])[] = [
  ['values', andersonDarlingNormal, 3, false, true],
  ['forces', andersonDarlingLognormal, 3, true, false],
  ['forces', andersonDarlingWeibull, 3, true, true],
  ['values', shapiroWilk, 3, false, true],
  ['values', (values) => grubbs(values), 3, false, true],
  ['values', (values) => dixon(values), 3, false, true],
  ['forces', (forces) => summarise(forces), 1, true, false],
  ['forces', (forces) => lowerToleranceBound(forces, pair), 2, true, true],
  ['forces', (forces) => boundWithMore(forces, 1, pair), 2, true, true],
  ['broken', (broken) => nextPulls({ broken }), 5, true, true],
  ['forces', (forces) => toleranceInterval(forces, pair), 2, true, true],
  ['forces', (forces) => orderBound(forces, pair), 1, true, false],
  ['a', (a) => welch(a, [1, 2]), 2, false, false],
  ['b', (b) => welch([1, 2], b), 2, false, false],
  ['a', (a) => ratioOfGeometricMeans(a, [1, 2]), 2, true, false],
  ['b', (b) => ratioOfGeometricMeans([1, 2], b), 2, true, false],
  ['a', (a) => fiellerRatio(a, [1, 2]), 2, true, false],
  ['b', (b) => fiellerRatio([1, 2], b), 2, true, false],
  ['a', (a) => mannWhitney(a, [1, 2]), 1, false, false],
  ['b', (b) => mannWhitney([1, 2], b), 1, false, false],
  ['a', (a) => chanceOfBeating(a, [1, 2]), 1, false, false],
  ['b', (b) => chanceOfBeating([1, 2], b), 1, false, false],
  ['broken', (broken) => fitNormal({ broken }), 2, false, true],
  ['broken', (broken) => fitLognormal({ broken }), 2, true, true],
  ['broken', (broken) => fitWeibull({ broken }), 2, true, true],
  ['broken', (broken) => lognormalQuantileInterval({ broken }, 0.1), 2, true, true],
  ['broken', (broken) => sigmaLogInterval({ broken }), 2, true, true],
  ['broken', (broken) => productLimit({ broken }), 1, true, false],
  ['atLeast', (atLeast) => fitNormal({ broken: five, atLeast }), 0, false, false],
  ['atLeast', (atLeast) => fitWeibull({ broken: five, atLeast }), 0, true, false],
  ['atLeast', (atLeast) => productLimit({ broken: five, atLeast }), 0, true, false],
  ['brokenKn', (brokenKn) => asObservation({ name: 'a', brokenKn, oneLot: false }), 1, true, false],
  ['atLeastKn', (atLeastKn) => asObservation({ name: 'a', brokenKn: five, atLeastKn, oneLot: false }), 0, true, false],
  ['brokenKn', (brokenKn) => ownRig({ name: 'a', brokenKn, oneLot: false }, { cv: 0.1 }, 0), 1, true, false],
  ['atLeastKn', (atLeastKn) => ownRig({ name: 'a', brokenKn: five, atLeastKn, oneLot: false }, { cv: 0.1 }, 0), 0, true, false],
  ['pulls.force', (forces) => linkStrengths(forces.map((force) => ({ force, mode: 'sling' }))), 1, true, false],
  ['pulls.force', (forces) => petersonBounds(forces.map((force) => ({ force, mode: 'sling' })), 'sling'), 1, true, false],
];

describe('lists that are too short, hold what is no force, or do not scatter are refused by name', () => {
  it.each(LISTS.map((list, i) => [`${i + 1}: ${list[0]}`, list] as const))('%s', (_, [name, call, least, mustBePositive, mustDiffer]) => {
    const enough = [20, 22, 21, 19, 23].slice(0, Math.max(1, least));
    expect(() => call(enough)).not.toThrow();
    if (least > 0) expect(() => call(enough.slice(1))).toThrow(`${name} must hold at least ${least} (got ${least - 1}).`);
    for (const value of [Number.NaN, Infinity, -Infinity]) {
      expect(() => call([...enough, value])).toThrow(`${name}[${enough.length}] must be finite (got ${value}).`);
    }
    if (mustBePositive) {
      for (const value of [0, -3]) expect(() => call([...enough, value])).toThrow(`${name}[${enough.length}] must be positive (got ${value}).`);
    } else expect(() => call([...enough, -3, 0])).not.toThrow();
    if (mustDiffer) {
      expect(() => call([7, 7, 7, 7, 7])).toThrow(new RegExp(`^${name} must .*(?:equal|two different)`));
      expect(() => call([7, 7, 7, 7, 7.5])).not.toThrow();
    }
  });

  it('what holds for two lists, or for the list as a whole', () => {
    expect(() => modeShares([])).toThrow('modes.length must be a whole number from 1 upwards (got 0).');
    expect(() => welch([1, 1], [2, 2])).toThrow('a and b must not both consist of equal values.');
    expect(() => fiellerRatio([1, 1], [2, 2])).toThrow('a and b must not both consist of equal values.');
    expect(() => welch([1, 1], [2, 3])).not.toThrow();
    expect(() => shapiroWilk(Array.from({ length: 5000 }, (_, i) => i))).not.toThrow();
    expect(() => petersonBounds([{ force: 20, mode: 'sling' }, { force: 21, mode: null }], 'sling')).toThrow('pulls.mode must name what broke');
    expect(() => traceOutline([0, 1], [0], 1)).toThrow('forceKn must be as long as timeS (got 1 and 2).');
    expect(() => traceOutline([1, 1], [0, 1], 1)).toThrow('timeS must rise.');
  });
});
