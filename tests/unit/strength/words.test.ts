/** Results in words and as data: every sentence at the edges of its numbers. The rules stand at the head of wording.ts. */
import { describe, expect, it } from 'vitest';
import { methodData } from '../../../src/strength/method-data.ts';
import {
  aboutOfTwenty, aboveSentence, aboveShort, CAUTION_LINE, certaintyWords, countAbove, countsDevice, force, forceNumber, GROUP_HEADINGS, GROUP_ORDER, LETTERS, line,
  MAKER_FIRST_LINE, nothingRanked, pairShort, partName, rowsOf, shownSpread, stripCounts, weakLinkSentence, weakLinkShort,
} from '../../../src/strength/wording.ts';
import { comparison, evenDots, row } from '../../support/comparison-fixture.ts';

const rig = comparison([]).rig;

describe('forces', () => {
  it('computed ones are rounded to a tenth of a kN or to ten of the small units; given ones in kN are not', () => {
    // 12 kN / 4.4482216152605 N = 2697.7 lbf; 12 kN / 9.80665 N = 1223.7 kgf.
    expect([forceNumber(12, 'kN'), forceNumber(12, 'lbf'), forceNumber(12, 'kgf')]).toEqual(['12.0', '2700', '1220']);
    expect([force(12.25, 'kN'), force(12, 'kgf')]).toEqual(['12.3 kN', '1220 kgf']);
    expect([line(12.25, 'kN'), line(12, 'kN'), line(12, 'lbf')]).toEqual(['12.25 kN', '12 kN', '2700 lbf']);
  });
});

describe('counts out of twenty', () => {
  it('a dot on the line does not lie above it', () => expect(countAbove([11, 12, 12.1, 13], 12)).toBe(2));
  it('are whole, from none to twenty', () => {
    expect([0, 1, 10, 19, 20].map(aboutOfTwenty)).toEqual(['fewer than 1', 'about 1', 'about 10', 'about 19', 'more than 19']);
    for (const count of [-1, 21, 1.5, Number.NaN]) expect(() => aboutOfTwenty(count)).toThrow(`aboutOfTwenty: count must be 0 to 20 (got ${count})`);
  });
  it('need twenty dots', () => {
    const short = row({ dots: [1, 2, 3] });
    expect([aboveSentence(short, 12, 'kN'), aboveShort(short, 12, 'kN')]).toEqual([null, null]);
    expect(aboveShort(row({ dots: evenDots(11.05, 0.1) }), 12, 'kN')).toBe('About 10 of 20 break above 12 kN');
    expect(aboveShort(row({ dots: evenDots(1, 0.1) }), 12, 'kN')).toBe('Fewer than 1 of 20 break above 12 kN');
  });
  it('from thirteen of twenty pairs on a method is the stronger or the weaker one, else it is a tie', () => {
    expect([1, 0.85, 0.65, 0.6, 0.5, 0.4, 0.35, 0.1, 0].map(pairShort)).toEqual([
      'stronger in more than 19 of 20 pairs', 'stronger in about 17 of 20 pairs', 'stronger in about 13 of 20 pairs',
      'a tie: stronger in about 12 of 20 pairs', 'a tie: stronger in about 10 of 20 pairs', 'a tie: stronger in about 8 of 20 pairs',
      'weaker in about 13 of 20 pairs', 'weaker in about 18 of 20 pairs', 'weaker in more than 19 of 20 pairs',
    ]);
  });
});

describe('the weak link', () => {
  it('each letter has a name of its own, and the strip is counted by letter', () => {
    expect(LETTERS.map(partName)).toEqual(['the sling at the eye', 'the knot or join', 'the eye', 'the device', 'the connector end']);
    expect(stripCounts('SSKSDDDDEC')).toEqual([{ letter: 'D', count: 4 }, { letter: 'S', count: 3 }, { letter: 'K', count: 1 }, { letter: 'E', count: 1 }, { letter: 'C', count: 1 }]);
    expect(stripCounts('')).toEqual([]);
  });
  it('a row without a strip says nothing of it', () => expect([weakLinkSentence(row({ strip: '' })), weakLinkShort(row({ strip: '' }))]).toEqual([null, null]));
  it('three links are told in the order of their counts', () => {
    expect(weakLinkSentence(row({ links: [], strip: `${'K'.repeat(5)}${'S'.repeat(12)}${'C'.repeat(3)}` }))).toBe(
      'Of 20 rigs like this, in about 12 the sling at the eye goes first, in 5 the knot or join, in 3 the connector end. For one rig we do not know which.');
    expect(weakLinkShort(row({ links: [], strip: `${'K'.repeat(12)}${'S'.repeat(8)}` }))).toBe('knot or join');
  });
  it('is about equal where an assumed device goes first in three to seven of ten, and only beside another link', () => {
    const [device, sling] = row().links as [NonNullable<ReturnType<typeof row>['links'][number]>, NonNullable<ReturnType<typeof row>['links'][number]>];
    const equal = (first: number, links = [{ ...device, first }, sling]): boolean => weakLinkShort(row({ links })) === 'about equal';
    expect([0.29, 0.3, 0.5, 0.7, 0.71].map((first) => equal(first))).toEqual([false, true, true, true, false]);
    expect(equal(0.5, [sling, { ...device, first: 0.5 }])).toBe(true);
    expect(equal(0.5, [{ ...device, first: 0.5 }])).toBe(false);
    expect(equal(0.5, [sling, sling])).toBe(false);
    expect(equal(0.5, [{ ...device, first: 0.5, factors: device.factors.map((factor) => ({ ...factor, assumed: false })) }, sling])).toBe(false);
    // One assumed factor among others is enough.
    expect(equal(0.5, [{ ...device, first: 0.5, factors: [...sling.factors, ...device.factors] }, sling])).toBe(true);
  });
});

describe('what a row and a group are called', () => {
  it('certainty in words, and why there is none', () => {
    expect(certaintyWords({ certainty: 'very low', group: 'ranked' })).toBe('certainty very low');
    expect(certaintyWords({ certainty: null, group: 'maker' })).toBe('assumed from the rating');
    expect(certaintyWords({ certainty: null, group: 'no-data' })).toBe('no figure');
  });
  it('every group has a heading of its own, the maker\'s first', () => {
    expect(GROUP_ORDER).toHaveLength(7);
    expect(Object.keys(GROUP_HEADINGS).sort()).toEqual([...GROUP_ORDER].sort());
    expect(new Set(Object.values(GROUP_HEADINGS)).size).toBe(7);
    for (const heading of Object.values(GROUP_HEADINGS)) expect(heading).toMatch(/^[A-Z].{8,}/);
    expect(GROUP_ORDER[0]).toBe('maker');
  });
  it('the caution says what one pull leaves out, and what comes before any method at home', () => {
    for (const word of ['placement', 'rock', 'wear', 'wet', 'new, dry']) expect(CAUTION_LINE).toContain(word);
    expect(MAKER_FIRST_LINE).toMatch(/^The maker.s instruction and a professional re-sling come first\./);
  });
  it('where nothing is ranked it says whether measuring would change that', () => {
    const measured = { ...rig, bearingMm: 3.8 };
    for (const vague of [rig, { ...measured, eye: null }]) expect(nothingRanked(vague)).toContain('measure');
    expect(nothingRanked(measured)).toContain('None has a figure at this eye');
  });
  it('the whole rig is shown against a demand, else the attachment', () => {
    const one = row();
    expect([countsDevice({ ratingKn: 12, demandKn: 8 }), countsDevice({ ratingKn: 12, demandKn: null }), countsDevice({ ratingKn: null, demandKn: 8 })]).toEqual([true, false, false]);
    expect(shownSpread(one, { ratingKn: 12, demandKn: 8 })).toEqual(one.rig);
    expect(shownSpread(one, { ratingKn: 12, demandKn: null })).toEqual(one.attachment);
  });
  it('rows without a result stand behind those with one, by the middle', () => {
    const all = comparison([row({ method: 'none', attachment: null }), row({ method: 'weak', attachment: { low: 0.1, middle: 0.5, high: 0.9 } }), row({ method: 'bare', attachment: null }), row({ method: 'strong', attachment: { low: 0.05, middle: 9, high: 10 } })]);
    expect(rowsOf(all, 'ranked', 'middle').map(({ method }) => method)).toEqual(['strong', 'weak', 'none', 'bare']);
    expect(rowsOf(all, 'ranked', 'low').map(({ method }) => method)).toEqual(['none', 'weak', 'bare', 'strong']);
    expect(rowsOf(all, 'unranked', 'low')).toEqual([]);
  });
});

describe('a method as data', () => {
  const shown = (kn: number): string => kn.toFixed(1);
  it('has the numbers of its row, and counts that never say all or none', () => {
    const data = methodData(row({ strip: `${'S'.repeat(20)}`, reasons: ['Why.'], gap: 'a-gap', shown: ['invented/breaks'] }), { ...rig, demandKn: null }, shown);
    expect(data).toEqual({
      id: 'basket-overhand', name: 'Basket, overhand at the clip end', state: 'result', reason: ['Why.'], group: 'ranked', place: 1,
      attachment: { low: '10.0', middle: '13.0', high: '17.0' }, rig: { low: '9.0', middle: '12.0', high: '15.0' },
      // Dots at 9, 9.4, ... 16.6: twelve of them above 12 kN.
      aboveOf20: 12, firstOf20: [{ letter: 'S', link: 'the sling at the eye', count: 19 }],
      certainty: 'low', figures: ['invented/breaks'], shown: ['invented/breaks'], gap: 'a-gap',
    });
  });
  it('counts against the demand where there is one, and not at all without a line or a result', () => {
    const count = (ratingKn: number | null, demandKn: number | null, dots = evenDots(9, 0.4)) => methodData(row({ dots }), { ...rig, ratingKn, demandKn }, shown).aboveOf20;
    expect([count(12, 16), count(12, 4), count(12, 40), count(null, 16), count(null, null), count(12, null, [])]).toEqual([2, 19, 1, 2, null, null]);
  });
  it('says null for what is not there', () => {
    const bare = row({ attachment: null, rig: null, dots: [], strip: '', certainty: null });
    delete bare.place;
    expect(methodData(bare, rig, shown)).toMatchObject({ place: null, attachment: null, rig: null, aboveOf20: null, firstOf20: [], certainty: null, gap: null });
  });
});
