/** The smaller of two jointly normal strengths, in closed form (Clark, Operations Research 9, 1961). */
import { normalCdf, normalPdf } from '../numerics/normal.ts';

/** Mean and sd of one strength. */
export interface NormalStrength {
  readonly mean: number;
  readonly sd: number;
}

/**
 * Mean and sd of the smaller of two normals with correlation `rho`, and the chance of the first to be it.
 * @throws RangeError when rho lies outside [-1, 1], an sd is negative, or the two differ by a constant.
 */
export function smallerOfTwo(
  first: NormalStrength,
  second: NormalStrength,
  rho: number,
): { mean: number; sd: number; firstShares: [number, number] } {
  if (!(rho >= -1 && rho <= 1)) throw new RangeError(`rho must lie between -1 and 1 (got ${rho}).`);
  if (!(first.sd >= 0 && second.sd >= 0)) throw new RangeError('first.sd and second.sd must be 0 or more.');
  const theta = Math.sqrt(first.sd ** 2 + second.sd ** 2 - 2 * rho * first.sd * second.sd);
  if (!(theta > 0)) throw new RangeError('first and second must not differ by a constant only.');
  const a = (second.mean - first.mean) / theta;
  const share = normalCdf(a);
  const other = normalCdf(-a);
  // Deviations from the first mean keep the second moment from swamping the variance.
  const gap = second.mean - first.mean;
  const mean = gap * other - theta * normalPdf(a);
  const square = first.sd ** 2 * share + (gap ** 2 + second.sd ** 2) * other - gap * theta * normalPdf(a);
  return { mean: first.mean + mean, sd: Math.sqrt(square - mean * mean), firstShares: [share, other] };
}
