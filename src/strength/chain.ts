/**
 * A chain of lognormal links that share factors: which link goes first, and at what force.
 *
 * ln S_i = muLog_i + sum_j shared_ij Z_j + own_i e_i, with Z and e independent standard normals. The chain breaks at
 * the smallest S_i. Links without a floor have jointly normal logarithms, so every question about them is an orthant
 * probability (src/numerics/multinormal.ts). A link with a floor is a truncated lognormal that is independent of all
 * others: its survival and density are closed forms, and it changes the answer only above its floor, where one
 * integral over ln force says by how much. Deterministic.
 * Definitions and reference values: tests/reference/chain-vectors.json.
 */
import { MAX_VARIABLES, orthant } from '../numerics/multinormal.ts';
import { INV_SQRT_2PI, normalCdf, normalHazard, normalQuantile, truncatedSurvival } from '../numerics/normal.ts';
import { gaussLegendre } from '../numerics/quadrature.ts';
import { assertDistribution, density, type Distribution, quantileOf } from './distribution.ts';

/** One link of a chain. Strengths in any unit of force; `muLog` and `floor` in the same one. */
export interface ChainLink {
  /** Mean of ln strength, before the floor. */
  muLog: number;
  /** Loading on each shared factor (sd of ln); the same order and length in every link of the chain. May be empty. */
  shared: readonly number[];
  /** Sd of ln of the part that this link shares with no other. 0 is allowed: then it is certain, given the factors. */
  own: number;
  /**
   * No piece is weaker than this: the link's whole distribution is cut here, and what lies above is scaled up to 1.
   * Such a link is independent of every other, so in a chain of several its `shared` must be zeros.
   */
  floor?: number;
}

/** Below this many standard deviations a floor changes nothing that doubles can show. */
const FLOOR_MATTERS = -8.3;
/** A floor that the other links outlast less often than this does not matter either. */
const NEVER = 1e-12;
/**
 * How far from its middle, in standard deviations, a link is integrated, in panels how wide, with how many nodes each.
 * So many leave the shares of random chains within 1e-10 of those with ten times as many.
 */
const REACH = 6.8;
const PANEL = 3.5;
const NODES = 10;

// Scratch for one question at a time: nothing here is read by the next call.
const mean = new Float64Array(MAX_VARIABLES);
const variogram = new Float64Array(MAX_VARIABLES * MAX_VARIABLES);
const limits = new Float64Array(MAX_VARIABLES);
/** Correlations; an orthant never looks at the diagonal. */
const matrix = new Float64Array(MAX_VARIABLES * MAX_VARIABLES);
const kept = new Int32Array(MAX_VARIABLES);

/** `alone`: a floored link may have loadings, since no other link is there to share them with. */
function assertLinks(links: readonly ChainLink[], name: string, alone = links.length === 1): void {
  if (links.length === 0) throw new RangeError(`${name} must hold at least one link.`);
  if (links.length > MAX_VARIABLES) {
    throw new RangeError(`${name} must hold at most ${MAX_VARIABLES} links (got ${links.length}).`);
  }
  const factors = (links[0] as ChainLink).shared.length;
  for (let i = 0; i < links.length; i++) {
    const link = links[i] as ChainLink;
    if (!Number.isFinite(link.muLog)) throw new RangeError(`${name}[${i}].muLog must be finite (got ${link.muLog}).`);
    if (!(link.own >= 0 && link.own < Infinity)) {
      throw new RangeError(`${name}[${i}].own must be 0 or more (got ${link.own}).`);
    }
    if (link.floor !== undefined && !(link.floor >= 0 && link.floor < Infinity)) {
      throw new RangeError(`${name}[${i}].floor must be 0 or more (got ${link.floor}).`);
    }
    if (link.shared.length !== factors) {
      throw new RangeError(`${name}[${i}].shared must have ${factors} loadings (got ${link.shared.length}).`);
    }
    for (let j = 0; j < factors; j++) {
      if (!Number.isFinite(link.shared[j] as number)) {
        throw new RangeError(`${name}[${i}].shared[${j}] must be finite (got ${link.shared[j]}).`);
      }
      if (!alone && link.floor && link.shared[j] !== 0) {
        throw new RangeError(`${name}[${i}] has a floor, so its shared must be zeros: fold its loadings into own.`);
      }
    }
  }
}

/** Product of the shared loadings of two links. */
function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < a.length; j++) sum += (a[j] as number) * (b[j] as number);
  return sum;
}

/** Sd of ln strength, before the floor. */
function spreadOf(link: ChainLink): number {
  return Math.sqrt(dot(link.shared, link.shared) + link.own * link.own);
}

/** ln of a floor that matters, else -Infinity. A floor far below the link's lower end is left out. */
function effectiveFloor(link: ChainLink): number {
  // Asked so often that it is told at once.
  if (!link.floor) return -Infinity;
  const floor = Math.log(link.floor);
  return (floor - link.muLog) / spreadOf(link) < FLOOR_MATTERS ? -Infinity : floor;
}

function hasFloor(links: readonly ChainLink[]): boolean {
  return links.some((link) => effectiveFloor(link) > -Infinity);
}

// ---------------------------------------------------------------- who is smallest

/** Fills `mean` and `variogram` (variances of the differences of ln strength) from links. */
function loadVariogram(links: readonly ChainLink[]): void {
  const count = links.length;
  for (let i = 0; i < count; i++) {
    const a = links[i] as ChainLink;
    mean[i] = a.muLog;
    for (let k = 0; k < i; k++) {
      const b = links[k] as ChainLink;
      let sum = a.own * a.own + b.own * b.own;
      for (let j = 0; j < a.shared.length; j++) {
        const gap = (a.shared[j] as number) - (b.shared[j] as number);
        sum += gap * gap;
      }
      variogram[i * MAX_VARIABLES + k] = sum;
      variogram[k * MAX_VARIABLES + i] = sum;
    }
  }
}

/**
 * P(link `i` is the smallest) of the `count` links whose means and variogram are in the scratch. A link that is certain
 * to equal another shares their common chance with it.
 */
function smallest(i: number, count: number): number {
  let tied = 1;
  let left = 0;
  for (let j = 0; j < count; j++) {
    if (j === i) continue;
    const lead = (mean[j] as number) - (mean[i] as number);
    const variance = variogram[i * MAX_VARIABLES + j] as number;
    if (variance === 0) {
      if (lead < 0) return 0;
      if (lead === 0) tied++;
      continue;
    }
    limits[left] = -lead / Math.sqrt(variance);
    kept[left++] = j;
  }
  for (let r = 0; r < left; r++) {
    const j = kept[r] as number;
    const vj = variogram[i * MAX_VARIABLES + j] as number;
    for (let c = 0; c < r; c++) {
      const k = kept[c] as number;
      const vk = variogram[i * MAX_VARIABLES + k] as number;
      // Differences from the same link: their covariance follows from three variances of differences.
      const correlation = (0.5 * (vj + vk - (variogram[j * MAX_VARIABLES + k] as number))) / Math.sqrt(vj * vk);
      matrix[r * left + c] = correlation;
      matrix[c * left + r] = correlation;
    }
  }
  return orthant(left, limits, matrix) / tied;
}

/**
 * Chance of each link to be the one that breaks first, in the order of `links`; they sum to 1. Links that are certain
 * to break at the same force split their share evenly.
 * @throws RangeError when a link is no valid one.
 */
export function firstShares(links: readonly ChainLink[]): number[] {
  assertLinks(links, 'links');
  if (links.length === 1) return [1];
  return hasFloor(links) ? flooredShares(prepare(links)) : freeShares(links);
}

/** First shares of links without floors. */
function freeShares(links: readonly ChainLink[]): number[] {
  const count = links.length;
  loadVariogram(links);
  const shares: number[] = [];
  for (let i = 0; i < count; i++) shares.push(smallest(i, count));
  return shares;
}

/** True for two links that are the same random strength: no scatter of their own, all else equal. */
function isSameStrength(a: ChainLink, b: ChainLink): boolean {
  if (a.own !== 0 || b.own !== 0 || a.muLog !== b.muLog || a.floor !== b.floor) return false;
  for (let j = 0; j < a.shared.length; j++) if (a.shared[j] !== b.shared[j]) return false;
  return true;
}

function isAmong(link: ChainLink, chain: readonly ChainLink[]): boolean {
  for (let i = 0; i < chain.length; i++) if (isSameStrength(link, chain[i] as ChainLink)) return true;
  return false;
}

/**
 * P(min a > min b): share of pairs in which a rig of chain `a` breaks strictly above one of chain `b`. Shared factors
 * (same order, same length) are one and the same draw for both; own parts are separate pieces. A link without own
 * scatter that stands alike in both chains is one piece: where it goes first in both, the pair is a tie and counts for
 * neither, so winShare(a, b) + winShare(b, a) can be below 1.
 * @throws RangeError when a link is no valid one, or the chains differ in their number of shared factors.
 */
export function winShare(a: readonly ChainLink[], b: readonly ChainLink[]): number {
  const first = a[0];
  const second = b[0];
  if (a.length === 1 && b.length === 1 && first && second && first.floor === undefined && second.floor === undefined) {
    // The commonest question by far: one normal difference.
    let variance = first.own * first.own + second.own * second.own;
    for (let j = 0; j < first.shared.length; j++) {
      const gap = (first.shared[j] as number) - (second.shared[j] as number);
      variance += gap * gap;
    }
    const lead = first.muLog - second.muLog;
    if (variance > 0 && first.shared.length === second.shared.length && lead - lead === 0) {
      return normalCdf(lead / Math.sqrt(variance));
    }
  }
  assertLinks(a, 'a', false);
  assertLinks(b, 'b', false);
  // A link that stands alike in both chains is put in once, at the end, for neither side.
  const all: ChainLink[] = [];
  for (let i = 0; i < a.length; i++) if (!isAmong(a[i] as ChainLink, b)) all.push(a[i] as ChainLink);
  const ofA = all.length;
  for (let i = 0; i < b.length; i++) if (!isAmong(b[i] as ChainLink, a)) all.push(b[i] as ChainLink);
  const ofB = all.length;
  for (let i = 0; i < b.length; i++) if (isAmong(b[i] as ChainLink, a)) all.push(b[i] as ChainLink);
  assertLinks(all, 'a and b together');
  let sum = 0;
  if (hasFloor(all)) {
    const shares = flooredShares(prepare(all));
    for (let i = ofA; i < ofB; i++) sum += shares[i] as number;
  } else {
    loadVariogram(all);
    for (let i = ofA; i < ofB; i++) sum += smallest(i, all.length);
  }
  return Math.min(sum, 1);
}

// ---------------------------------------------------------------- the distribution of the minimum

/** Links that share factors with each other and with no link outside; without floors. */
interface NormalBlock {
  /** Places of the links among those without a floor. */
  readonly members: readonly number[];
  readonly count: number;
  readonly mu: Float64Array;
  readonly sd: Float64Array;
  /** Correlations by rows; the diagonal is never read. */
  readonly correlations: Float64Array;
  readonly limits: Float64Array;
}

/** A link whose floor matters, in ln: a truncated normal that is independent of all else. */
interface FlooredLink {
  /** Its place in the chain. */
  readonly place: number;
  readonly mu: number;
  readonly sd: number;
  readonly floor: number;
  /** The floor in standard deviations from the middle. */
  readonly edge: number;
}

/** A chain made ready for many questions about its minimum. */
interface PreparedChain {
  readonly count: number;
  readonly floored: readonly FlooredLink[];
  /** The links without a floor that matters, and their places in the chain. */
  readonly free: readonly ChainLink[];
  readonly places: readonly number[];
  /** The same links, by blocks. */
  readonly blocks: readonly NormalBlock[];
}

/** Covariance by two spreads, free of what rounding puts beyond 1. */
function correlationOf(covariance: number, a: number, b: number): number {
  return Math.max(-1, Math.min(1, covariance / (a * b)));
}

function normalBlock(links: readonly ChainLink[], members: readonly number[]): NormalBlock {
  const count = members.length;
  const mu = new Float64Array(count);
  const sd = new Float64Array(count);
  const correlations = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const a = links[members[i] as number] as ChainLink;
    mu[i] = a.muLog;
    sd[i] = spreadOf(a);
    for (let k = 0; k < i; k++) {
      // Links of one block share something, so all of them scatter.
      const b = links[members[k] as number] as ChainLink;
      const value = correlationOf(dot(a.shared, b.shared), sd[i] as number, sd[k] as number);
      correlations[i * count + k] = value;
      correlations[k * count + i] = value;
    }
  }
  return { members, count, mu, sd, correlations, limits: new Float64Array(count) };
}

/** Standardised limit of a normal that has to exceed `u`; a certain one passes or does not. */
function standardised(u: number, mu: number, sd: number): number {
  return sd > 0 ? (u - mu) / sd : u < mu ? -99 : 99;
}

/** P(every link of the block > u), u = ln x; leaves the limits that it set. */
function normalBlockSurvival(block: NormalBlock, u: number): number {
  const { count, mu, sd, limits } = block;
  for (let i = 0; i < count; i++) limits[i] = standardised(u, mu[i] as number, sd[i] as number);
  return orthant(count, limits, block.correlations);
}

/** P(a floored link > e^u). */
function flooredSurvival(link: FlooredLink, u: number): number {
  return u <= link.floor ? 1 : truncatedSurvival((u - link.mu) / link.sd, link.edge);
}

/** True when what one link draws says something about the other: uncorrelated normals are independent. */
function areTied(a: ChainLink, b: ChainLink): boolean {
  return dot(a.shared, b.shared) !== 0;
}

function prepare(links: readonly ChainLink[]): PreparedChain {
  assertLinks(links, 'links');
  const floored: FlooredLink[] = [];
  const free: ChainLink[] = [];
  const places: number[] = [];
  for (let i = 0; i < links.length; i++) {
    const link = links[i] as ChainLink;
    const mu = link.muLog;
    const floor = effectiveFloor(link);
    const sd = spreadOf(link);
    if (floor > -Infinity && sd > 0) {
      floored.push({ place: i, mu, sd, floor, edge: (floor - mu) / sd });
      continue;
    }
    // Without any scatter a floored link is a fixed strength: the floor, if that is higher.
    free.push({ muLog: Math.max(mu, floor), shared: link.shared, own: link.own });
    places.push(i);
  }
  return { count: links.length, floored, free, places, blocks: blocksOf(free) };
}

/** Links grouped so that those of different blocks are independent. */
function blocksOf(links: readonly ChainLink[]): NormalBlock[] {
  const block: number[] = [];
  for (let i = 0; i < links.length; i++) {
    block.push(i);
    for (let k = 0; k < i; k++) {
      if (!areTied(links[i] as ChainLink, links[k] as ChainLink)) continue;
      const from = block[i];
      const to = block[k] as number;
      for (let m = 0; m <= i; m++) if (block[m] === from) block[m] = to;
    }
  }
  const blocks: NormalBlock[] = [];
  for (let b = 0; b < links.length; b++) {
    const places: number[] = [];
    for (let i = 0; i < links.length; i++) if (block[i] === b) places.push(i);
    if (places.length > 0) blocks.push(normalBlock(links, places));
  }
  return blocks;
}

/** P(all links without a floor > e^u). */
function freeSurvival(chain: PreparedChain, u: number): number {
  let value = 1;
  for (let i = 0; i < chain.blocks.length; i++) value *= normalBlockSurvival(chain.blocks[i] as NormalBlock, u);
  return value;
}

/** P(min > e^u). */
function survivalAtLog(chain: PreparedChain, u: number): number {
  let value = freeSurvival(chain, u);
  for (let i = 0; i < chain.floored.length; i++) value *= flooredSurvival(chain.floored[i] as FlooredLink, u);
  return value;
}

/**
 * P(min > x): chance that the chain does not break up to the force `x`.
 * @throws RangeError when a link is no valid one or `x` is NaN.
 */
export function survival(links: readonly ChainLink[], x: number): number {
  if (Number.isNaN(x)) throw new RangeError('x must be a number (got NaN).');
  const chain = prepare(links);
  return x === Infinity ? 0 : survivalAtLog(chain, Math.log(Math.max(x, 0)));
}

/** Beyond this edge the tail that is left is too thin to be inverted. */
const FAR = 30;

/** ln of the p-quantile of a floored link; far above its middle the bound of an exponential tail, which lies higher. */
function flooredQuantile(link: FlooredLink, p: number): number {
  const { mu, sd, floor, edge } = link;
  if (edge < FAR) return mu - sd * normalQuantile((1 - p) * normalCdf(-edge));
  return floor - (sd * Math.log1p(-p)) / edge;
}

/** A quantile of the minimum: normal score, ln force, and rise of the score there. */
interface Point {
  readonly z: number;
  readonly u: number;
  readonly slope: number;
}

/** The p-quantile of the minimum; the search starts from another one, if there is one. */
function pointAt(chain: PreparedChain, p: number, from: Point | undefined): Point {
  const z = normalQuantile(p);
  // No quantile of the minimum lies above that of any link. Nor does it lie below all that the links have for a
  // `count`-th of `p`, since these chances add up to `p` at most.
  const zPart = normalQuantile(p / chain.count);
  let low = Infinity;
  let high = Infinity;
  for (let i = 0; i < chain.blocks.length; i++) {
    const { count, mu, sd } = chain.blocks[i] as NormalBlock;
    for (let k = 0; k < count; k++) {
      low = Math.min(low, (mu[k] as number) + zPart * (sd[k] as number));
      high = Math.min(high, (mu[k] as number) + z * (sd[k] as number));
    }
  }
  for (let i = 0; i < chain.floored.length; i++) {
    const link = chain.floored[i] as FlooredLink;
    low = Math.min(low, link.floor);
    high = Math.min(high, flooredQuantile(link, p));
  }
  // In normal scores the distribution is nearly a straight line, so secants settle in a few steps. Where no other link
  // matters, the quantile of the weakest is the answer and the search starts on it.
  let slope = from ? from.slope : (z - zPart) / (high - low);
  let u = from ? from.u + (z - from.z) / slope : high;
  // A single link without a floor leaves nothing to search, nor does a fixed strength that no other comes near.
  if (high <= low) return { z, u: high, slope };
  // An end may be the answer itself: rounding must not shut it out.
  const hair = 1e-9 * (high - low);
  let right = high + hair;
  let left = low - hair;
  if (!(u > left && u < right)) u = high;
  let score = scoreAt(chain, u) - z;
  for (let step = 0; step < 200 && Math.abs(score) > 1e-14 && right - left > 1e-14; step++) {
    if (score > 0) right = u;
    else left = u;
    let next = u - score / slope;
    if (!(next > left && next < right)) next = 0.5 * (left + right);
    const move = next - u;
    const before = score;
    u = next;
    score = scoreAt(chain, u) - z;
    // Along a level or across a jump this leads out of what is left, and the next step halves that.
    slope = (score - before) / move;
    // Secant errors multiply: after a step that short the next one is exact to well below 1e-9. A floor is a kink,
    // across which a secant says less.
    if (Math.abs(score) < (chain.floored.length > 0 ? 1e-10 : 1e-6)) {
      const last = u - score / slope;
      if (last >= left && last <= right) u = last;
      break;
    }
  }
  return { z, u, slope };
}

/** The normal score of P(min <= e^u), as far out as doubles tell it from that of 0 or 1. */
function scoreAt(chain: PreparedChain, u: number): number {
  return -normalQuantile(Math.max(1e-300, Math.min(survivalAtLog(chain, u), 1 - 1e-16)));
}

/**
 * The force below which a share `p` of such chains breaks.
 * @throws RangeError when a link is no valid one or `p` does not lie strictly between 0 and 1.
 */
export function quantile(links: readonly ChainLink[], p: number): number {
  return Math.exp(pointAt(prepare(links), p, undefined).u);
}

/** As `quantile`, for several shares at once, in the order given: made ready once, and each search helps the next. */
export function quantiles(links: readonly ChainLink[], ps: readonly number[]): number[] {
  const chain = prepare(links);
  let point: Point | undefined;
  return ps.map((p) => {
    point = pointAt(chain, p, point);
    return Math.exp(point.u);
  });
}

/**
 * Mean force at which the chain breaks, in the unit of the links.
 * Without floors: the sum over the links of E[S_i ; i first], each a first share under means moved by the covariances
 * with ln S_i (Clark, Operations Research 9, 1961, carried to lognormals). Floored links take off what they cut.
 * @throws RangeError when a link is no valid one.
 */
export function meanOfMinimum(links: readonly ChainLink[]): number {
  const chain = prepare(links);
  const { free, floored } = chain;
  const lone = free.length === 0;
  let sum = lone ? Math.exp(lowestFloor(floored)) : freeMean(free);
  overFloors(chain, (u, weight, rest, above) => {
    sum += weight * Math.exp(u) * (lone ? above : rest * (above - 1));
  });
  return sum;
}

/** Mean of the minimum of links without floors. */
function freeMean(links: readonly ChainLink[]): number {
  const count = links.length;
  loadVariogram(links);
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const link = links[i] as ChainLink;
    const variance = dot(link.shared, link.shared) + link.own * link.own;
    for (let j = 0; j < count; j++) {
      const other = links[j] as ChainLink;
      mean[j] = other.muLog + (j === i ? variance : dot(link.shared, other.shared));
    }
    sum += Math.exp(link.muLog + 0.5 * variance) * smallest(i, count);
  }
  return sum;
}

/**
 * P(min < load) for a load that is independent of every link, integrated over the load.
 * @throws RangeError when a link or the load is no valid one.
 */
export function interference(links: readonly ChainLink[], load: Distribution): number {
  const chain = prepare(links);
  assertDistribution(load, 'load');
  // Panels of two standard deviations, of the load and of each link: what scatters little is met by narrow ones.
  const cuts = chain.floored.map((link) => Math.exp(link.floor));
  for (let k = -8; k <= 8; k += 2) {
    cuts.push(quantileOf(load, normalCdf(k)));
    for (const link of chain.floored) cuts.push(Math.exp(link.mu + k * link.sd));
    for (const link of chain.free) cuts.push(Math.exp(link.muLog + k * spreadOf(link)));
  }
  const edges = panelEdges(quantileOf(load, normalCdf(-8)), quantileOf(load, normalCdf(8)), cuts, Infinity);
  const rule = gaussLegendre(16);
  let sum = 0;
  for (let e = 0; e + 1 < edges.length; e++) {
    const half = 0.5 * ((edges[e + 1] as number) - (edges[e] as number));
    for (let i = 0; i < rule.nodes.length; i++) {
      const x = Math.max(0, (edges[e] as number) + half * (1 + (rule.nodes[i] as number)));
      sum += half * (rule.weights[i] as number) * density(load, x) * (1 - survivalAtLog(chain, Math.log(x)));
    }
  }
  return Math.min(sum, 1);
}

/** Panel ends from `low` to `high`, split at the cuts and no wider than `widest` (at most 400 panels a piece). */
function panelEdges(low: number, high: number, cuts: readonly number[], widest: number): number[] {
  const edges = [low];
  let from = low;
  for (const to of [...cuts.filter((cut) => cut > low && cut < high).sort((a, b) => a - b), high]) {
    const panels = Math.min(400, Math.max(1, Math.ceil((to - from) / widest)));
    for (let i = 1; i <= panels; i++) edges.push(from + ((to - from) * i) / panels);
    from = to;
  }
  return edges;
}

// ---------------------------------------------------------------- with floors

function lowestFloor(floored: readonly FlooredLink[]): number {
  return floored.reduce((lowest, link) => Math.min(lowest, link.floor), Infinity);
}

/**
 * Ends of panels of ln force, from the lowest floor to where no link without a floor is left (without such links: no
 * floored one).
 */
function edgesAboveFloors(chain: PreparedChain): number[] {
  const low = lowestFloor(chain.floored);
  const cuts = chain.floored.map((link) => link.floor);
  let high = Infinity;
  let finest = Infinity;
  for (const block of chain.blocks) {
    for (let i = 0; i < block.count; i++) {
      const mu = block.mu[i] as number;
      const sd = block.sd[i] as number;
      high = Math.min(high, mu + REACH * sd);
      finest = Math.min(finest, sd || Infinity);
    }
  }
  for (const link of chain.floored) {
    if (chain.free.length === 0) high = Math.min(high, Math.max(link.mu, link.floor) + REACH * link.sd);
    finest = Math.min(finest, link.sd);
  }
  for (const link of chain.floored) {
    // Just above a floor the density can fall within sd / edge: panels that triple from there.
    const narrowest = (2 * link.sd) / Math.max(1, link.edge);
    for (let width = narrowest; width < PANEL * finest; width *= 3) cuts.push(link.floor + width);
  }
  return panelEdges(low, high, cuts, PANEL * finest);
}

/**
 * Walks the range where floored links can go first, unless the others hardly ever last until there. Each visit gets ln
 * force, the weight of the place, the survival of the links without a floor, and that of the floored ones.
 */
function overFloors(
  chain: PreparedChain,
  visit: (u: number, weight: number, rest: number, above: number) => void,
): void {
  if (freeSurvival(chain, lowestFloor(chain.floored)) < NEVER) return;
  const edges = edgesAboveFloors(chain);
  const rule = gaussLegendre(NODES);
  for (let e = 0; e + 1 < edges.length; e++) {
    const half = 0.5 * ((edges[e + 1] as number) - (edges[e] as number));
    for (let q = 0; q < NODES; q++) {
      const u = (edges[e] as number) + half * (1 + (rule.nodes[q] as number));
      let above = 1;
      for (const link of chain.floored) above *= flooredSurvival(link, u);
      visit(u, half * (rule.weights[q] as number), freeSurvival(chain, u), above);
    }
  }
}

/**
 * First shares of a chain with floors. A floored link: over ln force, its density times the survival of all others.
 * The rest: their shares among themselves, less those where a floored link went before.
 */
function flooredShares(chain: PreparedChain): number[] {
  const { blocks, floored, free, places } = chain;
  const among = freeShares(free);
  const partials = blocks.map(partialsOf);
  const shares = new Array<number>(chain.count).fill(0);
  overFloors(chain, (u, weight, rest, above) => {
    for (const link of floored) {
      if (u <= link.floor) continue;
      const x = (u - link.mu) / link.sd;
      let others = rest * weight;
      for (const other of floored) if (other !== link) others *= flooredSurvival(other, u);
      const dense = (truncatedSurvival(x, link.edge) * normalHazard(x)) / link.sd;
      shares[link.place] = (shares[link.place] as number) + dense * others;
    }
    blocks.forEach((block, b) => {
      let others = weight * (1 - above);
      blocks.forEach((other, o) => {
        if (o !== b) others *= normalBlockSurvival(other, u);
      });
      // At the limits that the survival of the block has set.
      const partial = partials[b] as (index: number) => number;
      for (let i = 0; i < block.count; i++) {
        const member = block.members[i] as number;
        among[member] = (among[member] as number) - others * partial(i);
      }
    });
  });
  free.forEach((link, i) => {
    let share = among[i] as number;
    // A fixed strength has no density: it goes first there, and only if no floored link did.
    if (spreadOf(link) === 0) for (const other of floored) share *= flooredSurvival(other, link.muLog);
    shares[places[i] as number] = Math.max(0, share);
  });
  return shares;
}

/** For a block of normals at its limits: density of one at the limit times the survival of the others given that. */
function partialsOf(block: NormalBlock): (index: number) => number {
  const { count, sd, limits } = block;
  const links = Array.from({ length: count }, (_, i) => i);
  const between = (i: number, k: number): number => block.correlations[i * count + k] as number;
  const given = links.map((i) => {
    const others = links.filter((k) => k !== i);
    const deviations = others.map((k) => Math.sqrt(Math.max(0, 1 - between(i, k) ** 2)));
    const correlations = others.flatMap((k, at) =>
      others.map((l, to) => {
        const covariance = between(k, l) - between(i, k) * between(i, l);
        // Where one does not deviate, its limit alone decides, and this is not read.
        return correlationOf(covariance, deviations[at] as number, deviations[to] as number);
      }),
    );
    return { others, deviations, correlations, limits: new Float64Array(others.length) };
  });
  return (index) => {
    const h = limits[index] as number;
    const spread = sd[index] as number;
    // A fixed strength has no density.
    if (spread === 0) return 0;
    const { others, deviations, correlations, limits: reduced } = given[index] as (typeof given)[number];
    for (let k = 0; k < others.length; k++) {
      const other = others[k] as number;
      const lead = (limits[other] as number) - between(index, other) * h;
      reduced[k] = standardised(lead, 0, deviations[k] as number);
    }
    const dense = (INV_SQRT_2PI * Math.exp(-0.5 * h * h)) / spread;
    return dense * orthant(others.length, reduced, correlations);
  };
}

// ---------------------------------------------------------------- fewer factors, same law

/**
 * The same chain with as few shared factors as simple merging gives: factors that act on the same links with
 * proportional loadings become one, a factor that acts on one link only becomes part of its own scatter, and empty ones
 * go.
 * @throws RangeError when a link is no valid one, or one with a floor shares a factor with another.
 */
export function mergeShared(links: readonly ChainLink[]): ChainLink[] {
  assertLinks(links, 'links', true);
  const factors = (links[0] as ChainLink).shared.length;
  const own = links.map((link) => link.own);
  const columns: number[][] = [];
  for (let j = 0; j < factors; j++) {
    let at = 0;
    let acting = 0;
    for (let i = links.length - 1; i >= 0; i--) {
      if ((links[i] as ChainLink).shared[j] === 0) continue;
      at = i;
      acting++;
    }
    if (acting === 0) continue;
    if (acting === 1) {
      own[at] = Math.hypot(own[at] as number, (links[at] as ChainLink).shared[j] as number);
      continue;
    }
    const column = links.map((link) => link.shared[j] as number);
    const like = columns.find((other) => isProportional(other, column));
    if (!like) {
      columns.push(column);
      continue;
    }
    const grow = Math.hypot(1, (column[at] as number) / (like[at] as number));
    for (let i = 0; i < like.length; i++) like[i] = (like[i] as number) * grow;
  }
  const merged = links.map((link, i) => ({
    ...link,
    shared: columns.map((column) => column[i] as number),
    own: own[i] as number,
  }));
  assertLinks(merged, 'links', false);
  return merged;
}

function isProportional(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value) => value !== 0);
  const ratio = (b[at] as number) / (a[at] as number);
  return a.every((value, i) => Math.abs(value * ratio - (b[i] as number)) <= 1e-12 * Math.abs(value * ratio));
}
