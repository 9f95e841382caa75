import { describe, expect, it } from 'vitest';
import { readTrace } from '../../../src/break-tests/trace.ts';
import { traceOutline } from '../../../src/break-tests/trace-outline.ts';
import { near, normals, seeded } from './near.ts';

/** A record: rest, a straight ramp, a break. All values follow from these numbers by hand. */
function pull({ hz = 500, restS = 1, rampS = 10, peakKn = 20, afterS = 1, offsetKn = 0, noise = 0, seed = 1 } = {}) {
  const count = Math.round((restS + rampS + afterS) * hz) + 1;
  const time = new Float64Array(count);
  const force = new Float64Array(count);
  const draw = normals(seeded(seed));
  for (let i = 0; i < count; i++) {
    const t = i / hz;
    time[i] = t;
    const ramp = t <= restS ? 0 : t <= restS + rampS + 1e-9 ? ((t - restS) / rampS) * peakKn : 0;
    force[i] = ramp + offsetKn + noise * draw();
  }
  return { time, force };
}

describe('one pull', () => {
  it('a straight ramp: 20 kN in 10 s after 1 s of rest, by hand', () => {
    const { time, force } = pull();
    const found = readTrace(time, force);
    near(found.peakKn, 20, 1e-12);
    near(found.peakAtS, 11, 1e-12);
    near(found.rateKnPerS as number, 2, 1e-9);
    near(found.sampleHz, 500, 1e-9);
    // Onset: where the ramp leaves 2 % of the peak, 0.4 kN, 0.2 s into it.
    expect(Math.abs(found.onsetAtS - 1.2)).toBeLessThan(0.003);
    near(found.timeToPeakS, found.peakAtS - found.onsetAtS, 1e-12);
    // Impulse of the triangle less its tip: (20 + 0.4) / 2 x 9.8.
    near(found.impulseKnS, 10.2 * 9.8, 1e-3);
    expect(found.energyJ).toBeNull();
    expect(found.offset).toEqual({ kn: 0, sdKn: 0, samples: 101 });
    expect(found.flags).toEqual([]);
  });

  it('energy under force over travel: 40 mm to 20 kN is 400 J, less the start of 0.16 J', () => {
    const { time, force } = pull();
    const displacementMm = time.map((t) => Math.max(0, t - 1) * 4);
    near(readTrace(time, force, { displacementMm }).energyJ as number, 400 - 0.5 * 0.4 * 0.8, 1e-4);
  });

  it('plain lists and typed arrays read alike', () => {
    const { time, force } = pull({ hz: 50 });
    expect(readTrace([...time], [...force])).toEqual(readTrace(time, force));
  });

  it('an offset before the pull is taken off and told', () => {
    const { time, force } = pull({ offsetKn: 0.7, noise: 0.01 });
    const found = readTrace(time, force);
    expect(Math.abs((found.offset?.kn as number) - 0.7)).toBeLessThan(0.01);
    expect(Math.abs((found.offset?.sdKn as number) - 0.01)).toBeLessThan(0.003);
    expect(Math.abs(found.peakKn - 20)).toBeLessThan(0.05);
    expect(found.flags).toEqual(['large-offset']);
  });

  it('a record that starts under load has no rest, and nothing is taken off', () => {
    const { time, force } = pull({ restS: 0 });
    const found = readTrace(time, force);
    expect(found.offset).toBeNull();
    expect(found.flags).toContain('no-rest');
    near(found.peakKn, 20, 1e-12);
  });

  it('a cut-off top is told, by its flatness and by the range', () => {
    const { time, force } = pull();
    const clipped = force.map((f) => Math.min(f, 15));
    const found = readTrace(time, clipped);
    expect(found.flags).toContain('saturated');
    expect(found.peakKn).toBe(15);
    expect(found.saturatedSamples).toBeGreaterThan(1000);
    expect(readTrace(time, force, { rangeKn: 20 }).flags).toContain('saturated');
    expect(readTrace(time, force, { rangeKn: 25 }).flags).toEqual([]);
  });

  it('coarse steps of a slow pull are no cut-off top', () => {
    const { time, force } = pull({ rampS: 50 });
    const coarse = force.map((f) => Math.round(f * 10) / 10);
    expect(readTrace(time, coarse).flags).not.toContain('saturated');
  });

  it('a dwell of equal samples on the way up does not hide a cut-off top', () => {
    const { time, force } = pull();
    const clipped = force.map((f) => Math.min(f, 15));
    for (let i = 1000; i < 2500; i++) clipped[i] = Math.min(clipped[i] as number, 2);
    expect(readTrace(time, clipped).flags).toContain('saturated');
  });

  it('the rest may drift by a two-hundredth of the peak in its 0.2 s, and by no more', () => {
    for (const [driftKn, rests] of [[0.08, true], [0.12, false]] as const) {
      const { time, force } = pull();
      const drifting = force.map((f, i) => (i / 500 <= 1 ? (i / 500 / 0.2) * driftKn : f));
      expect(readTrace(time, drifting).offset !== null).toBe(rests);
    }
  });

  it('dropouts are listed, and cost neither peak nor impulse', () => {
    const { time, force } = pull();
    const whole = readTrace(time, force);
    for (const from of [2500, 4000]) for (let i = from; i < from + 6; i++) force[i] = 0;
    const found = readTrace(time, force);
    expect(found.dropouts.map(({ samples }) => samples)).toEqual([6, 6]);
    near(found.dropouts[0]!.fromS, 5, 1e-12);
    expect(found.flags).toEqual(['dropouts']);
    near(found.peakKn, 20, 1e-12);
    near(found.impulseKnS, whole.impulseKnS, 1e-5);
    near(found.timeToPeakS, whole.timeToPeakS, 1e-12);
  });

  it('missing samples, gaps and disordered time are counted', () => {
    const { time, force } = pull();
    for (let i = 2000; i < 2020; i++) force[i] = Number.NaN;
    time[3000] = time[2999] as number;
    const found = readTrace(time, force);
    expect(found).toMatchObject({ missing: 20, disorder: 1, gaps: { count: 1 } });
    near(found.gaps.longestS, 21 / 500, 1e-9);
    expect(found.flags).toEqual(['missing', 'time-disorder', 'gaps']);
    near(found.peakKn, 20, 1e-12);
    expect(Number.isFinite(found.impulseKnS)).toBe(true);
  });

  it('a hole at the peak is told: the peak may lie in it', () => {
    const { time, force } = pull();
    for (let i = 5490; i <= 5500; i++) force[i] = Number.NaN;
    expect(readTrace(time, force).flags).toContain('gap-at-peak');
  });

  it('a lone sample above all others is told', () => {
    const { time, force } = pull();
    force[3000] = 40;
    expect(readTrace(time, force).flags).toContain('lone-peak');
  });

  it('no fall at the end: nothing broke', () => {
    const { time, force } = pull({ afterS: 0 });
    expect(readTrace(time, force).flags).toEqual(['no-break']);
  });

  it('a slip on the way up is told', () => {
    const { time, force } = pull();
    for (let i = 3000; i < 3500; i++) force[i] = (force[i] as number) * 0.5;
    expect(readTrace(time, force).flags).toContain('early-drop');
  });

  it('is the same for a record shifted in time and scaled in force', () => {
    const { time, force } = pull({ noise: 0.02, seed: 8 });
    const one = readTrace(time, force);
    const two = readTrace(time.map((t) => t + 1000), force.map((f) => f * 0.5));
    near(two.peakKn, one.peakKn / 2, 1e-12);
    near(two.timeToPeakS, one.timeToPeakS, 1e-9);
    near(two.rateKnPerS as number, (one.rateKnPerS as number) / 2, 1e-6);
    expect(two.flags).toEqual(one.flags);
  });

  it('refuses by name', () => {
    expect(() => readTrace([0, 1], [0, 1])).toThrow('timeS needs 3 samples (got 2).');
    expect(() => readTrace([0, 1, 2], [0, 1])).toThrow('forceKn must be as long as timeS (got 2 and 3).');
    expect(() => readTrace([0, 1, 2], [0, 1, 2], { displacementMm: [1] })).toThrow('displacementMm must be as long as timeS (got 1 and 3).');
    expect(() => readTrace([2, 1, 0], [0, 1, 2])).toThrow('timeS must rise.');
    expect(() => readTrace([0, 1, 2], [Number.NaN, Number.NaN, 1])).toThrow('forceKn needs 3 usable samples (got 1).');
    expect(() => readTrace([0, 1, 2], [-1, -2, -1])).toThrow('forceKn must rise above 0');
    expect(() => readTrace([0, 1, 2], [0, 1, 2], { restS: 0 })).toThrow('restS must be positive and finite (got 0).');
  });

  it('gives no NaN, whatever the record: 2,000 random ones (fixed seed)', () => {
    const random = seeded(99);
    for (let round = 0; round < 2000; round++) {
      const count = 3 + Math.floor(random() * 60);
      const time = Array.from({ length: count }, (_, i) => (random() < 0.05 ? random() * 5 : i * 0.01));
      const force = Array.from({ length: count }, () => (random() < 0.1 ? Number.NaN : random() < 0.1 ? 0 : Math.round(random() * 40) / 2 - 1));
      try {
        const text = JSON.stringify(readTrace(time, force), (_, value) => (typeof value === 'number' && !Number.isFinite(value) ? 'NOT FINITE' : value));
        expect(text).not.toContain('NOT FINITE');
      } catch (error) {
        expect(error).toBeInstanceOf(RangeError);
      }
    }
  });

  it('two hundred records of a minute at 500 Hz take moments', () => {
    const { time, force } = pull({ rampS: 58, noise: 0.02 });
    readTrace(time, force);
    const start = performance.now();
    for (let i = 0; i < 200; i++) readTrace(time, force);
    // Six million samples; a second is far more than they need, on any machine that is not stuck.
    expect(performance.now() - start).toBeLessThan(3000);
  });
});

describe('outline for a small plot', () => {
  it('keeps every peak', () => {
    const { time, force } = pull({ noise: 0.1 });
    const outline = traceOutline(time, force, 60);
    expect(outline).toHaveLength(60);
    expect(Math.max(...outline.map((each) => each.highKn as number))).toBe(Math.max(...force));
    expect(Math.min(...outline.map((each) => each.lowKn as number))).toBe(Math.min(...force));
  });

  it('an empty stretch has no force', () => {
    const [first, second, third] = traceOutline([0, 1, 2, 9], [1, 2, 3, 4], 3);
    expect(first).toMatchObject({ fromS: 0, toS: 3, lowKn: 1, highKn: 3 });
    expect(second).toMatchObject({ lowKn: null, highKn: null });
    expect(third).toMatchObject({ lowKn: 4, highKn: 4 });
    expect(() => traceOutline([1, 1], [1, 1], 3)).toThrow('timeS must rise.');
    expect(() => traceOutline([0, 1], [1], 3)).toThrow('forceKn must be as long as timeS (got 1 and 2).');
  });
});
