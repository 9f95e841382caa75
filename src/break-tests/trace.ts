/**
 * One pull as force over time: what it says, and what is wrong with the record. Everything is read in a few passes over
 * the samples; nothing is allocated for a sample, so that hundreds of long records take moments.
 */
/** Equally long lists of samples: typed arrays or plain ones. A sample that is no finite number is missing. */
export type Samples = Float64Array | readonly number[];

export interface TraceOptions {
  /** Crosshead travel or elongation at each sample, in mm: gives energy. */
  readonly displacementMm?: Samples;
  /** Force at which the amplifier or cell ends; samples at or above it are cut off. */
  readonly rangeKn?: number;
  /** Seconds at the start that the record should rest unloaded; 0.2 unless said. */
  readonly restS?: number;
  /** A force that is gone for no longer than this and then back is a dropout of the record; 0.05 s unless said. */
  readonly dropoutS?: number;
}

/** What can be wrong with a record. The caller has words for each. */
export type TraceFlag =
  /** Force moves during the rest: the offset is not known and not taken off. */
  | 'no-rest'
  /** Offset larger than one hundredth of the peak. */
  | 'large-offset'
  /** The top is cut off, by the range or as a flat stretch of equal samples: the strength is at least the peak. */
  | 'saturated'
  /** The force vanishes for moments and is back. */
  | 'dropouts'
  /** The peak is one sample that stands alone above its neighbours. */
  | 'lone-peak'
  /** Samples without a number. */
  | 'missing'
  /** Time stands still or runs back; such samples are left out. */
  | 'time-disorder'
  /** Steps of time over three times the usual one. */
  | 'gaps'
  /** A gap, a dropout or missing samples lie within a tenth of a second of the peak. */
  | 'gap-at-peak'
  /** The force has not fallen by half by the end: nothing is seen to break. */
  | 'no-break'
  /** The force falls by a fifth of the peak or more before the peak and recovers: something slipped or broke early. */
  | 'early-drop';

export interface Dropout {
  readonly fromS: number;
  readonly toS: number;
  readonly samples: number;
}

export interface TraceReading {
  readonly samples: number;
  /** Samples that are used. */
  readonly used: number;
  readonly missing: number;
  readonly disorder: number;
  readonly durationS: number;
  /** From the usual step of time: the median of up to 255 steps across the record. */
  readonly sampleHz: number;
  /** Mean and scatter of the rest before the pull; null where the record does not rest. Already taken off the peak. */
  readonly offset: { readonly kn: number; readonly sdKn: number; readonly samples: number } | null;
  /** Largest force less the offset. */
  readonly peakKn: number;
  readonly peakAtS: number;
  /** Index of the peak in the record. */
  readonly peakIndex: number;
  /** When the pull began: the last moment before the peak at which the force was within 2 % of the peak of no load. */
  readonly onsetAtS: number;
  readonly timeToPeakS: number;
  /** Chord from the last rise through 20 % of the peak to the first reach of 80 % after it; null where there is none. */
  readonly rateKnPerS: number | null;
  /** Force over displacement from onset to peak, in J (kN mm), by trapezoids; null without displacement. */
  readonly energyJ: number | null;
  /** Force over time from onset to peak, in kN s, by trapezoids. */
  readonly impulseKnS: number;
  /** Samples in the flat top, or at the end of the range; 0 where it is not cut off. */
  readonly saturatedSamples: number;
  readonly dropouts: readonly Dropout[];
  readonly gaps: { readonly count: number; readonly longestS: number };
  readonly flags: readonly TraceFlag[];
}

function assertLengths(timeS: Samples, forceKn: Samples, displacementMm: Samples | undefined): void {
  if (timeS.length < 3) throw new RangeError(`timeS needs 3 samples (got ${timeS.length}).`);
  if (forceKn.length !== timeS.length) {
    throw new RangeError(`forceKn must be as long as timeS (got ${forceKn.length} and ${timeS.length}).`);
  }
  if (displacementMm && displacementMm.length !== timeS.length) {
    throw new RangeError(`displacementMm must be as long as timeS (got ${displacementMm.length} and ${timeS.length}).`);
  }
}

/** Median step of time, from up to 255 places across the record. */
function usualStep(timeS: Samples): number {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor((timeS.length - 1) / 255));
  for (let i = 0; i + 1 < timeS.length; i += stride) {
    // Over times that stand still or are missing to the next one.
    let next = i + 1;
    while (next < timeS.length && !((timeS[next] as number) > (timeS[i] as number))) next++;
    const step = (timeS[next] as number) - (timeS[i] as number);
    if (step < Infinity) steps.push(step);
  }
  if (steps.length === 0) throw new RangeError('timeS must rise.');
  steps.sort((a, b) => a - b);
  return steps[steps.length >> 1] as number;
}

/**
 * A top of over so many times as many equal samples as the longest other flat stretch above half the peak is a cut-off one:
 * coarse steps of a slow pull repeat a value, too, but everywhere. A lone sample is a stretch of one, so six are the fewest.
 */
const FLAT_TIMES = 5;
/** The most dropouts that are listed. */
const MOST_DROPOUTS = 200;

/**
 * Reads one record. Times in seconds, rising; forces in kN.
 * @throws RangeError when the lists differ in length, hold fewer than three usable samples, or no force rises above 0.
 */
export function readTrace(timeS: Samples, forceKn: Samples, options: TraceOptions = {}): TraceReading {
  const { displacementMm, rangeKn = Infinity, restS = 0.2, dropoutS = 0.05 } = options;
  assertLengths(timeS, forceKn, displacementMm);
  if (!(rangeKn > 0)) throw new RangeError(`rangeKn must be positive (got ${rangeKn}).`);
  if (!(restS > 0 && restS < Infinity)) throw new RangeError(`restS must be positive and finite (got ${restS}).`);
  if (!(dropoutS >= 0 && dropoutS < Infinity)) throw new RangeError(`dropoutS must be 0 or more (got ${dropoutS}).`);
  const total = timeS.length;
  const step = usualStep(timeS);

  // First pass: order, gaps, the raw peak, the rest.
  let missing = 0;
  let disorder = 0;
  let used = 0;
  let first = -1;
  let last = -1;
  let lastTime = Number.NEGATIVE_INFINITY;
  let gapCount = 0;
  let longestGap = 0;
  let rawPeak = Number.NEGATIVE_INFINITY;
  let rest = 0;
  let restSum = 0;
  let restSquares = 0;
  let restTimes = 0;
  let restProducts = 0;
  let restTimeSquares = 0;
  let restFirst = 0;
  // Marks the samples that count: both numbers are there, and time has risen.
  const counts = new Uint8Array(total);
  for (let i = 0; i < total; i++) {
    const t = timeS[i] as number;
    const f = forceKn[i] as number;
    if (!Number.isFinite(f) || !Number.isFinite(t)) {
      missing++;
      continue;
    }
    if (!(t > lastTime)) {
      disorder++;
      continue;
    }
    if (first < 0) {
      first = i;
      restFirst = f;
    } else if (t - lastTime > 3 * step) {
      gapCount++;
      longestGap = Math.max(longestGap, t - lastTime);
    }
    lastTime = t;
    last = i;
    counts[i] = 1;
    used++;
    if (f > rawPeak) rawPeak = f;
    const since = t - (timeS[first] as number);
    // Half a step of room: which samples belong to the rest must not hang on the last digit of a time.
    if (since < restS + 0.5 * step) {
      // About the first sample, so that a large offset costs no digits.
      const y = f - restFirst;
      rest++;
      restSum += y;
      restSquares += y * y;
      restTimes += since;
      restTimeSquares += since * since;
      restProducts += since * y;
    }
  }
  if (used < 3) throw new RangeError(`forceKn needs 3 usable samples (got ${used}).`);
  const start = timeS[first] as number;

  // The rest: its mean is the offset, unless it moves by more than a two-hundredth of the peak and than its own noise.
  let offset: TraceReading['offset'] = null;
  if (rest >= 3) {
    const mean = restSum / rest;
    const scatter = Math.max(0, restSquares - restSum * mean) / (rest - 1);
    const timeScatter = restTimeSquares - (restTimes * restTimes) / rest;
    const slope = (restProducts - restTimes * mean) / timeScatter;
    const drift = Math.abs(slope) * restS;
    const noise = Math.sqrt(Math.max(0, scatter - (slope * slope * timeScatter) / (rest - 1)));
    const level = restFirst + mean;
    const limit = Math.max(0.005 * (rawPeak - level), 6 * noise / Math.sqrt(rest));
    if (drift <= limit && level < 0.2 * rawPeak) offset = { kn: level, sdKn: Math.sqrt(scatter), samples: rest };
  }
  const base = offset?.kn ?? 0;
  const peak = rawPeak - base;
  if (!(peak > 0)) throw new RangeError(`forceKn must rise above 0 (its largest is ${rawPeak}).`);

  // Second pass: dropouts, the flat top, the peak's place, early drops.
  const dropouts: Dropout[] = [];
  let saturated = 0;
  let run = 0;
  let longestRun = 0;
  let otherRun = 0;
  let longestOther = 1;
  let previousRaw = Number.NaN;
  let previous = Number.NaN;
  let peakIndex = -1;
  let before = Number.NaN;
  let after = Number.NaN;
  let awaitingAfter = false;
  let goodForce = 0;
  let goodTime = start;
  let lostAt = -1;
  let lostSamples = 0;
  let highest = 0;
  let lowestSince = 0;
  let earlyDrop = false;
  for (let i = first; i <= last; i++) {
    if (counts[i] === 0) continue;
    const t = timeS[i] as number;
    const raw = forceKn[i] as number;
    const f = raw - base;
    if (awaitingAfter) {
      after = f;
      awaitingAfter = false;
    }
    if (raw === rawPeak && peakIndex < 0) {
      peakIndex = i;
      before = previous;
      awaitingAfter = true;
    }
    if (raw >= rangeKn) saturated++;
    run = raw === rawPeak ? run + 1 : 0;
    if (run > longestRun) longestRun = run;
    otherRun = raw === previousRaw && raw !== rawPeak ? otherRun + 1 : 1;
    if (otherRun > longestOther && f > 0.5 * peak) longestOther = otherRun;
    previousRaw = raw;
    previous = f;
    // Dropouts: a fall by half within one sample that is made good soon.
    if (lostAt >= 0) {
      if (t - goodTime > dropoutS + step) lostAt = -1;
      else if (f >= 0.8 * goodForce) {
        if (dropouts.length < MOST_DROPOUTS) dropouts.push({ fromS: timeS[lostAt] as number, toS: t, samples: lostSamples });
        lostAt = -1;
      } else lostSamples++;
    } else if (goodForce > 0.1 * peak && f < 0.5 * goodForce) {
      lostAt = i;
      lostSamples = 1;
    }
    if (lostAt < 0) {
      goodForce = f;
      goodTime = t;
      // Nothing rises above the peak, so what falls after it is no early drop.
      if (f > highest) {
        if (highest - lowestSince >= 0.2 * peak) earlyDrop = true;
        highest = f;
        lowestSince = f;
      } else if (f < lowestSince) lowestSince = f;
    }
  }
  const peakAt = timeS[peakIndex] as number;
  if (saturated === 0 && longestRun > FLAT_TIMES * longestOther) saturated = longestRun;

  // Backwards from the peak: onset, and the last rise through 20 %. Dropouts are stepped over.
  let drop = dropouts.length - 1;
  const inDropout = (t: number): boolean => {
    while (drop >= 0 && (dropouts[drop] as Dropout).fromS > t) drop--;
    const near = dropouts[drop];
    return near !== undefined && t < near.toS;
  };
  const quiet = Math.max(0.02 * peak, offset ? 3 * offset.sdKn : 0);
  let onset = first;
  let fifth = -1;
  for (let i = peakIndex; i >= first; i--) {
    if (counts[i] === 0 || inDropout(timeS[i] as number)) continue;
    const f = (forceKn[i] as number) - base;
    if (fifth < 0 && f <= 0.2 * peak) fifth = i;
    if (f <= quiet) {
      onset = i;
      break;
    }
  }
  const onsetAt = timeS[onset] as number;

  // Forwards from onset to peak: rate, impulse, energy.
  let impulse = 0;
  let energy = 0;
  let rate: number | null = null;
  let lowCross = Number.NaN;
  let previousT = Number.NaN;
  let previousF = 0;
  let previousD = 0;
  let nextDrop = 0;
  for (let i = onset; i <= peakIndex; i++) {
    const t = timeS[i] as number;
    const f = (forceKn[i] as number) - base;
    if (counts[i] === 0) continue;
    while (nextDrop < dropouts.length && (dropouts[nextDrop] as Dropout).toS <= t) nextDrop++;
    const near = dropouts[nextDrop];
    if (near && t >= near.fromS) continue;
    const d = displacementMm ? (displacementMm[i] as number) : 0;
    if (displacementMm && !Number.isFinite(d)) continue;
    if (!Number.isNaN(previousT)) {
      impulse += 0.5 * (f + previousF) * (t - previousT);
      energy += 0.5 * (f + previousF) * (d - previousD);
      // Behind the last sample below a fifth every force is above it.
      if (i > fifth) {
        const share = (level: number): number => previousT + ((level - previousF) / (f - previousF)) * (t - previousT);
        if (Number.isNaN(lowCross) && previousF <= 0.2 * peak) lowCross = share(0.2 * peak);
        if (rate === null && !Number.isNaN(lowCross) && f >= 0.8 * peak) rate = (0.6 * peak) / (share(0.8 * peak) - lowCross);
      }
    }
    previousT = t;
    previousF = f;
    previousD = d;
  }

  // What lies about the peak, and what comes after it.
  let fallen = false;
  let holeAtPeak = false;
  let lastSeen = Number.NaN;
  for (let i = first; i <= last; i++) {
    if (counts[i] === 0) continue;
    const t = timeS[i] as number;
    const f = (forceKn[i] as number) - base;
    if (t - lastSeen > 3 * step && t >= peakAt - 0.1 && lastSeen <= peakAt + 0.1) holeAtPeak = true;
    lastSeen = t;
    if (i > peakIndex && f < 0.5 * peak) {
      fallen = true;
      if (t > peakAt + 0.1) break;
    }
  }
  if (dropouts.some((each) => each.toS >= peakAt - 0.1 && each.fromS <= peakAt + 0.1)) holeAtPeak = true;
  const noise = offset ? 6 * offset.sdKn : 0;
  // Without a neighbour there is nothing to stand above.
  const alone = (side: number): boolean => peak - side > Math.max(0.15 * peak, noise);

  const flags: TraceFlag[] = [];
  if (!offset) flags.push('no-rest');
  else if (Math.abs(offset.kn) > 0.01 * peak) flags.push('large-offset');
  if (saturated > 0) flags.push('saturated');
  if (dropouts.length > 0) flags.push('dropouts');
  if (alone(before) && alone(after)) flags.push('lone-peak');
  if (missing > 0) flags.push('missing');
  if (disorder > 0) flags.push('time-disorder');
  if (gapCount > 0) flags.push('gaps');
  if (holeAtPeak) flags.push('gap-at-peak');
  if (!fallen) flags.push('no-break');
  if (earlyDrop) flags.push('early-drop');
  return {
    samples: total,
    used,
    missing,
    disorder,
    durationS: (timeS[last] as number) - start,
    sampleHz: 1 / step,
    offset,
    peakKn: peak,
    peakAtS: peakAt,
    peakIndex,
    onsetAtS: onsetAt,
    timeToPeakS: peakAt - onsetAt,
    rateKnPerS: rate,
    energyJ: displacementMm ? energy : null,
    impulseKnS: impulse,
    saturatedSamples: saturated,
    dropouts,
    gaps: { count: gapCount, longestS: longestGap },
    flags,
  };
}
