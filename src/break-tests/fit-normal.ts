/** Maximum-likelihood fit of a normal distribution to pulls of which some are censored. */
import { INV_SQRT_2PI, logNormalSurvival, normalHazard, normalQuantile } from '../numerics/normal.ts';
import { findRoot } from '../numerics/roots.ts';
import { assertCensored, type CensoredPulls } from './censored.ts';
import { assertShare, type Interval } from './checks.ts';
import { profileInterval, rootOfScore } from './profile.ts';

export interface NormalFit {
  readonly broken: number;
  readonly atLeast: number;
  readonly mean: number;
  /** Maximum-likelihood sd: denominator n where nothing is censored. */
  readonly sd: number;
  readonly logLikelihood: number;
  /** Standard errors of the mean and of ln sd, from the observed information (Wald). */
  readonly seMean: number;
  readonly seLogSd: number;
  /** Correlation of the two errors. */
  readonly correlation: number;
}

const LOG_ROOT = Math.log(INV_SQRT_2PI);

function logLikelihood(pulls: Required<CensoredPulls>, mean: number, sd: number): number {
  let sum = pulls.broken.length * (LOG_ROOT - Math.log(sd));
  for (const x of pulls.broken) sum -= 0.5 * ((x - mean) / sd) ** 2;
  for (const x of pulls.atLeast) sum += logNormalSurvival((x - mean) / sd);
  return sum;
}

/** Throws away nothing: fills in an empty list of censored pulls. */
function whole(pulls: CensoredPulls): Required<CensoredPulls> {
  return { broken: pulls.broken, atLeast: pulls.atLeast ?? [] };
}

/** The best mean at a given sd: the root of a falling score. */
function bestMean(pulls: Required<CensoredPulls>, sd: number): number {
  const score = (mean: number): number => {
    let sum = 0;
    for (const x of pulls.broken) sum += (x - mean) / sd;
    for (const x of pulls.atLeast) sum += normalHazard((x - mean) / sd);
    return sum;
  };
  // At the weakest break nothing pulls the mean down.
  const low = Math.min(...pulls.broken);
  let high = Math.max(...pulls.broken, ...pulls.atLeast) + sd;
  let step = sd;
  while (score(high) > 0) high += step *= 2;
  return score(low) === 0 ? low : findRoot(score, low, high, 1e-15);
}

/** The best sd where the quantile mean + z sd is `at`: in 1 / sd the likelihood is concave, so its score falls. */
function bestSd(pulls: Required<CensoredPulls>, at: number, z: number, start: number): number {
  const score = (theta: number): number => {
    let sum = 0;
    for (const x of pulls.broken) sum += 1 / theta - (theta * (x - at) + z) * (x - at);
    for (const x of pulls.atLeast) sum -= normalHazard(theta * (x - at) + z) * (x - at);
    return sum;
  };
  return 1 / rootOfScore(score, 1 / start);
}

/**
 * The fit. Solved in 1 / sd and mean / sd, where the likelihood is concave (Olsen, Econometrica 46, 1978), by Newton's
 * method with halved steps.
 * @throws RangeError when fewer than two breaks differ or a value is not finite.
 */
export function fitNormal(pulls: CensoredPulls): NormalFit {
  assertCensored(pulls, false);
  const { broken, atLeast } = whole(pulls);
  const count = broken.length;
  // Centred and scaled, so that neither the unit nor a large offset matters.
  const centre = broken.reduce((sum, x) => sum + x, 0) / count;
  const scale = Math.sqrt(broken.reduce((sum, x) => sum + (x - centre) ** 2, 0) / count);
  const y = { broken: broken.map((x) => (x - centre) / scale), atLeast: atLeast.map((x) => (x - centre) / scale) };
  let theta = 1;
  let eta = 0;
  let here = logLikelihood(y, 0, 1);
  for (let step = 0; step < 200; step++) {
    let gt = count / theta;
    let ge = 0;
    let htt = -count / (theta * theta);
    let hte = 0;
    let hee = -count;
    for (const x of y.broken) {
      const u = theta * x - eta;
      gt -= u * x;
      ge += u;
      htt -= x * x;
      hte += x;
    }
    for (const x of y.atLeast) {
      const u = theta * x - eta;
      const hazard = normalHazard(u);
      const bend = hazard * (hazard - u);
      gt -= hazard * x;
      ge += hazard;
      htt -= bend * x * x;
      hte += bend * x;
      hee -= bend;
    }
    const det = htt * hee - hte * hte;
    let dt = -(hee * gt - hte * ge) / det;
    let de = -(htt * ge - hte * gt) / det;
    let next = Number.NEGATIVE_INFINITY;
    for (let half = 0; half < 60; half++) {
      if (theta + dt > 0) next = logLikelihood(y, (eta + de) / (theta + dt), 1 / (theta + dt));
      if (next >= here) break;
      dt *= 0.5;
      de *= 0.5;
    }
    if (!(next >= here)) break;
    theta += dt;
    eta += de;
    here = next;
    if (Math.abs(dt) < 1e-15 * theta && Math.abs(de) < 1e-15 * (1 + Math.abs(eta))) break;
  }
  const mean = centre + (scale * eta) / theta;
  const sd = scale / theta;
  // Observed information in (mean, ln sd).
  let mm = count / (sd * sd);
  let ml = 0;
  let ll = 0;
  for (const x of broken) {
    const u = (x - mean) / sd;
    ml += (2 * u) / sd;
    ll += 2 * u * u;
  }
  for (const x of atLeast) {
    const u = (x - mean) / sd;
    const hazard = normalHazard(u);
    const bend = hazard * (hazard - u);
    mm += bend / (sd * sd);
    ml += (hazard + u * bend) / sd;
    ll += u * u * bend + u * hazard;
  }
  const det = mm * ll - ml * ml;
  return {
    broken: count,
    atLeast: atLeast.length,
    mean,
    sd,
    logLikelihood: logLikelihood({ broken, atLeast }, mean, sd),
    seMean: Math.sqrt(ll / det),
    seLogSd: Math.sqrt(mm / det),
    correlation: -ml / Math.sqrt(mm * ll),
  };
}

/**
 * Profile-likelihood interval of the quantile mean + z sd that a share `p` of pieces lies below (p = 1/2: the mean).
 * @throws RangeError as `fitNormal`, or when p or level do not lie strictly between 0 and 1.
 */
export function normalQuantileInterval(pulls: CensoredPulls, p: number, level = 0.95): Interval & { best: number } {
  assertShare(p, 'p');
  const fit = fitNormal(pulls);
  const data = whole(pulls);
  const z = normalQuantile(p);
  const best = fit.mean + z * fit.sd;
  const profile = (at: number): number => {
    const sd = bestSd(data, at, z, fit.sd);
    return logLikelihood(data, at - z * sd, sd);
  };
  return { ...profileInterval(profile, best, fit.logLikelihood, fit.seMean, level), best };
}

/** Profile-likelihood interval of sd. */
export function normalSdInterval(pulls: CensoredPulls, level = 0.95): Interval {
  const fit = fitNormal(pulls);
  const data = whole(pulls);
  const profile = (logSd: number): number => logLikelihood(data, bestMean(data, Math.exp(logSd)), Math.exp(logSd));
  const { low, high } = profileInterval(profile, Math.log(fit.sd), fit.logLikelihood, fit.seLogSd, level);
  return { low: Math.exp(low), high: Math.exp(high) };
}
