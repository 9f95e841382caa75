/** What a reader's own pulls of an attachment say beside the published figures: the same numbers as a row of the comparison. */
import { normalCdf, normalQuantile } from '../numerics/normal.ts';
import { type OwnRig, type OwnSeries, ownRig } from './as-evidence.ts';

export interface OwnAnswer {
  readonly own: OwnRig;
  /** One in twenty, half, and nineteen in twenty of the reader's next rigs break below, kN. */
  readonly spread: { readonly low: number; readonly middle: number; readonly high: number };
  /** Twenty equally likely forces, weakest first, kN. */
  readonly dots: readonly number[];
  /** Share of the reader's next rigs that break above a force, kN. */
  above(kn: number): number;
  /** Share of pairs in which it breaks above another method, whose twenty equally likely forces are given. Nothing is shared. */
  beats(dots: readonly number[]): number;
}

const DOTS = 20;

/**
 * The attachment as the reader builds it: lognormal, with the knowledge and the scatter of `ownRig` added up.
 * @param classCv scatter of the class that the method belongs to, as a share of one
 * @param rigToRig sd of ln between one rig and the next; used where all pulls were on one rig
 * @throws RangeError as `ownRig`
 */
export function ownAnswer(series: OwnSeries, classCv: number, rigToRig: number): OwnAnswer {
  const own = ownRig(series, { cv: classCv }, rigToRig);
  const sd = Math.sqrt(own.knowledge2 + own.specimen2);
  const at = (p: number): number => Math.exp(own.mu + sd * normalQuantile(p));
  const above = (kn: number): number => normalCdf((own.mu - Math.log(kn)) / sd);
  return {
    own,
    spread: { low: at(0.05), middle: at(0.5), high: at(0.95) },
    dots: Array.from({ length: DOTS }, (_, i) => at((i + 0.5) / DOTS)),
    above,
    beats: (dots) => dots.reduce((sum, kn) => sum + above(kn), 0) / dots.length,
  };
}
