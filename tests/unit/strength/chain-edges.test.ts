/** The chain at its edges: what it refuses, single links, fixed strengths, merged factors. Expected values by hand. */
import normal from '@stdlib/stats-base-dists-normal';
import { describe, expect, it } from 'vitest';
import { type ChainLink, firstShares, interference, meanOfMinimum, mergeShared, quantile, quantiles, survival, winShare } from '../../../src/strength/chain.ts';
import { smallerOfTwo } from '../../../src/strength/two-normals.ts';
import { near } from '../break-tests/near.ts';

const link: ChainLink = { muLog: 3, shared: [0.1, 0], own: 0.2 };
const fixed = (kn: number): ChainLink => ({ muLog: Math.log(kn), shared: [0, 0], own: 0 });

describe('what a chain refuses', () => {
  it('by link and field, whatever is asked of it', () => {
    const asks: readonly ((links: ChainLink[]) => unknown)[] = [(l) => survival(l, 10), (l) => quantile(l, 0.5), (l) => quantiles(l, [0.5]), firstShares, meanOfMinimum, mergeShared, (l) => interference(l, { dist: 'normal', mu: 10, sigma: 1 })];
    for (const ask of asks) {
      expect(() => ask([])).toThrow('links must hold at least one link.');
      for (const bad of [Number.NaN, Infinity, -Infinity]) {
        expect(() => ask([link, { ...link, muLog: bad }])).toThrow(`links[1].muLog must be finite (got ${bad}).`);
        expect(() => ask([{ ...link, shared: [0, bad] }, link])).toThrow(`links[0].shared[1] must be finite (got ${bad}).`);
      }
      for (const bad of [Number.NaN, Infinity, -0.1]) {
        expect(() => ask([link, { ...link, own: bad }])).toThrow(`links[1].own must be 0 or more (got ${bad}).`);
        expect(() => ask([link, { ...link, shared: [0, 0], floor: bad }])).toThrow(`links[1].floor must be 0 or more (got ${bad}).`);
      }
      expect(() => ask([link, { ...link, shared: [0.1] }])).toThrow('links[1].shared must have 2 loadings (got 1).');
      expect(() => ask(new Array(9).fill(link))).toThrow('links must hold at most 8 links (got 9).');
    }
    for (const p of [0, 1, -0.1, 1.1, Number.NaN]) expect(() => quantile([link], p)).toThrow(`p must lie strictly between 0 and 1 (got ${p}).`);
    for (const load of [{ dist: 'lognormal', muLog: 3, sigmaLog: -0.1 }, { dist: 'normal', mu: Number.NaN, sigma: 1 }, { dist: 'weibull', shape: 0, scale: 9 }] as const) {
      expect(() => interference([link], load)).toThrow('load must have finite parameters and a positive spread');
    }
    expect(() => winShare([], [link])).toThrow('a must hold at least one link.');
    expect(() => winShare([link], [])).toThrow('b must hold at least one link.');
    expect(() => winShare(new Array(5).fill(link), new Array(4).fill(link))).toThrow('a and b together must hold at most 8 links (got 9).');
  });

  it('eight links that share half of their scatter are answered: all stand at their middle in 1 of 9 (Gupta 1963, equal correlations of one half)', () => {
    const eight = new Array<ChainLink>(8).fill({ muLog: 3, shared: [0.1], own: 0.1 });
    near(survival(eight, Math.exp(3)), 1 / 9, 1e-8);
    for (const share of firstShares(eight)) near(share, 1 / 8, 1e-8);
    // Four against four of the same kind win every other pair.
    near(winShare(eight.slice(4), eight.slice(4)), 0.5, 1e-8);
  });

  it('a floor beside loadings, unless the link stands alone: there they are scatter of its own', () => {
    const floored: ChainLink = { muLog: 3, shared: [0.12, 0.09], own: 0.2, floor: 19 };
    for (const ask of [(l: ChainLink[]) => survival(l, 10), firstShares, meanOfMinimum, (l: ChainLink[]) => interference(l, { dist: 'normal' as const, mu: 10, sigma: 1 })]) {
      expect(() => ask([link, floored])).toThrow('links[1] has a floor, so its shared must be zeros: fold its loadings into own.');
    }
    expect(() => winShare([floored], [link])).toThrow('a[0] has a floor');
    expect(() => winShare([link], [floored])).toThrow('b[0] has a floor');
    // 0.12, 0.09 and 0.2 make 0.25.
    const past = (kn: number): number => normal.cdf((3 - Math.log(kn)) / 0.25, 0, 1);
    near(survival([floored], 21), past(21) / past(19), 1e-12);
    expect(firstShares([floored])).toEqual([1]);
  });

  it('one link against one with other loadings, or with a middle that is no number', () => {
    expect(() => winShare([{ ...link, shared: [] }], [link])).toThrow('a and b together[1].shared must have 0 loadings (got 2).');
    for (const bad of [Infinity, Number.NaN]) expect(() => winShare([{ ...link, muLog: bad }], [link])).toThrow(`a[0].muLog must be finite (got ${bad}).`);
  });

  it('a floor of 0, or far below, and loadings of 0 beside it are none', () => {
    const plain = { ...link, shared: [0, 0] };
    for (const floor of [0, 1e-9, 2]) {
      expect(survival([{ ...plain, floor }, link], 18)).toBe(survival([plain, link], 18));
      expect(firstShares([{ ...plain, floor }, link])).toEqual(firstShares([plain, link]));
    }
  });
});

describe('one link alone', () => {
  const sd = Math.hypot(0.1, 0.2);
  it('is the lognormal that it is', () => {
    near(quantile([link], 0.05), Math.exp(normal.quantile(0.05, 3, sd)), 1e-12);
    expect(quantiles([link], [0.9, 0.5])).toEqual([quantile([link], 0.9), quantile([link], 0.5)]);
    near(meanOfMinimum([link]), Math.exp(3 + sd * sd / 2), 1e-13);
    expect(firstShares([link])).toEqual([1]);
  });

  it('wins against another of its kind by a normal difference: shared loadings cancel, own ones add', () => {
    const other = { muLog: 3.1, shared: [0.1, 0.05], own: 0.15 };
    near(winShare([link], [other]), normal.cdf(-0.1, 0, Math.hypot(0.05, 0.2, 0.15)), 1e-10);
    near(winShare([other], [link]), normal.cdf(0.1, 0, Math.hypot(0.05, 0.2, 0.15)), 1e-10);
    near(winShare([{ ...link, shared: [0.3, 0.1] }], [other]), normal.cdf(-0.1, 0, Math.hypot(0.2, 0.05, 0.2, 0.15)), 1e-10);
    // A fixed strength against a fixed one: the larger wins, a tie counts for neither.
    expect([winShare([fixed(20)], [fixed(19)]), winShare([fixed(19)], [fixed(20)]), winShare([fixed(20)], [fixed(20)])]).toEqual([1, 0, 0]);
  });
});

describe('fixed strengths', () => {
  it('go first at their force and not before', () => {
    // Past 20 kN, so not at it.
    expect([19.9, 20, 20.1].map((kn) => survival([fixed(20)], kn))).toEqual([1, 0, 0]);
    // A floor that is higher is the strength then; one at it or below is none.
    for (const [floor, kn] of [[22, 22], [20, 20], [15, 20]] as const) {
      expect([survival([{ ...fixed(20), floor }], kn - 0.1), survival([{ ...fixed(20), floor }], kn + 0.1)]).toEqual([1, 0]);
      near(quantile([{ ...fixed(20), floor }], 0.3), kn, 1e-12);
    }
    expect(firstShares([fixed(20), fixed(21)])).toEqual([1, 0]);
    expect(firstShares([fixed(20), fixed(20)])).toEqual([0.5, 0.5]);
    expect(firstShares([fixed(21), fixed(20), fixed(20)])).toEqual([0, 0.5, 0.5]);
    near(quantile([fixed(20), fixed(25)], 0.3), 20, 1e-12);
    near(meanOfMinimum([fixed(20), fixed(25)]), 20, 1e-12);
  });

  it('beside a link that scatters: first as often as that one outlasts them, and then at their force', () => {
    const [thin, stiff] = firstShares([link, fixed(20)]) as [number, number];
    const below = normal.cdf(Math.log(20), 3, Math.hypot(0.1, 0.2));
    near(thin, below, 1e-10);
    near(stiff, 1 - below, 1e-10);
    near(survival([link, fixed(20)], 19), 1 - normal.cdf(Math.log(19), 3, Math.hypot(0.1, 0.2)), 1e-10);
    expect(survival([link, fixed(20)], 20.01)).toBe(0);
    near(quantile([link, fixed(20)], 0.99), 20, 1e-9);
  });
});

describe('two fixed strengths that are equal', () => {
  it('share what is left evenly, beside one link that scatters and beside two', () => {
    const below = normal.cdf(Math.log(20), 3, Math.hypot(0.1, 0.2));
    const [one, two, scattered] = firstShares([fixed(20), fixed(20), link]) as [number, number, number];
    near(scattered, below, 1e-10);
    for (const share of [one, two]) near(share, (1 - below) / 2, 1e-10);
    // Of two alike that share nothing neither is below 20 kN with chance (1 - below)^2.
    const alone = { muLog: 3, shared: [0, 0], own: 0.2 };
    const under = normal.cdf(Math.log(20), 3, 0.2);
    const shares = firstShares([fixed(20), alone, fixed(20), { ...alone }]);
    for (const place of [0, 2]) near(shares[place] as number, (1 - under) ** 2 / 2, 1e-9);
    for (const place of [1, 3]) near(shares[place] as number, (1 - (1 - under) ** 2) / 2, 1e-9);
  });
});

describe('one piece in both chains', () => {
  /** Beside a link so strong that it never goes first. */
  const beside = (one: ChainLink): ChainLink[] => [one, { muLog: 10, shared: [0], own: 0.01 }];
  const piece: ChainLink = { muLog: 3, shared: [0.1], own: 0 };
  it('is a tie, whoever is asked', () => {
    expect(winShare(beside(piece), beside({ ...piece }))).toBeLessThan(1e-9);
  });
  it('is one only if all of it is alike: own scatter, loadings, middle and floor', () => {
    near(winShare(beside(piece), beside({ ...piece, own: 0.1 })), 0.5, 1e-9);
    near(winShare(beside({ ...piece, own: 0.1 }), beside(piece)), 0.5, 1e-9);
    near(winShare(beside(piece), beside({ ...piece, shared: [0.2] })), 0.5, 1e-9);
    expect(winShare(beside({ ...piece, muLog: 3.1 }), beside(piece))).toBeCloseTo(1, 9);
    // Fixed at 25 kN by a floor against 20.1 kN.
    const plain: ChainLink = { muLog: 3, shared: [0], own: 0 };
    expect(winShare(beside({ ...plain, floor: 25 }), beside(plain))).toBeCloseTo(1, 9);
    expect(winShare(beside(plain), beside({ ...plain, floor: 25 }))).toBeCloseTo(0, 9);
  });
});

describe('fewer factors', () => {
  it('one that acts on one link only goes into its own scatter (3-4-5), and one that acts on none goes', () => {
    const merged = mergeShared([{ muLog: 3, shared: [0.3, 0, 0.1], own: 0.4 }, { muLog: 4, shared: [0, 0, 0.2], own: 0.1 }]);
    expect(merged).toEqual([{ muLog: 3, shared: [0.1], own: 0.5 }, { muLog: 4, shared: [0.2], own: 0.1 }]);
  });

  it('two that act in proportion become one, also with the sign turned; others stay two', () => {
    const two = (a: number[], b: number[]) => mergeShared([{ muLog: 3, shared: a, own: 0.1 }, { muLog: 3, shared: b, own: 0.1 }]).map((each) => each.shared.map((x) => Math.round(x * 1e12) / 1e12));
    expect(two([0.3, 0.4], [0.6, 0.8])).toEqual([[0.5], [1]]);
    expect(two([0.3, -0.4], [0.6, -0.8])).toEqual([[0.5], [1]]);
    expect(two([0.3, 0.4], [0.6, -0.8])).toEqual([[0.3, 0.4], [0.6, -0.8]]);
    expect(two([0.3, 0.4], [0.6, 0.81])).toEqual([[0.3, 0.4], [0.6, 0.81]]);
    // What the first link lacks the others may still share in proportion.
    const lacking = mergeShared([[0, 0], [0.3, 0.4], [0.6, 0.8]].map((shared) => ({ muLog: 3, shared, own: 0.1 })));
    expect(lacking.map(({ shared }) => shared.map((x) => Math.round(x * 1e12) / 1e12))).toEqual([[0], [0.5], [1]]);
    // In proportion but for a billionth is not in proportion, however small the loading.
    expect(two([0.3, 0.6], [0.003, 0.006 * (1 + 1e-9)])[0]).toHaveLength(2);
    expect(two([0.3, 0.003], [0.6, 0.006 * (1 + 1e-9)])[0]).toHaveLength(2);
    // Of three links the same two must be touched.
    const three = mergeShared([[0.3, 0.3], [0.3, 0], [0, 0.3]].map((shared) => ({ muLog: 3, shared, own: 0 })));
    expect(three.map((each) => each.shared)).toEqual([[0.3, 0.3], [0.3, 0], [0, 0.3]]);
  });

  it('a floor keeps its link to itself: what only it has is folded in, what it shares is refused', () => {
    expect(mergeShared([{ muLog: 3, shared: [0.3], own: 0.4, floor: 15 }, { muLog: 3, shared: [0], own: 0.1 }])).toEqual([{ muLog: 3, shared: [], own: 0.5, floor: 15 }, { muLog: 3, shared: [], own: 0.1 }]);
    expect(() => mergeShared([{ muLog: 3, shared: [0.3], own: 0.4, floor: 15 }, { muLog: 3, shared: [0.2], own: 0.1 }])).toThrow('links[0] has a floor, so its shared must be zeros: fold its loadings into own.');
  });
});

describe('the smaller of two normals', () => {
  const one = { mean: 10, sd: 2 };
  it('of two alike lies sd sqrt((1 - rho) / pi) below their mean, with variance sd^2 (1 - (1 - rho) / pi) (Clark 1961)', () => {
    for (const rho of [-1, -0.4, 0, 0.6]) {
      const found = smallerOfTwo(one, one, rho);
      near(found.mean, 10 - 2 * Math.sqrt((1 - rho) / Math.PI), 1e-12);
      near(found.sd, 2 * Math.sqrt(1 - (1 - rho) / Math.PI), 1e-10);
      expect(found.firstShares).toEqual([0.5, 0.5]);
    }
  });
  it('a fixed strength far above is never it; perfect correlation leaves the lower one where the spreads differ', () => {
    const found = smallerOfTwo(one, { mean: 40, sd: 0 }, 0);
    near(found.mean, 10, 1e-12);
    near(found.sd, 2, 1e-12);
    // Whichever comes first.
    const turned = smallerOfTwo({ mean: 40, sd: 0 }, one, 0);
    near(turned.mean, 10, 1e-12);
    near(turned.sd, 2, 1e-12);
    near(smallerOfTwo(one, { mean: 11, sd: 3 }, 1).firstShares[0], normal.cdf(1, 0, 1), 1e-10);
  });
  it('refuses by name', () => {
    for (const rho of [-1.1, 1.1, Number.NaN]) expect(() => smallerOfTwo(one, one, rho)).toThrow(`rho must lie between -1 and 1 (got ${rho}).`);
    for (const bad of [-1, Number.NaN]) {
      expect(() => smallerOfTwo({ ...one, sd: bad }, one, 0)).toThrow('first.sd and second.sd must be 0 or more.');
      expect(() => smallerOfTwo(one, { ...one, sd: bad }, 0)).toThrow('first.sd and second.sd must be 0 or more.');
    }
    expect(() => smallerOfTwo(one, { mean: 12, sd: 2 }, 1)).toThrow('first and second must not differ by a constant only.');
  });
});
