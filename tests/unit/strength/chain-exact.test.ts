/** Chains of several links against closed forms and against plain integrals with the normal law of @stdlib. */
import normal from '@stdlib/stats-base-dists-normal';
import weibull from '@stdlib/stats-base-dists-weibull';
import { describe, expect, it } from 'vitest';
import { type ChainLink, firstShares, interference, meanOfMinimum, quantile, quantiles, survival, winShare } from '../../../src/strength/chain.ts';
import { cdfOf, type Distribution } from '../../../src/strength/distribution.ts';
import { gaussHermite } from '../../support/gauss-hermite.ts';
import { near } from '../break-tests/near.ts';

const Phi = normal.cdf.factory(0, 1);
const phi = normal.pdf.factory(0, 1);
const PhiInverse = (p: number): number => normal.quantile(p, 0, 1);
const fixed = (kn: number): ChainLink => ({ muLog: Math.log(kn), shared: [], own: 0 });
const alone = (kn: number, own: number, floor?: number): ChainLink => ({ muLog: Math.log(kn), shared: [], own, ...(floor === undefined ? {} : { floor }) });
const copies = (count: number, link: ChainLink): ChainLink[] => Array.from({ length: count }, () => ({ ...link }));
/** Fails unless `got` is within `most` of `expected`, for chances. */
const close = (got: number, expected: number, most: number): void => expect(Math.abs(got - expected), `${got} should be within ${most} of ${expected}`).toBeLessThanOrEqual(most);
/** Links that share one factor. */
const sharing = (...links: (readonly [kn: number, loading: number, own: number])[]): ChainLink[] => links.map(([kn, loading, own]) => ({ muLog: Math.log(kn), shared: [loading], own }));

/** One chain of groups that share nothing with each other: each group gets a factor of its own. */
function joined(groups: readonly (readonly ChainLink[])[]): ChainLink[] {
  return groups.flatMap((group, g) => group.map((link) => ({ ...link, shared: groups.map((_, f) => (f === g ? (link.shared[0] ?? 0) : 0)) })));
}

/**
 * The tanh-sinh rule (Takahasi and Mori, Double exponential formulas, 1974), which does not mind what happens at the ends of
 * a panel. `side` lies inside, for functions that jump at an end.
 */
function overPanel(from: number, to: number, visit: (u: number, weight: number, side: number) => void): void {
  const [middle, half, step] = [0.5 * (from + to), 0.5 * (to - from), 1 / 8];
  for (let t = -3.125; t <= 3.125; t += step) {
    const s = 0.5 * Math.PI * Math.sinh(t);
    visit(middle + half * Math.tanh(s), (half * step * 0.5 * Math.PI * Math.cosh(t)) / Math.cosh(s) ** 2, middle);
  }
}

/** Given the factor of the group (by Hermite's rule) its links are independent: survival of all at ln force `u`, and density of each where the others last. */
function groupAt(group: readonly ChainLink[], u: number, side: number): { tail: number; dense: number[] } {
  const { nodes, weights } = gaussHermite(group.some(({ shared }) => shared[0]) ? 28 : 1);
  const dense = new Array<number>(group.length).fill(0);
  let tail = 0;
  for (let k = 0; k < nodes.length; k++) {
    // Of the links so far: all last, or all but one do.
    let last = weights[k] as number;
    const first: number[] = [];
    for (const { muLog, shared, own, floor } of group) {
      const x = (u - muLog - (shared[0] ?? 0) * (nodes[k] as number)) / own;
      let lasts = side < muLog ? 1 : 0;
      let breaks = 0;
      if (floor !== undefined && side < Math.log(floor)) lasts = 1;
      else if (own > 0) {
        const kept = floor === undefined ? 1 : Phi((muLog - Math.log(floor)) / own);
        lasts = Phi(-x) / kept;
        breaks = phi(x) / own / kept;
      }
      for (let i = 0; i < first.length; i++) first[i] = (first[i] as number) * lasts;
      first.push(last * breaks);
      last *= lasts;
    }
    tail += last;
    for (let i = 0; i < first.length; i++) dense[i] = (dense[i] as number) + (first[i] as number);
  }
  return { tail, dense };
}

const survivalByHand = (groups: readonly (readonly ChainLink[])[], kn: number): number => groups.reduce((product, group) => product * groupAt(group, Math.log(kn), Math.log(kn)).tail, 1);

/** First shares, and the mean: where the chain begins to break plus the integral of the survival from there. */
function byHand(groups: readonly (readonly ChainLink[])[]): { shares: number[]; mean: number } {
  const links = groups.flat();
  const spread = ({ shared, own }: ChainLink): number => Math.hypot(shared[0] ?? 0, own);
  const low = Math.min(...links.map((link) => Math.max(link.muLog - 9 * spread(link), Math.log(link.floor ?? 1e-9))));
  const high = Math.min(...links.map((link) => Math.max(link.muLog, Math.log(link.floor ?? 1e-9)) + 9 * spread(link)));
  const cuts = links.flatMap((link) => [link.muLog - 6 * spread(link), link.muLog, link.muLog + 6 * spread(link), Math.log(link.floor ?? 1e-9)]);
  const ends = [low, ...cuts.filter((cut) => cut > low && cut < high).sort((a, b) => a - b), high];
  const shares = links.map(() => 0);
  let mean = Math.exp(low);
  for (let e = 0; e + 1 < ends.length; e++) {
    overPanel(ends[e] as number, ends[e + 1] as number, (u, weight, side) => {
      const at = groups.map((group) => groupAt(group, u, side));
      mean += weight * Math.exp(u) * at.reduce((product, { tail }) => product * tail, 1);
      let place = 0;
      at.forEach(({ dense }, g) => {
        for (const one of dense) {
          shares[place] = (shares[place] as number) + weight * at.reduce((product, { tail }, other) => (other === g ? product : product * tail), one);
          place++;
        }
      });
    });
  }
  // What no density takes is left to the fixed strength.
  const place = links.findIndex((link) => spread(link) === 0);
  if (place >= 0) shares[place] = 1 - shares.reduce((a, b) => a + b, 0);
  return { shares, mean };
}

const pair = sharing([24, 0.08, 0.1], [21, 0.1, 0.1]);
const three = sharing([24, 0.09, 0.1], [22, -0.05, 0.08], [23, 0.08, 0.08]);
const chains: Readonly<Record<string, readonly (readonly ChainLink[])[]>> = {
  'groups of three, of two and of one': [three, pair, [alone(22, 0.12)]],
  'a free link and a floored one': [[alone(24, 0.11)], [alone(23, 0.09, 22)]],
  'a floored link, and two that share a factor': [[alone(23, 0.09, 22)], pair],
  'three that share a factor, a floored one, two others, another floored one': [three, [alone(23, 0.1, 19.5)], pair, [alone(20, 0.12, 20)]],
  'four that share a factor, and a floored one': [[...three, ...sharing([25, 0.07, 0.09])], [alone(22, 0.1, 21)]],
  'two floored ones, one from far above its middle': [[alone(16, 0.08, 22)], [alone(23, 0.1, 21)]],
  'floors so far out that little is left of the law': [[alone(10, 0.05, 20)], [alone(21, 0.02)]],
  'three floored ones and a fixed strength': [[alone(22, 0.1, 20)], [alone(23, 0.05, 22)], [alone(24, 0.3, 15)], [fixed(24)]],
  'free links so weak that the floored one hardly matters': [sharing([11, 0.1, 0.15], [16, 0.05, 0.1]), [alone(26, 0.16, 21)]],
  'a link that scatters little beside one that scatters much': [[alone(22, 0.3)], [alone(20, 0.01)], [alone(19, 0.15, 18)]],
};

for (const [name, groups] of Object.entries(chains)) {
  describe(name, () => {
    const links = joined(groups);
    it('go first and break as the integral over ln force says', () => {
      const { shares, mean } = byHand(groups);
      for (const [i, share] of firstShares(links).entries()) close(share, shares[i] as number, 1e-9);
      near(meanOfMinimum(links), mean, 1e-9);
    });
    it('survive as the product of the groups, and have the quantiles of that', () => {
      for (const kn of [14, 19, 21.5, 23, 26]) close(survival(links, kn), survivalByHand(groups, kn), 1e-9);
      const ps = [0.5, 0.001, 0.97, 0.05];
      for (const [i, q] of quantiles(links, ps).entries()) {
        if (Math.abs(q - 24) > 1e-6) close(1 - survivalByHand(groups, q), ps[i] as number, 1e-9);
        near(quantile(links, ps[i] as number), q, 1e-9);
      }
    });
  });
}

describe('links that are all alike and share nothing', () => {
  const sd = 0.15;
  const tail = (kn: number, floor = 1e-9): number => Phi((3 - Math.log(kn)) / sd) / Phi((3 - Math.log(floor)) / sd);
  for (const count of [2, 3, 5, 8]) {
    for (const floor of [undefined, 19]) {
      it(`${count}${floor ? ' with a floor' : ''}: the survival of one to that power, its quantile by the inverse, equal shares`, () => {
        const links = copies(count, alone(Math.exp(3), sd, floor));
        for (const kn of [12, 19, 20, 24]) near(survival(links, kn), kn < (floor ?? 0) ? 1 : tail(kn, floor) ** count, 1e-9);
        for (const p of [1e-6, 0.05, 0.5, 0.95, 0.9999]) {
          const left = (1 - p) ** (1 / count) * (floor ? Phi((3 - Math.log(floor)) / sd) : 1);
          near(quantile(links, p), Math.exp(3 - sd * PhiInverse(left)), 1e-9);
        }
        if (count < 8 || floor) for (const share of firstShares(links)) close(share, 1 / count, 1e-9);
      });
    }
  }

  it('win pairs as often as the other side has links', () => {
    for (const floor of [undefined, 19]) {
      for (const [a, b] of [[1, 1], [1, 2], [2, 1], [2, 3], [3, 2]] as const) {
        near(winShare(copies(a, alone(20, sd, floor)), copies(b, alone(20, sd, floor))), b / (a + b), 1e-9);
      }
    }
    // One piece in both chains is one link more, and counts for neither side. It stands at either end.
    const piece: ChainLink = { muLog: 3, shared: [sd], own: 0 };
    const other: ChainLink = { muLog: 3, shared: [0], own: sd };
    near(winShare([other, piece], [piece, other]), 1 / 3, 1e-9);
    near(winShare([other, piece], [other, other, piece]), 1 / 2, 1e-9);
    near(winShare([piece, other, other], [other, piece]), 1 / 4, 1e-9);
    // As many links as can be asked for, the piece counted once. A floor seven sd below leaves their law as it is.
    const low: ChainLink = { ...other, floor: Math.exp(3 - 7 * sd) };
    near(winShare([piece, low, low, low], [low, low, piece, low, low]), 4 / 8, 1e-6);
    // One side is that piece alone.
    near(winShare([piece], [other, piece]), 1 / 2, 1e-9);
    expect(winShare([other, piece], [piece])).toBe(0);
  });

  it('fall short of a load of their own law in all but one of (count + 1)', () => {
    for (const count of [1, 2, 4, 8]) near(interference(copies(count, alone(20, sd)), { dist: 'lognormal', muLog: Math.log(20), sigmaLog: sd }), count / (count + 1), 1e-9);
  });
});

describe('a link beside one that never matters', () => {
  it('has its own quantiles, in any order', () => {
    const ps = [0.05, 0.5, 0.95, 0.489, 1e-4, 0.2, 0.7, 0.1, 0.3];
    for (const [i, q] of quantiles([alone(9.4, 0.131), alone(90, 0.04)], ps).entries()) near(q, 9.4 * Math.exp(0.131 * PhiInverse(ps[i] as number)), 1e-9);
  });
});

describe('shares that doubles hardly tell from 0', () => {
  it('have quantiles about as far out as they should lie', () => {
    const found = 2 * Phi(Math.log(quantile(copies(2, alone(20, 0.15)), 1e-17) / 20) / 0.15);
    expect(found).toBeGreaterThan(0.9e-17);
    expect(found).toBeLessThan(2.1e-17);
  });
});

describe('links that share', () => {
  it('three stand at their middle with 1/8 + the sum of the angles of their correlations over 4 pi (Sheppard 1899)', () => {
    const [a, b, c] = [[0.1, 0.05], [0.12, 0.08], [-0.07, 0.06]] as const;
    const angle = ([x, s]: readonly [number, number], [y, t]: readonly [number, number]): number => Math.asin((x * y) / Math.hypot(x, s) / Math.hypot(y, t));
    const expected = 1 / 8 + (angle(a, b) + angle(a, c) + angle(b, c)) / (4 * Math.PI);
    near(survival(sharing([20, ...a], [20, ...b], [20, ...c]), 20), expected, 1e-9);
  });

  it('all but their own scatter are the weakest of them, at any force', () => {
    const links = sharing([20, 0.1, 0], [22, 0.1, 0], [25, 0.1, 0]);
    for (const kn of [17, 20, 23]) near(survival(links, kn), Phi(Math.log(20 / kn) / 0.1), 1e-9);
    for (const p of [0.01, 0.5, 0.9]) near(quantile(links, p), 20 * Math.exp(0.1 * PhiInverse(p)), 1e-9);
    expect(firstShares(links)).toEqual([1, 0, 0]);
    near(meanOfMinimum(links), 20 * Math.exp(0.005), 1e-9);
  });

  it('with opposite signs: the middle less the size of one normal', () => {
    const links = sharing([20, 0.1, 0], [20, -0.1, 0]);
    for (const p of [0.01, 0.5, 0.9]) near(quantile(links, p), 20 * Math.exp(0.1 * PhiInverse(p / 2)), 1e-9);
    expect(survival(links, 20.001)).toBe(0);
    near(survival(links, 18), 1 - 2 * Phi(Math.log(18 / 20) / 0.1), 1e-9);
    near(meanOfMinimum(links), 40 * Math.exp(0.005) * Phi(-0.1), 1e-9);
    for (const share of firstShares(links)) near(share, 0.5, 1e-12);
  });

  it('two lognormals have the mean of Clark (1961), carried to lognormals', () => {
    const links = sharing([20, 0.1, 0.05], [21, 0.08, 0.12]);
    const [v, w, c] = [0.1 ** 2 + 0.05 ** 2, 0.08 ** 2 + 0.12 ** 2, 0.1 * 0.08];
    const gap = Math.sqrt(v + w - 2 * c);
    const lead = Math.log(21 / 20);
    near(meanOfMinimum(links), 20 * Math.exp(v / 2) * Phi((lead + c - v) / gap) + 21 * Math.exp(w / 2) * Phi((c - w - lead) / gap), 1e-9);
  });

  it('in another order have their shares in that order; all signs of a factor turned, or all forces scaled, change nothing', () => {
    const links = joined([three, [alone(23, 0.1, 19.5)], pair]);
    const shares = firstShares(links);
    const order = [5, 2, 0, 3, 1, 4];
    for (const [i, share] of firstShares(order.map((at) => links[at] as ChainLink)).entries()) near(share, shares[order[i] as number] as number, 1e-9);
    for (const [i, share] of firstShares(links.map((link) => ({ ...link, shared: link.shared.map((a) => -a) }))).entries()) near(share, shares[i] as number, 1e-9);
    const doubled = links.map((link) => ({ ...link, muLog: link.muLog + Math.LN2, ...(link.floor ? { floor: 2 * link.floor } : {}) }));
    for (const [i, share] of firstShares(doubled).entries()) near(share, shares[i] as number, 1e-9);
    for (const p of [0.05, 0.9]) near(quantile(doubled, p), 2 * quantile(links, p), 1e-9);
    near(meanOfMinimum(doubled), 2 * meanOfMinimum(links), 1e-9);
  });
});

describe('a floored link alone', () => {
  it('is a truncated lognormal: mean and quantiles in closed form', () => {
    for (const [kn, sd, floor] of [[23, 0.06, 22], [20, 0.2, 26], [25, 0.1, 15]] as const) {
      const edge = Math.log(kn / floor) / sd;
      near(meanOfMinimum([alone(kn, sd, floor)]), (kn * Math.exp(sd * sd / 2) * Phi(edge + sd)) / Phi(edge), 1e-9);
      for (const p of [0.001, 0.5, 0.99]) near(quantile([alone(kn, sd, floor)], p), kn * Math.exp(-sd * PhiInverse((1 - p) * Phi(edge))), 1e-9);
    }
  });
});

describe('floors far above the middle', () => {
  it('leave quantiles at their part of the tail, as far as there are doubles for it', () => {
    for (const p of [0.01, 0.5, 0.9]) near(Phi(-10 * Math.log(quantile([alone(1, 0.1, Math.exp(3.2))], p))), (1 - p) * Phi(-32), 1e-9);
  });
  it('and farther out those of an exponential, less a few parts in (edge squared) (Mills)', () => {
    const link = alone(1, 0.1, Math.exp(5));
    for (const p of [0.1, 0.5, 0.9]) {
      near(survival([link], quantile([link], p)), 1 - p, 1e-8);
      const excess = (-0.1 * Math.log(1 - p)) / 50;
      const found = Math.log(quantile([link], p)) - 5;
      expect(found).toBeLessThan(excess);
      near(found, excess, 3 / 50 ** 2);
    }
    expect(survival([link, alone(200, 0.1)], Infinity)).toBe(0);
  });
});

describe('one link against one, with floors', () => {
  it('wins as often as the other goes first of the two', () => {
    const [floored, free] = [alone(22, 0.1, 21), alone(24, 0.15)];
    const [one, other] = byHand([[floored], [free]]).shares as [number, number];
    close(winShare([floored], [free]), other, 1e-9);
    close(winShare([free], [floored]), one, 1e-9);
    near(winShare([floored], [floored]), 0.5, 1e-9);
  });
});

describe('loads', () => {
  /** P(chain < load): over the load's law between the places where the chain's survival jumps or bends. */
  function failureByHand(groups: readonly (readonly ChainLink[])[], load: Distribution, cuts: readonly number[]): number {
    const dense = (x: number): number => (load.dist === 'normal' ? normal.pdf(x, load.mu, load.sigma) : load.dist === 'weibull' ? weibull.pdf(x, load.shape, load.scale) : normal.pdf(Math.log(x), load.muLog, load.sigmaLog) / x);
    let sum = 0;
    for (let e = 0; e + 1 < cuts.length; e++) {
      overPanel(cuts[e] as number, cuts[e + 1] as number, (x, weight, side) => {
        sum += weight * dense(x) * (1 - groups.reduce((product, group) => product * groupAt(group, Math.log(x), Math.log(side)).tail, 1));
      });
    }
    return sum;
  }
  const loads: readonly Distribution[] = [{ dist: 'normal', mu: 17, sigma: 3 }, { dist: 'weibull', shape: 6, scale: 19 }, { dist: 'lognormal', muLog: 2.9, sigmaLog: 0.2 }];

  it('of three laws on a group of two and a floored link: the integral over the load', () => {
    for (const load of loads) {
      close(interference(joined([pair, [alone(22, 0.1, 20)]]), load), failureByHand([pair, [alone(22, 0.1, 20)]], load, [1, 12, 20, 30, 70]), 1e-9);
    }
  });

  it('on a fixed strength: the chance of a load above it', () => {
    for (const load of loads) {
      near(interference([fixed(18)], load), 1 - cdfOf(load, 18), 1e-9);
      near(interference([fixed(18), fixed(21)], load), 1 - cdfOf(load, 18), 1e-9);
      // A floored link that begins there breaks from there on as well, but then the fixed one is broken.
      near(interference([fixed(18), alone(23, 0.1, 18)], load), 1 - cdfOf(load, 18), 1e-9);
    }
  });

  it('on a link that scatters hardly at all: much the same, to the second order of its scatter', () => {
    near(interference([alone(18, 1e-5)], { dist: 'normal', mu: 17, sigma: 3 }), Phi(-1 / 3), 1e-8);
    // Above a floor at its middle its mean lies sd sqrt(2 / pi) higher.
    near(interference([alone(18, 1e-5, 18)], { dist: 'normal', mu: 17, sigma: 3 }), Phi((17 - 18 * (1 + 1e-5 * Math.sqrt(2 / Math.PI))) / 3), 1e-8);
  });

  it('below 0 break nothing, and certain ones all', () => {
    expect(interference([alone(18, 0.1)], { dist: 'normal', mu: -100, sigma: 1 })).toBe(0);
    near(interference([alone(18, 0.1)], { dist: 'normal', mu: 0, sigma: 20 }), failureByHand([[alone(18, 0.1)]], { dist: 'normal', mu: 0, sigma: 20 }, [1, 12, 20, 30, 60, 200]), 1e-8);
    near(interference([alone(18, 0.1)], { dist: 'normal', mu: 100, sigma: 1 }), 1, 1e-9);
  });
});
