/** Devices of a rack as the kinds that the calculator of costs asks for. */
import { blankKind, type KindWords, MOST_KINDS } from './read-words.ts';

export interface RackKinds {
  /** At least one kind; blank where there is no device. */
  kinds: KindWords[];
  /** True where there were more names than kinds fit, and all devices are counted as one kind. */
  isJoined: boolean;
}

/** Longest name that a link carries. */
const LONGEST_NAME = 60;

/**
 * Kinds by name, in the order in which they come; capitals and blanks count for nothing. More names than kinds fit become
 * one kind with no name. A kind keeps what was already written of one with the same name: price of a new one, and who refused.
 * @param devices names and how many of each, at least one
 * @param written kinds as they stand in the form
 */
export function kindsOfRack(devices: readonly { name: string; count: number }[], written: readonly KindWords[]): RackKinds {
  const keyOf = (name: string): string => name.trim().replace(/\s+/g, ' ').slice(0, LONGEST_NAME).trim().toLowerCase();
  const kinds = new Map<string, { name: string; count: number }>();
  for (const { name, count } of devices) {
    const key = keyOf(name);
    const known = kinds.get(key);
    kinds.set(key, { name: known?.name ?? name.trim().replace(/\s+/g, ' ').slice(0, LONGEST_NAME).trim(), count: (known?.count ?? 0) + count });
  }
  const isJoined = kinds.size > MOST_KINDS;
  const found = isJoined ? [{ name: '', count: devices.reduce((sum, { count }) => sum + count, 0) }] : [...kinds.values()];
  const inWords = found.map(({ name, count }): KindWords => {
    const { fresh, refused } = written.find((kind) => keyOf(kind.name) === keyOf(name)) ?? blankKind();
    return { count: String(count), name, fresh, refused };
  });
  return { kinds: inWords.length > 0 ? inWords : [blankKind()], isJoined };
}
