/** What the planner's page shows without a script: pooled scatters that the evidence offers, and plans worked for usual questions. */
import { FEWEST, planDifference, planShare } from '../../break-tests/plan-steps.ts';
import { expectedBound } from '../../break-tests/plan-bound.ts';
import { type Pair, STANDARD_PAIRS } from '../../break-tests/tolerance-bound.ts';
import { oneSidedToleranceFactor } from '../../numerics/tolerance-factor.ts';
import type { OfferedCv } from '../../components/breaks-plan/form.tsx';
import { loadEvidence } from '../evidence.ts';
import { siteRecords } from '../records.ts';
import { href } from '../site.ts';

/** A pooled scatter with its value as a share of one: the one that is printed, so that a reader can follow by hand. */
export interface PooledCv extends OfferedCv { readonly cv: number }

/** Scatters pooled from figures, smallest first. Those that are assumed are not offered. */
export function pooledCvs(): PooledCv[] {
  const { classes } = siteRecords();
  return Object.entries(loadEvidence().classes)
    .filter(([, { cvDf }]) => cvDf !== null)
    .sort(([, a], [, b]) => a.cv - b.cv)
    .map(([id, { cv }]) => {
      const percent = (100 * cv).toPrecision(2);
      return { id, what: classes.get(id)?.what ?? id, percent: String(Number(percent)), cv: Number(percent) / 100, address: href(`/model/factors/#class-${id}-figures`) };
    });
}

/** The pair of the worked bounds: the one that the form begins with. */
export const WORKED_PAIR: Pair = { coverage: 0.95, confidence: 0.95 };
const LAST = 30;

/** A row of the worked bounds: factors for the usual pairs, and the bound on average for each offered scatter, as a share of the mean. */
export interface WorkedBound { readonly n: number; readonly factors: readonly number[]; readonly bounds: readonly number[] }

/** From three pulls to thirty. */
export function workedBounds(cvs: readonly { cv: number }[]): WorkedBound[] {
  return Array.from({ length: LAST - FEWEST + 1 }, (_, i) => FEWEST + i).map((n) => ({
    n,
    factors: STANDARD_PAIRS.map(({ coverage, confidence }) => oneSidedToleranceFactor(n, coverage, confidence)),
    bounds: cvs.map(({ cv }) => expectedBound(n, WORKED_PAIR, cv).bound),
  }));
}

/** Differences in per cent of the mean, found in 80 of 100 trials. */
export const WORKED_DIFFERENCES = [5, 10, 20, 30] as const;

/** Pulls of each method for these differences, for one scatter. */
export const workedDifferences = (cv: number): number[] => WORKED_DIFFERENCES.map((difference) => planDifference(difference / 100, cv, 0.8).needed as number);

/** Guessed shares and widths of their intervals, of 100. */
export const WORKED_SHARES = [10, 30, 50] as const;
export const WORKED_WIDTHS = [60, 50, 40, 30, 20] as const;

/** Pulls for intervals of these widths, for one guess. */
export const workedShares = (share: number): number[] => WORKED_WIDTHS.map((width) => planShare(share / 100, width / 100).needed as number);
