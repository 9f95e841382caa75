/** A comparison made by hand, with round invented numbers, for tests of words and drawings. Nothing here is a result. */
import type { Comparison, Evidence, Row } from '../../src/strength/types.ts';

/** Twenty dots, evenly from `first` on in steps of `step`, kN. */
export const evenDots = (first: number, step: number): number[] => Array.from({ length: 20 }, (_, i) => first + i * step);

/** A row of a basket-like method; fields can be replaced. */
export function row(change: Partial<Row> = {}): Row {
  return {
    method: 'basket-overhand', name: 'Basket, overhand at the clip end', state: 'result', group: 'ranked', place: 1, reasons: [],
    attachment: { low: 10, middle: 13, high: 17 }, rig: { low: 9, middle: 12, high: 15 }, aboveRating: 0.7, aboveDemand: 0.7,
    dots: evenDots(9, 0.4), ticks: [{ figure: 'invented/breaks', kn: [11, 13, 14] }],
    links: [
      { name: 'device', part: 'device', letter: 'D', spread: { low: 12, middle: 16, high: 20 }, certainty: 'very low', first: 0.2,
        factors: [{ factor: 'device-over-rating', figures: [], studies: [], mu: 0.3, knowledge: 0.1, specimen: 0.05, certainty: 'very low', bridged: false, between: false, assumed: true }] },
      { name: 'sling over the eye', part: 'sling', letter: 'S', legs: 4, spread: { low: 10, middle: 13, high: 17 }, certainty: 'low', first: 0.8,
        factors: [{ factor: 'basket-over-eye', figures: ['invented/breaks'], studies: ['invented'], mu: 2.56, knowledge: 0.1, specimen: 0.1, certainty: 'low', bridged: false, between: false, assumed: false }] },
    ],
    strip: `${'D'.repeat(4)}${'S'.repeat(16)}`, certainty: 'low', figures: ['invented/breaks'], shown: [],
    moves: [{ factor: 'basket-over-eye', figures: ['invented/breaks'], share: 0.6 }],
    oneClipError: { what: 'Only one of the two loops is clipped.', releases: false }, closed: { possible: true, why: 'Threaded.' }, finishedCm: 24, bulk: 'Four strands and one knot.',
    ...change,
  };
}

/** A comparison with the maker first and nothing else unless given. */
export function comparison(rows: Row[]): Comparison {
  return {
    evidence: '2026-01-01.1', model: 1, bearing: { mm: 3.5, measured: false }, rows, summary: 'One sentence.',
    rig: { ratingKn: 12, eye: 'sleeved-wire', bearingMm: null, sling: 'hmpe-10', lengthCm: 60, slingState: 'new', demandKn: null, old: null },
  };
}

/** Just enough evidence for the views. */
export const evidence: Pick<Evidence, 'figures' | 'slings' | 'factors'> = {
  figures: {
    'invented/breaks': {
      id: 'invented/breaks', source: 'invented', what: 'Invented breaks', kind: 'measured', value: { tests: [11, 13, 14] }, unit: 'kN',
      rig: {}, study: 'invented', standing: 'invented', certainty: 'very low', seen: null,
    },
  },
  slings: { 'hmpe-10': { name: 'HMPE sewn sling', order: 1, form: 'sewn-loop', material: 'hmpe', widthMm: 10.5, lengthsCm: [60] } },
  factors: {},
};
