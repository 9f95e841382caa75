/** Maximum-likelihood fit of a Weibull distribution of two parameters to breaking forces of which some are censored. */
import { assertCensored, type CensoredPulls } from './censored.ts';
import { assertShare, type Interval } from './checks.ts';
import { profileInterval, rootOfScore } from './profile.ts';

export interface WeibullFit {
  readonly broken: number;
  readonly atLeast: number;
  readonly shape: number;
  /** Force below which a share 1 - 1/e of pieces breaks. */
  readonly scale: number;
  readonly logLikelihood: number;
  /** Standard errors of ln shape and ln scale, from the observed information (Wald). */
  readonly seLogShape: number;
  readonly seLogScale: number;
  /** Correlation of the two errors. */
  readonly correlation: number;
}

interface Data {
  /** ln of each break and of each censored pull. */
  readonly broken: readonly number[];
  readonly all: readonly number[];
}

function dataOf(pulls: CensoredPulls): Data {
  assertCensored(pulls, true);
  const broken = pulls.broken.map(Math.log);
  return { broken, all: [...broken, ...(pulls.atLeast ?? []).map(Math.log)] };
}

function logLikelihood({ broken, all }: Data, shape: number, logScale: number): number {
  let sum = broken.length * Math.log(shape);
  for (const x of broken) sum += shape * (x - logScale) - x;
  for (const x of all) sum -= Math.exp(shape * (x - logScale));
  return sum;
}

/** The best ln scale at a given shape: scale^shape is the sum of x^shape over the number of breaks. */
function bestLogScale({ broken, all }: Data, shape: number): number {
  const top = Math.max(...all);
  let sum = 0;
  for (const x of all) sum += Math.exp(shape * (x - top));
  return top + Math.log(sum / broken.length) / shape;
}

/** The best shape where a share `p`, ln(1 / (1 - p)) = exp(logC), lies below exp(at): the likelihood is concave in it. */
function bestShape({ broken, all }: Data, at: number, logC: number, start: number): number {
  const score = (shape: number): number => {
    let sum = broken.length / shape;
    for (const x of broken) sum += x - at;
    for (const x of all) sum -= (x - at) * Math.exp(shape * (x - at) + logC);
    return sum;
  };
  return rootOfScore(score, start);
}

/**
 * The fit: the root of 1 / shape + mean of ln of the breaks - (sum of x^shape ln x) / (sum of x^shape), which falls as the
 * shape grows, then the scale in closed form (Lawless, Statistical Models and Methods for Lifetime Data, 1982, section 4.1).
 * @throws RangeError when fewer than two breaks differ or a force is not positive.
 */
export function fitWeibull(pulls: CensoredPulls): WeibullFit {
  const data = dataOf(pulls);
  const { broken, all } = data;
  const count = broken.length;
  const top = Math.max(...all);
  const meanLog = broken.reduce((sum, x) => sum + (x - top), 0) / count;
  const score = (shape: number): number => {
    let powers = 0;
    let weighted = 0;
    for (const x of all) {
      const power = Math.exp(shape * (x - top));
      powers += power;
      weighted += power * (x - top);
    }
    return 1 / shape + meanLog - weighted / powers;
  };
  const sd = Math.sqrt(broken.reduce((sum, x) => sum + (x - top - meanLog) ** 2, 0) / count);
  const shape = rootOfScore(score, 1.2 / sd);
  const logScale = bestLogScale(data, shape);
  // Observed information in (ln shape, ln scale), with u = shape (ln x - ln scale).
  let bb = 0;
  let ab = 0;
  let aa = 0;
  for (const x of broken) {
    bb -= shape * (x - logScale);
    ab += shape;
  }
  for (const x of all) {
    const u = shape * (x - logScale);
    const e = Math.exp(u);
    aa += shape * shape * e;
    bb += (u + u * u) * e;
    ab -= shape * e * (1 + u);
  }
  const det = aa * bb - ab * ab;
  return {
    broken: count,
    atLeast: all.length - count,
    shape,
    scale: Math.exp(logScale),
    logLikelihood: logLikelihood(data, shape, logScale),
    seLogShape: Math.sqrt(aa / det),
    seLogScale: Math.sqrt(bb / det),
    correlation: -ab / Math.sqrt(aa * bb),
  };
}

/** The force that a share `p` of pieces lies below, by the fit. */
export function weibullFitQuantile(fit: Pick<WeibullFit, 'shape' | 'scale'>, p: number): number {
  assertShare(p, 'p');
  return fit.scale * (-Math.log1p(-p)) ** (1 / fit.shape);
}

/**
 * Profile-likelihood interval of that force. Approximate.
 * @throws RangeError as `fitWeibull`, or when p or level do not lie strictly between 0 and 1.
 */
export function weibullQuantileInterval(pulls: CensoredPulls, p: number, level = 0.95): Interval & { best: number } {
  const fit = fitWeibull(pulls);
  const data = dataOf(pulls);
  const best = weibullFitQuantile(fit, p);
  const logC = Math.log(-Math.log1p(-p));
  const profile = (at: number): number => {
    const shape = bestShape(data, at, logC, fit.shape);
    return logLikelihood(data, shape, at - logC / shape);
  };
  const { low, high } = profileInterval(profile, Math.log(best), fit.logLikelihood, fit.seLogScale, level);
  return { low: Math.exp(low), high: Math.exp(high), best };
}

/** Profile-likelihood interval of the shape. */
export function weibullShapeInterval(pulls: CensoredPulls, level = 0.95): Interval {
  const fit = fitWeibull(pulls);
  const data = dataOf(pulls);
  const profile = (logShape: number): number => {
    const shape = Math.exp(logShape);
    return logLikelihood(data, shape, bestLogScale(data, shape));
  };
  const { low, high } = profileInterval(profile, Math.log(fit.shape), fit.logLikelihood, fit.seLogShape, level);
  return { low: Math.exp(low), high: Math.exp(high) };
}
