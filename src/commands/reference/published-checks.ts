/** Checks against a file in the format of tests/reference/published-checks.json, by the first part of each id. */
import {
  cohensD,
  hedgesFactor,
  hedgesFactorApproximate,
  hedgesG,
  logCoefficientOfVariation,
  logMean,
  logResponseRatio,
  type Effect,
  type Summary,
} from '../../evidence/effect-sizes.ts';
import { heterogeneity, iSquared, type TauMethod, tauSquared, tauSquaredInterval } from '../../evidence/between-studies.ts';
import { meanInterval, pool, predictionInterval } from '../../evidence/random-effects.ts';
import { loadFallConstants } from '../../build/fall-evidence.ts';
import { toModelUnit } from '../../evidence/force.ts';
import { autocorrelation, meanOfValues, sampleSd } from '../../numerics/descriptive.ts';
import { gammaCdf } from '../../numerics/gamma.ts';
import { lognormalPdf, lognormalSurvival } from '../../numerics/lognormal.ts';
import { natrellaFactor } from '../../numerics/natrella-factor.ts';
import { gaussLegendre } from '../../numerics/quadrature.ts';
import { oneSidedToleranceFactor } from '../../numerics/tolerance-factor.ts';
import { minimum, minimumQuantile, underLoad } from '../../strength/independent-chain.ts';
import { smallerOfTwo } from '../../strength/two-normals.ts';
import { at, type Entry, EntryCheck, halfLastDigit, listAt, numberAt } from './entry.ts';
import { fallFamilies } from './fall-checks.ts';
import { checkOtherTolerance, checkWeibullFit, statisticsFamilies } from './statistics-checks.ts';
import { entryFault, Tally } from './tally.ts';

export interface PublishedOptions {
  /** Hold pooling and effect sizes to half a unit of the last digit printed, where that is tighter. */
  readonly toPrintedDigits?: boolean;
}

function summaryAt(value: unknown, mean: string, sd: string, n: string): Summary {
  return { mean: numberAt(value, mean), sd: numberAt(value, sd), n: numberAt(value, n) };
}

// ------------------------------------------------------------------ effect sizes and pooling

function checkEffects(check: EntryCheck, entry: Entry): boolean {
  const { inputs, expected } = entry;
  if (entry.id === 'es-single') {
    const summary = summaryAt(inputs, 'mean', 'sd', 'n');
    const mean = logMean(summary);
    const cv = logCoefficientOfVariation(summary);
    check.compare('log_mean_yi', mean.value, at(expected, 'log_mean_yi'));
    check.compare('log_mean_vi', mean.variance, at(expected, 'log_mean_vi'));
    check.compare('log_CV_yi', cv.value, at(expected, 'log_CV_yi'));
    check.compare('log_CV_vi', cv.variance, at(expected, 'log_CV_vi'));
    // The published pair is printed to four decimals.
    check.within('published MNLN[0]', mean.value, at(expected, 'published', 'MNLN', 0), 5e-5);
    check.within('published MNLN[1]', mean.variance, at(expected, 'published', 'MNLN', 1), 5e-5);
    check.within('published CVLN[0]', cv.value, at(expected, 'published', 'CVLN', 0), 5e-5);
    check.within('published CVLN[1]', cv.variance, at(expected, 'published', 'CVLN', 1), 5e-5);
    return true;
  }
  if (entry.id === 'es-hedges-g') {
    const a = summaryAt(inputs, 'm1', 'sd1', 'n1');
    const b = summaryAt(inputs, 'm2', 'sd2', 'n2');
    const df = a.n + b.n - 2;
    const d = cohensD(a, b);
    const exact = hedgesFactor(df);
    const approximate = hedgesFactorApproximate(df);
    check.compare('d', d, at(expected, 'd'));
    check.compare('J_approx', approximate, at(expected, 'J_approx'));
    check.compare('J_exact', exact, at(expected, 'J_exact'));
    // The worked example goes on with the approximate factor.
    const variance = 1 / a.n + 1 / b.n + (d * d) / (2 * (a.n + b.n));
    check.compare('g', approximate * d, at(expected, 'g'));
    check.compare('v_d', variance, at(expected, 'v_d'));
    check.compare('v_g', approximate ** 2 * variance, at(expected, 'v_g'));
    for (const [key, got] of [
      ['d', d],
      ['J', approximate],
      ['g', approximate * d],
      ['v_d', variance],
      ['v_g', approximate ** 2 * variance],
    ] as const) {
      const value = at(expected, 'published', key);
      if (typeof value === 'number') check.within(`published ${key}`, got, value, Math.max(halfLastDigit(value), 5e-5));
    }
    for (const small of Object.keys((at(expected, 'J_exact_small_df') as object | undefined) ?? {})) {
      check.compare(`J_exact at df ${small}`, hedgesFactor(Number(small)), at(expected, 'J_exact_small_df', small));
    }
    for (const small of Object.keys((at(expected, 'J_approx_small_df') as object | undefined) ?? {})) {
      const got = hedgesFactorApproximate(Number(small));
      check.compare(`J_approx at df ${small}`, got, at(expected, 'J_approx_small_df', small));
    }
    return true;
  }
  if (!Array.isArray(inputs) || at(expected, 'ROM_yi') === undefined) return false;
  inputs.forEach((row: unknown, i) => {
    const a = summaryAt(row, 'm1i', 'sd1i', 'n1i');
    const b = summaryAt(row, 'm2i', 'sd2i', 'n2i');
    const ratio = logResponseRatio(a, b);
    const difference = hedgesG(a, b);
    check.compare(`ROM_yi[${i}]`, ratio.value, at(expected, 'ROM_yi', i));
    check.compare(`ROM_vi[${i}]`, ratio.variance, at(expected, 'ROM_vi', i));
    check.compare(`SMD_yi[${i}]`, difference.value, at(expected, 'SMD_yi', i));
    check.compare(`SMD_vi[${i}]`, difference.variance, at(expected, 'SMD_vi', i));
  });
  return true;
}

const tauMethods: Record<string, TauMethod> = {
  FE: 'fixed',
  DL: 'dersimonian-laird',
  HE: 'hedges',
  HS: 'hunter-schmidt',
  SJ: 'sidik-jonkman',
  ML: 'maximum-likelihood',
  REML: 'restricted-likelihood',
  EB: 'empirical-bayes',
  PM: 'paule-mandel',
};

function effectsOf(inputs: unknown): Effect[] {
  const isG = at(inputs, 'g') !== undefined;
  const values = listAt(inputs, isG ? 'g' : 'yi');
  const variances = listAt(inputs, isG ? 'vg' : 'vi');
  return values.map((value, i) => ({ value, variance: variances[i] as number }));
}

function checkPooling(check: EntryCheck, entry: Entry): boolean {
  const { inputs, expected } = entry;
  if (entry.id === 'ma-formulas') return false;
  const effects = effectsOf(inputs);
  const studies = at(inputs, 'studies');
  if (Array.isArray(studies)) {
    // The effects are inputs too: they must follow from the printed studies.
    studies.forEach((row: unknown, i) => {
      const a = summaryAt(row, 'm1', 's1', 'n1');
      const b = summaryAt(row, 'm2', 's2', 'n2');
      const factor = hedgesFactorApproximate(a.n + b.n - 2);
      const d = cohensD(a, b);
      const variance = factor ** 2 * (1 / a.n + 1 / b.n + (d * d) / (2 * (a.n + b.n)));
      check.within(`g[${i}]`, factor * d, at(inputs, 'g', i), 1e-11);
      check.within(`vg[${i}]`, variance, at(inputs, 'vg', i), 1e-11);
    });
  }
  if (at(inputs, 'tpos') !== undefined) {
    listAt(inputs, 'tpos').forEach((cases, i) => {
      const treated = cases + numberAt(inputs, 'tneg', i);
      const controls = numberAt(inputs, 'cpos', i) + numberAt(inputs, 'cneg', i);
      const risk = Math.log((cases / treated) * (controls / numberAt(inputs, 'cpos', i)));
      check.within(`log risk ratio [${i}]`, risk, at(inputs, 'yi', i), 1e-12);
    });
  }
  for (const [name, value] of Object.entries(expected as Record<string, unknown>)) {
    const method = tauMethods[name];
    if (!method) continue;
    const tau2 = tauSquared(effects, method);
    const pooled = pool(effects, tau2);
    check.compare(`${name} tau2`, tau2, at(value, 'tau2'));
    check.compare(`${name} mu`, pooled.mean, at(value, 'mu'));
    check.compare(`${name} se`, pooled.se, at(value, 'se'));
    check.interval(`${name} ci95_z`, meanInterval(pooled, 'normal'), at(value, 'ci95_z'));
    check.compare(`${name} se_HK`, pooled.seHartungKnapp, at(value, 'se_HK'));
    check.interval(`${name} ci95_HK_t_km1`, meanInterval(pooled, 'hartung-knapp'), at(value, 'ci95_HK_t_km1'));
    check.compare(`${name} q_HK`, pooled.multiplier, at(value, 'q_HK'));
    const floored = meanInterval(pooled, 'hartung-knapp-floored');
    check.interval(`${name} ci95_HK_modified_q_ge_1`, floored, at(value, 'ci95_HK_modified_q_ge_1'));
    // Printed for the fixed effect too, where it is the share (Q - df) / Q: that of DerSimonian and Laird's tau^2.
    const between = method === 'fixed' ? tauSquared(effects, 'dersimonian-laird') : tau2;
    check.compare(`${name} I2_percent`, 100 * iSquared(effects, between), at(value, 'I2_percent'));
    check.interval(`${name} PI95_HTS_t_km2`, predictionInterval(pooled, 't-2'), at(value, 'PI95_HTS_t_km2'));
    const withHk = at(value, 'PI95_HTS_with_HK_se_t_km2');
    check.interval(`${name} PI95_HTS_with_HK_se_t_km2`, predictionInterval(pooled, 'hartung-knapp-t-2'), withHk);
    const oneLess = predictionInterval(pooled, 'hartung-knapp-t-1');
    check.interval(`${name} PI95_HK_se_t_km1`, oneLess, at(value, 'PI95_HK_se_t_km1'));
    check.interval(`${name} PI95_metafor_z`, predictionInterval(pooled, 'normal'), at(value, 'PI95_metafor_z'));
  }
  const { q, p } = heterogeneity(effects);
  check.compare('Q', q, at(expected, 'Q'));
  check.compare('Q_p', p, at(expected, 'Q_p'));
  check.interval('tau2_Qprofile_ci95', tauSquaredInterval(effects), at(expected, 'tau2_Qprofile_ci95'));
  const published = at(expected, 'published');
  if (published !== undefined) {
    const simple = pool(effects, tauSquared(effects, 'dersimonian-laird'));
    const printed: [string, number][] = [
      ['Q', q],
      ['tau2_DL', simple.tauSquared],
      ['mu_DL', simple.mean],
      ['I2', 100 * iSquared(effects, simple.tauSquared)],
    ];
    for (const [key, got] of printed) {
      const value = at(published, key);
      if (typeof value === 'number') check.within(`published ${key}`, got, value, 1.01 * halfLastDigit(value));
    }
  }
  return true;
}

// ------------------------------------------------------------------ other families

/** The data of a descriptive entry: listed, as a first value and a repeated pair, or as a string of digits. */
function dataOf(inputs: unknown): number[] {
  const digits = at(inputs, 'digits');
  if (typeof digits === 'string') return Array.from(digits, Number);
  if (at(inputs, 'pair') === undefined) return listAt(inputs, 'data');
  const data = [numberAt(inputs, 'first')];
  const pair = listAt(inputs, 'pair');
  for (let i = 0; i < numberAt(inputs, 'pairs'); i++) data.push(...pair);
  return data;
}

function checkDescriptive(check: EntryCheck, entry: Entry): boolean {
  const data = dataOf(entry.inputs);
  check.compare('mean', meanOfValues(data), at(entry.expected, 'mean'), { rel: 'mean_rel' });
  check.compare('sd_n_minus_1', sampleSd(data), at(entry.expected, 'sd_n_minus_1'), { rel: 'sd_rel' });
  check.compare('autocorr_lag1', autocorrelation(data), at(entry.expected, 'autocorr_lag1'), { rel: 'r1_rel' });
  return true;
}

function checkSeries(check: EntryCheck, entry: Entry): boolean {
  const { inputs, expected } = entry;
  const strength = at(inputs, 'strength');
  const stress = at(inputs, 'stress');
  if (Array.isArray(strength) && Array.isArray(stress)) {
    const found = underLoad([{ dist: 'normal', mu: numberAt(strength, 0), sigma: numberAt(strength, 1) }], {
      dist: 'normal',
      mu: numberAt(stress, 0),
      sigma: numberAt(stress, 1),
    });
    check.compare('p_fail', found.failure, at(expected, 'p_fail'));
    check.compare('reliability', found.reliability, at(expected, 'reliability'));
    const percent = at(expected, 'published_percent');
    if (typeof percent === 'number')
      check.within('published_percent', 100 * found.failure, percent, halfLastDigit(percent));
    check.compare('published', found.failure, at(expected, 'published'));
    return true;
  }
  if (at(strength, 'gamma') === undefined || at(stress, 'weibull') === undefined) return false;
  // A shifted gamma strength under a shifted Weibull load: the mean of the strength's cdf over the load.
  const shape = numberAt(stress, 'weibull', 'shape');
  const rule = gaussLegendre(40);
  let failure = 0;
  for (let panel = 0; panel < 40; panel++) {
    rule.nodes.forEach((node, i) => {
      const y = 0.1 * (panel + 0.5 + 0.5 * node);
      const load = numberAt(stress, 'weibull', 'location') + numberAt(stress, 'weibull', 'scale') * y;
      const below = gammaCdf(
        load - numberAt(strength, 'gamma', 'location'),
        numberAt(strength, 'gamma', 'shape'),
        numberAt(strength, 'gamma', 'scale'),
      );
      failure += 0.05 * (rule.weights[i] as number) * shape * y ** (shape - 1) * Math.exp(-(y ** shape)) * below;
    });
  }
  check.within('p_fail', failure, at(expected, 'p_fail'), 5e-12);
  check.compare('published_percent', 100 * failure, at(expected, 'published_percent'), {
    abs: 'published_abs_percent',
  });
  return true;
}

function checkLognormal(check: EntryCheck, entry: Entry): boolean {
  const { inputs, expected } = entry;
  const mu = numberAt(inputs, 'mu_log');
  const sigma = numberAt(inputs, 'sigma_log');
  listAt(inputs, 't').forEach((t, i) => {
    const above = lognormalSurvival(t, mu, sigma);
    check.compare(`R[${i}]`, above, at(expected, 'R', i));
    // Printed to eight figures, one fewer than the entry's tolerance.
    const z = at(expected, 'z', i);
    if (typeof z === 'number') check.within(`z[${i}]`, (Math.log(t) - mu) / sigma, z, halfLastDigit(z));
    check.compare(`hazard_${t}`, lognormalPdf(t, mu, sigma) / above, at(expected, `hazard_${t}`));
  });
  return true;
}

function checkClark(check: EntryCheck): boolean {
  // The entry refers to the chain cases; its formula must give what two independent links give by quadrature.
  const closed = smallerOfTwo({ mean: 22, sd: 0.8 }, { mean: 23.5, sd: 1.2 }, 0);
  const summed = minimum([
    { dist: 'normal', mu: 22, sigma: 0.8 },
    { dist: 'normal', mu: 23.5, sigma: 1.2 },
  ]);
  check.within('mean, closed form against quadrature', closed.mean, summed.mean, 1e-9);
  check.within('sd, closed form against quadrature', closed.sd, summed.sd, 1e-9);
  check.within('P(1 first), closed form against quadrature', closed.firstShares[0], summed.firstShares[0], 1e-9);
  return true;
}

function checkOrder(check: EntryCheck, entry: Entry): boolean {
  listAt(entry.inputs, 'k').forEach((k, i) => {
    const found = -minimum(Array.from({ length: k }, () => ({ dist: 'normal', mu: 0, sigma: 1 }) as const)).mean;
    check.within(`E_max[${i}]`, found, at(entry.expected, 'E_max', i), 1e-12);
    check.compare(`tabulated[${i}]`, found, at(entry.expected, 'tabulated', i));
  });
  return true;
}

function checkWeakestLink(check: EntryCheck, entry: Entry): boolean {
  if (at(entry.inputs, 'failures') !== undefined) return checkWeibullFit(check, entry);
  if (entry.id !== 'weibull-weakest-link') return false;
  const counts = listAt(entry.inputs, 'k');
  // eta is where a share 1 - 1/e has broken.
  const level = -Math.expm1(-1);
  listAt(entry.inputs, 'shape').forEach((shape, row) => {
    counts.forEach((k, column) => {
      const links = Array.from({ length: k }, () => ({ dist: 'weibull', shape, scale: 1 }) as const);
      const found = minimumQuantile(links, level);
      const outer = at(entry.expected, 'eta_ratio', row);
      check.within(`eta_ratio[${row}][${column}]`, found, at(outer, column), 1e-12);
    });
  });
  return true;
}

function checkTolerance(check: EntryCheck, entry: Entry): boolean {
  const { inputs, expected } = entry;
  const exact = at(expected, 'k_exact') ?? at(expected, 'exact');
  const isOneSided = at(inputs, 'sided') === 1 || entry.id === 'tol-natrella-small-n';
  if (!isOneSided) return checkOtherTolerance(check, entry);
  const coverage = numberAt(inputs, 'p');
  const confidence = numberAt(inputs, 'gamma');
  if (typeof at(inputs, 'n') === 'number') {
    const found = oneSidedToleranceFactor(numberAt(inputs, 'n'), coverage, confidence);
    check.compare('k', found, at(expected, 'k'));
    return true;
  }
  if (!Array.isArray(exact)) return false;
  listAt(inputs, 'n').forEach((n, i) => {
    const natrella = at(expected, 'natrella', i);
    if (natrella !== undefined) {
      check.compare(`Natrella k at n ${n}`, natrellaFactor(n, coverage, confidence).k, natrella);
    }
    const found = oneSidedToleranceFactor(n, coverage, confidence);
    // Values are printed with 11 to 14 figures.
    check.within(`exact k at n ${n}`, found, exact[i], 1e-10 * found);
    check.compare(`published k at n ${n}`, found, at(expected, 'k_published', i), { abs: 'published_abs' });
    const rounded = at(expected, 'known_rounded', String(n));
    if (typeof rounded === 'number')
      check.within(`rounded k at n ${n}`, found, rounded, 1.001 * halfLastDigit(rounded));
  });
  return true;
}

function checkUnits(check: EntryCheck, entry: Entry): boolean {
  const { expected } = entry;
  // Forces that records are printed in have a conversion; foot, pound and gravity are records that falls are read with.
  const inNewtons = (unit: 'lbf' | 'kgf' | 'daN'): number => 1000 * (toModelUnit(unit) ?? Number.NaN);
  const exact = 4e-16;
  for (const unit of ['lbf', 'kgf', 'daN'] as const) {
    check.within(`${unit}_N`, inNewtons(unit), at(expected, `${unit}_N`), exact * inNewtons(unit));
  }
  const pounds = 22000 / inNewtons('lbf');
  check.within('22_kN_in_lbf', pounds, at(expected, '22_kN_in_lbf'), exact * pounds);
  check.within('5000_lbf_in_kN', 5 * inNewtons('lbf'), at(expected, '5000_lbf_in_kN'), 1e-14);
  check.within('2250_kgf_in_kN', 2.25 * inNewtons('kgf'), at(expected, '2250_kgf_in_kN'), 1e-14);
  check.within('kip_kN', inNewtons('lbf'), at(expected, 'kip_kN'), exact * inNewtons('lbf'));
  check.within('ounce_force_N', inNewtons('lbf') / 16, at(expected, 'ounce_force_N'), exact);
  const { gravity, units } = loadFallConstants();
  check.within('foot_m', units.footM, at(expected, 'foot_m'), exact);
  check.within('lb_kg', units.poundKg, at(expected, 'lb_kg'), exact);
  check.within('g0_m_s2', gravity, at(expected, 'g0_m_s2'), exact);
  return true;
}

const families: Record<string, (check: EntryCheck, entry: Entry) => boolean> = {
  es: checkEffects,
  ma: checkPooling,
  strd: checkDescriptive,
  ss: checkSeries,
  lognormal: checkLognormal,
  clark: checkClark,
  order: checkOrder,
  weibull: checkWeakestLink,
  tol: checkTolerance,
  units: checkUnits,
  ...statisticsFamilies,
  ...fallFamilies,
};

/** Runs every entry of such a file whose family is built. */
export function checkPublished(file: readonly unknown[], options: PublishedOptions = {}): Tally {
  const tally = new Tally();
  for (const [i, raw] of file.entries()) {
    const fault = entryFault(raw);
    if (fault) {
      tally.broken(`entry ${i}`, fault);
      continue;
    }
    const entry = raw as Entry;
    const family = entry.id.split('-')[0] ?? entry.id;
    const run = families[family];
    if (!run) {
      tally.skip(family, entry.id);
      continue;
    }
    const strict = options.toPrintedDigits === true && (family === 'es' || family === 'ma');
    const before = tally.passed + tally.failures.length;
    try {
      if (!run(new EntryCheck(tally, entry, family, strict), entry)) tally.skip(family, entry.id);
      else if (tally.passed + tally.failures.length === before)
        tally.broken(entry.id, 'nothing in it could be compared.');
    } catch (error) {
      tally.broken(entry.id, error);
    }
  }
  return tally;
}
