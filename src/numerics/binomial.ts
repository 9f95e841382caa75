/** The binomial distribution: how many of n pulls end in one way, when each does with the same chance. */
import { betaSurvival, betaCdf } from './beta.ts';
import { logGamma } from './log-gamma.ts';

function assertArguments(k: number, n: number, chance: number): void {
  if (!(Number.isInteger(n) && n >= 1)) throw new RangeError(`n must be a whole number from 1 upwards (got ${n}).`);
  if (!Number.isInteger(k)) throw new RangeError(`k must be a whole number (got ${k}).`);
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`chance must lie between 0 and 1 (got ${chance}).`);
}

/** P(exactly k of n). */
export function binomialPmf(k: number, n: number, chance: number): number {
  assertArguments(k, n, chance);
  if (k < 0 || k > n) return 0;
  if (chance === 0) return k === 0 ? 1 : 0;
  if (chance === 1) return k === n ? 1 : 0;
  const ways = logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
  return Math.exp(ways + k * Math.log(chance) + (n - k) * Math.log1p(-chance));
}

/** P(at most k of n). */
export function binomialCdf(k: number, n: number, chance: number): number {
  assertArguments(k, n, chance);
  if (k < 0) return 0;
  return k >= n ? 1 : betaSurvival(chance, k + 1, n - k);
}

/** P(k or more of n). */
export function binomialAtLeast(k: number, n: number, chance: number): number {
  assertArguments(k, n, chance);
  if (k <= 0) return 1;
  return k > n ? 0 : betaCdf(chance, k, n - k + 1);
}
