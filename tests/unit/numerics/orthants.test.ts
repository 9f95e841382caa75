/** Orthant probabilities against plain integrals, and what must hold of any of them. */
import { describe, expect, it } from 'vitest';
import { bivariateOrthant, orthant } from '../../../src/numerics/multinormal.ts';
import { normalCdf, normalPdf } from '../../../src/numerics/normal.ts';

/** Integral of phi(x) Phi((rho x - k) / sqrt(1 - rho^2)) from h upwards, by Simpson's rule in steps of 1/2000. */
function plainIntegral(h: number, k: number, rho: number): number {
  const scale = Math.sqrt((1 - rho) * (1 + rho));
  const from = Math.max(h, -9);
  const steps = 2 * Math.ceil((9 - from) * 1000);
  const width = (9 - from) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const x = from + i * width;
    sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * normalPdf(x) * normalCdf((rho * x - k) / scale);
  }
  return (sum * width) / 3;
}

const LIMITS = [[0.3, -0.4], [-1.2, -0.9], [1.5, 1.4], [2.5, -2], [-0.6, 0.7], [-3, 1]] as const;

describe('of two variables', () => {
  it.each([0.05, 0.2, 0.5, 0.8, 0.92, 0.93, 0.97, 0.995, 0.9999])('agree with the integral at correlations of +-%d', (size) => {
    for (const rho of [size, -size]) {
      for (const [h, k] of LIMITS) {
        expect(Math.abs(bivariateOrthant(h, k, rho) - plainIntegral(h, k, rho))).toBeLessThan(2e-12);
        expect(Math.abs(bivariateOrthant(k, h, rho) - plainIntegral(h, k, rho))).toBeLessThan(2e-12);
      }
    }
  });

  it('with nearly equal limits, where the far end of the path matters most, too', () => {
    for (const rho of [0.95, 0.999, 0.999999]) {
      for (const h of [-1, 0, 0.5, 2]) {
        // X = Y but for a whisker: P = P(X > h) less half the mean of |X - Y| times the density, to the first order.
        const whisker = Math.sqrt((1 - rho) / Math.PI) * normalPdf(h);
        expect(Math.abs(bivariateOrthant(h, h, rho) - normalCdf(-h) + whisker)).toBeLessThan(0.2 * (1 - rho));
      }
    }
  });

  it('a limit beyond 38 decides: nothing passes a high one, everything a low one', () => {
    for (const rho of [-0.99, -0.5, 0, 0.5, 0.99]) {
      for (const far of [38, 60, Infinity]) {
        expect(bivariateOrthant(far, -1, rho)).toBe(0);
        expect(bivariateOrthant(-1, far, rho)).toBe(0);
        expect(bivariateOrthant(-far, 0.7, rho)).toBe(normalCdf(-0.7));
        expect(bivariateOrthant(0.7, -far, rho)).toBe(normalCdf(-0.7));
      }
    }
  });

  it('is never below 0, also where both can hardly be', () => {
    for (const rho of [-1, -0.9999, -0.95, -0.9, -0.4]) {
      for (const h of [3, 6, 12]) {
        expect(bivariateOrthant(h, h, rho)).toBeGreaterThanOrEqual(0);
        expect(bivariateOrthant(h, h, rho)).toBeLessThan(normalCdf(-h) ** 2 + 1e-18);
      }
    }
    expect(bivariateOrthant(0.5, -0.2, -1)).toBe(0);
    expect(bivariateOrthant(-0.5, -0.2, -1.0000000001)).toBeCloseTo(normalCdf(0.5) - normalCdf(-0.2), 14);
    expect(bivariateOrthant(-0.5, -0.2, 1.0000000001)).toBeCloseTo(normalCdf(0.2), 14);
  });
});

/** A stream of numbers between 0 and 1, the same each time (Park and Miller, CACM 31, 1988). */
function stream(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

interface Case {
  readonly limits: number[];
  readonly matrix: number[][];
}

/** Variables of two common factors and their own scatter: any such matrix is valid. */
function someCase(count: number, next: () => number, tied: number): Case {
  const loads = Array.from({ length: count }, () => [2 * next() - 1, 2 * next() - 1].map((x) => x * tied) as [number, number]);
  const matrix = loads.map(([a, b], i) =>
    loads.map(([c, d], j) => (i === j ? 1 : (a * c + b * d) / Math.sqrt((1 + a * a + b * b) * (1 + c * c + d * d)))),
  );
  return { limits: loads.map(() => 2.4 * next() - 1.4), matrix };
}

const chance = ({ limits, matrix }: Case): number => orthant(limits.length, limits, matrix.flat());
const only = ({ limits, matrix }: Case, kept: number[]): Case => ({
  limits: kept.map((i) => limits[i] as number),
  matrix: kept.map((i) => kept.map((j) => (matrix[i] as number[])[j] as number)),
});
/** The case with variable `turned` looked at from the other side. */
const turn = ({ limits, matrix }: Case, turned: number): Case => ({
  limits: limits.map((h, i) => (i === turned ? -h : h)),
  matrix: matrix.map((row, i) => row.map((r, j) => ((i === turned) !== (j === turned) ? -r : r))),
});

// Six take long where the code is changed to see what notices; what they add over five is depth alone.
const SIZES = 'MUTATED_ROOM' in process.env ? [3, 4, 5] : [3, 4, 5, 6];

describe('of many variables', () => {
  it.each(SIZES)('%d: a variable above and below its limit make up the others without it', (count) => {
    const next = stream(7 + count);
    for (const tied of [0.3, 1, 2.5]) {
      const each = someCase(count, next, tied);
      for (let gone = 0; gone < count; gone++) {
        const rest = only(each, Array.from({ length: count }, (_, i) => i).filter((i) => i !== gone));
        expect(Math.abs(chance(each) + chance(turn(each, gone)) - chance(rest))).toBeLessThan(3e-9);
      }
    }
  });

  it.each(SIZES)('%d: their order does not matter', (count) => {
    const next = stream(70 + count);
    for (const tied of [0.5, 2]) {
      const each = someCase(count, next, tied);
      for (let by = 1; by < count; by++) {
        const turned = Array.from({ length: count }, (_, i) => (i + by) % count);
        expect(Math.abs(chance(only(each, turned)) - chance(each))).toBeLessThan(3e-9);
        expect(Math.abs(chance(only(each, turned.reverse())) - chance(each))).toBeLessThan(3e-9);
      }
    }
  });

  it.each([3, 4, 5])('%d with nothing in common multiply, and limits are left as they were', (count) => {
    const limits = [0.2, -1, 0.6, -0.3, 1.1].slice(0, count);
    const matrix = Array.from({ length: count * count }, (_, i) => (i % (count + 1) === 0 ? 1 : 0));
    const before = [...limits];
    expect(orthant(count, limits, matrix)).toBeCloseTo(limits.reduce((product, h) => product * normalCdf(-h), 1), 14);
    expect(limits).toEqual(before);
  });

  it.each(SIZES)('%d: one that surely passes drops out, one that cannot pass ends it, one that is another\'s twin joins it', (count) => {
    const next = stream(700 + count);
    const each = someCase(count, next, 1.2);
    for (let at = 0; at < count; at++) {
      const others = only(each, Array.from({ length: count }, (_, i) => i).filter((i) => i !== at));
      const with_ = (h: number): Case => ({ ...each, limits: each.limits.map((own, i) => (i === at ? h : own)) });
      for (const far of [38, 50, Infinity]) {
        expect(Math.abs(chance(with_(-far)) - chance(others))).toBeLessThan(1e-9);
        expect(chance(with_(far))).toBe(0);
      }
      // The twin of `at`, at the end of the list, with a lower and with a higher limit.
      for (const shift of [-0.5, 0.5]) {
        const own = each.limits[at] as number;
        const twin: Case = {
          limits: [...each.limits, own + shift],
          matrix: [...each.matrix.map((row) => [...row, row[at] as number]), [...(each.matrix[at] as number[]), 1]],
        };
        expect(chance(twin)).toBe(chance(with_(Math.max(own, own + shift))));
      }
    }
  });

  it.each([
    ['weakly tied', [0.3, -0.2, 0.25, 0.35, -0.1]],
    ['tied', [0.7, 0.6, -0.55, 0.65, 0.75]],
    ['closely tied', [0.88, 0.85, 0.9, -0.92, 0.86]],
    ['nearly one', [0.98, 0.975, 0.985, 0.97, 0.99]],
  ] as const)('%s by one common factor agree with the plain integral over it', (_, loadings) => {
    for (const shift of [-0.8, 0, 0.6]) {
      for (const count of [3, 4, 5]) {
        const loading = loadings.slice(0, count);
        const limits = [0.1, -0.3, 0.4, -0.2, 0.25].slice(0, count).map((h) => h + shift);
        const matrix = loading.flatMap((a, i) => loading.map((b, j) => (i === j ? 1 : a * b)));
        const steps = 8000;
        let sum = 0;
        for (let i = 0; i <= steps; i++) {
          const z = -8 + (16 * i) / steps;
          let product = (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * normalPdf(z);
          loading.forEach((a, k) => {
            product *= normalCdf((a * z - (limits[k] as number)) / Math.sqrt(1 - a * a));
          });
          sum += product;
        }
        expect(Math.abs(orthant(count, limits, matrix) - (sum * 16) / steps / 3), `${count} at ${shift}`).toBeLessThan(1e-13);
      }
    }
  });

  it.each([3, 4, 5])('%d, of which one is the mirror of another: what passes between the two limits, and nothing where they cross', (count) => {
    const next = stream(31 + count);
    const each = someCase(count - 1, next, 1);
    for (let at = 0; at < count - 1; at++) {
      for (const upper of [-1.3, 0.2, 1.5]) {
        // The mirror passes where the variable itself stays below `upper`.
        const mirrored: Case = {
          limits: [...each.limits, -upper],
          matrix: [...each.matrix.map((row) => [...row, -(row[at] as number)]), [...(each.matrix[at] as number[]).map((r) => -r), 1]],
        };
        const above = (h: number): number => chance({ ...each, limits: each.limits.map((own, i) => (i === at ? h : own)) });
        const expected = upper > (each.limits[at] as number) ? chance(each) - above(upper) : 0;
        for (const order of [mirrored, only(mirrored, Array.from({ length: count }, (_, i) => count - 1 - i))]) {
          expect(Math.abs(chance(order) - expected)).toBeLessThan(1e-9);
        }
      }
    }
  });

  it('eight with nothing in common multiply, too', () => {
    const limits = Array.from({ length: 8 }, (_, i) => -0.2 * i);
    const matrix = Array.from({ length: 64 }, (_, i) => (i % 9 === 0 ? 1 : 0));
    expect(orthant(8, limits, matrix)).toBeCloseTo(limits.reduce((product, h) => product * normalCdf(-h), 1), 14);
  });

  it('none at all is certain, one is the normal tail, and a certain crowd passes', () => {
    expect(orthant(0, [], [])).toBe(1);
    expect(orthant(1, [0.4], [1])).toBe(normalCdf(-0.4));
    expect(orthant(3, [-50, -50, -50], [1, 0.2, 0.3, 0.2, 1, 0.1, 0.3, 0.1, 1])).toBe(1);
    expect(orthant(4, [-50, 0.4, -50, -50], [1, 0.2, 0.3, 0.1, 0.2, 1, 0.1, 0, 0.3, 0.1, 1, 0.2, 0.1, 0, 0.2, 1])).toBe(normalCdf(-0.4));
  });

  it('of variables that add up to nothing is what the plane leaves: three at 120 degrees pass 0 together never, two of them 1 in 6', () => {
    const plane = [1, -0.5, -0.5, -0.5, 1, -0.5, -0.5, -0.5, 1];
    expect(orthant(3, [0, 0, 0], plane)).toBeLessThan(1e-7);
    expect(orthant(3, [0, 0, -50], plane)).toBeCloseTo(1 / 6, 12);
  });
});
