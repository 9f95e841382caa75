/** Reading a link key by key: each key once, and every piece that says nothing listed with its reason. */
import type { Pieces } from './migrations.ts';
import type { NotUnderstood } from './pieces.ts';

/**
 * Hands every key with its value to `read`, which gives the reason where it cannot be used. A key that stands twice is read
 * once where both say the same; with different values none is used, because the order of the pieces carries no meaning.
 */
export function readEach(pieces: Pieces, read: (key: string, value: string) => string | null): NotUnderstood[] {
  return [...new Set(pieces.map(({ key }) => key))].flatMap((key) => {
    const same = pieces.filter((one) => one.key === key);
    const [{ value }] = same as [Pieces[number]];
    const why = same.every((one) => one.value === value) ? read(key, value) : 'the same question twice with different answers; none is used';
    return why === null ? [] : same.map(({ piece }) => ({ piece, why }));
  });
}
