/**
 * Finds where the strands of a drawing cross, and reads what each says there. A crossing that is not stated, a statement
 * without a crossing, and two statements that disagree are errors: so what is tested is what is drawn.
 */
import { curveThrough, type Curve } from './curves/curve.ts';
import type { Point } from './curves/point.ts';
import type { Strand } from './scene.ts';

/** A strand's passage through a crossing. */
export interface Passage {
  /** Index of the strand. */
  strand: number;
  /** Length along it. */
  at: number;
  /** Way it runs there, of length one. */
  direction: Point;
}

/** A crossing: where, who passes over, who under. */
export interface Crossing { point: Point; over: Passage; under: Passage }

/** Strands with their curves, and all their crossings. */
export interface Crossed { strands: readonly Strand[]; curves: readonly Curve[]; crossings: readonly Crossing[] }

interface Found { point: Point; passages: [Passage, Passage] }

/** Where two pieces of line meet, as shares of each; null where they do not. The end of a piece belongs to the next. */
function meeting(a: Point, b: Point, c: Point, d: Point): [number, number] | null {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const cross = ux * vy - uy * vx;
  if (cross === 0) return null;
  const s = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / cross;
  const t = ((c[0] - a[0]) * uy - (c[1] - a[1]) * ux) / cross;
  return s >= 0 && s < 1 && t >= 0 && t < 1 ? [s, t] : null;
}

/** Pieces of line of a curve: from, to, length along, own length. */
function pieces(curve: Curve): { a: Point; b: Point; at: number; length: number }[] {
  const last = curve.samples.length - (curve.closed ? 0 : 1);
  return Array.from({ length: last }, (_, i) => {
    const a = curve.samples[i] as Point;
    const b = (curve.samples[i + 1] ?? curve.samples[0]) as Point;
    const at = curve.along[i] as number;
    return { a, b, at, length: (curve.along[i + 1] ?? curve.length) - at };
  });
}

/** Every place where two curves, or a curve and itself, cross. */
function meetings(curves: readonly Curve[]): Found[] {
  const all = curves.map(pieces);
  const found: Found[] = [];
  const unit = (a: Point, b: Point, length: number): Point => [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  for (let i = 0; i < all.length; i++) {
    for (let j = i; j < all.length; j++) {
      const [first, second] = [all[i], all[j]] as [ReturnType<typeof pieces>, ReturnType<typeof pieces>];
      for (let k = 0; k < first.length; k++) {
        const p = first[k] as (typeof first)[number];
        for (let l = i === j ? k + 2 : 0; l < second.length; l++) {
          const q = second[l] as (typeof second)[number];
          if (Math.abs(p.a[0] - q.a[0]) > 9 || Math.abs(p.a[1] - q.a[1]) > 9) continue;
          if (i === j && curves[i]?.closed && k === 0 && l === first.length - 1) continue;
          const shares = meeting(p.a, p.b, q.a, q.b);
          if (!shares) continue;
          const point: Point = [p.a[0] + shares[0] * (p.b[0] - p.a[0]), p.a[1] + shares[0] * (p.b[1] - p.a[1])];
          found.push({
            point,
            passages: [
              { strand: i, at: p.at + shares[0] * p.length, direction: unit(p.a, p.b, p.length) },
              { strand: j, at: q.at + shares[1] * q.length, direction: unit(q.a, q.b, q.length) },
            ],
          });
        }
      }
    }
  }
  return found;
}

const place = ([x, y]: Point): string => `${Math.round(x)},${Math.round(y)}`;

/** Faults and crossings that one message lists: the first are enough to find the rest. */
const MOST_FAULTS = 8;
const MOST_VISITS = 60;

/** Curves and crossings of strands. Throws an Error that lists the first faults of the statements. */
export function cross(strands: readonly Strand[]): Crossed {
  const curves = strands.map(({ points, closed }) => curveThrough(points, closed));
  const found = meetings(curves);
  const faults: string[] = [];
  /** What the strand says of each found crossing, by its index and which of the two passages. */
  const said = new Map<Passage, string>();
  strands.forEach((strand, index) => {
    const visits = found.flatMap(({ passages }, crossing) => passages.filter((passage) => passage.strand === index).map((passage) => ({ passage, crossing })));
    visits.sort((a, b) => a.passage.at - b.passage.at);
    if (visits.length !== strand.says.length) {
      const list = visits.map(({ passage, crossing }) => {
        const other = (found[crossing] as Found).passages.find((one) => one !== passage) as Passage;
        return `${place((found[crossing] as Found).point)} ${(strands[other.strand] as Strand).name}`;
      });
      faults.push(`${strand.name}: comes to ${visits.length} crossings and says ${strand.says.length} (${list.slice(0, MOST_VISITS).join('; ')})`);
    }
    visits.forEach(({ passage }, i) => { said.set(passage, strand.says[i] ?? '?'); });
  });
  const crossings = found.map(({ point, passages: [a, b] }): Crossing => {
    const pair = `${said.get(a)}${said.get(b)}`;
    if (pair !== 'ou' && pair !== 'uo') {
      faults.push(`${(strands[a.strand] as Strand).name} and ${(strands[b.strand] as Strand).name} at ${place(point)}: one must pass over, one under (got ${pair})`);
    }
    return said.get(a) === 'o' ? { point, over: a, under: b } : { point, over: b, under: a };
  });
  if (faults.length > 0) throw new Error(`crossings: ${faults.slice(0, MOST_FAULTS).join('\n')}`);
  return { strands, curves, crossings };
}
