/** Kaplan and Meier's product-limit estimate: the share that breaks above each force, where some pulls are censored. */
import type { CensoredPulls } from './censored.ts';
import { assertForces, sorted } from './checks.ts';

export interface ProductLimitStep {
  readonly force: number;
  /** Share of pieces that breaks above this force. */
  readonly above: number;
  /** Breaks at exactly this force, and pulls that had come so far. */
  readonly breaks: number;
  readonly atRisk: number;
}

/**
 * The steps of the estimate, weakest first (JASA 53, 1958). Where a break and a censored pull share a force, the break
 * comes first. After the last censored pull the share is not known: there is no step for it.
 * @throws RangeError when nothing broke or a force is not positive.
 */
export function productLimit(pulls: CensoredPulls): ProductLimitStep[] {
  assertForces(pulls.broken, 1, 'broken');
  assertForces(pulls.atLeast ?? [], 0, 'atLeast');
  const broken = sorted(pulls.broken);
  const all = sorted([...broken, ...(pulls.atLeast ?? [])]);
  const steps: ProductLimitStep[] = [];
  let above = 1;
  let before = 0;
  for (let i = 0; i < broken.length; ) {
    const force = broken[i] as number;
    let breaks = 0;
    while (broken[i + breaks] === force) breaks++;
    while ((all[before] as number) < force) before++;
    const atRisk = all.length - before;
    above *= (atRisk - breaks) / atRisk;
    steps.push({ force, above, breaks, atRisk });
    i += breaks;
  }
  return steps;
}
