/**
 * d2(n): the expected range of n standard normals, so that range / d2(n) estimates a standard deviation.
 * d2(n) = 2 * integral from 0 of 1 - Phi(x)^n - (1 - Phi(x))^n (Tippett, Biometrika 17, 1925).
 */
import { normalCdf } from './normal.ts';
import { gaussLegendre } from './quadrature.ts';

const known = new Map<number, number>();

/**
 * Expected range of `count` standard normals.
 * @throws RangeError when `count` is no whole number from 2 upwards.
 */
export function rangeDivisor(count: number): number {
  if (!Number.isInteger(count) || count < 2) {
    throw new RangeError(`count must be a whole number from 2 upwards (got ${count}).`);
  }
  const kept = known.get(count);
  if (kept !== undefined) return kept;
  const rule = gaussLegendre(20);
  let sum = 0;
  for (let panel = 0; panel < 20; panel++) {
    for (let i = 0; i < 20; i++) {
      const x = 0.5 * panel + 0.25 * (1 + (rule.nodes[i] as number));
      const above = normalCdf(-x);
      sum += 0.25 * (rule.weights[i] as number) * (-Math.expm1(count * Math.log1p(-above)) - above ** count);
    }
  }
  known.set(count, 2 * sum);
  return 2 * sum;
}
