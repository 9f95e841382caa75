/** The root finder and what inverts distributions with it: the root, its guards, and how many looks it takes. */
import { describe, expect, it } from 'vitest';
import { invertTails } from '../../../src/numerics/invert.ts';
import { findRoot } from '../../../src/numerics/roots.ts';

/** Root and number of times that f was asked. */
function asked(f: (x: number) => number, low: number, high: number, tolerance?: number): { root: number; looks: number } {
  let looks = 0;
  const counted = (x: number): number => {
    looks++;
    return f(x);
  };
  return { root: findRoot(counted, low, high, tolerance), looks };
}

describe('the root finder', () => {
  it('takes an end that is the root, without a further look', () => {
    expect(asked((x) => x - 1, 1, 5)).toEqual({ root: 1, looks: 2 });
    expect(asked((x) => x - 5, 1, 5)).toEqual({ root: 5, looks: 2 });
    // Regula falsi meets the root of a straight line at once.
    expect(asked((x) => x - 3, 1, 5)).toEqual({ root: 3, looks: 3 });
  });

  it('needs half the looks of halving, which takes 47 and more for fourteen figures', () => {
    for (const [f, low, high, root] of [
      [Math.log, 0.3, 2.5, 1],
      [(x: number) => Math.exp(x) - 3, 0, 2, Math.log(3)],
      [(x: number) => x ** 3 - 5, 0, 4, Math.cbrt(5)],
      [(x: number) => 5 - x ** 3, 0, 4, Math.cbrt(5)],
      [(x: number) => x * x - 2, 0, 2, Math.SQRT2],
    ] as const) {
      const found = asked(f, low, high);
      expect(found.root).toBeCloseTo(root, 14);
      expect(found.looks).toBeLessThanOrEqual(Math.log2((high - low) / 1e-14) / 2);
    }
  });

  it('is never slower than three times halving, however flat or steep the function', () => {
    const steep = asked((x) => Math.expm1(80 * (x - 0.3)), 0, 1);
    expect(steep.root).toBeCloseTo(0.3, 13);
    expect(steep.looks).toBeLessThanOrEqual(40);
    // x^9 is so flat at its root that every x below 1e-36 gives 0.
    expect(Math.abs(asked((x) => x ** 9, -1, 1.5).root)).toBeLessThan(1e-14);
    expect(asked((x) => x ** 9, -1, 1.5).looks).toBeLessThanOrEqual(3 * 48);
    const step = asked((x) => (x < 0.7 ? -1e-9 : 1), 0, 1);
    expect(step.root).toBeCloseTo(0.7, 13);
    expect(step.looks).toBeLessThanOrEqual(3 * 48);
  });

  it('stops as soon as the bracket is as narrow as asked, in figures of the root where that is large', () => {
    for (const [scale, tolerance] of [[1, 1e-3], [1, 1e-9], [1e6, 1e-3], [1e6, 1e-9]] as const) {
      const { root, looks } = asked((x) => Math.atan(x - 2 * scale), -scale, 5 * scale, tolerance);
      expect(Math.abs(root - 2 * scale)).toBeLessThanOrEqual(tolerance * Math.max(1, 2 * scale));
      expect(looks).toBeLessThanOrEqual(3 * Math.ceil(Math.log2(6 / tolerance)) + 3);
    }
    // A jump: nothing but halving helps, so a coarse tolerance must cost fewer looks.
    const jump = (x: number): number => (x < 1e6 / 3 ? -1 : 1);
    expect(asked(jump, 0, 1e6, 1e-3).looks).toBeLessThan(asked(jump, 0, 1e6, 1e-12).looks);
    // Halving takes a width of a million to one of 333 in twelve steps, after a look at each end.
    expect(asked(jump, 0, 1e6, 1e-3).looks).toBeLessThanOrEqual(14);
  });

  it('gives the nearest place that it looked at where it stops early, and stops where no double lies between the ends', () => {
    for (const [f, low, high] of [[Math.log, 0.3, 2.5], [(x: number) => Math.exp(x) - 3, 0, 2], [(x: number) => x ** 3 - 5, 0, 4], [(x: number) => x * x - 2, 0, 2], [(x: number) => 2 - x * x, 0, 2]] as const) {
      for (const tolerance of [0.5, 0.2, 0.05, 0.01]) {
        const seen: number[] = [];
        const root = findRoot((x) => {
          seen.push(Math.abs(f(x)));
          return f(x);
        }, low, high, tolerance);
        expect(Math.abs(f(root))).toBe(Math.min(...seen));
      }
      expect(asked(f, low, high, 0).looks).toBeLessThan(60);
    }
  });

  it('does not mind which end is which, nor the sign of the slope', () => {
    expect(findRoot((x) => x * x - 2, 2, 0)).toBeCloseTo(Math.SQRT2, 14);
    expect(findRoot((x) => 2 - x * x, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
    expect(findRoot((x) => x ** 3 + 8, -5, -1)).toBeCloseTo(-2, 13);
  });

  it('refuses what gives no number, at the ends or between them', () => {
    expect(() => findRoot(() => Number.NaN, 0, 1)).toThrow('low and high must enclose a change of sign (got f(0) = NaN, f(1) = NaN).');
    expect(() => findRoot((x) => (x > 0.2 && x < 0.8 ? Number.NaN : x - 0.5), 0, 1)).toThrow('f gave no number at 0.5.');
    expect(() => findRoot((x) => x + 1, 0, 1)).toThrow(RangeError);
    expect(() => findRoot((x) => -x - 1, 0, 1)).toThrow(RangeError);
  });
});

describe('inverting a distribution by its tails', () => {
  // The logistic distribution: F(v) = 1 / (1 + exp(-v)), so that v = ln(p / (1 - p)).
  const below = (v: number): number => 1 / (1 + Math.exp(-v));
  const above = (v: number): number => 1 / (1 + Math.exp(v));

  it('finds the log odds from a start on either side, far or near, in both tails', () => {
    for (const p of [1e-250, 1e-9, 0.2, 0.5, 0.500001, 0.9, 1 - 1e-9, 1 - 1e-12]) {
      const expected = Math.log(p) - Math.log1p(-p);
      for (const start of [-30, -1, 0, 0.5, 40]) {
        for (const stride of [0.01, 3]) {
          expect(Math.abs(invertTails(below, above, p, start, stride) - expected)).toBeLessThan(1e-13 * Math.max(1, Math.abs(expected)));
        }
      }
    }
  });

  it('takes the start where it is the answer, with a single look', () => {
    let looks = 0;
    const counted = (v: number): number => {
      looks++;
      return below(v);
    };
    expect(invertTails(counted, above, 0.5, 0, 1)).toBe(0);
    expect(looks).toBe(1);
  });

  it('widens its steps, so that a start a thousand strides off costs few looks', () => {
    let looks = 0;
    const counted = (tail: (v: number) => number) => (v: number): number => {
      looks++;
      return tail(v);
    };
    invertTails(counted(below), counted(above), 1e-40, 100, 0.1);
    // The steps grow by 1.6: the sum 0.1 (1.6^n - 1) / 0.6 passes 192 at n = 15.
    expect(looks).toBeLessThan(40);
  });
});
