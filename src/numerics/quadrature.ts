/** Rules of numerical integration: nodes and weights, computed once for each number of nodes and kept. */

/** Nodes and weights of equal length, nodes rising. */
export interface QuadratureRule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const legendreRules: (QuadratureRule | undefined)[] = [];

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
