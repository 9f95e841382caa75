/**
 * Alexander polynomial of strands taken as a knot or link, from their crossings. It does not change however the strands
 * are moved without passing through one another: so it tells a trefoil from a plain ring, whatever the drawing.
 *
 * Each arc between two places where a strand passes under is an unknown, each crossing a row of a matrix: 1 - t at the arc
 * over, t at the arc on its left, -1 at the arc on its right. The determinant without one row and one column is the
 * polynomial, up to a sign and a power of t. An open strand is taken as closed outside the drawing, which is right where
 * both of its ends lie outside.
 */
import type { Crossed, Crossing } from './crossings.ts';

/** A prime below 2^26, so that products of two remainders are exact. Coefficients are far smaller. */
const PRIME = 67108859;

const mod = (value: number): number => ((value % PRIME) + PRIME) % PRIME;

function power(base: number, exponent: number): number {
  let [result, square, left] = [1, base, exponent];
  while (left > 0) {
    if (left % 2 === 1) result = (result * square) % PRIME;
    square = (square * square) % PRIME;
    left = Math.floor(left / 2);
  }
  return result;
}
const inverse = (value: number): number => power(value, PRIME - 2);

/** Determinant of a square matrix of remainders, by elimination. Changes the matrix. */
function determinant(matrix: number[][]): number {
  let result = 1;
  for (let column = 0; column < matrix.length; column++) {
    const at = matrix.findIndex((row, i) => i >= column && row[column] !== 0);
    if (at < 0) return 0;
    if (at !== column) {
      [matrix[at], matrix[column]] = [matrix[column] as number[], matrix[at] as number[]];
      result = mod(-result);
    }
    const pivot = matrix[column] as number[];
    result = (result * (pivot[column] as number)) % PRIME;
    const scale = inverse(pivot[column] as number);
    for (let i = column + 1; i < matrix.length; i++) {
      const row = matrix[i] as number[];
      const share = ((row[column] as number) * scale) % PRIME;
      if (share === 0) continue;
      for (let j = column; j < row.length; j++) row[j] = mod((row[j] as number) - ((share * (pivot[j] as number)) % PRIME));
    }
  }
  return result;
}

/** Coefficients, lowest power first, of the polynomial of degree below `values.length` that has these values at 1, 2, 3... */
function interpolated(values: readonly number[]): number[] {
  const n = values.length;
  const divided = [...values];
  for (let level = 1; level < n; level++) {
    for (let i = n - 1; i >= level; i--) divided[i] = (mod((divided[i] as number) - (divided[i - 1] as number)) * inverse(level)) % PRIME;
  }
  let result = [divided[n - 1] as number];
  for (let i = n - 2; i >= 0; i--) {
    // Multiply by (t - place) and add the next difference.
    const place = i + 1;
    const next = new Array<number>(result.length + 1).fill(0);
    result.forEach((coefficient, k) => {
      next[k + 1] = mod((next[k + 1] as number) + coefficient);
      next[k] = mod((next[k] as number) - ((coefficient * place) % PRIME));
    });
    next[0] = mod((next[0] as number) + (divided[i] as number));
    result = next;
  }
  return result;
}

/** The arcs of some strands: which arc passes each crossing. */
interface Row { over: number; left: number; right: number }

function rowsOf(crossed: Crossed, taken: ReadonlySet<number>): { rows: Row[]; arcs: number } {
  const crossings = crossed.crossings.filter(({ over, under }) => taken.has(over.strand) && taken.has(under.strand));
  const overArc = new Map<Crossing, number>();
  const before = new Map<Crossing, number>();
  const after = new Map<Crossing, number>();
  let arcs = 0;
  for (const strand of taken) {
    const visits = crossings.flatMap((crossing) => [
      ...(crossing.over.strand === strand ? [{ crossing, at: crossing.over.at, isUnder: false }] : []),
      ...(crossing.under.strand === strand ? [{ crossing, at: crossing.under.at, isUnder: true }] : []),
    ]).sort((a, b) => a.at - b.at);
    const unders = visits.filter(({ isUnder }) => isUnder).length;
    const first = arcs;
    const count = Math.max(1, unders);
    let passed = 0;
    for (const { crossing, isUnder } of visits) {
      const here = first + (passed % count);
      if (isUnder) {
        before.set(crossing, here);
        passed += 1;
        after.set(crossing, first + (passed % count));
      } else overArc.set(crossing, here);
    }
    arcs += count;
  }
  const rows = crossings.map((crossing): Row => {
    const [ox, oy] = crossing.over.direction;
    const [ux, uy] = crossing.under.direction;
    // y runs down: the strand under comes from the left of the one over where this is positive.
    const fromLeft = ox * uy - oy * ux > 0;
    const [a, b] = [before.get(crossing) as number, after.get(crossing) as number];
    return { over: overArc.get(crossing) as number, left: fromLeft ? a : b, right: fromLeft ? b : a };
  });
  return { rows, arcs };
}

/**
 * Alexander polynomial of the named strands, all of them where none is named: coefficients, lowest power first, the
 * lowest one positive. [1] is that of a plain ring; [] is zero, as of a link that falls apart.
 */
export function alexanderPolynomial(crossed: Crossed, names?: readonly string[]): number[] {
  const taken = new Set(crossed.strands.flatMap(({ name }, i) => (!names || names.includes(name) ? [i] : [])));
  const { rows, arcs } = rowsOf(crossed, taken);
  if (rows.length === 0) return taken.size === 1 ? [1] : [];
  // Fewer crossings than arcs: some strand passes under nothing, and can be lifted off.
  if (rows.length < arcs) return arcs - rows.length === 1 && taken.size === 1 ? [1] : [];
  const size = arcs - 1;
  const values = Array.from({ length: size + 1 }, (_, i) => {
    const t = i + 1;
    const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
    rows.slice(0, size).forEach(({ over, left, right }, r) => {
      const add = (column: number, value: number) => {
        if (column < size) (matrix[r] as number[])[column] = mod(((matrix[r] as number[])[column] as number) + value);
      };
      add(over, 1 - t);
      add(left, t);
      add(right, -1);
    });
    return determinant(matrix);
  });
  const signed = interpolated(values).map((value) => (value > PRIME / 2 ? value - PRIME : value));
  const low = signed.findIndex((value) => value !== 0);
  if (low < 0) return [];
  const high = signed.findLastIndex((value) => value !== 0);
  const kept = signed.slice(low, high + 1);
  return (kept[0] as number) < 0 ? kept.map((value) => (value === 0 ? 0 : -value)) : kept;
}

/** How often two closed strands are linked: half the sum of the signs of their crossings, never negative. */
export function linkingNumber(crossed: Crossed, one: string, other: string): number {
  const name = (strand: number) => crossed.strands[strand]?.name;
  let sum = 0;
  for (const { over, under } of crossed.crossings) {
    const names = [name(over.strand), name(under.strand)];
    if (names.includes(one) && names.includes(other) && one !== other) sum += Math.sign(over.direction[0] * under.direction[1] - over.direction[1] * under.direction[0]);
  }
  return Math.abs(sum) / 2;
}
