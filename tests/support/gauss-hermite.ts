/** A route to means over the standard normal that the engines do not use, for checking them. */
import type { QuadratureRule } from '../../src/numerics/quadrature.ts';

const hermiteRules: (QuadratureRule | undefined)[] = [];

/**
 * Gauss-Hermite rule for the standard normal: sum of weight * f(node) is the mean of f(Z), and the weights sum to 1.
 * Nodes are the roots of the orthonormal Hermite function, found by bisection between sign changes and polished by
 * Newton's method, so that no starting formula has to be trusted.
 * @throws RangeError when `count` is no whole number from 1 to 256.
 */
export function gaussHermite(count: number): QuadratureRule {
  const known = hermiteRules[count];
  if (known) return known;
  if (!Number.isInteger(count) || count < 1 || count > 256) {
    throw new RangeError(`count must be a whole number from 1 to 256 (got ${count}).`);
  }
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
