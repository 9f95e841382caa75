/**
 * A chain of independent links of any of the distributions in distribution.ts, under a fixed or a random load. By
 * Gauss-Legendre panels between the links' own quantiles; good to about 1e-12.
 */
import { gaussLegendre } from '../numerics/quadrature.ts';
import { findRoot } from '../numerics/roots.ts';
import { assertDistribution, cdfOf, density, type Distribution, quantileOf, survivalOf } from './distribution.ts';

/** Quantiles at which panels are split, so that each link's middle and tails get panels of their own. */
const SPLITS = [
  1e-16,
  1e-13,
  1e-10,
  1e-7,
  1e-5,
  1e-3,
  0.02,
  0.1,
  0.25,
  0.5,
  0.75,
  0.9,
  0.98,
  0.999,
  1 - 1e-5,
  1 - 1e-7,
];
const SPLITS_ABOVE = [1 - 1e-10, 1 - 1e-13, 1 - 2e-16];
const NODES = 16;

/** What the weakest of independent links does. */
export interface Minimum {
  readonly mean: number;
  readonly sd: number;
  /** Chance of each link to be the weakest; sums to 1. */
  readonly firstShares: number[];
}

function assertElements(elements: readonly Distribution[]): void {
  if (elements.length === 0) throw new RangeError('elements must hold at least one link.');
  elements.forEach((element, i) => {
    assertDistribution(element, `elements[${i}]`);
  });
}

/** Panel ends over all that can matter of the minimum. */
function panels(elements: readonly Distribution[], load?: Distribution): number[] {
  let low = Infinity;
  let high = Infinity;
  const cuts: number[] = [];
  for (const element of elements) {
    low = Math.min(low, element.dist === 'normal' ? quantileOf(element, 1e-16) : 0);
    high = Math.min(high, quantileOf(element, 1 - 2e-16));
  }
  for (const element of load ? [...elements, load] : elements) {
    for (const p of SPLITS) cuts.push(quantileOf(element, p));
    for (const p of SPLITS_ABOVE) cuts.push(quantileOf(element, p));
  }
  const inside = cuts.filter((cut) => cut > low && cut < high).sort((a, b) => a - b);
  return [low, ...inside, high];
}

/** Calls `visit(x, weight)` at each node of the panels. */
function overNodes(edges: readonly number[], visit: (x: number, weight: number) => void): void {
  const rule = gaussLegendre(NODES);
  for (let e = 0; e + 1 < edges.length; e++) {
    const from = edges[e] as number;
    const half = 0.5 * ((edges[e + 1] as number) - from);
    for (let i = 0; i < NODES; i++)
      visit(from + half * (1 + (rule.nodes[i] as number)), half * (rule.weights[i] as number));
  }
}

/** Density of link `i` at x times the survival of every other link. */
function firstDensity(elements: readonly Distribution[], i: number, x: number): number {
  let product = density(elements[i] as Distribution, x);
  for (let j = 0; j < elements.length; j++) if (j !== i) product *= survivalOf(elements[j] as Distribution, x);
  return product;
}

/** P(min > x): product of the links' survivals. */
export function minimumSurvival(elements: readonly Distribution[], x: number): number {
  assertElements(elements);
  let product = 1;
  for (const element of elements) product *= survivalOf(element, x);
  return product;
}

/** P(min <= x), without loss where it is small. */
export function minimumCdf(elements: readonly Distribution[], x: number): number {
  assertElements(elements);
  let sum = 0;
  for (const element of elements) sum += Math.log1p(-cdfOf(element, x));
  return -Math.expm1(sum);
}

/**
 * Mean, sd and first shares of the weakest link.
 * @throws RangeError when there is no link or a parameter is out of range.
 */
export function minimum(elements: readonly Distribution[]): Minimum {
  assertElements(elements);
  const edges = panels(elements);
  const firstShares = elements.map(() => 0);
  let mean = 0;
  overNodes(edges, (x, weight) => {
    for (let i = 0; i < elements.length; i++) {
      const share = weight * firstDensity(elements, i, x);
      firstShares[i] = (firstShares[i] as number) + share;
      mean += share * x;
    }
  });
  let variance = 0;
  overNodes(edges, (x, weight) => {
    for (let i = 0; i < elements.length; i++) variance += weight * firstDensity(elements, i, x) * (x - mean) ** 2;
  });
  return { mean, sd: Math.sqrt(variance), firstShares };
}

/**
 * The x with P(min <= x) = p.
 * @throws RangeError unless 0 < p < 1.
 */
export function minimumQuantile(elements: readonly Distribution[], p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`p must lie strictly between 0 and 1 (got ${p}).`);
  assertElements(elements);
  let low = Infinity;
  let high = Infinity;
  for (const element of elements) {
    low = Math.min(low, quantileOf(element, p / elements.length));
    high = Math.min(high, quantileOf(element, p));
  }
  if (!(high > low)) return high;
  // Both ends moved a little apart: at the exact bounds rounding could hide the change of sign.
  const slack = 1e-9 * (Math.abs(high) + Math.abs(low));
  return findRoot((x) => minimumCdf(elements, x) - p, low - slack, high + slack, 1e-15);
}

/** A chain under one random load that is common to all its links. */
export interface UnderLoad {
  readonly reliability: number;
  readonly failure: number;
  /** Chance that the chain fails with this link as the weakest; sums to `failure`. */
  readonly attributed: number[];
}

/**
 * P(min < load), and which link fails, for a random load independent of the links.
 * @throws RangeError when there is no link or a parameter is out of range.
 */
export function underLoad(elements: readonly Distribution[], load: Distribution): UnderLoad {
  assertElements(elements);
  assertDistribution(load, 'load');
  const attributed = elements.map(() => 0);
  let reliability = 0;
  overNodes(panels(elements, load), (x, weight) => {
    const above = survivalOf(load, x);
    for (let i = 0; i < elements.length; i++) {
      const share = weight * firstDensity(elements, i, x);
      attributed[i] = (attributed[i] as number) + share * above;
      reliability += share * (1 - above);
    }
  });
  return { reliability, failure: attributed.reduce((sum, share) => sum + share, 0), attributed };
}
