/** Merging copies, on random edit histories. What is expected comes from sets of known edits (causal order after Lamport 1978), kept beside the code under test. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fieldOf } from '../../../src/rack/fields.ts';
import { readRegisterJson, registerJson } from '../../../src/rack/json-file.ts';
import { type Choice, merge } from '../../../src/rack/merge.ts';
import { addInspection, addItems, changeItem, emptyRegister, removeItem } from '../../../src/rack/register.ts';
import type { Register } from '../../../src/rack/types.ts';
import { acts, by, choices, expected, play } from './histories.ts';

function taken(a: Register, b: Register) {
  const merged = merge(a, b);
  if (!merged.ok) throw new Error(merged.why);
  return merged;
}
const RUNS = { numRuns: 400 };
const other = (choice: Choice): Choice => (choice === 'mine' ? 'theirs' : 'mine');

describe('two copies', () => {
  test('give each field the value that no later edit replaced, and ask where two such values differ: nothing is lost', () => {
    let asked = 0;
    fc.assert(fc.property(acts, (history) => {
      const world = play(history);
      const [mine, theirs] = [world.registers[0]!, world.registers[1]!];
      const merged = taken(mine, theirs);
      const wanted = expected(world, 0, 1);
      expect(merged.conflicts.map(({ item, field }) => `${item} ${field}`).sort()).toEqual([...wanted].filter(([, { conflict }]) => conflict).map(([key]) => key).sort());
      for (const { item, field, ...both } of merged.conflicts) {
        // Every value that no edit replaced is one of the two that the reader sees.
        const shown = [both.mine, both.theirs].map((value) => JSON.stringify(value)).sort();
        expect(wanted.get(`${item} ${field}`)!.values.map((value) => JSON.stringify(value)).sort()).toEqual(shown);
      }
      asked += merged.conflicts.length;
      const register = merged.settled(merged.conflicts.map(() => 'mine'), by('copya'));
      for (const [key, { conflict, values }] of wanted) {
        const [id, field] = key.split(' ') as [string, 'name'];
        const item = register.items.find((one) => one.id === id)!;
        if (!conflict && values[0] !== undefined) expect(fieldOf(item, field), key).toEqual(values[0]);
      }
      expect(new Set(register.items.map(({ id }) => id))).toEqual(new Set([...mine.items, ...theirs.items].map(({ id }) => id)));
    }), RUNS);
    expect(asked).toBeGreaterThan(20);
  });

  test('give the same whichever asks, once the same is chosen', () => {
    fc.assert(fc.property(acts, choices, (history, all) => {
      const [mine, theirs] = play(history).registers as [Register, Register];
      const [there, back] = [taken(mine, theirs), taken(theirs, mine)];
      expect(back.conflicts).toEqual(there.conflicts.map((one) => ({
        ...one, mine: one.theirs, theirs: one.mine,
        names: { mine: one.names.theirs, theirs: one.names.mine }, changed: { mine: one.changed.theirs, theirs: one.changed.mine },
      })));
      const chosen = all.slice(0, there.conflicts.length);
      expect(registerJson(back.settled(chosen.map(other), by('copyc')))).toBe(registerJson(there.settled(chosen, by('copyc'))));
    }), RUNS);
  });

  test('give the same a second time: what was merged asks nothing and changes nothing', () => {
    fc.assert(fc.property(acts, choices, (history, all) => {
      const [mine, theirs] = play(history).registers as [Register, Register];
      const self = taken(mine, mine);
      expect([self.conflicts, registerJson(self.settled())]).toEqual([[], registerJson(mine)]);
      const first = taken(mine, theirs);
      const merged = first.settled(all.slice(0, first.conflicts.length), by('copya'));
      for (const copy of [mine, theirs]) {
        const again = taken(merged, copy);
        expect([again.conflicts, registerJson(again.settled())]).toEqual([[], registerJson(merged)]);
        const back = taken(copy, merged);
        expect([back.conflicts, registerJson(back.settled())]).toEqual([[], registerJson(merged)]);
      }
    }), RUNS);
  });

  test('make files that import takes, byte for byte', () => {
    fc.assert(fc.property(acts, (history) => {
      for (const register of play(history).registers) {
        const file = registerJson(register);
        const read = readRegisterJson(file);
        expect(read.ok ? registerJson(read.value) : read.faults).toBe(file);
        expect(read.ok && read.value).toEqual(register);
      }
    }), RUNS);
  });
});

test('three copies whose edits touch different items give the same in whichever order they are merged', () => {
  fc.assert(fc.property(acts, (history) => {
    const [a, b, c] = play(history, true).registers as [Register, Register, Register];
    const join = (x: Register, y: Register): Register => {
      const merged = taken(x, y);
      expect(merged.conflicts).toEqual([]);
      return merged.settled();
    };
    const left = registerJson(join(join(a, b), c));
    expect(registerJson(join(a, join(b, c)))).toBe(left);
    expect(registerJson(join(join(c, a), b))).toBe(left);
  }), RUNS);
});

test('three copies give the same in whichever order they are merged, wherever no two of them conflict and nobody is asked whether an item stays off', () => {
  let counted = 0;
  fc.assert(fc.property(acts, (history) => {
    const [a, b, c] = play(history).registers as [Register, Register, Register];
    if ([taken(a, b), taken(b, c), taken(a, c)].some(({ conflicts }) => conflicts.length > 0)) return;
    counted += 1;
    const [ab, bc] = [taken(a, b).settled(), taken(b, c).settled()];
    const [left, right] = [taken(ab, c), taken(a, bc)];
    // Whether an item stays off the rack is asked once more where a third copy edited it without having seen that.
    const both = [...left.conflicts, ...right.conflicts];
    expect(both.filter(({ field }) => field !== 'removed')).toEqual([]);
    if (both.length > 0) return;
    expect(registerJson(right.settled())).toBe(registerJson(left.settled()));
  }), { numRuns: 600 });
  expect(counted).toBeGreaterThan(20);
});

describe('by example', () => {
  const start = addItems(emptyRegister(), by('copya'), [{ name: 'Red', ratingKn: 12 }]);
  const id = start.items[0]!.id;

  test('the later of two edits wins where its copy knew the earlier one, whatever the clocks say', () => {
    const earlier = changeItem(start, { copy: 'copya', at: '2030-01-01T00:00:00Z' }, id, { name: 'Blue' });
    const later = changeItem(earlier, { copy: 'copyb', at: '2020-01-01T00:00:00Z' }, id, { name: 'Green' });
    expect(taken(earlier, later).settled().items[0]?.name).toBe('Green');
    expect(taken(later, earlier).settled().items[0]?.name).toBe('Green');
  });

  test('different fields of one item are merged, and two new inspections both stay', () => {
    const look = { day: '2026-11-25', findings: [], note: '' } as const;
    const mine = addInspection(changeItem(start, by('copya'), id, { name: 'Blue' }), by('copya'), id, { ...look, by: 'me' });
    const theirs = addInspection(changeItem(start, by('copyb'), id, { ratingKn: 14 }), by('copyb'), id, { ...look, by: 'them' });
    const merged = taken(mine, theirs);
    expect(merged.conflicts).toEqual([]);
    expect(merged.settled().items[0]).toMatchObject({ name: 'Blue', ratingKn: 14, inspections: [{ by: 'me' }, { by: 'them' }] });
  });

  test('two values of one field are the reader\u2019s to choose, and the choice holds for a third copy', () => {
    const mine = changeItem(start, by('copya', 1), id, { name: 'Blue' });
    const theirs = changeItem(start, by('copyb', 2), id, { name: 'Green' });
    const merged = taken(mine, theirs);
    expect(merged.conflicts).toEqual([{
      item: id, field: 'name', mine: 'Blue', theirs: 'Green', names: { mine: 'Blue', theirs: 'Green' },
      changed: { mine: '2026-11-25T10:01:00Z', theirs: '2026-11-25T10:02:00Z' },
    }]);
    const settled = merged.settled(['theirs'], by('copya', 3));
    expect(settled.items[0]?.name).toBe('Green');
    expect(taken(theirs, settled).conflicts).toEqual([]);
    expect(() => merged.settled()).toThrow(new RangeError('choices must be one for each of 1 conflicts (got 0)'));
    expect(() => merged.settled(['mine'])).toThrow(new RangeError('by must say who chooses'));
  });

  test('an item that one copy took off and the other went on editing is asked about', () => {
    const mine = removeItem(start, by('copya'), id);
    const theirs = changeItem(start, by('copyb'), id, { notes: 'Looked at it again.' });
    expect(taken(mine, theirs).conflicts).toMatchObject([{ field: 'removed', mine: true, theirs: false }]);
    expect(taken(mine, theirs).settled(['theirs'], by('copya')).items[0]).toMatchObject({ removed: false, notes: 'Looked at it again.' });
    // Without an edit on the other side, taking off is the newer edit.
    expect(taken(mine, start).settled().items[0]?.removed).toBe(true);
  });

  test('two edits under one number, as after a restored backup, are asked about', () => {
    const mine = changeItem(start, by('copya'), id, { name: 'Blue' });
    const theirs = changeItem(start, by('copya'), id, { name: 'Green' });
    expect(taken(mine, theirs).conflicts).toMatchObject([{ field: 'name', mine: 'Blue', theirs: 'Green' }]);
  });

  test('an empty register takes a file as it is, and an example is not mixed with a real rack', () => {
    const example = addItems(emptyRegister('Invented.'), by('demo1'), [{ name: 'Example' }]);
    expect(registerJson(taken(emptyRegister(), example).settled())).toBe(registerJson(example));
    expect(registerJson(taken(example, emptyRegister()).settled())).toBe(registerJson(example));
    expect(merge(start, example)).toEqual({ ok: false, why: 'One of the two is an invented example, and examples are not mixed with a real rack. Start an empty register, then import the file.' });
  });
});
