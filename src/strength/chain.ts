/**
 * A chain of lognormal links that share factors: which link goes first, and at what force.
 *
 * ln S_i = muLog_i + sum_j shared_ij Z_j + own_i e_i, with Z and e independent standard normals. The chain breaks at
 * the smallest S_i. Without floors the links' logarithms are jointly normal, so every question is an orthant
 * probability (src/numerics/multinormal.ts). With a floor the link is truncated below *given* the shared factors; those factors
 * are then integrated out by Gauss-Hermite, everything else by one-dimensional quadrature. Deterministic.
 * Definitions and reference values: tests/reference/chain-vectors.json.
 */
import { bivariateOrthant, MAX_VARIABLES, orthant } from '../numerics/multinormal.ts';
import { INV_SQRT_2PI, normalCdf, normalQuantile, scaledTail, truncatedSurvival } from '../numerics/normal.ts';
import { gaussLegendre, normalRule } from '../numerics/quadrature.ts';
import { density, type Distribution, quantileOf } from './distribution.ts';

/** One link of a chain. Strengths in any unit of force; `muLog` and `floor` in the same one. */
export interface ChainLink {
  /** Mean of ln strength, before the floor. */
  muLog: number;
  /** Loading on each shared factor (sd of ln); the same order and length in every link of the chain. May be empty. */
  shared: readonly number[];
  /** Sd of ln of the part that this link shares with no other. 0 is allowed: then it is certain, given the factors. */
  own: number;
  /**
   * Given the shared factors, no piece is weaker than this. Such a link needs scatter of its own: `own` below 1/64 of
   * its shared loadings together is computed as 1/64.
   */
  floor?: number;
}

/** Below this many standard deviations a floor changes nothing that doubles can show. */
const FLOOR_MATTERS = -8.3;
/** Smallest ratio of own to shared scatter with which a floored link is computed. */
const LEAST_OWN = 1 / 64;
/** How far from its middle, in standard deviations, a link is integrated. */
const REACH = 6.8;

// Scratch for one question at a time: nothing here is read by the next call.
const mean = new Float64Array(MAX_VARIABLES);
const variogram = new Float64Array(MAX_VARIABLES * MAX_VARIABLES);
const limits = new Float64Array(MAX_VARIABLES);
const matrix = new Float64Array(MAX_VARIABLES * MAX_VARIABLES);
const kept = new Int32Array(MAX_VARIABLES);

function assertLinks(links: readonly ChainLink[], name: string): void {
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
    }
  }
}

/** Product of the shared loadings of two links. */
function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < a.length; j++) sum += (a[j] as number) * (b[j] as number);
  return sum;
}

/** ln of a floor that matters, else -Infinity. A floor far below the link's lower end is left out. */
function effectiveFloor(link: ChainLink): number {
  if (link.floor === undefined || link.floor === 0) return -Infinity;
  const floor = Math.log(link.floor);
  const sd = Math.sqrt(dot(link.shared, link.shared) + link.own * link.own);
  return (floor - link.muLog) / sd < FLOOR_MATTERS ? -Infinity : floor;
}

function hasFloor(links: readonly ChainLink[]): boolean {
  for (let i = 0; i < links.length; i++) {
    if ((links[i] as ChainLink).floor !== undefined && effectiveFloor(links[i] as ChainLink) > -Infinity) return true;
  }
  return false;
}

// ---------------------------------------------------------------- who is smallest, without floors

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
  if (left === 0) return 1 / tied;
  if (left === 1) return normalCdf(-(limits[0] as number)) / tied;
  for (let r = 0; r < left; r++) {
    const j = kept[r] as number;
    const vj = variogram[i * MAX_VARIABLES + j] as number;
    matrix[r * left + r] = 1;
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
  const count = links.length;
  if (count === 1) return [1];
  if (hasFloor(links)) return flooredShares(links);
  loadVariogram(links);
  const shares: number[] = [];
  if (count === 2) {
    const first = smallest(0, 2);
    shares.push(first, 1 - first);
    return shares;
  }
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
  if (link.own !== 0) return false;
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
  assertLinks(a, 'a');
  assertLinks(b, 'b');
  // A link that stands alike in both chains is put in once, at the end, for neither side.
  const all: ChainLink[] = [];
  for (let i = 0; i < a.length; i++) if (!isAmong(a[i] as ChainLink, b)) all.push(a[i] as ChainLink);
  const ofA = all.length;
  for (let i = 0; i < b.length; i++) if (!isAmong(b[i] as ChainLink, a)) all.push(b[i] as ChainLink);
  const ofB = all.length;
  for (let i = 0; i < b.length; i++) if (isAmong(b[i] as ChainLink, a)) all.push(b[i] as ChainLink);
  if (ofB === ofA) return 0;
  assertLinks(all, 'a and b together');
  const count = all.length;
  let sum = 0;
  if (hasFloor(all)) {
    const shares = flooredShares(all);
    for (let i = ofA; i < ofB; i++) sum += shares[i] as number;
  } else {
    loadVariogram(all);
    if (ofB === count && ofA < count - ofA) {
      for (let i = 0; i < ofA; i++) sum += smallest(i, count);
      sum = 1 - sum;
    } else {
      for (let i = ofA; i < ofB; i++) sum += smallest(i, count);
    }
  }
  return sum < 0 ? 0 : Math.min(sum, 1);
}

// ---------------------------------------------------------------- the distribution of the minimum

/** Links that share factors with each other and with no link outside; without floors. */
interface NormalBlock {
  /** Places of the links in the chain. */
  readonly members: readonly number[];
  readonly count: number;
  readonly mu: Float64Array;
  readonly sd: Float64Array;
  /** Correlations by rows. */
  readonly correlations: Float64Array;
  readonly limits: Float64Array;
}

/** Links of which at least one has a floor, split by the directions of the shared factors that the floored ones see. */
interface FlooredBlock {
  /** Places of the floored links in the chain. */
  readonly members: readonly number[];
  /** Floored links: middle, ln floor, own sd, loadings on the directions (by rows of `directions`). */
  readonly floored: number;
  readonly mu: Float64Array;
  readonly floor: Float64Array;
  readonly own: Float64Array;
  readonly loading: Float64Array;
  /** How many independent directions are integrated out. */
  readonly directions: number;
  /** Nodes (by rows of `directions`) and weights of that integral. */
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
  /** The links without a floor: jointly normal once the directions are given. */
  readonly rest: NormalBlock;
  readonly restLoading: Float64Array;
}

/** A chain made ready for many questions about its minimum. */
interface PreparedChain {
  readonly links: readonly ChainLink[];
  readonly normal: readonly NormalBlock[];
  readonly floored: readonly FlooredBlock[];
}

function normalBlock(members: readonly ChainLink[], places: readonly number[]): NormalBlock {
  const count = members.length;
  const mu = new Float64Array(count);
  const sd = new Float64Array(count);
  const correlations = new Float64Array(count * count);
  for (let i = 0; i < count; i++) {
    const a = members[i] as ChainLink;
    mu[i] = a.muLog;
    sd[i] = Math.sqrt(dot(a.shared, a.shared) + a.own * a.own);
    correlations[i * count + i] = 1;
    for (let k = 0; k < i; k++) {
      const scale = (sd[i] as number) * (sd[k] as number);
      const value = scale > 0 ? Math.max(-1, Math.min(1, dot(a.shared, (members[k] as ChainLink).shared) / scale)) : 0;
      correlations[i * count + k] = value;
      correlations[k * count + i] = value;
    }
  }
  return { members: places, count, mu, sd, correlations, limits: new Float64Array(count) };
}

/** Standardised limit of a normal that has to exceed `u`; a certain one passes or does not. */
function standardised(u: number, mu: number, sd: number): number {
  return sd > 0 ? (u - mu) / sd : u < mu ? -99 : 99;
}

/** P(every link of the block > u), u = ln x. */
function normalBlockSurvival(block: NormalBlock, u: number): number {
  const { count, mu, sd } = block;
  if (count === 1) return normalCdf(-standardised(u, mu[0] as number, sd[0] as number));
  const h = standardised(u, mu[0] as number, sd[0] as number);
  const k = standardised(u, mu[1] as number, sd[1] as number);
  if (count === 2) return bivariateOrthant(h, k, block.correlations[1] as number);
  block.limits[0] = h;
  block.limits[1] = k;
  for (let i = 2; i < count; i++) block.limits[i] = standardised(u, mu[i] as number, sd[i] as number);
  return orthant(count, block.limits, block.correlations);
}

function flooredBlock(members: readonly ChainLink[], places: readonly number[]): FlooredBlock {
  const floored = members.filter((link) => effectiveFloor(link) > -Infinity);
  const rest = members.filter((link) => effectiveFloor(link) === -Infinity);
  const factors = (members[0] as ChainLink).shared.length;
  // Gram-Schmidt on what the floored links load: as few directions as possible have to be integrated out.
  const basis: number[][] = [];
  for (const link of floored) {
    const vector = [...link.shared];
    for (let pass = 0; pass < 2; pass++) {
      for (const direction of basis) {
        const along = dot(vector, direction);
        for (let j = 0; j < factors; j++) vector[j] = (vector[j] as number) - along * (direction[j] as number);
      }
    }
    const length = Math.sqrt(dot(vector, vector));
    if (length > 1e-9 * Math.sqrt(dot(link.shared, link.shared)) && length > 0)
      basis.push(vector.map((v) => v / length));
  }
  const directions = basis.length;
  const loading = new Float64Array(floored.length * directions);
  const own = new Float64Array(floored.length);
  let sharpness = 0;
  floored.forEach((link, i) => {
    const size = Math.sqrt(dot(link.shared, link.shared));
    own[i] = Math.max(link.own, size * LEAST_OWN);
    basis.forEach((direction, d) => {
      loading[i * directions + d] = dot(link.shared, direction);
    });
    sharpness = Math.max(sharpness, size / (own[i] as number));
  });
  const restLoading = new Float64Array(rest.length * directions);
  const remaining = rest.map((link, i) => {
    const shared = [...link.shared];
    let gone = 0;
    basis.forEach((direction, d) => {
      const along = dot(link.shared, direction);
      restLoading[i * directions + d] = along;
      gone += along * along;
      for (let j = 0; j < factors; j++) shared[j] = (shared[j] as number) - along * (direction[j] as number);
    });
    const left = Math.sqrt(dot(shared, shared) + link.own * link.own);
    const least = Math.sqrt(gone) * LEAST_OWN;
    if (gone > 0) sharpness = Math.max(sharpness, Math.sqrt(gone) / Math.max(left, least));
    return { muLog: link.muLog, shared, own: left < least ? least : link.own };
  });
  const rule = normalRule(directions === 0 ? 0 : sharpness);
  const size = rule.nodes.length;
  const total = directions === 0 ? 1 : size ** directions;
  const nodes = new Float64Array(total * directions);
  const weights = new Float64Array(total);
  let used = 0;
  for (let n = 0; n < total; n++) {
    let weight = 1;
    let index = n;
    for (let d = 0; d < directions; d++) {
      const at = index % size;
      index = (index - at) / size;
      weight *= rule.weights[at] as number;
      nodes[used * directions + d] = rule.nodes[at] as number;
    }
    // Corners of the product that weigh nothing are left out.
    if (weight > 1e-13) weights[used++] = weight;
  }
  const isFloored = (_: number, i: number): boolean => effectiveFloor(members[i] as ChainLink) > -Infinity;
  return {
    members: places.filter(isFloored),
    floored: floored.length,
    mu: Float64Array.from(floored, (link) => link.muLog),
    floor: Float64Array.from(floored, effectiveFloor),
    own,
    loading,
    directions,
    nodes: nodes.subarray(0, used * directions),
    weights: weights.subarray(0, used),
    rest: normalBlock(
      remaining,
      places.filter((place, i) => !isFloored(place, i)),
    ),
    restLoading,
  };
}

/** Middle of a link once the directions sit at node `n`. */
function middleAt(block: FlooredBlock, mu: number, loading: Float64Array, i: number, n: number): number {
  let value = mu;
  const d = block.directions;
  for (let k = 0; k < d; k++) value += (loading[i * d + k] as number) * (block.nodes[n * d + k] as number);
  return value;
}

function flooredBlockSurvival(block: FlooredBlock, u: number): number {
  const { rest } = block;
  let active = false;
  for (let i = 0; i < block.floored; i++) if (u >= (block.floor[i] as number)) active = true;
  if (!active && rest.count === 0) return 1;
  let sum = 0;
  for (let n = 0; n < block.weights.length; n++) {
    let product = block.weights[n] as number;
    for (let i = 0; i < block.floored; i++) {
      const floor = block.floor[i] as number;
      if (u < floor) continue;
      const middle = middleAt(block, block.mu[i] as number, block.loading, i, n);
      const own = block.own[i] as number;
      product *= truncatedSurvival((u - middle) / own, (floor - middle) / own);
    }
    if (rest.count === 1) {
      const middle = middleAt(block, rest.mu[0] as number, block.restLoading, 0, n);
      product *= normalCdf(-standardised(u, middle, rest.sd[0] as number));
    } else if (rest.count > 1) {
      for (let i = 0; i < rest.count; i++) {
        const middle = middleAt(block, rest.mu[i] as number, block.restLoading, i, n);
        rest.limits[i] = standardised(u, middle, rest.sd[i] as number);
      }
      product *= orthant(rest.count, rest.limits, rest.correlations);
    }
    sum += product;
  }
  return sum;
}

/** True when what one link draws says something about the other. */
function areTied(a: ChainLink, b: ChainLink): boolean {
  let product = 0;
  let together = false;
  for (let j = 0; j < a.shared.length; j++) {
    const term = (a.shared[j] as number) * (b.shared[j] as number);
    product += term;
    if (term !== 0) together = true;
  }
  // Uncorrelated is independent only for links without a floor.
  return product !== 0 || (together && (effectiveFloor(a) > -Infinity || effectiveFloor(b) > -Infinity));
}

/** A floored link without any scatter is a fixed strength: the floor, if that is higher. */
function steady(link: ChainLink): ChainLink {
  if (link.floor === undefined || link.own > 0 || dot(link.shared, link.shared) > 0) return link;
  const muLog = link.floor > 0 ? Math.max(link.muLog, Math.log(link.floor)) : link.muLog;
  return { muLog, shared: link.shared, own: 0 };
}

function prepare(given: readonly ChainLink[]): PreparedChain {
  assertLinks(given, 'links');
  const count = given.length;
  const links: ChainLink[] = [];
  const block: number[] = [];
  for (let i = 0; i < count; i++) {
    const link = steady(given[i] as ChainLink);
    links.push(link);
    block.push(i);
    for (let k = 0; k < i; k++) {
      if (block[i] === block[k] || !areTied(link, links[k] as ChainLink)) continue;
      const from = block[i];
      const to = block[k] as number;
      for (let m = 0; m <= i; m++) if (block[m] === from) block[m] = to;
    }
  }
  const normal: NormalBlock[] = [];
  const floored: FlooredBlock[] = [];
  for (let b = 0; b < count; b++) {
    const members: ChainLink[] = [];
    const places: number[] = [];
    for (let i = 0; i < count; i++) {
      if (block[i] !== b) continue;
      members.push(links[i] as ChainLink);
      places.push(i);
    }
    if (members.length === 0) continue;
    if (hasFloor(members)) floored.push(flooredBlock(members, places));
    else normal.push(normalBlock(members, places));
  }
  return { links, normal, floored };
}

/** P(min > e^u). */
function survivalAtLog(chain: PreparedChain, u: number): number {
  let value = 1;
  for (let i = 0; i < chain.normal.length; i++) value *= normalBlockSurvival(chain.normal[i] as NormalBlock, u);
  for (let i = 0; i < chain.floored.length; i++) value *= flooredBlockSurvival(chain.floored[i] as FlooredBlock, u);
  return value;
}

/**
 * P(min > x): chance that the chain does not break up to the force `x`.
 * @throws RangeError when a link is no valid one or `x` is NaN.
 */
export function survival(links: readonly ChainLink[], x: number): number {
  if (Number.isNaN(x)) throw new RangeError('x must be a number (got NaN).');
  const chain = prepare(links);
  if (x <= 0) return 1;
  if (x === Infinity) return 0;
  return survivalAtLog(chain, Math.log(x));
}

/** Where the last quantile was found: score, ln force, and rise of the score there; slope 0 means none yet. */
interface Trail {
  z: number;
  u: number;
  slope: number;
}

/** ln of the p-quantile of the minimum; the search starts from the trail, if there is one, and leaves its own. */
function logQuantile(chain: PreparedChain, p: number, trail: Trail): number {
  const z = normalQuantile(p);
  const { links } = chain;
  const count = links.length;
  const only = chain.normal[0];
  if (count === 1 && only) return (only.mu[0] as number) + z * (only.sd[0] as number);
  // The union bound from below; from above no minimum lies beyond the quantile of a link without a floor.
  const zLow = normalQuantile(p / count);
  let low = Infinity;
  let high = Infinity;
  let spread = 0;
  for (let i = 0; i < chain.normal.length; i++) {
    const block = chain.normal[i] as NormalBlock;
    for (let k = 0; k < block.count; k++) {
      const mu = block.mu[k] as number;
      const sd = block.sd[k] as number;
      low = Math.min(low, mu + zLow * sd);
      if (mu + z * sd < high) {
        high = mu + z * sd;
        spread = sd;
      }
    }
  }
  if (chain.floored.length > 0) {
    let bound = 0;
    for (let i = 0; i < count; i++) {
      const link = links[i] as ChainLink;
      const sd = Math.sqrt(dot(link.shared, link.shared) + link.own * link.own);
      low = Math.min(low, link.muLog + zLow * sd);
      const top = Math.max(effectiveFloor(link), link.muLog) + 2 * sd;
      bound = i === 0 ? top : Math.max(bound, top);
      spread = Math.max(spread, sd);
    }
    if (high > bound) {
      high = bound;
      while (1 - survivalAtLog(chain, high) < p) high += spread;
    }
  }
  if (!(high > low)) return high;
  // In normal scores the distribution is nearly a straight line, so secants settle in a few steps.
  let right = high;
  let left = low;
  let slope = trail.slope > 0 ? trail.slope : spread > 0 ? 1 / spread : 1;
  let u = trail.slope > 0 ? trail.u + (z - trail.z) / slope : high;
  if (!(u > low && u < high)) u = high;
  let score = scoreAt(chain, u) - z;
  for (let step = 0; step < 200; step++) {
    if (score > 0) right = u;
    else if (score < 0) left = u;
    else break;
    let next = u - score / slope;
    if (!(next > left && next < right)) next = 0.5 * (left + right);
    const move = next - u;
    const before = score;
    u = next;
    if (Math.abs(move) < 1e-15 * Math.max(1, Math.abs(u)) || right - left < 1e-14) break;
    score = scoreAt(chain, u) - z;
    const rise = (score - before) / move;
    if (rise > 0 && rise < Infinity) {
      slope = rise;
      // Secant errors multiply: after a step that short the next one is exact to well below 1e-9. A floor is a kink,
      // across which a secant says less.
      if (Math.abs(score) < (chain.floored.length > 0 ? 1e-10 : 1e-6)) {
        const last = u - score / slope;
        if (last > left && last < right) u = last;
        break;
      }
    } else slope = Infinity;
  }
  if (slope < Infinity) {
    trail.z = z;
    trail.u = u;
    trail.slope = slope;
  }
  return u;
}

/** The normal score of P(min <= e^u), kept within +-40. */
function scoreAt(chain: PreparedChain, u: number): number {
  const above = survivalAtLog(chain, u);
  if (above < 0.5) return above < 1e-300 ? 40 : -normalQuantile(above);
  const below = 1 - above;
  return below < 1e-300 ? -40 : normalQuantile(below);
}

/**
 * The force below which a share `p` of such chains breaks.
 * @throws RangeError when a link is no valid one or `p` does not lie strictly between 0 and 1.
 */
export function quantile(links: readonly ChainLink[], p: number): number {
  return Math.exp(logQuantile(prepare(links), p, { z: 0, u: 0, slope: 0 }));
}

/** As `quantile`, for several shares at once, in the order given: made ready once, and each search helps the next. */
export function quantiles(links: readonly ChainLink[], ps: readonly number[]): number[] {
  const chain = prepare(links);
  const trail = { z: 0, u: 0, slope: 0 };
  const found: number[] = [];
  for (let i = 0; i < ps.length; i++) found.push(Math.exp(logQuantile(chain, ps[i] as number, trail)));
  return found;
}

/**
 * Mean force at which the chain breaks, in the unit of the links.
 * Without floors: the sum over the links of E[S_i ; i first], each a first share under means moved by the covariances
 * with ln S_i (Clark, Operations Research 9, 1961, carried to lognormals).
 * @throws RangeError when a link is no valid one.
 */
export function meanOfMinimum(links: readonly ChainLink[]): number {
  const chain = prepare(links);
  if (chain.floored.length > 0) return flooredMean(chain);
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
 * P(min < load) for a load that is independent of every link.
 * A lognormal load is one more link; other loads are integrated over.
 * @throws RangeError when a link or the load is no valid one.
 */
export function interference(links: readonly ChainLink[], load: Distribution): number {
  const chain = prepare(links);
  if (load.dist === 'lognormal' && chain.floored.length === 0 && links.length < MAX_VARIABLES) {
    const none = (links[0] as ChainLink).shared.map(() => 0);
    const all = [...links, { muLog: load.muLog, shared: none, own: load.sigmaLog }];
    assertLinks(all, 'links and load');
    loadVariogram(all);
    let sum = 0;
    for (let i = 0; i < links.length; i++) sum += smallest(i, all.length);
    return Math.min(1, sum);
  }
  const low = Math.max(quantileOf(load, 1e-14), 0);
  const high = quantileOf(load, 1 - 1e-14);
  const cuts: number[] = [];
  for (const block of chain.floored) for (const floor of block.floor) cuts.push(Math.exp(floor));
  let finest = (high - low) / 6;
  for (const link of chain.links) {
    const sd = Math.sqrt(dot(link.shared, link.shared) + link.own * link.own);
    if (sd > 0) finest = Math.min(finest, 2.5 * sd * Math.exp(link.muLog));
    else cuts.push(Math.exp(link.muLog));
  }
  const rule = gaussLegendre(16);
  let sum = 0;
  const edges = panelEdges(low, high, cuts, finest);
  for (let e = 0; e + 1 < edges.length; e++) {
    const half = 0.5 * ((edges[e + 1] as number) - (edges[e] as number));
    for (let i = 0; i < rule.nodes.length; i++) {
      const x = (edges[e] as number) + half * (1 + (rule.nodes[i] as number));
      if (x <= 0) continue;
      sum += half * (rule.weights[i] as number) * density(load, x) * (1 - survivalAtLog(chain, Math.log(x)));
    }
  }
  return sum < 0 ? 0 : Math.min(sum, 1);
}

/** Panel ends from `low` to `high`, split at the cuts and no wider than `widest` (at most 400 panels a piece). */
function panelEdges(low: number, high: number, cuts: readonly number[], widest: number): number[] {
  const marks = [low, ...cuts.filter((cut) => cut > low && cut < high).sort((a, b) => a - b), high];
  const edges = [low];
  for (let m = 0; m + 1 < marks.length; m++) {
    const from = marks[m] as number;
    const to = marks[m + 1] as number;
    const panels = Math.min(400, Math.max(1, Math.ceil((to - from) / widest)));
    for (let i = 1; i <= panels; i++) edges.push(from + ((to - from) * i) / panels);
  }
  return edges;
}

// ---------------------------------------------------------------- with floors

/** Range of ln strength, and panels, over which a chain with floors is integrated. */
function logEdges(links: readonly ChainLink[]): number[] {
  let low = Infinity;
  let high = Infinity;
  let finest = Infinity;
  for (const link of links) {
    const sd = Math.sqrt(dot(link.shared, link.shared) + link.own * link.own);
    const floor = effectiveFloor(link);
    if (sd > 0) finest = Math.min(finest, sd);
    low = Math.min(low, Math.max(floor, link.muLog - REACH * sd));
    high = Math.min(high, Math.max(link.muLog, floor) + REACH * sd);
  }
  const cuts: number[] = [];
  for (const link of links) {
    const size = Math.sqrt(dot(link.shared, link.shared));
    const floor = effectiveFloor(link);
    if (floor > -Infinity) {
      // Just above a floor the density can fall within own^2 / (floor - middle): panels that double from there.
      const own = Math.max(link.own, size * LEAST_OWN);
      const depth = Math.max(1, (floor - link.muLog + 4 * size) / own);
      cuts.push(floor);
      for (let width = (2 * own) / depth; width < 3.5 * finest; width *= 3) cuts.push(floor + width);
    } else if (size + link.own === 0) cuts.push(link.muLog);
  }
  return panelEdges(low, high, cuts, 3.5 * finest);
}

function flooredMean(chain: PreparedChain): number {
  const edges = logEdges(chain.links);
  const rule = gaussLegendre(16);
  let sum = Math.exp(edges[0] as number);
  for (let e = 0; e + 1 < edges.length; e++) {
    const half = 0.5 * ((edges[e + 1] as number) - (edges[e] as number));
    for (let i = 0; i < rule.nodes.length; i++) {
      const u = (edges[e] as number) + half * (1 + (rule.nodes[i] as number));
      sum += half * (rule.weights[i] as number) * Math.exp(u) * survivalAtLog(chain, u);
    }
  }
  return sum;
}

/**
 * First shares of a chain with floors: over ln strength, the density of each link times the survival of the others.
 * Blocks are independent, so each is tabulated by itself.
 */
function flooredShares(links: readonly ChainLink[]): number[] {
  const chain = prepare(links);
  const edges = logEdges(chain.links);
  const rule = gaussLegendre(16);
  const total = (edges.length - 1) * 16;
  const place = new Float64Array(total);
  const product = new Float64Array(total);
  for (let e = 0; e + 1 < edges.length; e++) {
    const half = 0.5 * ((edges[e + 1] as number) - (edges[e] as number));
    for (let q = 0; q < 16; q++) {
      place[e * 16 + q] = (edges[e] as number) + half * (1 + (rule.nodes[q] as number));
      product[e * 16 + q] = half * (rule.weights[q] as number);
    }
  }
  const tables: BlockTable[] = [];
  for (const block of chain.normal) tables.push(tabulateNormal(block, place));
  for (const block of chain.floored) tables.push(tabulateFloored(block, place));
  for (const table of tables)
    for (let t = 0; t < total; t++) product[t] = (product[t] as number) * (table.above[t] as number);
  const shares = links.map(() => 0);
  for (const table of tables) {
    for (let i = 0; i < table.members.length; i++) {
      let sum = 0;
      for (let t = 0; t < total; t++) {
        const above = table.above[t] as number;
        if (above > 0) sum += ((product[t] as number) / above) * (table.dense[i * total + t] as number);
      }
      shares[table.members[i] as number] = sum;
    }
  }
  return shares;
}

/** A block over ln strength: chance that all its links are above, and for each the density of its going first. */
interface BlockTable {
  readonly members: readonly number[];
  readonly above: Float64Array;
  /** By rows: one row a member. */
  readonly dense: Float64Array;
}

function tabulateNormal(block: NormalBlock, place: Float64Array): BlockTable {
  const total = place.length;
  const above = new Float64Array(total);
  const dense = new Float64Array(total * block.count);
  const partial = partialsOf(block);
  for (let t = 0; t < total; t++) {
    const u = place[t] as number;
    above[t] = normalBlockSurvival(block, u);
    for (let i = 0; i < block.count; i++) {
      block.limits[i] = standardised(u, block.mu[i] as number, block.sd[i] as number);
    }
    for (let i = 0; i < block.count; i++) dense[i * total + t] = partial(i);
  }
  return { members: block.members, above, dense };
}

function tabulateFloored(block: FlooredBlock, place: Float64Array): BlockTable {
  const total = place.length;
  const { floored, rest } = block;
  const above = new Float64Array(total);
  const dense = new Float64Array(total * (floored + rest.count));
  const partial = partialsOf(rest);
  const middle = new Float64Array(floored);
  const edge = new Float64Array(floored);
  const tail = new Float64Array(floored);
  const passing = new Float64Array(floored);
  const density = new Float64Array(floored);
  for (let n = 0; n < block.weights.length; n++) {
    const weight = block.weights[n] as number;
    for (let i = 0; i < floored; i++) {
      middle[i] = middleAt(block, block.mu[i] as number, block.loading, i, n);
      const f = ((block.floor[i] as number) - (middle[i] as number)) / (block.own[i] as number);
      edge[i] = f;
      // The chance to be above the floor, without its exponential where that is far out.
      tail[i] = f > 0 ? scaledTail(f) : normalCdf(-f);
    }
    for (let t = 0; t < total; t++) {
      const u = place[t] as number;
      let product = weight;
      for (let i = 0; i < floored; i++) {
        passing[i] = 1;
        density[i] = 0;
        if (u < (block.floor[i] as number)) continue;
        const own = block.own[i] as number;
        const x = (u - (middle[i] as number)) / own;
        const f = edge[i] as number;
        const relative = Math.exp(f > 0 ? -0.5 * (x - f) * (x + f) : -0.5 * x * x) / (tail[i] as number);
        passing[i] = x > 0 ? relative * scaledTail(x) : normalCdf(-x) / (tail[i] as number);
        density[i] = (INV_SQRT_2PI * relative) / own;
        product *= passing[i] as number;
      }
      let free = 1;
      if (rest.count > 0) {
        for (let i = 0; i < rest.count; i++) {
          const at = middleAt(block, rest.mu[i] as number, block.restLoading, i, n);
          rest.limits[i] = standardised(u, at, rest.sd[i] as number);
        }
        free = orthant(rest.count, rest.limits, rest.correlations);
        if (product > 1e-18) {
          for (let i = 0; i < rest.count; i++) {
            const row = (floored + i) * total + t;
            dense[row] = (dense[row] as number) + product * partial(i);
          }
        }
      }
      above[t] = (above[t] as number) + product * free;
      for (let i = 0; i < floored; i++) {
        let value = weight * free * (density[i] as number);
        for (let k = 0; k < floored; k++) if (k !== i) value *= passing[k] as number;
        dense[i * total + t] = (dense[i * total + t] as number) + value;
      }
    }
  }
  return { members: [...block.members, ...rest.members], above, dense };
}

/** For a block of normals at its limits: density of one at the limit times the survival of the others given that. */
function partialsOf(rest: NormalBlock): (index: number) => number {
  const { count, sd, correlations } = rest;
  const others = Math.max(0, count - 1);
  const given = new Float64Array(count * others * others);
  const deviation = new Float64Array(count * others);
  for (let i = 0; i < count; i++) {
    for (let k = 0; k < others; k++) {
      const a = k < i ? k : k + 1;
      const ra = correlations[i * count + a] as number;
      deviation[i * others + k] = Math.sqrt(Math.max(0, 1 - ra * ra));
      for (let l = 0; l <= k; l++) {
        const b = l < i ? l : l + 1;
        const rb = correlations[i * count + b] as number;
        const scale = (deviation[i * others + k] as number) * (deviation[i * others + l] as number);
        const covariance = (correlations[a * count + b] as number) - ra * rb;
        const value = k === l ? 1 : scale > 0 ? Math.max(-1, Math.min(1, covariance / scale)) : 0;
        given[(i * others + k) * others + l] = value;
        given[(i * others + l) * others + k] = value;
      }
    }
  }
  const reduced = new Float64Array(others);
  return (index) => {
    const h = rest.limits[index] as number;
    const spread = sd[index] as number;
    if (spread === 0 || Math.abs(h) > 38) return 0;
    const dense = (INV_SQRT_2PI * Math.exp(-0.5 * h * h)) / spread;
    if (others === 0) return dense;
    for (let k = 0; k < others; k++) {
      const a = k < index ? k : k + 1;
      const lead = (rest.limits[a] as number) - (correlations[index * count + a] as number) * h;
      reduced[k] = standardised(lead, 0, deviation[index * others + k] as number);
    }
    const start = index * others * others;
    return dense * orthant(others, reduced, given.subarray(start, start + others * others));
  };
}

// ---------------------------------------------------------------- fewer factors, same law

/**
 * The same chain with as few shared factors as simple merging gives: factors that act on the same links with
 * proportional loadings become one, a factor that acts on one link only becomes part of its own scatter (not where
 * that link has a floor, since the floor holds given the shared factors), and empty ones go.
 * @throws RangeError when a link is no valid one.
 */
export function mergeShared(links: readonly ChainLink[]): ChainLink[] {
  assertLinks(links, 'links');
  const factors = (links[0] as ChainLink).shared.length;
  const own = links.map((link) => link.own);
  const columns: number[][] = [];
  for (let j = 0; j < factors; j++) {
    const column = links.map((link) => link.shared[j] as number);
    const acting = column.filter((value) => value !== 0).length;
    if (acting === 0) continue;
    if (acting === 1) {
      const at = column.findIndex((value) => value !== 0);
      if ((links[at] as ChainLink).floor === undefined) {
        own[at] = Math.hypot(own[at] as number, column[at] as number);
        continue;
      }
    }
    const like = columns.find((other) => isProportional(other, column));
    if (!like) {
      columns.push(column);
      continue;
    }
    const at = like.findIndex((value) => value !== 0);
    const grow = Math.hypot(1, (column[at] as number) / (like[at] as number));
    for (let i = 0; i < like.length; i++) like[i] = (like[i] as number) * grow;
  }
  return links.map((link, i) => {
    const merged: ChainLink = {
      muLog: link.muLog,
      shared: columns.map((column) => column[i] as number),
      own: own[i] as number,
    };
    return link.floor === undefined ? merged : { ...merged, floor: link.floor };
  });
}

function isProportional(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value) => value !== 0);
  if (b[at] === 0) return false;
  const ratio = (b[at] as number) / (a[at] as number);
  return a.every((value, i) => {
    const expected = value * ratio;
    return (value === 0) === (b[i] === 0) && Math.abs(expected - (b[i] as number)) <= 1e-12 * Math.abs(expected);
  });
}
