import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalCdf, normalPdf, normalQuantile } from '../../../src/numerics/normal.ts';
import {
  type ChainLink,
  firstShares,
  interference,
  meanOfMinimum,
  mergeShared,
  quantile,
  quantiles,
  survival,
  winShare,
} from '../../../src/strength/chain.ts';
import type { Distribution } from '../../../src/strength/distribution.ts';
import { gaussHermite } from '../../support/gauss-hermite.ts';

const seeded = { seed: 20261124, numRuns: 150 };

const spread = fc.double({ min: 0.01, max: 0.4, noNaN: true });
const loading = fc.oneof(fc.constant(0), fc.double({ min: -0.3, max: 0.3, noNaN: true }));
const positiveLoading = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 0.3, noNaN: true }));

function chainOf(least: number, most: number, load = loading): fc.Arbitrary<ChainLink[]> {
  return fc.integer({ min: 0, max: 3 }).chain((factors) =>
    fc.array(
      fc.record({
        muLog: fc.double({ min: 2, max: 3.6, noNaN: true }),
        shared: fc.array(load, { minLength: factors, maxLength: factors }),
        own: spread,
      }),
      { minLength: least, maxLength: most },
    ),
  );
}

/** Width of a 90 % interval in ln. */
function logWidth(links: readonly ChainLink[]): number {
  const [low, high] = quantiles(links, [0.05, 0.95]) as [number, number];
  return Math.log(high / low);
}

/** Seeded normal draws (mulberry32 and the inverse cdf): simulation lives in tests only. */
function draws(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return normalQuantile((((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296);
  };
}

/** One draw of each link, given the shared factors; a floored link by the inverse of its truncated tail. */
function drawLinks(links: readonly ChainLink[], z: readonly number[], next: () => number): number[] {
  return links.map((link) => {
    const middle = link.shared.reduce((sum, a, j) => sum + a * (z[j] as number), link.muLog);
    const e = next();
    if (link.floor === undefined) return Math.exp(middle + link.own * e);
    const edge = (Math.log(link.floor) - middle) / link.own;
    return Math.exp(middle - link.own * normalQuantile(normalCdf(e) * normalCdf(-edge)));
  });
}

/**
 * A chain with floors and at most one shared factor, integrated without the engine: given the factor (Hermite) all
 * links are independent, and between the floors Simpson's rule runs over ln force.
 */
function integrated(links: readonly ChainLink[]): { shares: number[]; mean: number } {
  const floors = links.flatMap(({ floor }) => (floor === undefined ? [] : [Math.log(floor)])).sort((a, b) => a - b);
  // From where all of these chains still stand to where none does.
  const ends = [Math.log(3), ...floors, Math.log(80)];
  const { nodes, weights } = gaussHermite(links.some((link) => link.shared.some((a) => a !== 0)) ? 30 : 1);
  const shares = links.map(() => 0);
  let mean = 3;
  nodes.forEach((z, k) => {
    for (let e = 0; e + 1 < ends.length; e++) {
      const from = ends[e] as number;
      const width = (ends[e + 1] as number) - from;
      const steps = 6000;
      for (let s = 0; s <= steps; s++) {
        const u = from + (width * s) / steps;
        const simpson = s === 0 || s === steps ? 1 : s % 2 === 1 ? 4 : 2;
        const weight = ((weights[k] as number) * simpson * width) / steps / 3;
        const tails: number[] = [];
        const densities: number[] = [];
        for (const link of links) {
          const x = (u - link.muLog - (link.shared[0] ?? 0) * z) / link.own;
          const kept = link.floor === undefined ? 1 : normalCdf((link.muLog - Math.log(link.floor)) / link.own);
          // At the end of a panel its own side counts: below the floor up to it, above from it on.
          const isBelow = link.floor !== undefined && from + width / 2 < Math.log(link.floor);
          tails.push(isBelow ? 1 : normalCdf(-x) / kept);
          densities.push(isBelow ? 0 : normalPdf(x) / link.own / kept);
        }
        const product = tails.reduce((a, b) => a * b, 1);
        mean += weight * Math.exp(u) * product;
        links.forEach((_, i) => {
          const others = tails.reduce((a, b, j) => (j === i ? a : a * b), 1);
          shares[i] = (shares[i] as number) + weight * (densities[i] as number) * others;
        });
      }
    }
  });
  return { shares, mean };
}

describe('first shares', () => {
  it('sum to 1 and lie between 0 and 1', () => {
    fc.assert(
      fc.property(chainOf(1, 5), (links) => {
        const shares = firstShares(links);
        expect(shares).toHaveLength(links.length);
        for (const share of shares) expect(share >= 0 && share <= 1).toBe(true);
        expect(Math.abs(shares.reduce((sum, share) => sum + share, 0) - 1)).toBeLessThan(1e-6);
      }),
      seeded,
    );
  });

  it('do not change when the links stand in another order, or all are stronger by one factor', () => {
    fc.assert(
      fc.property(chainOf(2, 4), (links) => {
        const shares = firstShares(links);
        const turned = firstShares([...links].reverse()).reverse();
        const raised = firstShares(links.map((link) => ({ ...link, muLog: link.muLog + 0.7 })));
        shares.forEach((share, i) => {
          expect(Math.abs((turned[i] as number) - share)).toBeLessThan(1e-7);
          expect(Math.abs((raised[i] as number) - share)).toBeLessThan(1e-9);
        });
      }),
      seeded,
    );
  });

  it('of like links are equal, and certain ties are split', () => {
    const like = { muLog: 3, shared: [0.1, -0.2], own: 0.07 };
    for (const share of firstShares([like, like, like])) expect(share).toBeCloseTo(1 / 3, 12);
    const certain = { muLog: 3, shared: [0.1], own: 0 };
    expect(firstShares([certain, certain])).toEqual([0.5, 0.5]);
    expect(firstShares([certain, { ...certain, muLog: 3.1 }])).toEqual([1, 0]);
  });

  it('agree with summing over the shared factor and the strength of the first (Hermite and a fine grid)', () => {
    const links = [
      { muLog: 2.7, shared: [0.1], own: 0.06 },
      { muLog: 2.8, shared: [0.05], own: 0.12 },
      { muLog: 2.75, shared: [-0.08], own: 0.09 },
    ];
    const { nodes, weights } = gaussHermite(120);
    const expected = links.map((link, i) => {
      let sum = 0;
      nodes.forEach((z, k) => {
        nodes.forEach((e, m) => {
          const u = link.muLog + link.shared[0]! * z + link.own * e;
          let product = weights[k]! * weights[m]!;
          links.forEach((other, j) => {
            if (j !== i) product *= normalCdf((other.muLog + other.shared[0]! * z - u) / other.own);
          });
          sum += product;
        });
      });
      return sum;
    });
    firstShares(links).forEach((share, i) => {
      expect(Math.abs(share - expected[i]!)).toBeLessThan(1e-10);
    });
  });
});

describe('the minimum', () => {
  it('is never above any of its links: survival, quantiles and mean', () => {
    fc.assert(
      fc.property(chainOf(2, 4), fc.double({ min: 3, max: 60, noNaN: true }), (links, x) => {
        const together = survival(links, x);
        const [low, middle, high] = quantiles(links, [0.05, 0.5, 0.95]) as [number, number, number];
        const mean = meanOfMinimum(links);
        for (const link of links) {
          expect(together).toBeLessThanOrEqual(survival([link], x) + 1e-8);
          expect(low).toBeLessThanOrEqual(quantile([link], 0.05) * (1 + 1e-7));
          expect(middle).toBeLessThanOrEqual(quantile([link], 0.5) * (1 + 1e-7));
          expect(high).toBeLessThanOrEqual(quantile([link], 0.95) * (1 + 1e-7));
          expect(mean).toBeLessThanOrEqual(meanOfMinimum([link]) * (1 + 1e-8));
        }
      }),
      seeded,
    );
  });

  it('has quantiles that survival confirms', () => {
    fc.assert(
      fc.property(chainOf(1, 4), fc.double({ min: 0.002, max: 0.998, noNaN: true }), (links, p) => {
        expect(Math.abs(1 - survival(links, quantile(links, p)) - p)).toBeLessThan(1e-8);
      }),
      seeded,
    );
  });

  it('has the same law after its shared factors are merged, with no more factors than before', () => {
    fc.assert(
      fc.property(chainOf(1, 3), fc.double({ min: 5, max: 40, noNaN: true }), (links, x) => {
        // A doubled and a scaled factor, and one on the first link only, give merging something to do.
        const wider = links.map((link, i) => ({
          ...link,
          shared: [...link.shared, ...link.shared.map((a) => -0.7 * a), i === 0 ? 0.09 : 0],
        }));
        const merged = mergeShared(wider);
        expect(merged[0]?.shared.length).toBeLessThanOrEqual(links[0]?.shared.length as number);
        expect(Math.abs(survival(merged, x) - survival(wider, x))).toBeLessThan(1e-9);
        const shares = firstShares(wider);
        firstShares(merged).forEach((share, i) => {
          expect(Math.abs(share - (shares[i] as number))).toBeLessThan(1e-7);
        });
      }),
      seeded,
    );
  });
});

describe('more variance', () => {
  it('of either kind at a link never narrows that link: its own 90 % interval in ln', () => {
    fc.assert(
      fc.property(chainOf(1, 1), spread, fc.boolean(), (links, more, isOwn) => {
        const link = links[0] as ChainLink;
        const wider = isOwn
          ? { ...link, own: Math.hypot(link.own, more) }
          : { ...link, shared: [...link.shared, more] };
        const same = isOwn ? link : { ...link, shared: [...link.shared, 0] };
        expect(logWidth([wider])).toBeGreaterThan(logWidth([same]));
      }),
      seeded,
    );
  });

  it('of either kind at a link with a floor never narrows that link either', () => {
    const floored = fc.record({
      muLog: fc.double({ min: Math.log(20), max: Math.log(30), noNaN: true }),
      shared: fc.tuple(fc.double({ min: 0.02, max: 0.15, noNaN: true })),
      own: fc.double({ min: 0.03, max: 0.12, noNaN: true }),
      floor: fc.constant(22),
    });
    fc.assert(
      fc.property(floored, fc.double({ min: 0.01, max: 0.1, noNaN: true }), fc.boolean(), (link, more, isOwn) => {
        const wider: ChainLink = isOwn
          ? { ...link, own: Math.hypot(link.own, more) }
          : { ...link, shared: [Math.hypot(link.shared[0], more)] };
        expect(logWidth([wider])).toBeGreaterThanOrEqual(logWidth([link]) - 1e-7);
      }),
      { ...seeded, numRuns: 60 },
    );
  });

  // For the whole chain no such promise holds for the width: a strong link that scatters more cuts off the upper end.
  it("of its own at one link never makes the chain more reliable at any force below that link's middle", () => {
    fc.assert(
      fc.property(
        chainOf(2, 4, positiveLoading),
        spread,
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        (links, more, share) => {
          const link = links[0] as ChainLink;
          const x = share * Math.exp(link.muLog);
          const wider = [{ ...link, own: Math.hypot(link.own, more) }, ...links.slice(1)];
          expect(survival(wider, x)).toBeLessThanOrEqual(survival(links, x) + 1e-8);
        },
      ),
      seeded,
    );
  });
});

describe('win shares', () => {
  it('of two chains sum to 1 where no tie is possible, and a stronger chain wins more', () => {
    fc.assert(
      fc.property(chainOf(2, 4), fc.double({ min: 0.01, max: 0.3, noNaN: true }), (links, more) => {
        const half = Math.ceil(links.length / 2);
        const a = links.slice(0, half);
        const b = links.slice(half);
        const wins = winShare(a, b);
        expect(Math.abs(wins + winShare(b, a) - 1)).toBeLessThan(1e-6);
        const raised = a.map((link) => ({ ...link, muLog: link.muLog + more }));
        expect(winShare(raised, b)).toBeGreaterThanOrEqual(wins - 1e-8);
      }),
      seeded,
    );
  });

  it('of a chain against its like are one half; of one and the same piece none', () => {
    fc.assert(
      fc.property(chainOf(1, 2), (links) => {
        expect(Math.abs(winShare(links, links) - 0.5)).toBeLessThan(1e-7);
        const same = links.map((link) => ({ ...link, own: 0 }));
        expect(winShare(same, same)).toBe(0);
      }),
      { ...seeded, numRuns: 60 },
    );
  });

  it('count a pair in which one device goes first in both as a tie', () => {
    // The device is the same draw in both chains: a shared factor of its own and no scatter besides.
    const device = { muLog: 2.7, shared: [0, 0.12], own: 0 };
    const a = [{ muLog: 2.8, shared: [0.1, 0], own: 0.08 }, device];
    const b = [{ muLog: 2.75, shared: [0.1, 0], own: 0.1 }, device];
    const next = draws(7);
    let wins = 0;
    let ties = 0;
    const count = 200_000;
    for (let t = 0; t < count; t++) {
      const z = [next(), next()];
      const first = Math.min(...drawLinks(a, z, next));
      const second = Math.min(...drawLinks(b, z, next));
      if (first > second) wins++;
      else if (first === second) ties++;
    }
    // Four standard errors of a share from that many draws: 0.0045.
    expect(Math.abs(winShare(a, b) - wins / count)).toBeLessThan(0.0045);
    expect(Math.abs(1 - winShare(a, b) - winShare(b, a) - ties / count)).toBeLessThan(0.0045);
  });

  it('of chains of three links agree with simulation', () => {
    const a = [
      { muLog: 2.7, shared: [0.1, 0.05, 0], own: 0.08 },
      { muLog: 2.8, shared: [0.1, 0, 0.07], own: 0.1 },
      { muLog: 2.9, shared: [0, 0, 0], own: 0.15 },
    ];
    const b = [
      { muLog: 2.75, shared: [0.1, 0, 0.06], own: 0.08 },
      { muLog: 2.72, shared: [0.1, 0.05, 0.07], own: 0.12 },
      { muLog: 2.9, shared: [0, 0, 0], own: 0.15 },
    ];
    const next = draws(11);
    let wins = 0;
    const count = 200_000;
    for (let t = 0; t < count; t++) {
      const z = [next(), next(), next()];
      if (Math.min(...drawLinks(a, z, next)) > Math.min(...drawLinks(b, z, next))) wins++;
    }
    expect(Math.abs(winShare(a, b) - wins / count)).toBeLessThan(0.0045);
  });
});

describe('chains with a floor', () => {
  const cases: [string, ChainLink[]][] = [
    ['one link', [{ muLog: Math.log(23), shared: [], own: 0.09, floor: 22 }]],
    [
      'a floored link and a free one',
      [
        { muLog: Math.log(23), shared: [0], own: 0.09, floor: 22 },
        { muLog: Math.log(24), shared: [0.06], own: 0.08 },
      ],
    ],
    [
      'two links that share a factor, and a floored one',
      [
        { muLog: Math.log(23), shared: [0], own: 0.09, floor: 22 },
        { muLog: Math.log(24), shared: [0.08], own: 0.1 },
        { muLog: Math.log(21), shared: [0.1], own: 0.1 },
      ],
    ],
    [
      'two floors',
      [
        { muLog: Math.log(22), shared: [0], own: 0.08, floor: 22 },
        { muLog: Math.log(23), shared: [0], own: 0.1, floor: 21 },
        { muLog: Math.log(26), shared: [0.1], own: 0.1 },
      ],
    ],
    [
      'two floors, one far above the middle of its link, and no free link',
      [
        { muLog: Math.log(16), shared: [], own: 0.08, floor: 22 },
        { muLog: Math.log(23), shared: [], own: 0.1, floor: 21 },
      ],
    ],
    [
      'free links so weak that the floored one hardly ever goes first',
      [
        { muLog: Math.log(26), shared: [0], own: 0.16, floor: 22 },
        { muLog: Math.log(11), shared: [0.15], own: 0.1 },
        { muLog: Math.log(16), shared: [0.1], own: 0.05 },
      ],
    ],
  ];
  for (const [name, links] of cases) {
    it(`agree with simulation: ${name}`, () => {
      const next = draws(23);
      const count = 60_000;
      const first = links.map(() => 0);
      let sum = 0;
      let above = 0;
      for (let t = 0; t < count; t++) {
        const z = (links[0] as ChainLink).shared.map(() => next());
        const strengths = drawLinks(links, z, next);
        const least = Math.min(...strengths);
        const at = strengths.indexOf(least);
        first[at] = (first[at] as number) + 1;
        sum += least;
        if (least > 22.5) above++;
      }
      const shares = firstShares(links);
      expect(Math.abs(shares.reduce((total, share) => total + share, 0) - 1)).toBeLessThan(1e-7);
      shares.forEach((share, i) => {
        expect(Math.abs(share - (first[i] as number) / count)).toBeLessThan(0.009);
      });
      expect(Math.abs(survival(links, 22.5) - above / count)).toBeLessThan(0.009);
      expect(Math.abs(meanOfMinimum(links) - sum / count)).toBeLessThan(0.06);
      expect(Math.abs(1 - survival(links, quantile(links, 0.05)) - 0.05)).toBeLessThan(1e-8);
    });
  }

  for (const [name, links] of cases) {
    it(`agree with the integral over every link's density and the others' tails: ${name}`, () => {
      const { shares, mean } = integrated(links);
      firstShares(links).forEach((share, i) => {
        expect(Math.abs(share - (shares[i] as number))).toBeLessThan(1e-9);
      });
      expect(Math.abs(meanOfMinimum(links) - mean)).toBeLessThan(1e-7);
    });
  }

  it('never goes first where the others never last until its floor', () => {
    const weak = { muLog: Math.log(5), shared: [], own: 0.1 };
    expect(firstShares([weak, { muLog: Math.log(23), shared: [], own: 0.1, floor: 22 }])).toEqual([1, 0]);
  });

  it('split first places with a fixed strength as that strength falls on the tail of the floored link', () => {
    const fixed = { muLog: Math.log(24), shared: [], own: 0 };
    const link = { muLog: Math.log(23), shared: [], own: 0.1, floor: 22 };
    const tail = (x: number): number => normalCdf((link.muLog - Math.log(x)) / link.own);
    const [first, second] = firstShares([fixed, link]) as [number, number];
    expect(first).toBeCloseTo(tail(24) / tail(22), 10);
    expect(second).toBeCloseTo(1 - tail(24) / tail(22), 10);
  });

  it('win pairs as often as simulation says', () => {
    const a = [
      { muLog: Math.log(26), shared: [0.1], own: 0.08 },
      { muLog: Math.log(24), shared: [0], own: 0.1, floor: 22 },
    ];
    const b = [
      { muLog: Math.log(25), shared: [0.12], own: 0.05 },
      { muLog: Math.log(23), shared: [0], own: 0.12, floor: 22 },
    ];
    const next = draws(31);
    let wins = 0;
    const count = 200_000;
    for (let t = 0; t < count; t++) {
      const z = [next()];
      if (Math.min(...drawLinks(a, z, next)) > Math.min(...drawLinks(b, z, next))) wins++;
    }
    expect(Math.abs(winShare(a, b) - wins / count)).toBeLessThan(0.0045);
    expect(Math.abs(winShare(a, b) + winShare(b, a) - 1)).toBeLessThan(1e-9);
  });

  it('cut knowledge and scatter together: loadings of a lone floored link are folded into its own scatter', () => {
    const loaded = { muLog: Math.log(23), shared: [0.08, 0.06], own: 0.05, floor: 22 };
    const folded = { muLog: Math.log(23), shared: [], own: Math.sqrt(0.08 ** 2 + 0.06 ** 2 + 0.05 ** 2), floor: 22 };
    for (const x of [22.1, 23, 26]) expect(survival([loaded], x)).toBeCloseTo(survival([folded], x), 14);
    expect(meanOfMinimum([loaded])).toBeCloseTo(meanOfMinimum([folded]), 12);
    const free = { muLog: Math.log(24), shared: [0, 0], own: 0.1 };
    const merged = mergeShared([loaded, free]);
    expect(merged.map((link) => link.shared)).toEqual([[], []]);
    expect(merged[0]?.own).toBeCloseTo(folded.own, 14);
    expect(merged[0]?.floor).toBe(22);
  });

  it('may share nothing with another link, and the message says what to do', () => {
    const loaded = { muLog: Math.log(23), shared: [0.08], own: 0.05, floor: 22 };
    const free = { muLog: Math.log(24), shared: [0.05], own: 0.1 };
    const says = '[1] has a floor, so its shared must be zeros: fold its loadings into own.';
    expect(() => firstShares([free, loaded])).toThrow(`links${says}`);
    expect(() => survival([free, loaded], 20)).toThrow(RangeError);
    expect(() => mergeShared([free, loaded])).toThrow(`links${says}`);
    expect(() => winShare([free], [free, loaded])).toThrow(`b${says}`);
  });

  it('have the quantiles of an exponential tail where the floor lies far out: excess about sd^2 / gap', () => {
    // Mills: above an edge f the tail falls like exp(-f d) (1 + O(1 / f^2)).
    const far = { muLog: 0, shared: [], own: 0.1, floor: Math.exp(5) };
    const excess = (0.1 * Math.LN2) / 50;
    expect(Math.abs((Math.log(quantile([far], 0.5)) - 5) / excess - 1)).toBeLessThan(1e-3);
    expect(survival([far], quantile([far], 0.5))).toBeCloseTo(0.5, 8);
  });

  it('never break below the floor alone, and a floor far below changes nothing', () => {
    const link = { muLog: Math.log(24), shared: [0.05], own: 0.04 };
    expect(survival([{ ...link, floor: 22 }], 21.99)).toBe(1);
    expect(quantile([{ ...link, floor: 22 }], 0.001)).toBeGreaterThanOrEqual(22);
    expect(quantile([{ ...link, floor: 5 }], 0.05)).toBe(quantile([link], 0.05));
    // Without scatter the link is a fixed strength: the floor where that is higher.
    expect(quantile([{ muLog: Math.log(20), shared: [0], own: 0, floor: 22 }], 0.3)).toBeCloseTo(22, 12);
  });

  it('agree with the closed form of a truncated lognormal where nothing is shared', () => {
    const link = { muLog: Math.log(23), shared: [], own: 0.06, floor: 22 };
    const tail = (x: number): number => normalCdf((link.muLog - Math.log(x)) / link.own);
    for (const x of [22, 22.3, 24, 27]) expect(survival([link], x)).toBeCloseTo(tail(x) / tail(22), 12);
    // Mean of a truncated lognormal: e^(mu + s^2/2) Phi((mu + s^2 - ln a) / s) / Phi((mu - ln a) / s).
    const edge = (link.muLog - Math.log(22)) / link.own;
    const mean = (23 * Math.exp(0.0018) * normalCdf(edge + link.own)) / normalCdf(edge);
    expect(meanOfMinimum([link])).toBeCloseTo(mean, 7);
  });
});

describe('loads', () => {
  it('of any distribution meet the chain as simulation says, and a lognormal one as another link does', () => {
    const links = [
      { muLog: 2.7, shared: [0.1], own: 0.08 },
      { muLog: 2.8, shared: [0.1], own: 0.1 },
    ];
    const loads: Distribution[] = [
      { dist: 'normal', mu: 12, sigma: 2 },
      { dist: 'lognormal', muLog: 2.4, sigmaLog: 0.2 },
      { dist: 'weibull', shape: 6, scale: 12 },
    ];
    const next = draws(5);
    for (const load of loads) {
      let failed = 0;
      const count = 100_000;
      for (let t = 0; t < count; t++) {
        const least = Math.min(...drawLinks(links, [next()], next));
        const z = next();
        const force =
          load.dist === 'normal'
            ? load.mu + load.sigma * z
            : load.dist === 'lognormal'
              ? Math.exp(load.muLog + load.sigmaLog * z)
              : load.scale * (-Math.log(normalCdf(z))) ** (1 / load.shape);
        if (least < force) failed++;
      }
      expect(Math.abs(interference(links, load) - failed / count)).toBeLessThan(0.006);
    }
  });
});

describe('arguments out of range', () => {
  const link = { muLog: 3, shared: [0.1], own: 0.1 };
  it('are named', () => {
    expect(() => survival([], 1)).toThrow('links must hold at least one link.');
    expect(() => survival([{ ...link, own: -1 }], 1)).toThrow('links[0].own must be 0 or more (got -1).');
    expect(() => firstShares([link, { ...link, shared: [] }])).toThrow('links[1].shared must have 1 loadings (got 0).');
    expect(() => quantile([{ ...link, muLog: Number.NaN }], 0.5)).toThrow('links[0].muLog must be finite (got NaN).');
    expect(() => quantile([link], 1)).toThrow('p must lie strictly between 0 and 1 (got 1).');
    expect(() => winShare([link], [{ ...link, shared: [] }])).toThrow(RangeError);
    expect(() => survival([link], Number.NaN)).toThrow('x must be a number (got NaN).');
  });
});
