/** A rack counted into the kinds of the calculator. Sums by hand. */
import { expect, test } from 'vitest';
import { kindsOfRack } from '../../../src/replacement/kinds-of-rack.ts';
import { blankKind, MOST_KINDS } from '../../../src/replacement/read-words.ts';

const kind = (count: string, name: string) => ({ ...blankKind(), count, name });

test('devices of one name are one kind, however it is written, and their counts add up', () => {
  const { kinds, isJoined } = kindsOfRack([{ name: 'Cam  2', count: 1 }, { name: 'Nut', count: 5 }, { name: ' cam 2', count: 3 }], []);
  expect(kinds).toEqual([kind('4', 'Cam 2'), kind('5', 'Nut')]);
  expect(isJoined).toBe(false);
});

test('a kind keeps the price and the refusals that were written of its name', () => {
  const written = [{ count: '1', name: 'nut', fresh: '12,50', refused: 'm' as const }];
  expect(kindsOfRack([{ name: 'Nut', count: 2 }], written).kinds).toEqual([{ count: '2', name: 'Nut', fresh: '12,50', refused: 'm' }]);
});

test('as many names as fit stay apart; one more, and all devices are one kind', () => {
  const devices = Array.from({ length: MOST_KINDS }, (_, i) => ({ name: `Cam ${i}`, count: 2 }));
  expect(kindsOfRack(devices, []).kinds).toHaveLength(MOST_KINDS);
  // 6 x 2 + 1.
  expect(kindsOfRack([...devices, { name: 'Nut', count: 1 }], [])).toEqual({ kinds: [kind('13', '')], isJoined: true });
});

test('no device is one blank kind, and a name longer than a link carries is cut', () => {
  expect(kindsOfRack([], []).kinds).toEqual([blankKind()]);
  expect(kindsOfRack([{ name: 'x'.repeat(80), count: 1 }], []).kinds[0]?.name).toBe('x'.repeat(60));
});
