/**
 * Which edits a copy has seen. Each edit is numbered by the copy that made it (`3@k7f2`), and a register says up to which
 * number it includes each copy's edits (a version vector). So it is known which of two values replaced the other, or that
 * neither copy knew of the other's, without any clock.
 */
import type { FieldKey } from './field-names.ts';
import { isInspectionKey } from './fields.ts';
import type { By, Item, Register } from './types.ts';

/** Edits that last set a field. Several where copies set it to the same value apart from each other. */
export function stampsOf(item: Item, field: FieldKey): string[] {
  const own = Object.hasOwn(item.stamps, field) ? item.stamps[field] : undefined;
  return own?.split(' ') ?? (isInspectionKey(field) ? [] : item.stamp.split(' '));
}

/** Number and copy of one stamp. */
export function partsOfStamp(stamp: string): { n: number; copy: string } {
  const at = stamp.indexOf('@');
  return { n: Number(stamp.slice(0, at)), copy: stamp.slice(at + 1) };
}

/** Number of a copy's last edit that is included; 0 where there is none. */
export const seenOf = (seen: Register['seen'], copy: string): number => (Object.hasOwn(seen, copy) ? seen[copy] ?? 0 : 0);

/** Whether a register includes an edit. */
export function hasSeen(seen: Register['seen'], stamp: string): boolean {
  const { n, copy } = partsOfStamp(stamp);
  return n <= seenOf(seen, copy);
}

/** The stamp of the next edit of a copy. */
export const nextStamp = (register: Register, { copy }: By): string => `${seenOf(register.seen, copy) + 1}@${copy}`;

/** Stamps as one text, in an order that does not depend on who wrote them. */
export function writeStamps(stamps: Iterable<string>): string {
  const order = (a: string, b: string): number => {
    const [x, y] = [partsOfStamp(a), partsOfStamp(b)];
    return x.n - y.n || (x.copy < y.copy ? -1 : x.copy > y.copy ? 1 : 0);
  };
  return [...new Set(stamps)].sort(order).join(' ');
}

/** A copy of the item with the stamps of one field; those that the item was made with are not written twice. */
export function withStamps(item: Item, field: FieldKey, stamps: string): Item {
  const { [field]: _replaced, ...others } = item.stamps;
  return { ...item, stamps: stamps === item.stamp && !isInspectionKey(field) ? others : { ...others, [field]: stamps } };
}

/** What both registers together include. */
export function seenByEither(a: Register['seen'], b: Register['seen']): Record<string, number> {
  const copies = [...new Set([...Object.keys(a), ...Object.keys(b)])].sort();
  return Object.fromEntries(copies.map((copy) => [copy, Math.max(seenOf(a, copy), seenOf(b, copy))]));
}
