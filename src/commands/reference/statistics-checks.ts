/** Checks of the statistics of breaks against entries of tests/reference/published-checks.json, by family. */
import {
  andersonDarlingLognormal,
  andersonDarlingNormal,
  andersonDarlingWeibull,
  normalLevel,
  weibullLevel,
} from '../../break-tests/anderson-darling.ts';
import { linkStrengths, type ModePull } from '../../break-tests/competing-modes.ts';
import { dixon, dixonCritical } from '../../break-tests/dixon.ts';
import { fitLognormal } from '../../break-tests/fit-lognormal.ts';
import { fitWeibull } from '../../break-tests/fit-weibull.ts';
import { grubbs, grubbsCritical } from '../../break-tests/grubbs.ts';
import type { Interval } from '../../break-tests/checks.ts';
import { meanInterval, nextPullFactor, sdInterval } from '../../break-tests/intervals.ts';
import { mannWhitney } from '../../break-tests/mann-whitney.ts';
import { jeffreysInterval, shareInterval, wilsonInterval } from '../../break-tests/mode-shares.ts';
import { orderConfidence, pullsForOrderBound } from '../../break-tests/order-bound.ts';
import {
  type DifferencePlan,
  powerOfDifference,
  pullsByNormalFormula,
  pullsByStudentFormula,
  pullsForDifference,
} from '../../break-tests/plan-difference.ts';
import { shapiroWilk } from '../../break-tests/shapiro-wilk.ts';
import { lowerToleranceBound } from '../../break-tests/tolerance-bound.ts';
import { welch } from '../../break-tests/welch.ts';
import { meanOfValues, sampleSd } from '../../numerics/descriptive.ts';
import { gammaFunction } from '../../numerics/log-gamma.ts';
import { natrellaFactor } from '../../numerics/natrella-factor.ts';
import { tCdf, tQuantile } from '../../numerics/student-t.ts';
import { oneSidedToleranceFactor } from '../../numerics/tolerance-factor.ts';
import { howeFactor, twoSidedToleranceFactor, waldWolfowitzFactor } from '../../numerics/two-sided-tolerance-factor.ts';
import { unbiasingConstant } from '../../numerics/unbiasing.ts';
import { at, type Entry, type EntryCheck, halfLastDigit, listAt, numberAt } from './entry.ts';

type Family = (check: EntryCheck, entry: Entry) => boolean;

/** Both ends against a printed pair. */
function ends(check: EntryCheck, what: string, got: Interval, expected: unknown, allowed?: number): void {
  for (const [i, end] of [got.low, got.high].entries()) {
    const name = `${what} ${i === 0 ? 'low' : 'high'}`;
    if (allowed === undefined) check.compare(name, end, at(expected, i));
    else check.within(name, end, at(expected, i), allowed);
  }
}

/** Half a unit of the last printed digit, with a little room for the rounding of the comparison itself. */
function printed(check: EntryCheck, what: string, got: number, expected: unknown): void {
  if (typeof expected === 'number') check.within(what, got, expected, 1.001 * halfLastDigit(expected));
}

// ------------------------------------------------------------------ tolerance factors and bounds

function checkTwoSided(check: EntryCheck, inputs: unknown, expected: unknown): boolean {
  const confidence = numberAt(inputs, 'gamma');
  listAt(inputs, 'n').forEach((n, i) => {
    const exact = twoSidedToleranceFactor(n, 0.95, confidence);
    check.compare(`exact p95 at n ${n}`, exact, at(expected, 'exact_p95', i), { rel: 'exact_rel' });
    const ninety = twoSidedToleranceFactor(n, 0.9, confidence);
    check.compare(`exact p90 at n ${n}`, ninety, at(expected, 'exact_p90', i), { rel: 'exact_rel' });
    const howe = howeFactor(n, 0.95, confidence);
    check.within(`Howe p95 at n ${n}`, howe, at(expected, 'howe_p95', i), 1e-10 * howe);
    const row = at(expected, 'published_2dp_p90_p95_p99', String(n));
    if (row === undefined) return;
    for (const [j, coverage] of [0.9, 0.95, 0.99].entries()) {
      const got = twoSidedToleranceFactor(n, coverage, confidence);
      check.compare(`printed ${coverage} at n ${n}`, got, at(row, j), { abs: 'published_abs' });
    }
  });
  return true;
}

function checkNatrella(check: EntryCheck, inputs: unknown, expected: unknown): boolean {
  const found = natrellaFactor(numberAt(inputs, 'n'), numberAt(inputs, 'p'), numberAt(inputs, 'gamma'));
  for (const key of ['a', 'b', 'k'] as const) check.compare(key, found[key], at(expected, key), { rel: 'computed_rel' });
  check.compare('k_published', found.k, at(expected, 'k_published'), { abs: 'k_abs' });
  const mean = numberAt(inputs, 'mean');
  const sd = numberAt(inputs, 'sd');
  check.compare('lower_limit', mean - found.k * sd, at(expected, 'lower_limit'), { rel: 'computed_rel' });
  check.compare('upper_limit', mean + found.k * sd, at(expected, 'upper_limit'), { rel: 'computed_rel' });
  return true;
}

function checkOrder(check: EntryCheck, inputs: unknown, expected: unknown): boolean {
  const confidence = numberAt(inputs, 'gamma');
  listAt(inputs, 'rank').forEach((rank, i) => {
    for (const [key, coverage] of [['min_n_p99', 0.99], ['min_n_p90', 0.9]] as const) {
      const n = pullsForOrderBound(rank, { coverage, confidence });
      check.within(`${key} rank ${rank}`, n, at(expected, key, i), 1e-12);
      // One pull fewer must not do.
      const short = n > rank ? orderConfidence(n - 1, rank, coverage) : 0;
      check.within(`${key} rank ${rank}, one fewer is too few`, Number(short < confidence), 1, 1e-12);
    }
  });
  const ninetyFive = pullsForOrderBound(1, { coverage: 0.95, confidence });
  check.within('min_n_p95_rank1', ninetyFive, at(expected, 'min_n_p95_rank1'), 1e-12);
  return true;
}

/** Tolerance factors other than the exact one-sided ones. */
export function checkOtherTolerance(check: EntryCheck, entry: Entry): boolean {
  const { inputs, expected } = entry;
  if (at(expected, 'min_n_p99') !== undefined) return checkOrder(check, inputs, expected);
  if (at(expected, 'exact_p95') !== undefined) return checkTwoSided(check, inputs, expected);
  if (at(expected, 'k_published') !== undefined && at(expected, 'a') !== undefined) {
    return checkNatrella(check, inputs, expected);
  }
  if (at(expected, 'k_howe') !== undefined) {
    const [n, p, g] = [numberAt(inputs, 'n'), numberAt(inputs, 'p'), numberAt(inputs, 'gamma')];
    const howe = howeFactor(n, p, g);
    check.compare('k_howe', howe, at(expected, 'k_howe'), { abs: 'abs' });
    check.compare('k_exact', twoSidedToleranceFactor(n, p, g), at(expected, 'k_exact'), { abs: 'abs' });
    const half = howe * numberAt(inputs, 'sd');
    check.compare('lower_howe', numberAt(inputs, 'mean') - half, at(expected, 'lower_howe'), { abs: 'limits_abs' });
    check.compare('upper_howe', numberAt(inputs, 'mean') + half, at(expected, 'upper_howe'), { abs: 'limits_abs' });
    return true;
  }
  if (!Array.isArray(inputs) || at(expected, 'k') === undefined) return false;
  inputs.forEach((row: unknown, i) => {
    const [n, p, g] = [numberAt(row, 'n'), numberAt(row, 'p'), numberAt(row, 'gamma')];
    const method = at(row, 'method');
    const factors = {
      one: () => (method === 'Natrella' ? natrellaFactor(n, p, g).k : oneSidedToleranceFactor(n, p, g)),
      two: () => (method === 'Wald-Wolfowitz' ? waldWolfowitzFactor(n, p, g) : twoSidedToleranceFactor(n, p, g)),
    };
    const got = at(row, 'sided') === 1 ? factors.one() : factors.two();
    check.within(`k[${i}]`, got, at(expected, 'k', i), numberAt(check.tolerance, 'abs', i));
  });
  return true;
}

const checkBasis: Family = (check, { inputs, expected }) => {
  const data = listAt(inputs, 'data');
  check.within('mean', meanOfValues(data), at(expected, 'mean'), 1e-9);
  check.within('sd', sampleSd(data), at(expected, 'sd'), 1e-10);
  for (const family of ['normal', 'lognormal'] as const) {
    for (const [letter, coverage] of [['B', 0.9], ['A', 0.99]] as const) {
      const key = `${family}_${letter}`;
      const { bound } = lowerToleranceBound(data, { coverage, confidence: 0.95 }, family);
      check.within(key, bound, at(expected, key), 1e-8);
      check.compare(`published ${key}`, bound, at(expected, 'published', key), { rel: 'published_rel' });
    }
  }
  return true;
};

// ------------------------------------------------------------------ outliers

const checkGrubbs: Family = (check, { inputs, expected }) => {
  const alpha = numberAt(inputs, 'alpha');
  if (at(inputs, 'data') !== undefined) {
    const found = grubbs(listAt(inputs, 'data'), 'either', alpha);
    const oneSided = grubbs(listAt(inputs, 'data'), 'highest', alpha);
    check.within('G', found.g, at(expected, 'G'), 1e-10);
    check.within('crit_one_sided', oneSided.critical, at(expected, 'crit_one_sided'), 1e-10);
    check.within('crit_two_sided', found.critical, at(expected, 'crit_two_sided'), 1e-10);
    check.compare('published G', found.g, at(expected, 'published', 'G'));
    check.compare('published one-sided', oneSided.critical, at(expected, 'published', 'crit_one_sided'));
    check.compare('published two-sided', found.critical, at(expected, 'published', 'crit_two_sided'));
    check.within('outlier', found.value, at(expected, 'outlier'), 1e-12);
    return true;
  }
  listAt(inputs, 'n').forEach((n, i) => {
    const two = grubbsCritical(n, alpha, 'either');
    const one = grubbsCritical(n, alpha, 'lowest');
    check.within(`two-sided at n ${n}`, two, at(expected, 'two_sided_exact', i), 1e-10);
    check.compare(`published two-sided at n ${n}`, two, at(expected, 'published_mnr', i));
    check.within(`one-sided at n ${n}`, one, at(expected, 'one_sided_exact', i), 1e-10);
    check.compare(`published one-sided at n ${n}`, one, at(expected, 'published_one_sided', String(n)));
  });
  return true;
};

const checkDixon: Family = (check, { inputs, expected }) => {
  const data = listAt(inputs, 'data');
  const at90 = dixon(data, 0.1).find((each) => each.end === 'lowest');
  const at95 = dixon(data, 0.05).find((each) => each.end === 'lowest');
  if (!at90 || !at95) return false;
  check.compare('Q_low', at90.q, at(expected, 'Q_low'), { abs: 'Q_abs' });
  check.within('crit_90', at90.critical, at(expected, 'crit_90'), 1e-12);
  check.within('crit_95', at95.critical, at(expected, 'crit_95'), 1e-12);
  check.within('reject_90', Number(at90.beyond), Number(at(expected, 'reject_90')), 1e-12);
  check.within('reject_95', Number(at95.beyond), Number(at(expected, 'reject_95')), 1e-12);
  for (const [key, alpha] of [['table_90_n3_10', 0.1], ['table_95_n3_10', 0.05], ['table_99_n3_10', 0.01]] as const) {
    for (let n = 3; n <= 10; n++) check.within(`${key} n ${n}`, dixonCritical(n, alpha), at(expected, key, n - 3), 1e-12);
  }
  return true;
};

// ------------------------------------------------------------------ intervals

const checkIntervals: Family = (check, entry) => {
  const { inputs, expected } = entry;
  const n = numberAt(inputs, 'n');
  const sd = numberAt(inputs, 'sd');
  if (at(expected, 'multipliers_95_small_n') !== undefined) {
    listAt(inputs, 'conf').forEach((level, i) => {
      const found = sdInterval(sd, n, level);
      check.compare(`lower at ${level}`, found.low, at(expected, 'lower', i));
      check.compare(`upper at ${level}`, found.high, at(expected, 'upper', i));
    });
    for (const small of Object.keys(at(expected, 'multipliers_95_small_n') as object)) {
      const found = sdInterval(1, Number(small));
      const row = at(expected, 'multipliers_95_small_n', small);
      check.compare(`multiplier at n ${small} low`, found.low, at(row, 0), { rel: 'multipliers_rel' });
      check.compare(`multiplier at n ${small} high`, found.high, at(row, 1), { rel: 'multipliers_rel' });
    }
    return true;
  }
  const mean = numberAt(inputs, 'mean');
  if (at(expected, 'ci95') !== undefined) {
    ends(check, 'ci95', meanInterval(mean, sd, n, 0.95), at(expected, 'ci95'));
    ends(check, 'ci99', meanInterval(mean, sd, n, 0.99), at(expected, 'ci99'));
    return true;
  }
  listAt(inputs, 'conf').forEach((level, i) => {
    const found = meanInterval(mean, sd, n, level);
    check.compare(`lower at ${level}`, found.low, at(expected, 'lower', i));
    check.compare(`upper at ${level}`, found.high, at(expected, 'upper', i));
    check.within(`t at ${level}`, tQuantile(0.5 * (1 + level), n - 1), at(expected, 't', i), 5.01e-4);
  });
  const t = (mean - 38.9) / (sd / Math.sqrt(n));
  check.compare('one_sample_t_vs_38.9', t, at(expected, 'one_sample_t_vs_38.9'));
  check.within('p_two_sided', 2 * tCdf(-Math.abs(t), n - 1), at(expected, 'p_two_sided'), 5.01e-5);
  return true;
};

const checkPrediction: Family = (check, { inputs, expected }) => {
  const level = numberAt(inputs, 'conf');
  listAt(inputs, 'n').forEach((n, i) => {
    check.compare(`K at n ${n}`, nextPullFactor(n, level, 'two'), at(expected, 'K', i));
    check.compare(`one-sided K at n ${n}`, nextPullFactor(n, level, 'one'), at(expected, 'lower_one_sided_K', i));
  });
  printed(check, 'published_n20', nextPullFactor(20, level, 'two'), at(expected, 'published_n20'));
  return true;
};

const checkC4: Family = (check, { inputs, expected }) => {
  listAt(inputs, 'n').forEach((n, i) => {
    check.within(`c4 at n ${n}`, unbiasingConstant(n), at(expected, 'c4', i), 1e-12);
    check.compare(`tabulated at n ${n}`, unbiasingConstant(n), at(expected, 'tabulated', i));
  });
  return true;
};

// ------------------------------------------------------------------ two series

const checkWelch: Family = (check, { inputs, expected }) => {
  const found = welch(listAt(inputs, 'a'), listAt(inputs, 'b'));
  for (const key of ['t', 'df', 'p'] as const) {
    check.compare(key, found[key], at(expected, key));
    printed(check, `published ${key}`, found[key], at(expected, 'published', key));
  }
  ends(check, 'ci95', found.interval, at(expected, 'ci95'));
  printed(check, 'published ci95 low', found.interval.low, at(expected, 'published', 'ci95', 0));
  printed(check, 'published ci95 high', found.interval.high, at(expected, 'published', 'ci95', 1));
  return true;
};

const checkMannWhitney: Family = (check, { inputs, expected }) => {
  if (at(inputs, 'a') === undefined) {
    for (const name of Object.keys(inputs as object)) {
      const found = mannWhitney(listAt(inputs, name, 'a'), listAt(inputs, name, 'b'));
      check.compare(`${name} U_a`, found.u, at(expected, name, 'U_a'));
      check.compare(`${name} p`, found.exact?.twoSided ?? Infinity, at(expected, name, 'p_two_sided'));
    }
    return true;
  }
  const found = mannWhitney(listAt(inputs, 'a'), listAt(inputs, 'b'));
  check.compare('U', found.u, at(expected, 'W_equals_U_of_a'), { rel: 'rel' });
  check.compare('p_greater_exact', found.exact?.greater ?? Infinity, at(expected, 'p_greater_exact'), { rel: 'rel' });
  check.compare('p_two_sided_exact', found.exact?.twoSided ?? Infinity, at(expected, 'p_two_sided_exact'), { rel: 'rel' });
  check.compare('HL', found.shift, at(expected, 'HL'), { rel: 'rel' });
  check.compare('ci95 low', found.shiftInterval?.low ?? Infinity, at(expected, 'ci95', 0), { rel: 'rel' });
  check.compare('ci95 high', found.shiftInterval?.high ?? Infinity, at(expected, 'ci95', 1), { rel: 'rel' });
  check.compare('published W', found.u, at(expected, 'published', 'W'), { rel: 'rel' });
  printed(check, 'published HL', found.shift, at(expected, 'published', 'HL'));
  printed(check, 'published ci95 low', found.shiftInterval?.low ?? Infinity, at(expected, 'published', 'ci95', 0));
  printed(check, 'published ci95 high', found.shiftInterval?.high ?? Infinity, at(expected, 'published', 'ci95', 1));
  check.compare('published p_greater', found.exact?.greater ?? Infinity, at(expected, 'published', 'p_greater'), { abs: 'published_abs' });
  check.compare('published p_two_sided', found.exact?.twoSided ?? Infinity, at(expected, 'published', 'p_two_sided'), { abs: 'published_abs' });
  return true;
};

// ------------------------------------------------------------------ fit

const checkShapiro: Family = (check, { inputs, expected }) => {
  const found = shapiroWilk(listAt(inputs, 'data'));
  check.compare('W', found.w, at(expected, 'W'), { abs: 'W_abs' });
  check.compare('p', found.p, at(expected, 'p'), { rel: 'p_rel' });
  return true;
};

const checkAnderson: Family = (check, entry) => {
  const { inputs, expected } = entry;
  if (at(inputs, 'levels') !== undefined) {
    // The tables give levels to two or three decimals: the formulas must come to them at the printed A^2.
    listAt(inputs, 'levels').forEach((level, i) => {
      check.within(`normal at ${level}`, normalLevel(numberAt(expected, 'normal', i)), level, 0.02 * level + 0.0005);
    });
    const key = 'weibull_A2*(1+0.2/sqrt n)_levels_.25_.10_.05_.025_.01';
    for (const [i, level] of [0.25, 0.1, 0.05, 0.025, 0.01].entries()) {
      check.within(`Weibull at ${level}`, weibullLevel(numberAt(expected, key, i)), level, 0.02 * level + 0.0005);
    }
    return true;
  }
  const data = listAt(inputs, 'data');
  const found = {
    normal: andersonDarlingNormal(data),
    lognormal: andersonDarlingLognormal(data),
    weibull: andersonDarlingWeibull(data),
  };
  for (const [name, each] of Object.entries(found)) {
    // Where the entry states no tolerance for A^2, twelve figures are printed.
    check.within(`A2_${name}`, each.a2, at(expected, `A2_${name}`), name === 'weibull' ? 1e-8 : 1e-10);
    check.within(`OSL_${name}`, each.significance ?? Infinity, at(expected, `OSL_${name}`), 1e-8);
    const published = at(expected, 'published_OSL', name) ?? (name === 'normal' ? at(expected, 'published_OSL') : undefined);
    if (typeof published === 'number') check.compare(`published OSL ${name}`, each.significance ?? Infinity, published, { abs: 'OSL_abs' });
  }
  check.within('p_stephens_normal', found.normal.p ?? Infinity, at(expected, 'p_stephens_normal'), 1e-10);
  if (at(expected, 'shapiro_W') !== undefined) {
    const other = shapiroWilk(data);
    check.within('shapiro_W', other.w, at(expected, 'shapiro_W'), 1e-8);
    check.within('shapiro_p', other.p, at(expected, 'shapiro_p'), 1e-5 * other.p);
  }
  return true;
};

/** Weibull and lognormal fits to pulls censored at one force. */
export function checkWeibullFit(check: EntryCheck, { inputs, expected }: Entry): boolean {
  const count = at(inputs, 'n_censored') === undefined ? 0 : numberAt(inputs, 'n_censored');
  const pulls = {
    broken: listAt(inputs, 'failures'),
    atLeast: Array.from({ length: count }, () => numberAt(inputs, 'censored_at')),
  };
  const weibull = fitWeibull(pulls);
  const lognormal = fitLognormal(pulls);
  const first = gammaFunction(1 + 1 / weibull.shape);
  const found: Record<string, number> = {
    eta: weibull.scale,
    beta: weibull.shape,
    loglik: weibull.logLikelihood,
    AIC: 4 - 2 * weibull.logLikelihood,
    mean: weibull.scale * first,
    sd: weibull.scale * Math.sqrt(gammaFunction(1 + 2 / weibull.shape) - first * first),
  };
  for (const [key, got] of Object.entries(found)) {
    check.compare(key, got, at(expected, key));
    printed(check, `published ${key}`, got, at(expected, 'published', key));
  }
  printed(check, 'published minus_loglik', -weibull.logLikelihood, at(expected, 'published', 'minus_loglik'));
  const other = {
    mu: lognormal.muLog,
    sigma: lognormal.sigmaLog,
    loglik: lognormal.logLikelihood,
    AIC: 4 - 2 * lognormal.logLikelihood,
  };
  for (const [key, got] of Object.entries(other)) check.compare(`lognormal ${key}`, got, at(expected, 'lognormal', key));
  printed(check, 'published lognormal_AIC', other.AIC, at(expected, 'published', 'lognormal_AIC'));
  return true;
}

const checkCompeting: Family = (check, { inputs, expected }) => {
  const modes = at(inputs, 'mode');
  if (!Array.isArray(modes)) return false;
  const pulls: ModePull[] = listAt(inputs, 'strength').map((force, i) => {
    const name = at(inputs, 'modes', String(modes[i]));
    return { force, mode: typeof name === 'string' ? name : String(modes[i]) };
  });
  for (const link of linkStrengths(pulls)) {
    const printedFits = at(expected, link.mode);
    const { normal, lognormal, weibull } = link;
    if (!normal || !lognormal || !weibull) throw new Error(`${link.mode} has no fit.`);
    check.compare(`${link.mode} mean`, normal.mean, at(printedFits, 'normal', 'mean'));
    check.compare(`${link.mode} sd`, normal.sd, at(printedFits, 'normal', 'sd'));
    check.compare(`${link.mode} normal loglik`, normal.logLikelihood, at(printedFits, 'normal', 'loglik'));
    check.compare(`${link.mode} mu_log`, lognormal.muLog, at(printedFits, 'lognormal', 'mu_log'));
    check.compare(`${link.mode} sigma_log`, lognormal.sigmaLog, at(printedFits, 'lognormal', 'sigma_log'));
    check.compare(`${link.mode} lognormal loglik`, lognormal.logLikelihood, at(printedFits, 'lognormal', 'loglik'));
    check.compare(`${link.mode} shape`, weibull.shape, at(printedFits, 'weibull', 'shape'));
    check.compare(`${link.mode} scale`, weibull.scale, at(printedFits, 'weibull', 'scale'));
    check.compare(`${link.mode} weibull loglik`, weibull.logLikelihood, at(printedFits, 'weibull', 'loglik'));
    link.productLimit.forEach((step, i) => {
      check.within(`${link.mode} product limit force ${i}`, step.force, at(printedFits, 'product_limit', i, 0), 1e-12);
      check.within(`${link.mode} product limit ${i}`, step.above, at(printedFits, 'product_limit', i, 1), 5.01e-11);
    });
  }
  return true;
};

// ------------------------------------------------------------------ shares and sample sizes

const checkShares: Family = (check, { inputs, expected }) => {
  if (Array.isArray(inputs)) {
    inputs.forEach((row: unknown, i) => {
      const [x, n, level] = [numberAt(row, 'x'), numberAt(row, 'n'), numberAt(row, 'conf')];
      ends(check, `exact ${x}/${n}`, shareInterval(x, n, level), at(expected, i, 'clopper_pearson'));
      ends(check, `wilson ${x}/${n}`, wilsonInterval(x, n, level), at(expected, i, 'wilson'));
    });
    return true;
  }
  const [x, n] = [numberAt(inputs, 'x'), numberAt(inputs, 'n')];
  listAt(inputs, 'conf').forEach((level, i) => {
    // Printed to five decimals: half a unit of the last, as the entry says.
    ends(check, `exact at ${level}`, shareInterval(x, n, level), at(expected, 'clopper_pearson', i), 5.01e-6);
    ends(check, `jeffreys at ${level}`, jeffreysInterval(x, n, level), at(expected, 'jeffreys', i), 5.01e-6);
  });
  return true;
};

function planOf(row: unknown): DifferencePlan {
  return {
    difference: numberAt(row, 'delta'),
    sd: numberAt(row, 'sd'),
    alpha: numberAt(row, 'alpha'),
    sided: at(row, 'alternative') === 'one.sided' ? 1 : 2,
    series: at(row, 'type') === 'one.sample' ? 1 : 2,
  };
}

const checkSampleSize: Family = (check, { inputs, expected }) => {
  if (at(expected, 'n_one_sided') !== undefined) {
    const plan = { difference: numberAt(inputs, 'delta'), sd: numberAt(inputs, 'sd') };
    listAt(inputs, 'alpha_equals_beta').forEach((alpha, i) => {
      for (const [key, sided] of [['n_one_sided', 1], ['n_two_sided', 2]] as const) {
        const n = pullsByStudentFormula(1 - alpha, { ...plan, alpha, sided });
        check.within(`${key} at ${alpha}`, n, at(expected, key, i), 1e-12);
      }
    });
    return true;
  }
  if (!Array.isArray(inputs)) return false;
  inputs.forEach((row: unknown, i) => {
    if (at(row, 'delta_over_sigma') !== undefined) {
      const sided = at(row, 'two_sided') === true ? 2 : 1;
      const plan = { difference: numberAt(row, 'delta_over_sigma'), sd: 1, alpha: numberAt(row, 'alpha'), sided } as const;
      check.compare(`N[${i}]`, pullsByNormalFormula(1 - numberAt(row, 'beta'), plan), at(expected, i));
      return;
    }
    if (at(row, 'n') !== undefined) {
      const power = powerOfDifference(numberAt(row, 'n'), planOf(row));
      check.compare(`power[${i}]`, power, at(expected, i, 'power'), { abs: 'power_abs' });
      return;
    }
    const { exact } = pullsForDifference(numberAt(row, 'power'), planOf(row));
    const key = at(row, 'type') === 'one.sample' ? 'n' : 'n_per_group';
    check.compare(`n[${i}]`, exact, at(expected, i, key), { rel: 'n_rel' });
  });
  return true;
};

/** Families of the statistics of breaks, by the first part of their ids. */
export const statisticsFamilies: Readonly<Record<string, Family>> = {
  basis: checkBasis,
  grubbs: checkGrubbs,
  dixon: checkDixon,
  ci: checkIntervals,
  pi: checkPrediction,
  c4: checkC4,
  welch: checkWelch,
  mw: checkMannWhitney,
  sw: checkShapiro,
  ad: checkAnderson,
  binom: checkShares,
  n: checkSampleSize,
  competing: checkCompeting,
};
