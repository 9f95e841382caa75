/**
 * Over and under as two layers. Every strand is drawn whole; then the pieces of it that pass over another are drawn once
 * more on top, with a gap beside them. A piece that passes over never meets another such piece, so two layers do for any
 * knot.
 */
import type { Crossed, Crossing, Passage } from './crossings.ts';
import { GAP, widthOf } from './strokes.ts';

/** Piece of a strand, from one length along it to another. May run past the seam of a closed one. */
export interface Piece { strand: number; from: number; to: number }

/** What lies on top: gaps to be cleared, then pieces to be drawn. */
export interface Top { gaps: Piece[]; pieces: Piece[] }

/** How far a strand must be followed to each side of a crossing, until it is clear of the other's band. */
function reach({ over, under }: Crossing, crossed: Crossed, beyond: number): number {
  const [ax, ay] = over.direction;
  const [bx, by] = under.direction;
  const sine = Math.max(0.35, Math.abs(ax * by - ay * bx));
  const cosine = Math.sqrt(Math.max(0, 1 - sine * sine));
  const half = (passage: Passage) => widthOf((crossed.strands[passage.strand] as Crossed['strands'][number]).kind) / 2;
  return (half(under) + beyond + half(over) * cosine) / sine;
}

/** Joins pieces of one strand that overlap or nearly touch. */
function joined(pieces: readonly Piece[]): Piece[] {
  const result: Piece[] = [];
  for (const piece of [...pieces].sort((a, b) => a.strand - b.strand || a.from - b.from)) {
    const last = result.at(-1);
    if (last && last.strand === piece.strand && piece.from <= last.to + 1) last.to = Math.max(last.to, piece.to);
    else result.push({ ...piece });
  }
  return result;
}

/** The upper layer of a drawing. A piece ends half way to the next place where its own strand passes under. */
export function topOf(crossed: Crossed): Top {
  const unders = crossed.curves.map((_, strand) => crossed.crossings.filter(({ under }) => under.strand === strand).map(({ under }) => under.at));
  const cut = (crossing: Crossing, beyond: number, short: number): Piece => {
    const { strand, at } = crossing.over;
    const { length, closed } = crossed.curves[strand] as Crossed['curves'][number];
    const far = reach(crossing, crossed, beyond);
    const places = (unders[strand] as number[]).flatMap((one) => (closed ? [one - length, one, one + length] : [one]));
    const before = Math.max(at - far, ...places.filter((one) => one < at).map((one) => (one + at) / 2 + short));
    const after = Math.min(at + far, ...places.filter((one) => one > at).map((one) => (one + at) / 2 - short));
    return { strand, from: closed ? before : Math.max(0, before), to: closed ? after : Math.min(length, after) };
  };
  return {
    gaps: joined(crossed.crossings.map((crossing) => cut(crossing, GAP, 2.5))),
    pieces: joined(crossed.crossings.map((crossing) => cut(crossing, GAP + 0.6, 0))),
  };
}
