/** Rules of numerical integration: nodes and weights, computed once for each number of nodes and kept. */

import { INV_SQRT_2PI } from './normal.ts';

/** Nodes and weights of equal length, nodes rising. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const legendreRules: (QuadratureRule | undefined)[] = [];
const hermiteRules: (QuadratureRule | undefined)[] = [];
const sharpRules = new Map<number, QuadratureRule>();

function assertCount(count: number): void {
  if (!Number.isInteger(count) || count < 1 || count > 256) {
    throw new RangeError(`count must be a whole number from 1 to 256 (got ${count}).`);
  }
}

/**
 * Gauss-Legendre rule on [-1, 1]: exact for polynomials of degree 2 count - 1. Nodes are the roots of the Legendre
 * polynomial, by Newton's method on its three-term recurrence.
 * @throws RangeError when `count` is no whole number from 1 to 256.
 */
export function gaussLegendre(count: number): QuadratureRule {
  const known = legendreRules[count];
  if (known) return known;
  assertCount(count);
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let i = 0; i < Math.ceil(count / 2); i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (count + 0.5));
    let slope = 1;
    for (let step = 0; step < 60; step++) {
      let before = 1;
      let value = x;
      for (let k = 2; k <= count; k++) {
        const next = ((2 * k - 1) * x * value - (k - 1) * before) / k;
        before = value;
        value = next;
      }
      slope = (count * (x * value - before)) / (x * x - 1);
      const move = value / slope;
      x -= move;
      if (Math.abs(move) < 1e-16) break;
    }
    const weight = 2 / ((1 - x * x) * slope * slope);
    nodes[i] = -x;
    nodes[count - 1 - i] = x;
    weights[i] = weight;
    weights[count - 1 - i] = weight;
  }
  if (count % 2 === 1) nodes[(count - 1) / 2] = 0;
  const rule = { nodes, weights };
  legendreRules[count] = rule;
  return rule;
}

/**
 * Gauss-Hermite rule for the standard normal: sum of weight * f(node) is the mean of f(Z), and the weights sum to 1.
 * Nodes are the roots of the orthonormal Hermite function, found by bisection between sign changes and polished by
 * Newton's method, so that no starting formula has to be trusted.
 * @throws RangeError when `count` is no whole number from 1 to 256.
 */
export function gaussHermite(count: number): QuadratureRule {
  const known = hermiteRules[count];
  if (known) return known;
  assertCount(count);
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  // Hermite functions h_k(x) carry exp(-x^2/4), so nothing overflows; they have the polynomials' roots.
  const last = Math.sqrt(count);
  let previous = 0;
  const evaluate = (x: number): number => {
    let before = 0;
    let value = Math.exp(-0.25 * x * x);
    for (let k = 1; k <= count; k++) {
      const next = (x * value - Math.sqrt(k - 1) * before) / Math.sqrt(k);
      before = value;
      value = next;
    }
    previous = before;
    return value;
  };
  const half = Math.floor(count / 2);
  const limit = 2 * Math.sqrt(count) + 1;
  // Neighbouring roots are never closer than about pi / (2 sqrt(count)); a quarter of that cannot step over two.
  const stride = Math.PI / (8 * Math.sqrt(count));
  let found = 0;
  let left = count % 2 === 1 ? stride / 2 : 0;
  let valueLeft = evaluate(left);
  for (let right = left + stride; found < half && right < limit + stride; right += stride) {
    const valueRight = evaluate(right);
    if (valueLeft * valueRight <= 0) {
      let low = left;
      let high = right;
      let signLow = valueLeft;
      for (let step = 0; step < 60 && high - low > 1e-15 * high; step++) {
        const middle = 0.5 * (low + high);
        const value = evaluate(middle);
        if (value * signLow > 0) {
          low = middle;
          signLow = value;
        } else high = middle;
      }
      const root = 0.5 * (low + high);
      nodes[half - 1 - found] = -root;
      nodes[count - half + found] = root;
      found++;
    }
    left = right;
    valueLeft = valueRight;
  }
  for (let i = 0; i < count; i++) {
    const x = nodes[i] as number;
    evaluate(x);
    // Christoffel number in terms of the last function but one; exp(-x^2/2) belongs to the squared function.
    weights[i] = Math.exp(-0.5 * x * x) / (last * previous) ** 2;
  }
  const rule = { nodes, weights };
  hermiteRules[count] = rule;
  return rule;
}

/**
 * A rule for means over the standard normal of a function that changes within about `1 / sharpness`: Gauss-Hermite
 * while that converges to 1e-9 with few nodes, else equal Gauss-Legendre panels over +-6.8 standard deviations.
 * @throws RangeError when `sharpness` is negative or above 200.
 */
export function normalRule(sharpness: number): QuadratureRule {
  if (!(sharpness >= 0 && sharpness <= 200)) {
    throw new RangeError(`sharpness must lie between 0 and 200 (got ${sharpness}).`);
  }
  if (sharpness === 0) return gaussHermite(1);
  if (sharpness <= 0.5) return gaussHermite(12);
  if (sharpness <= 1) return gaussHermite(20);
  if (sharpness <= 1.5) return gaussHermite(40);
  const panels = Math.ceil(3.5 * sharpness);
  const kept = sharpRules.get(panels);
  if (kept) return kept;
  const base = gaussLegendre(10);
  const nodes = new Float64Array(panels * 10);
  const weights = new Float64Array(panels * 10);
  const halfWidth = 6.8 / panels;
  for (let panel = 0; panel < panels; panel++) {
    const centre = -6.8 + (2 * panel + 1) * halfWidth;
    for (let i = 0; i < 10; i++) {
      const x = centre + halfWidth * (base.nodes[i] as number);
      nodes[panel * 10 + i] = x;
      weights[panel * 10 + i] = halfWidth * (base.weights[i] as number) * INV_SQRT_2PI * Math.exp(-0.5 * x * x);
    }
  }
  const rule = { nodes, weights };
  sharpRules.set(panels, rule);
  return rule;
}
