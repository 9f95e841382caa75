/** Items in the order in which something is due. What is due the rules of retirement decide; here it is given as a function. */
import { compareHeadlines, type Headline } from '../retirement/verdict.ts';
import { isDay } from './part-day.ts';
import { onRack } from './register.ts';
import type { Item, Register } from './types.ts';

/** What the rules say of an item. There is no verdict of praise: null says only that no rule speaks of it. */
export type VerdictOf = (item: Item) => Headline | null;
export interface Due { item: Item; verdict: Headline | null }

/** Order of two names as a reader reads them: capitals count for nothing, and 9 comes before 10. The same on every machine. */
export function byName(a: string, b: string): number {
  const pieces = (text: string): string[] => text.toLowerCase().match(/\d+|\D+/g) ?? [];
  const [x, y] = [pieces(a), pieces(b)];
  for (let at = 0; at < Math.min(x.length, y.length); at += 1) {
    const [p = '', q = ''] = [x[at], y[at]];
    if (p === q) continue;
    const numbers = /^\d/.test(p) && /^\d/.test(q) ? Number(p) - Number(q) : 0;
    return numbers || (p < q ? -1 : 1);
  }
  return x.length - y.length || (a < b ? -1 : a > b ? 1 : 0);
}

/** Strictest first, and what no rule speaks of last. */
function byVerdict(a: Headline | null, b: Headline | null): number {
  return a && b ? compareHeadlines(a, b) : Number(a === null) - Number(b === null);
}

/**
 * Items on the rack: to retire now first, then by day, on one day retirement before inspection, then by name.
 * @throws RangeError when a verdict names a day that is none
 */
export function byDue(register: Register, verdictOf: VerdictOf): Due[] {
  const rows = onRack(register).map((item) => {
    const verdict = verdictOf(item);
    if (verdict && verdict.kind !== 'retire-now' && !isDay(verdict.day)) throw new RangeError(`day must be a day such as 2026-11-25 (got ${verdict.day})`);
    return { item, verdict };
  });
  return rows.sort((a, b) => byVerdict(a.verdict, b.verdict) || byName(a.item.name, b.item.name) || byName(a.item.id, b.item.id));
}
