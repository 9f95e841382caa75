/** Random registers with every field filled in every way that the format takes. */
import fc from 'fast-check';
import { addInspection, addItems, emptyRegister } from '../../../src/rack/register.ts';
import { EVENTS, EXPOSURES, FINDINGS, type ItemDraft, RACK_EYES, RACK_MATERIALS, RACK_USES, type Register } from '../../../src/rack/types.ts';
import { by } from './histories.ts';

/** Text that spreadsheets, CSV and calendars trip over. */
export const text = fc.oneof(
  fc.string({ unit: 'grapheme', maxLength: 30 }),
  fc.array(fc.constantFrom("'", '"', '=', '+', '-', '@', '|', '%', '\t', '\n', ',', ';', '\\', ' ', 'a', '12', 'ü', '\u{1F9D7}', '\u2028', '\uFEFF'), { maxLength: 12 }).map((pieces) => pieces.join('')),
);
const year = fc.integer({ min: 1950, max: 2199 });
const month = fc.integer({ min: 1, max: 12 });
export const partDay = fc.oneof(fc.record({ year }), fc.record({ year, month }), fc.record({ year, month, day: fc.integer({ min: 1, max: 28 }) }));
const orNull = <T>(one: fc.Arbitrary<T>) => fc.option(one, { nil: null });
const size = (min: number, max: number) => orNull(fc.double({ min, max, noNaN: true }).map((value) => Number(value.toPrecision(6))));

export const draft: fc.Arbitrary<ItemDraft> = fc.record({
  name: text, ratingKn: size(1, 40), eye: orNull(fc.constantFrom(...RACK_EYES)), count: fc.integer({ min: 1, max: 999 }), notes: text,
  sling: fc.record({
    material: orNull(fc.constantFrom(...RACK_MATERIALS)), widthMm: size(1, 60), made: orNull(partDay), firstUse: orNull(partDay), use: orNull(fc.constantFrom(...RACK_USES)),
    exposures: orNull(fc.subarray([...EXPOSURES])), events: orNull(fc.array(fc.record({ kind: fc.constantFrom(...EVENTS), when: orNull(partDay) }), { maxLength: 3 })),
    maker: fc.record({ retireBy: orNull(partDay), yearsFromMade: size(0.5, 60), yearsFromFirstUse: size(0.5, 60) }),
  }),
});
const look = fc.record({ item: fc.nat(), day: fc.constantFrom('2026-11-25', '2024-02-29', '1999-12-31'), findings: fc.subarray([...FINDINGS]), by: text, note: text });

export const register: fc.Arbitrary<Register> = fc.tuple(fc.array(draft, { maxLength: 5 }), fc.array(look, { maxLength: 4 })).map(([drafts, looks]) =>
  looks.reduce((now, { item, ...one }) => {
    const looked = now.items[item % now.items.length];
    return looked ? addInspection(now, by('copyb'), looked.id, one) : now;
  }, addItems(emptyRegister(), by('copya'), drafts)));
