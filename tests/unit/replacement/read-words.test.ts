/** What a reader writes into the calculator is read as it is meant, or refused with what to do. Expected values are read by hand. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readAmount } from '../../../src/replacement/read-amount.ts';
import { type CostWords, nothingWritten, readCost } from '../../../src/replacement/read-words.ts';

const MONEY = { low: 0, high: 1_000_000 };
const read = (text: string) => readAmount(text, MONEY);
const written = (change: (words: CostWords) => void): CostWords => {
  const words = nothingWritten();
  change(words);
  return words;
};

describe('an amount', () => {
  // Decimal signs and groups as the Unicode locale data (CLDR) has them for English, German, French and Swiss German.
  test.each([
    ['9', 9], ['9.5', 9.5], ['9,50', 9.5], [' 1234.5 ', 1234.5], ['1,234.50', 1234.5], ['1.234,50', 1234.5], ['1\u202f234,50', 1234.5], ['1 234,50', 1234.5],
    ['1’234.50', 1234.5], ["12'345", 12_345], ['1,234,567', null], ['999.999.99', null], ['0.125', 0.125], ['0,5', 0.5],
  ] as const)('%s', (text, value) => {
    const amount = read(text);
    expect(amount.ok ? amount.value : null).toBe(value);
  });

  test.each([
    ['1,234', 'can be 1234 or 1.234; write it without the sign, or with two digits behind it'],
    ['1.234', 'can be 1234 or 1.234; write it without the sign, or with two digits behind it'],
    ['nine', 'no plain number; write one from 0 to 1000000'],
    ['€9', 'no plain number; write one from 0 to 1000000'],
    ['-9', 'no plain number; write one from 0 to 1000000'],
    ['1e3', 'no plain number; write one from 0 to 1000000'],
    ['2000000', 'outside 0 to 1000000'],
  ])('%s is refused', (text, why) => expect(read(text)).toEqual({ ok: false, why }));

  test('any text gives a number within the range or a reason', () => {
    fc.assert(fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^[\d.,' ]{0,12}$/)), (text) => {
      const amount = read(text);
      expect(amount.ok ? amount.value >= 0 && amount.value <= 1_000_000 : amount.why !== '').toBe(true);
    }), { numRuns: 2000 });
  });

  test('an amount printed by any of these countries, to two digits, is read as itself', () => {
    const locales = fc.constantFrom('en-GB', 'de-DE', 'fr-FR', 'de-CH', 'pl-PL', 'nb-NO', 'es-ES', 'it-IT', 'cs-CZ');
    fc.assert(fc.property(fc.integer({ min: 0, max: 99_999_999 }), locales, (cents, locale) => {
      const text = new Intl.NumberFormat(locale, { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(cents / 100);
      expect(read(text)).toEqual({ ok: true, value: cents / 100 });
    }), { numRuns: 1000 });
  });
});

describe('what is written', () => {
  test('nothing is no fault, and no offer', () => {
    expect(readCost(nothingWritten())).toMatchObject({ kinds: [], offers: {}, faults: {}, isStopped: false });
  });

  test('a way with one unreadable field is left out whole: it is not worked out as if the field were nothing', () => {
    const asked = readCost(written((words) => {
      Object.assign(words.kinds[0] as object, { count: '7' });
      Object.assign(words.offers.workshop, { price: '9', there: 'a lot' });
      Object.assign(words.offers.new, { price: '60' });
    }));
    expect(asked.faults).toEqual({ 'workshop-there': 'no plain number; write one from 0 to 1000000' });
    expect(Object.keys(asked.offers)).toEqual(['new']);
    expect(asked.isStopped).toBe(false);
  });

  test('what all ways share stops everything when it cannot be read', () => {
    expect(readCost(written((words) => { words.general.week = 'x'; })).isStopped).toBe(true);
    expect(readCost(written((words) => { Object.assign(words.kinds[0] as object, { count: '1.5' }); })).faults).toEqual({ 'count-0': 'no whole number; write one from 1 to 999' });
    expect(readCost(written((words) => { Object.assign(words.kinds[0] as object, { name: 'cams' }); })).faults).toEqual({ 'count-0': 'how many of them? Write a whole number' });
    expect(readCost(written((words) => { words.general.cur = 'EUR 5'; })).faults).toEqual({ cur: 'a digit in the name of a currency; write a code or a sign' });
  });

  test.each([
    ['half a step', { price: '9', from: '10' }, { 'maker-lower': 'the price from there on is missing' }],
    ['the other half', { price: '9', lower: '8' }, { 'maker-from': 'from how many on? Write a whole number' }],
    ['steps that do not rise', { price: '9', from: '10', lower: '8', from2: '10', lower2: '7' }, { 'maker-from2': 'not above the step before' }],
    ['post without a price', { there: '9' }, { 'maker-price': 'the price of one is missing' }],
  ])('%s is said at its field', (_name, fields, faults) => {
    expect(readCost(written((words) => { Object.assign(words.offers.maker, fields); })).faults).toEqual(faults);
  });

  test.each([['', false], ['m', false], ['w', false], ['mw', true]] as const)('refused by "%s": the home way is open %s', (refused, isOpen) => {
    const asked = readCost(written((words) => {
      Object.assign(words.kinds[0] as object, { count: '3', refused });
      for (const way of ['maker', 'workshop', 'new', 'home'] as const) words.offers[way].price = '9';
    }));
    expect('home' in asked.offers).toBe(isOpen);
    expect(Object.keys(asked.kinds[0]?.ways ?? {}).includes('home')).toBe(isOpen);
    expect(Object.keys(asked.kinds[0]?.ways ?? {}).includes('maker')).toBe(!refused.includes('m'));
  });
});
