/**
 * A link keeps its meaning. Expected rigs are hand-written from the grammar of
 * comparison links; the properties follow from its definition (total, order
 * free, everything written, nothing dropped in silence).
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { migrate } from '../../../src/links/migrations.ts';
import { parseLink } from '../../../src/links/parse-link.ts';
import { parsePath, prebuiltPath, queryOfPrebuilt } from '../../../src/links/prebuilt-path.ts';
import { readNumber, writeNumber } from '../../../src/links/read-number.ts';
import { EXAMPLE_RIG, EYE_IDS, INPUT_RANGES, OLD_LIGHT_IDS, OLD_SLING_MATERIALS, OLD_USE_IDS, type InputRange } from '../../../src/links/rig-keys.ts';
import { serialiseLink } from '../../../src/links/serialise-link.ts';
import type { Rig } from '../../../src/strength/types.ts';

const vocabulary = { slings: ['hmpe-8', 'hmpe-10', 'nylon-16', 'nylon-20', 'nylon-cord-7'] };
const number = (range: InputRange) => fc.double({ min: range.low, max: range.high, noNaN: true }).map((x) => (Object.is(x, -0) ? 0 : x));
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const anyRig: fc.Arbitrary<Rig> = fc.record({
  ratingKn: orNull(number(INPUT_RANGES.rating)),
  eye: orNull(fc.constantFrom(...EYE_IDS)),
  bearingMm: orNull(number(INPUT_RANGES.bearing)),
  sling: orNull(fc.constantFrom(...vocabulary.slings)),
  lengthCm: orNull(number(INPUT_RANGES.length)),
  slingState: fc.constantFrom('new' as const, 'used' as const),
  demandKn: orNull(number(INPUT_RANGES.demand)),
  old: orNull(fc.record({ material: orNull(fc.constantFrom(...OLD_SLING_MATERIALS)), ageYears: orNull(number(INPUT_RANGES.oldage)), use: orNull(fc.constantFrom(...OLD_USE_IDS)), light: orNull(fc.constantFrom(...OLD_LIGHT_IDS)) }))
    // An old sling of which nothing is known is written as null: one rig, one form.
    .map((old) => (old && Object.values(old).every((one) => one === null) ? null : old)),
});
/** Strings near the grammar find more than random letters do. */
const nearQuery = fc.array(fc.oneof(
  fc.constantFrom('rating=12', 'rating=12,5', 'rating=900', 'rating=-1', 'rating=1e1', 'rating=NaN', 'eye=bare-wire', 'eye=', 'eye', '=', '=5',
    'sling=hmpe-8', 'sling=__proto__', 'constructor=1', '%', '%zz=1', 'rating=%', 'bearing=unmeasured', 'used=new', 'v=1', 'v=0', 'v=x', 'd=2026-01-01.1',
    'd=yesterday', 'm=1', 'm=0', 'unit=lbf', 'unit=stone', 'sort=name', 'oldage=3', 'oldsling=hmpe', 'olduse=daily', 'oldlight=shade', 'demand=rating', 'length=+60+', 'rating=١٢'),
  fc.string({ unit: 'binary', maxLength: 12 }).map((s) => s.replaceAll('&', '')),
)).map((pieces) => pieces.join('&'));
const anyQuery = fc.oneof(fc.string({ unit: 'binary' }), fc.string(), nearQuery);

describe('reading any string', () => {
  it('gives a rig without throwing and lists every piece that it does not use', () => {
    fc.assert(fc.property(anyQuery, (query) => {
      const parsed = parseLink(query, vocabulary);
      const pieces = query.replace(/^\?/, '').split('&').filter((piece) => piece !== '');
      const accounted = [...parsed.understood, ...parsed.notUnderstood.map((one) => one.piece)];
      expect(accounted.sort()).toEqual(pieces.sort());
      for (const one of parsed.notUnderstood) expect(one.why).not.toBe('');
    }), { numRuns: 3000 });
  });

  it('holds only what the link or the defaults say: the rig it gives is within limits', () => {
    fc.assert(fc.property(anyQuery, (query) => {
      const { rig } = parseLink(query, vocabulary);
      const within = (value: number | null | undefined, range: InputRange) => value == null || (value >= range.low && value <= range.high);
      expect(within(rig.ratingKn, INPUT_RANGES.rating) && within(rig.bearingMm, INPUT_RANGES.bearing) && within(rig.lengthCm, INPUT_RANGES.length)
        && within(rig.demandKn, INPUT_RANGES.demand) && within(rig.old?.ageYears, INPUT_RANGES.oldage)).toBe(true);
      expect(rig.sling === null || vocabulary.slings.includes(rig.sling)).toBe(true);
      expect(Object.keys(rig).sort()).toEqual(Object.keys(EXAMPLE_RIG).sort());
    }), { numRuns: 2000 });
  });

  it('does not depend on the order of the pieces', () => {
    const shuffled = nearQuery.chain((query) => fc.tuple(fc.constant(query), fc.shuffledSubarray(query.split('&'), { minLength: query.split('&').length })));
    fc.assert(fc.property(shuffled, ([query, pieces]) => {
      const one = parseLink(query, vocabulary);
      const two = parseLink(pieces.join('&'), vocabulary);
      const sorted = (list: { piece: string; why: string }[]) => list.map((x) => `${x.piece}\n${x.why}`).sort();
      // A leading question mark is punctuation only where it stands first.
      fc.pre(!query.includes('?'));
      expect({ ...two, understood: [], notUnderstood: [] }).toEqual({ ...one, understood: [], notUnderstood: [] });
      expect(sorted(two.notUnderstood)).toEqual(sorted(one.notUnderstood));
    }), { numRuns: 2000 });
  });
});

describe('writing and reading again', () => {
  it('gives back the same rig for every rig', () => {
    fc.assert(fc.property(anyRig, (rig) => {
      const parsed = parseLink(serialiseLink(rig, { evidence: '2026-11-25.1', model: 3 }), vocabulary);
      expect(parsed.rig).toEqual(rig);
      expect(parsed.notUnderstood).toEqual([]);
      expect([parsed.v, parsed.d, parsed.m]).toEqual([1, '2026-11-25.1', 3]);
    }), { numRuns: 3000 });
  });

  it('writes every input in a fixed order, also when it is the default', () => {
    expect(serialiseLink(EXAMPLE_RIG)).toBe('v=1&rating=12&eye=sleeved-wire&bearing=unmeasured&sling=hmpe-10&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown&olduse=unknown&oldlight=unknown');
  });

  it('keeps a prebuilt page out of the way of a query: the query wins, absent keys fall back to the page', () => {
    const page = parsePath('/compare/9/bare-wire/nylon-16/', vocabulary).rig;
    expect(parseLink('?rating=10', vocabulary, page).rig).toEqual({ ...EXAMPLE_RIG, ratingKn: 10, eye: 'bare-wire', sling: 'nylon-16' });
  });
});

describe('old links (the list only grows)', () => {
  const links: { query: string; rig: Rig; notUnderstood: string[] }[] = JSON.parse(readFileSync(new URL('./links.json', import.meta.url), 'utf8'));
  for (const link of links) {
    it(`still means the same: ${link.query || '(empty)'}`, () => {
      const parsed = parseLink(link.query, vocabulary);
      expect(parsed.rig).toEqual(link.rig);
      expect(parsed.notUnderstood.map((one) => one.piece)).toEqual(link.notUnderstood);
    });
  }
});

describe('migrations', () => {
  it('apply from the meaning of the link on, in order', () => {
    const steps = [
      { from: 1, what: 'wire becomes bare-wire', rewrite: (p: Parameters<typeof migrate>[0]) => p.map((x) => (x.value === 'wire' ? { ...x, value: 'bare-wire' } : x)) },
      { from: 2, what: 'the old default length is written out', rewrite: (p: Parameters<typeof migrate>[0]) => [...p, { key: 'length', value: '60', piece: '' }] },
    ];
    const pieces = [{ key: 'eye', value: 'wire', piece: 'eye=wire' }];
    expect(migrate(pieces, 1, steps).map((x) => x.value)).toEqual(['bare-wire', '60']);
    expect(migrate(pieces, 2, steps).map((x) => x.value)).toEqual(['wire', '60']);
    expect(migrate(pieces, 3, steps)).toEqual(pieces);
  });
});

describe('paths of prebuilt pages', () => {
  it('are read by the same words as a query', () => {
    expect(parsePath('/base/compare/9/bare-wire/nylon-16/', vocabulary)).toEqual({ rig: { ...EXAMPLE_RIG, ratingKn: 9, eye: 'bare-wire', sling: 'nylon-16' }, notUnderstood: [] });
  });
  it('list what they do not understand', () => {
    expect(parsePath('/compare/900/wire/hmpe-8/more/', vocabulary).notUnderstood.map((one) => one.piece)).toEqual(['900', 'wire', 'more']);
    expect(parsePath('/compare/900/wire/hmpe-8/more/', vocabulary).rig).toEqual({ ...EXAMPLE_RIG, ratingKn: null, eye: null, sling: 'hmpe-8' });
  });
  it('say why, and give each part as it stands, also where it holds signs of a query', () => {
    expect(parsePath('/compare/9&/bare-wire+/c%26d/more/', vocabulary)).toEqual({
      rig: { ...EXAMPLE_RIG, ratingKn: null, eye: null, sling: null },
      notUnderstood: [
        { piece: '9&', why: 'not a plain number; write one from 1 to 40 kN' },
        { piece: 'bare-wire+', why: 'not a kind of eye; one of bare-wire, sleeved-wire, wire-under-bar, metal-bar, twin-eye, unknown' },
        { piece: 'c%26d', why: 'not a sling we have; one of hmpe-8, hmpe-10, nylon-16, nylon-20, nylon-cord-7, unknown' },
        { piece: 'more', why: 'more parts than rating, eye and sling' },
      ],
    });
  });
  it('never throw', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (path) => { parsePath(path, vocabulary); }), { numRuns: 1000 });
  });
  it('are read in one go, however long: trying each sign anew would take many seconds here', () => {
    const long = '9'.repeat(200_000);
    expect(parsePath(long, vocabulary).notUnderstood).toEqual([{ piece: long, why: 'not a plain number; write one from 1 to 40 kN' }]);
  });
  it('exist only for a rig that is exactly theirs', () => {
    expect(prebuiltPath({ ...EXAMPLE_RIG, ratingKn: 9 }, vocabulary)).toBe('compare/9/sleeved-wire/hmpe-10/');
    expect(prebuiltPath({ ...EXAMPLE_RIG, ratingKn: 9.5 }, vocabulary)).toBeNull();
    expect(prebuiltPath({ ...EXAMPLE_RIG, bearingMm: 3.8 }, vocabulary)).toBeNull();
    expect(prebuiltPath({ ...EXAMPLE_RIG, slingState: 'used' }, vocabulary)).toBeNull();
    expect(prebuiltPath({ ...EXAMPLE_RIG, eye: 'twin-eye' }, vocabulary)).toBeNull();
    expect(prebuiltPath({ ...EXAMPLE_RIG, sling: 'hmpe-12' }, vocabulary)).toBeNull();
    for (const key of ['ratingKn', 'eye', 'sling'] as const) expect(prebuiltPath({ ...EXAMPLE_RIG, [key]: null }, vocabulary)).toBeNull();
  });
  it.each([
    ['/compare/9/bare-wire/hmpe-8/', '', 'v=1&rating=9&eye=bare-wire&sling=hmpe-8'],
    ['/compare/9/bare-wire/hmpe-8/', '?v=1&bearing=4', 'rating=9&eye=bare-wire&sling=hmpe-8&v=1&bearing=4'],
    // Word for word, also what nobody understands; the query counts before the path.
    ['/compare/9/bare-wire/hmpe-8/', 'rating=10&&sling&x=a?b&%zz', 'v=1&eye=bare-wire&rating=10&sling&x=a?b&%zz'],
    // No page is built there.
    ...['/compare/9/bare-wire/hmpe-8', '/compare/9,0/bare-wire/hmpe-8/', '/compare/9/bare-wire/hmpe-8/more/', '/compare/15/bare-wire/hmpe-8/', '/compare/', '/x/compare/9/bare-wire/hmpe-8/', '/null', '/'].map((path) => [path, 'bearing=4', null]),
  ] as [string, string, string | null][])('%s with %j is the comparison %j', (path, query, asked) => {
    expect(queryOfPrebuilt(path, query, vocabulary)).toBe(asked);
  });
});

describe('numbers', () => {
  const range = { low: 0, high: 100, unit: 'kN' };
  it('take a decimal comma as well as a point', () => {
    expect(readNumber(' 9,5 ', range)).toEqual({ ok: true, value: 9.5 });
    expect(readNumber('9.5', range)).toEqual({ ok: true, value: 9.5 });
  });
  it('refuse what a person would not call a plain number', () => {
    for (const text of ['', '1e1', '-1', '1.2.3', '1,000,0', '0x10', 'twelve', 'Infinity', '12kN']) expect(readNumber(text, range).ok).toBe(false);
  });
  it('say the limits when they are passed', () => {
    expect(readNumber('900', range)).toEqual({ ok: false, why: 'outside 0 to 100 kN' });
  });
  it('are written without an exponent', () => {
    for (const [value, text] of [[0, '0'], [12.5, '12.5'], [5e-7, '0.0000005'], [1.25e-7, '0.000000125'], [1e-10, '0.0000000001'], [1e15, '1000000000000000']] as const) expect(writeNumber(value)).toBe(text);
    for (const value of [-1, NaN, Infinity, 1e15 + 1]) expect(() => writeNumber(value)).toThrow(`got ${value}`);
  });
});
