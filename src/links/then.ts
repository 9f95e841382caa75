/** What a frozen version says of one rig: its answer as shown then beside today's, or else which inputs have changed. Pure. */
import type { Comparison } from '../strength/types.ts';
import { rigWords } from './serialise-link.ts';

/** A row as a frozen version shows it: method, group, and low, middle and high value, kN. */
type Row = readonly [method: string, group: string, low: string, middle: string, high: string];

/** What of a frozen version is read. */
interface Then {
  answers: Readonly<Record<string, readonly Row[]>>;
  withdrawn: readonly { id: string; on: string; why: string; methods: readonly string[] }[];
  factors: readonly string[];
  slings: readonly string[];
}

/** A row as it was and as it is, null where it had or has no number; `name`: of the method today, null where there is none. */
export interface ThenAndNow { method: string; name: string | null; was: Row | null; now: Row | null; isMoved: boolean }

/** What is told of a rig. */
export interface Told<Version extends Then = Then> {
  version: Version;
  /** Rows that had a number or have one, in the order shown then; null where the rig had no page of its own. */
  rows: ThenAndNow[] | null;
  /** Inputs of today's numbers that read otherwise then, by method. */
  inputs: { method: string; name: string; factors: string[] }[];
  /** Whether the record of the sling reads otherwise. */
  isSlingChanged: boolean;
}

/**
 * @param then the frozen version
 * @param fixed inputs that every prebuilt comparison has at one value, as words of a link
 * @param now today's comparison of the same rig
 */
export function thenOf<Version extends Then>(then: Version, { fixed }: { fixed: Readonly<Record<string, string>> }, now: Comparison): Told<Version> {
  const words = Object.fromEntries(rigWords(now.rig));
  const isBuilt = Object.entries(fixed).every(([key, value]) => words[key] === value);
  const was = isBuilt ? then.answers[`${words['rating']}/${words['eye']}/${words['sling']}`] : undefined;
  const today = now.rows.flatMap(({ method, group, attachment }): Row[] => (attachment ? [[method, group, attachment.low.toFixed(1), attachment.middle.toFixed(1), attachment.high.toFixed(1)]] : []));
  const rowOf = (rows: readonly Row[], wanted: string): Row | null => rows.find(([method]) => method === wanted) ?? null;
  return {
    version: then,
    rows: was ? [...new Set([...was, ...today].map(([method]) => method))].map((method) => {
      const [before, after] = [rowOf(was, method), rowOf(today, method)];
      return { method, name: now.rows.find((row) => row.method === method)?.name ?? null, was: before, now: after, isMoved: String(before) !== String(after) };
    }) : null,
    inputs: now.rows.flatMap(({ method, name, links }) => {
      const factors = [...new Set(links.flatMap((link) => link.factors.map(({ factor }) => factor)))].filter((factor) => then.factors.includes(factor));
      return factors.length > 0 ? [{ method, name, factors }] : [];
    }),
    isSlingChanged: then.slings.some((id) => id === now.rig.sling),
  };
}
