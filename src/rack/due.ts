/** Items in the order in which something is due. What is due is decided elsewhere, by the rules of retirement, and given as a function. */
import { isDay } from './part-day.ts';
import { onRack } from './register.ts';
import type { Item, Register } from './types.ts';

/** What the rules say of an item. Days are whole ones, `2026-11-25`. There is no verdict of praise: null says only that no rule speaks of it. */
export type Verdict = { kind: 'retire-now' } | { kind: 'retire-by'; day: string } | { kind: 'inspect-by'; day: string };
export type VerdictOf = (item: Item) => Verdict | null;
export interface Due { item: Item; verdict: Verdict | null }

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

/** The day of a verdict, for sorting: at once comes first, and what no rule speaks of comes last. */
function dayOf(verdict: Verdict | null): string {
  if (verdict === null) return '~';
  if (verdict.kind === 'retire-now') return '';
  if (!isDay(verdict.day)) throw new RangeError(`day must be a day such as 2026-11-25 (got ${verdict.day})`);
  return verdict.day;
}

/**
 * Items on the rack: to retire now first, then by day, on one day retirement before inspection, then by name.
 * @throws RangeError when a verdict names a day that is none
 */
export function byDue(register: Register, verdictOf: VerdictOf): Due[] {
  const rows = onRack(register).map((item) => {
    const verdict = verdictOf(item);
    return { item, verdict, day: dayOf(verdict), inspects: Number(verdict?.kind === 'inspect-by') };
  });
  rows.sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.inspects - b.inspects || byName(a.item.name, b.item.name) || byName(a.item.id, b.item.id)));
  return rows.map(({ item, verdict }) => ({ item, verdict }));
}
