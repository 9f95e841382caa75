/** A record thinned for a small plot: the lowest and highest force in each of a few equal stretches of time. */
import { assertCount } from './checks.ts';
import type { Samples } from './trace.ts';

export interface OutlineStretch {
  readonly fromS: number;
  readonly toS: number;
  /** Null where the stretch has no sample. */
  readonly lowKn: number | null;
  readonly highKn: number | null;
}

/**
 * The outline in `stretches` pieces: no peak is lost, however thin the plot.
 * @throws RangeError when the lists differ in length, time does not rise, or stretches is no whole number from 1 upwards.
 */
export function traceOutline(timeS: Samples, forceKn: Samples, stretches: number): OutlineStretch[] {
  assertCount(stretches, 1, 'stretches');
  if (forceKn.length !== timeS.length) {
    throw new RangeError(`forceKn must be as long as timeS (got ${forceKn.length} and ${timeS.length}).`);
  }
  let start = Infinity;
  let end = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < timeS.length; i++) {
    const t = timeS[i] as number;
    if (!Number.isFinite(t)) continue;
    if (t < start) start = t;
    if (t > end) end = t;
  }
  if (!(end > start)) throw new RangeError('timeS must rise.');
  const low = new Float64Array(stretches).fill(Infinity);
  const high = new Float64Array(stretches).fill(Number.NEGATIVE_INFINITY);
  const width = (end - start) / stretches;
  for (let i = 0; i < timeS.length; i++) {
    const t = timeS[i] as number;
    const f = forceKn[i] as number;
    if (!Number.isFinite(t) || !Number.isFinite(f)) continue;
    const at = Math.min(stretches - 1, Math.floor((t - start) / width));
    if (f < (low[at] as number)) low[at] = f;
    if (f > (high[at] as number)) high[at] = f;
  }
  return Array.from({ length: stretches }, (_, at) => ({
    fromS: start + at * width,
    toS: start + (at + 1) * width,
    lowKn: (low[at] as number) < Infinity ? (low[at] as number) : null,
    highKn: (high[at] as number) > Number.NEGATIVE_INFINITY ? (high[at] as number) : null,
  }));
}
