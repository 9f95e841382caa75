/**
 * Orthant probabilities of jointly normal variables: P(X_i > h_i for every i), unit variances, correlations given.
 *
 * Two variables: Plackett's identity (Biometrika 41, 1954) along the angle of the correlation, and near correlation 1
 * the expansion around the degenerate case with its first three terms integrated exactly. More variables: the same
 * identity, with one variable's correlations grown from nothing to their value, so that each step needs two variables
 * fewer. Deterministic, no allocation, about 1e-9 for the correlations that chains of links have.
 */
import { normalCdf } from './normal.ts';
import { gaussLegendre, type QuadratureRule } from './quadrature.ts';

const TWO_PI = 2 * Math.PI;
const SQRT_TWO_PI = Math.sqrt(TWO_PI);

/** Most variables that an orthant may have. Eight take a fraction of a second, and each one more about ten times as long. */
export const MAX_VARIABLES = 8;

const RULE_4 = gaussLegendre(4);
const RULE_6 = gaussLegendre(6);
const RULE_8 = gaussLegendre(8);
const RULE_12 = gaussLegendre(12);
const RULE_16 = gaussLegendre(16);
const RULE_20 = gaussLegendre(20);
const RULE_32 = gaussLegendre(32);

/**
 * P(X > h, Y > k) for a standard pair with correlation `rho`.
 * `rho` outside [-1, 1] by rounding is taken as the nearer end; infinite `h` or `k` are allowed.
 */
export function bivariateOrthant(h: number, k: number, rho: number): number {
  if (h >= 38 || k >= 38) return 0;
  if (h <= -38) return normalCdf(-k);
  if (k <= -38) return normalCdf(-h);
  if (rho === 0) return normalCdf(-h) * normalCdf(-k);
  const size = Math.abs(rho);
  if (size < 0.925) {
    const rule = size < 0.1 ? RULE_4 : size < 0.3 ? RULE_6 : size < 0.75 ? RULE_12 : RULE_20;
    const half = 0.5 * Math.asin(rho);
    const product = h * k;
    const squares = 0.5 * (h * h + k * k);
    let sum = 0;
    for (let i = 0; i < rule.nodes.length; i++) {
      const sine = Math.sin(half * (1 + (rule.nodes[i] as number)));
      sum += (rule.weights[i] as number) * Math.exp((sine * product - squares) / (1 - sine * sine));
    }
    const value = normalCdf(-h) * normalCdf(-k) + (half * sum) / TWO_PI;
    return Math.max(value, 0);
  }
  // Near the ends: the missing part is an integral from |rho| to 1. A negative correlation is turned by -Y.
  const y = rho < 0 ? -k : k;
  let gap = 0;
  if (size < 1) {
    const square = (1 - size) * (1 + size);
    const end = Math.sqrt(square);
    const distance = (h - y) * (h - y);
    const product = h * y;
    const c = product / 8;
    const first = 0.5 - c;
    const second = 0.375 - c + 0.5 * c * c;
    const edge = -0.5 * (distance / square + product);
    if (edge > -100) {
      // Integrals of x^(2m) exp(-distance / 2x^2) from 0 to end, each from the one before.
      const atEnd = Math.exp(edge);
      const apart = Math.sqrt(distance);
      const zero = end * atEnd - Math.exp(-0.5 * product) * SQRT_TWO_PI * apart * normalCdf(-apart / end);
      const one = (end * square * atEnd - distance * zero) / 3;
      const two = (end * square * square * atEnd - distance * one) / 5;
      gap = zero + first * one + second * two;
    }
    const half = 0.5 * end;
    let rest = 0;
    for (let i = 0; i < RULE_20.nodes.length; i++) {
      const x = half * (1 + (RULE_20.nodes[i] as number));
      const xx = x * x;
      const exponent = -0.5 * (distance / xx + product);
      if (exponent > -100) {
        const root = Math.sqrt(1 - xx);
        // xx / (2 (1 + root)^2) is 1 / (1 + root) - 1/2 without its cancellation.
        const exact = Math.exp((-product * xx) / (2 * (1 + root) * (1 + root))) / root;
        rest += (RULE_20.weights[i] as number) * Math.exp(exponent) * (exact - (1 + first * xx + second * xx * xx));
      }
    }
    gap = (gap + half * rest) / TWO_PI;
  }
  const value = rho > 0 ? normalCdf(-Math.max(h, y)) - gap : (h < y ? normalCdf(y) - normalCdf(h) : 0) + gap;
  return Math.max(value, 0);
}

/**
 * P(X_i > h_i) for three standard normals. The first variable's correlations grow along their angles from nothing:
 * for three variables the matrix stays valid on that path.
 */
function trivariateOrthant(h1: number, h2: number, h3: number, r12: number, r13: number, r23: number): number {
  const a12 = Math.abs(r12);
  const a13 = Math.abs(r13);
  const a23 = Math.abs(r23);
  // The variable least tied to the others is the one that moves: the shortest and smoothest path.
  const most1 = Math.max(a12, a13);
  const most2 = Math.max(a12, a23);
  const most3 = Math.max(a13, a23);
  if (most2 < most1 && most2 <= most3) return trivariatePath(h2, h1, h3, r12, r23, r13, most2);
  if (most3 < most1) return trivariatePath(h3, h1, h2, r13, r23, r12, most3);
  return trivariatePath(h1, h2, h3, r12, r13, r23, most1);
}

function trivariatePath(
  h1: number,
  h2: number,
  h3: number,
  r12: number,
  r13: number,
  r23: number,
  strongest: number,
): number {
  let sum = 0;
  if (strongest > 0) {
    const rule = ruleFor(strongest);
    const half2 = 0.5 * Math.asin(r12);
    const half3 = 0.5 * Math.asin(r13);
    const between = 1 - r23 * r23;
    const { nodes, weights } = rule;
    for (let node = 0; node < nodes.length; node++) {
      const at = 1 + (nodes[node] as number);
      const s2 = Math.sin(half2 * at);
      const s3 = Math.sin(half3 * at);
      const c2 = 1 - s2 * s2;
      const c3 = 1 - s3 * s3;
      // Determinant of the correlation matrix at this point of the path.
      const determinant = between - s2 * s2 - s3 * s3 + 2 * s2 * s3 * r23;
      const root = determinant > 0 ? Math.sqrt(determinant) : 0;
      let slope = 0;
      if (half2 !== 0) {
        const exponent = (-0.5 * (h1 * h1 + h2 * h2) + s2 * h1 * h2) / c2;
        if (exponent > -60) {
          const lead = h3 * c2 - h1 * (s3 - s2 * r23) - h2 * (r23 - s2 * s3);
          slope += half2 * Math.exp(exponent) * passes(lead, Math.sqrt(c2) * root);
        }
      }
      if (half3 !== 0) {
        const exponent = (-0.5 * (h1 * h1 + h3 * h3) + s3 * h1 * h3) / c3;
        if (exponent > -60) {
          const lead = h2 * c3 - h1 * (s2 - s3 * r23) - h3 * (r23 - s2 * s3);
          slope += half3 * Math.exp(exponent) * passes(lead, Math.sqrt(c3) * root);
        }
      }
      sum += (weights[node] as number) * slope;
    }
    sum /= TWO_PI;
  }
  return normalCdf(-h1) * bivariateOrthant(h2, h3, r23) + sum;
}

/** P(Z > lead / scale); without scatter the sign of `lead` decides. */
function passes(lead: number, scale: number): number {
  if (scale < 1e-9) return lead < 0 ? 1 : lead > 0 ? 0 : 0.5;
  return normalCdf(-lead / scale);
}

/** Rule that carries a path up to the correlation `strongest` to about 1e-10. */
function ruleFor(strongest: number): QuadratureRule {
  if (strongest < 0.15) return RULE_6;
  if (strongest < 0.4) return RULE_8;
  if (strongest < 0.65) return RULE_12;
  if (strongest < 0.85) return RULE_16;
  return strongest < 0.95 ? RULE_20 : RULE_32;
}

/** Scratch of one level of the recursion: limits and correlations of the variables that are left. */
interface Level {
  readonly limits: Float64Array;
  readonly correlations: Float64Array;
  readonly path: Float64Array;
}

const levels: Level[] = [];
for (let depth = 0; depth <= MAX_VARIABLES; depth++) {
  levels.push({
    limits: new Float64Array(MAX_VARIABLES),
    correlations: new Float64Array(MAX_VARIABLES * MAX_VARIABLES),
    path: new Float64Array(MAX_VARIABLES),
  });
}

/** Variables of a pair that are this close to the same variable count as the same. */
const SAME = 1 - 1e-13;

/**
 * P(X_i > limits_i for every i) of `count` standard normals. `correlations` holds their matrix by rows, `count` a row.
 * Neither array is changed.
 * @throws RangeError when `count` is above MAX_VARIABLES.
 */
export function orthant(count: number, limits: ArrayLike<number>, correlations: ArrayLike<number>): number {
  if (count > MAX_VARIABLES) throw new RangeError(`count must be at most ${MAX_VARIABLES} (got ${count}).`);
  if (count === 0) return 1;
  if (count === 1) return normalCdf(-(limits[0] as number));
  if (count === 2) return bivariateOrthant(limits[0] as number, limits[1] as number, correlations[1] as number);
  const level = levels[0] as Level;
  for (let i = 0; i < count; i++) {
    level.limits[i] = limits[i] as number;
    for (let j = 0; j < count; j++) {
      level.correlations[i * MAX_VARIABLES + j] = correlations[i * count + j] as number;
    }
  }
  const value = descend(count, 0);
  return value < 0 ? 0 : Math.min(value, 1);
}

/** Takes variable `gone` out of a level by moving the last one into its place. */
function drop(level: Level, gone: number, count: number): void {
  const last = count - 1;
  const r = level.correlations;
  if (gone !== last) {
    level.limits[gone] = level.limits[last] as number;
    for (let j = 0; j < last; j++) {
      if (j === gone) continue;
      const value = r[last * MAX_VARIABLES + j] as number;
      r[gone * MAX_VARIABLES + j] = value;
      r[j * MAX_VARIABLES + gone] = value;
    }
    r[gone * MAX_VARIABLES + gone] = 1;
  }
}

/** The orthant probability of the first `given` variables of the scratch at `depth`, which it may overwrite. */
function descend(given: number, depth: number): number {
  const level = levels[depth] as Level;
  const h = level.limits;
  const r = level.correlations;
  let count = given;
  // What is certain goes; what is impossible ends it; two names of one variable become one.
  for (let i = count - 1; i >= 0; i--) {
    if ((h[i] as number) >= 38) return 0;
    if ((h[i] as number) <= -38) {
      drop(level, i, count);
      count--;
    }
  }
  for (let i = 0; i < count; i++) {
    for (let j = count - 1; j > i; j--) {
      if ((r[i * MAX_VARIABLES + j] as number) > SAME) {
        if ((h[j] as number) > (h[i] as number)) h[i] = h[j] as number;
        drop(level, j, count);
        count--;
      }
    }
  }
  if (count === 0) return 1;
  if (count === 1) return normalCdf(-(h[0] as number));
  if (count === 2) return bivariateOrthant(h[0] as number, h[1] as number, r[1] as number);
  if (count === 3) {
    return trivariateOrthant(
      h[0] as number,
      h[1] as number,
      h[2] as number,
      r[1] as number,
      r[2] as number,
      r[MAX_VARIABLES + 2] as number,
    );
  }

  // As for three variables, on a straight path, which keeps a matrix of any size valid.
  let single = 0;
  let strongest = 2;
  for (let i = 0; i < count; i++) {
    let most = 0;
    for (let j = 0; j < count; j++) {
      if (j !== i) most = Math.max(most, Math.abs(r[i * MAX_VARIABLES + j] as number));
    }
    if (most < strongest) {
      strongest = most;
      single = i;
    }
  }
  if (single !== 0) swapWithFirst(level, single, count);
  const h0 = h[0] as number;
  const others = count - 1;

  let sum = 0;
  if (strongest > 0) {
    const rule = ruleFor(strongest);
    const angle = Math.asin(Math.min(1, strongest));
    const below = levels[depth + 1] as Level;
    const grown = level.path;
    for (let node = 0; node < rule.nodes.length; node++) {
      // Walking the path by the angle of the strongest correlation keeps that term smooth up to |rho| = 1.
      const phase = 0.5 * angle * (1 + (rule.nodes[node] as number));
      const share = Math.sin(phase) / strongest;
      const pace = Math.cos(phase) / strongest;
      for (let j = 1; j <= others; j++) grown[j] = share * (r[j] as number);
      let slope = 0;
      for (let j = 1; j <= others; j++) {
        const full = r[j] as number;
        if (full === 0) continue;
        const rho = grown[j] as number;
        const hj = h[j] as number;
        const free = (1 - rho) * (1 + rho);
        const exponent = (-0.5 * (h0 * h0 + hj * hj - 2 * rho * h0 * hj)) / free;
        if (exponent < -60) continue;
        const density = Math.exp(exponent) / (TWO_PI * Math.sqrt(free));
        slope += full * density * conditional(level, below, j, others, rho, free, depth);
      }
      sum += (rule.weights[node] as number) * pace * slope;
    }
    sum *= 0.5 * angle;
  }

  // The start of the path: the single variable on its own, times the rest.
  const below = levels[depth + 1] as Level;
  for (let j = 1; j <= others; j++) {
    below.limits[j - 1] = h[j] as number;
    for (let k = 1; k <= others; k++) {
      below.correlations[(j - 1) * MAX_VARIABLES + k - 1] = r[j * MAX_VARIABLES + k] as number;
    }
  }
  return normalCdf(-h0) * descend(others, depth + 1) + sum;
}

function swapWithFirst(level: Level, other: number, count: number): void {
  const h = level.limits;
  const r = level.correlations;
  const limit = h[0] as number;
  h[0] = h[other] as number;
  h[other] = limit;
  for (let j = 0; j < count; j++) {
    const value = r[j] as number;
    r[j] = r[other * MAX_VARIABLES + j] as number;
    r[other * MAX_VARIABLES + j] = value;
  }
  for (let j = 0; j < count; j++) {
    const value = r[j * MAX_VARIABLES] as number;
    r[j * MAX_VARIABLES] = r[j * MAX_VARIABLES + other] as number;
    r[j * MAX_VARIABLES + other] = value;
  }
}

/**
 * Orthant probability of the variables other than the first and `j`, given that both sit at their limits, with the
 * first one's correlations as far as they have grown (`level.path`).
 */
function conditional(
  level: Level,
  below: Level,
  j: number,
  others: number,
  rho: number,
  free: number,
  depth: number,
): number {
  const h = level.limits;
  const r = level.correlations;
  const grown = level.path;
  const h0 = h[0] as number;
  const hj = h[j] as number;
  const inverse = 1 / free;
  // Rows of `below`: slope on the first, slope on j kept in its limits and path until the deviations are known.
  let left = 0;
  const deviations = below.path;
  for (let k = 1; k <= others; k++) {
    if (k === j) continue;
    const r0 = grown[k] as number;
    const rj = r[j * MAX_VARIABLES + k] as number;
    const b0 = (r0 - rho * rj) * inverse;
    const bj = (rj - rho * r0) * inverse;
    const variance = 1 - b0 * r0 - bj * rj;
    const lead = (h[k] as number) - b0 * h0 - bj * hj;
    const deviation = variance < 1e-15 ? 0 : Math.sqrt(variance);
    deviations[left] = deviation;
    below.limits[left] = deviation > 0 ? lead / deviation : lead < 0 ? -99 : lead > 0 ? 99 : 0;
    let column = 0;
    for (let l = 1; l < k; l++) {
      if (l === j) continue;
      const covariance =
        (r[k * MAX_VARIABLES + l] as number) - b0 * (grown[l] as number) - bj * (r[j * MAX_VARIABLES + l] as number);
      const scale = deviation * (deviations[column] as number);
      const correlation = scale > 0 ? Math.max(-1, Math.min(1, covariance / scale)) : 0;
      below.correlations[left * MAX_VARIABLES + column] = correlation;
      below.correlations[column * MAX_VARIABLES + left] = correlation;
      column++;
    }
    below.correlations[left * MAX_VARIABLES + left] = 1;
    left++;
  }
  if (left === 2) {
    return bivariateOrthant(below.limits[0] as number, below.limits[1] as number, below.correlations[1] as number);
  }
  return descend(left, depth + 1);
}
