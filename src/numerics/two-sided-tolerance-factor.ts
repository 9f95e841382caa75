/**
 * Two-sided tolerance factors for normal data: mean - k sd to mean + k sd contains, with the given confidence, a share
 * `coverage` of the population. The exact factor is the one that the engine uses; the two approximations are built
 * because published tables were made with them.
 */
import { chiSquareQuantile, chiSquareSurvival } from './gamma.ts';
import { normalCdf, normalPdf, normalQuantile } from './normal.ts';
import { gaussLegendre } from './quadrature.ts';
import { findRoot } from './roots.ts';

function assertArguments(n: number, coverage: number, confidence: number): void {
  if (!(Number.isInteger(n) && n >= 2)) throw new RangeError(`n must be a whole number from 2 upwards (got ${n}).`);
  if (!(coverage > 0 && coverage < 1)) {
    throw new RangeError(`coverage must lie strictly between 0 and 1 (got ${coverage}).`);
  }
  if (!(confidence > 0 && confidence < 1)) {
    throw new RangeError(`confidence must lie strictly between 0 and 1 (got ${confidence}).`);
  }
}

/** The r for which a standard normal lies within r of `centre` with chance `coverage`. */
function halfWidth(centre: number, coverage: number): number {
  const z = normalQuantile(0.5 * (1 + coverage));
  const miss = (r: number): number => normalCdf(r - centre) - normalCdf(-r - centre) - coverage;
  return findRoot(miss, 0, Math.abs(centre) + z, 1e-15);
}

/**
 * The exact factor: the root in k of the integral over z of phi(z) P(chi-square > (n - 1) r(z)^2 / k^2), where r(z) is the
 * half width about z / sqrt(n) (Krishnamoorthy and Mathew, Statistical Tolerance Regions, 2009, section 2.3).
 * @throws RangeError when n is below 2, or coverage or confidence do not lie strictly between 0 and 1.
 */
export function twoSidedToleranceFactor(n: number, coverage: number, confidence: number): number {
  assertArguments(n, coverage, confidence);
  const rule = gaussLegendre(20);
  const weights: number[] = [];
  const squares: number[] = [];
  for (let panel = 0; panel < 18; panel++) {
    for (let i = 0; i < 20; i++) {
      const z = 0.5 * panel + 0.25 * (1 + (rule.nodes[i] as number));
      weights.push(0.5 * (rule.weights[i] as number) * normalPdf(z));
      squares.push((n - 1) * halfWidth(z / Math.sqrt(n), coverage) ** 2);
    }
  }
  const miss = (k: number): number => {
    let sum = 0;
    for (let i = 0; i < weights.length; i++) {
      sum += (weights[i] as number) * chiSquareSurvival((squares[i] as number) / (k * k), n - 1);
    }
    return sum - confidence;
  };
  const near = waldWolfowitzFactor(n, coverage, confidence);
  let low = 0.8 * near;
  while (miss(low) > 0) low *= 0.7;
  let high = 1.2 * near;
  while (miss(high) < 0) high *= 1.4;
  return findRoot(miss, low, high, 1e-14);
}

/**
 * Howe's approximation: z sqrt((n - 1)(1 + 1/n) / chi-square) (NIST/SEMATECH Handbook 7.2.6.3). For comparison with
 * tables; two parts in a hundred high at three pulls.
 */
export function howeFactor(n: number, coverage: number, confidence: number): number {
  assertArguments(n, coverage, confidence);
  const z = normalQuantile(0.5 * (1 + coverage));
  return z * Math.sqrt(((n - 1) * (1 + 1 / n)) / chiSquareQuantile(1 - confidence, n - 1));
}

/** Wald and Wolfowitz's approximation (Annals of Mathematical Statistics 17, 1946): the half width at 1 / sqrt(n). */
export function waldWolfowitzFactor(n: number, coverage: number, confidence: number): number {
  assertArguments(n, coverage, confidence);
  return halfWidth(1 / Math.sqrt(n), coverage) * Math.sqrt((n - 1) / chiSquareQuantile(1 - confidence, n - 1));
}
