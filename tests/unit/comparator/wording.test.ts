/**
 * Results in words. The rules are the project's own (DESIGN: "break above", never twenty in twenty, the sentence and
 * the dots agree). The unit factors are the exact definitions: 1 lbf = 0.45359237 kg x 9.80665 m/s2 (NIST SP 811,
 * appendix B.8: 4.448222 N), 1 kgf = 9.80665 N (the same table).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { comparisonCsv, cell } from '../../../src/components/comparator/comparison-csv.ts';
import { comparisonText } from '../../../src/components/comparator/comparison-text.ts';
import { placeDots, placeOf } from '../../../src/charts/lane.ts';
import {
  aboutOfTwenty, aboveSentence, aboveShort, countAbove, force, inUnit, lowAndMiddle, NEWTONS_PER, rowsOf, spreadSentence, stripCounts, weakLinkSentence, weakLinkShort,
} from '../../../src/strength/wording.ts';
import { comparison, evenDots, evidence, row } from '../../support/comparison-fixture.ts';

const anyDots = fc.array(fc.double({ min: 0.1, max: 60, noNaN: true }), { minLength: 20, maxLength: 20 }).map((dots) => dots.sort((a, b) => a - b));
const anyLine = fc.double({ min: 1, max: 40, noNaN: true });

describe('units', () => {
  it('are the exact definitions of the pound-force and the kilogram-force', () => {
    expect(NEWTONS_PER.lbf).toBeCloseTo(0.45359237 * 9.80665, 13);
    // NIST SP 811, B.8: pound-force to newton 4.448 222 E+00; kilogram-force 9.806 65 E+00 exactly.
    expect(1000 / inUnit(1, 'lbf')).toBeCloseTo(4.448222, 6);
    expect(1000 / inUnit(1, 'kgf')).toBe(9.80665);
  });
  it('come with the number, rounded to what the model can say', () => {
    expect(force(12.34, 'kN')).toBe('12.3 kN');
    // 22 kN is 4945.8 lbf and 2243.4 kgf by the definitions above.
    expect(force(22, 'lbf')).toBe('4950 lbf');
    expect(force(22, 'kgf')).toBe('2240 kgf');
  });
  it('refuse what is no number', () => {
    expect(() => inUnit(Number.NaN, 'kN')).toThrow(RangeError);
  });
});

describe('the count out of twenty', () => {
  it('never says all and never says none', () => {
    expect(aboutOfTwenty(20)).toBe('more than 19');
    expect(aboutOfTwenty(0)).toBe('fewer than 1');
    expect(aboutOfTwenty(19)).toBe('about 19');
    expect(() => aboutOfTwenty(21)).toThrow(RangeError);
  });

  it('is the number of dots drawn above the line', () => {
    fc.assert(fc.property(anyDots, anyLine, (dots, line) => {
      const sentence = aboveSentence(row({ dots }), line, 'kN') ?? '';
      const drawn = placeDots(dots).filter(({ kn }) => kn > line).length + dots.filter((kn) => kn > 30 && kn > line).length;
      const said = sentence.includes('more than 19') ? 20 : sentence.includes('fewer than 1') ? 0 : Number(/about (\d+) would/.exec(sentence)?.[1]);
      expect(said).toBe(drawn);
      expect(said).toBe(countAbove(dots, line));
    }));
  });

  it('stands in the agreed sentence', () => {
    expect(aboveSentence(row({ dots: evenDots(11.9, 0.2) }), 12, 'kN')).toBe('Of 20 rigs built like this, about 19 would break above 12 kN in one slow pull, new and dry.');
    expect(aboveShort(row({ dots: evenDots(13, 0.2) }), 12, 'kN')).toBe('More than 19 of 20 break above 12 kN');
    expect(aboveSentence(row({ dots: [] }), 12, 'kN')).toBeNull();
  });
});

describe('dots', () => {
  it('stay at their force and never touch another on their level', () => {
    fc.assert(fc.property(anyDots, (dots) => {
      const places = placeDots(dots);
      for (const { kn, x } of places) expect(x).toBe(placeOf(kn));
      for (const [i, a] of places.entries()) {
        for (const b of places.slice(i + 1)) if (a.y === b.y) expect(Math.abs(a.x - b.x)).toBeGreaterThanOrEqual(10.9);
      }
      for (const { y } of places) expect(y >= 0 && y <= 36).toBe(true);
    }));
  });
});

describe('the weak link in words', () => {
  it('counts in rigs and says that for one rig it is not known', () => {
    expect(weakLinkSentence(row({ strip: `${'S'.repeat(8)}${'D'.repeat(12)}`, links: [] }))).toBe(
      'Of 20 rigs like this, in about 12 the device goes first, in 8 the sling at the eye. For one rig we do not know which.');
  });
  it('never says all twenty', () => {
    expect(weakLinkSentence(row({ strip: 'S'.repeat(20) }))).toBe('In more than 19 of 20 rigs like this the sling at the eye goes first.');
  });
  it('says "about equal" where it rests on the assumed mean of the device', () => {
    const links = row().links.map((link) => ({ ...link, first: 0.5 }));
    const even = row({ links, strip: `${'D'.repeat(10)}${'S'.repeat(10)}` });
    expect(weakLinkSentence(even)).toMatch(/^About equal, because the mean strength of the device is assumed\. Of 20/);
    expect(weakLinkShort(even)).toBe('about equal');
    expect(weakLinkShort(row())).toBe('sling at the eye');
  });
  it('counts as the strip does', () => {
    fc.assert(fc.property(fc.array(fc.constantFrom('S', 'K', 'E', 'D', 'C'), { minLength: 20, maxLength: 20 }), (letters) => {
      const counts = stripCounts(letters.join(''));
      expect(counts.reduce((sum, one) => sum + one.count, 0)).toBe(20);
      const sentence = weakLinkSentence(row({ strip: letters.join(''), links: [] })) ?? '';
      const said = [...sentence.replace(/^Of 20/, '').matchAll(/in (?:about )?(\d+) the/g)].map((match) => Number(match[1]));
      if (counts.length > 1) expect(said).toEqual(counts.map((one) => one.count));
    }));
  });
});

describe('all sentences', () => {
  const words = (kn: number, strip: string) => {
    const one = row({ dots: evenDots(kn, 0.3), strip });
    return [aboveSentence(one, 12, 'kN'), aboveShort(one, 12, 'kN'), spreadSentence({ low: kn, middle: kn + 2, high: kn + 5 }, 'kN'),
      lowAndMiddle({ low: kn, middle: kn + 2, high: kn + 5 }, 'kN'), weakLinkSentence(one), comparisonText(comparison([one]), evidence.slings, 'kN', 'https://example.org/')].join(' ');
  };
  it('say "break", never "hold" and never "safe", and never twenty or none of twenty', () => {
    fc.assert(fc.property(fc.double({ min: 0.5, max: 40, noNaN: true }), fc.constantFrom('S'.repeat(20), 'D'.repeat(20), `S${'D'.repeat(19)}`), (kn, strip) => {
      const text = words(kn, strip);
      expect(text).not.toMatch(/\bhold|\bheld|\bsafe|\b(about )?20 (of|in) 20|\ball 20|\b0 of 20|about 0\b/i);
      expect(text).toContain('break');
    }));
  });
  it('call the low value no minimum and no working load', () => {
    expect(spreadSentence({ low: 11.5, middle: 13, high: 15 }, 'kN')).toBe('Half break below 13.0 kN; 1 in 20 breaks below 11.5 kN. That is no minimum and no working load.');
    expect(lowAndMiddle({ low: 11.5, middle: 13, high: 15 }, 'kN')).toBe('1 in 20 below 11.5, half below 13.0 kN');
  });
});

describe('a comparison as text', () => {
  const maker = row({ method: 'makers-sling', name: 'Maker’s sling', group: 'maker', oneClipError: { what: 'None.', releases: false } });
  delete maker.place;
  const text = comparisonText(comparison([maker, row()]), evidence.slings, 'kN', 'https://example.org/compare/?v=1');
  it('opens with the rig and the caution, then the maker, then the rest, and closes with what it was made with and the link', () => {
    const order = ['Rig: 12 kN', 'WARNING', 'One slow pull, new, dry', 'Maker’s sling', 'Basket, overhand', 'Evidence 2026-01-01.1, model 1.', 'https://example.org/compare/?v=1'];
    const places = order.map((piece) => text.indexOf(piece));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
  });
  it('says so where nothing can be ranked', () => {
    expect(comparisonText(comparison([maker]), evidence.slings, 'kN', 'x')).toContain('No home method.');
  });
});

describe('a comparison as CSV', () => {
  it('has as many cells in each row as in its head, by RFC 4180 quoting', () => {
    const csv = comparisonCsv(comparison([row({ reasons: ['One, "two"', 'three'] })]), 'lbf', 'https://example.org/');
    const lines = csv.trimEnd().split('\r\n');
    const cells = (line: string) => line.match(/("(?:[^"]|"")*"|[^,]*)(,|$)/g)?.filter((one, i, all) => i < all.length - 1 || one !== '').length;
    expect(lines).toHaveLength(2);
    expect(cells(lines[1] ?? '')).toBe(cells(lines[0] ?? ''));
    expect(csv).toContain('"One, ""two"" three"');
    expect(csv).toContain(',lbf,');
    expect(csv).toContain(',low,');
  });
  it('holds no cell that a spreadsheet would run as a formula', () => {
    for (const start of ['=', '+', '-', '@', '\t']) expect(cell(`${start}1+1`)).toMatch(/^"?'/);
    expect(cell(-1)).toBe('-1');
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => { expect(cell(text)).not.toMatch(/^"?[=+\-@\t\r|%]/); }));
  });
});

describe('rows of a group', () => {
  it('keep the order of the engine unless another is asked for, and only inside their group', () => {
    const a = row({ method: 'a', name: 'Zed', attachment: { low: 9, middle: 10, high: 11 } });
    const b = row({ method: 'b', name: 'Alpha', attachment: { low: 8, middle: 12, high: 13 } });
    const all = comparison([row({ method: 'm', group: 'maker' }), a, b]);
    expect(rowsOf(all, 'ranked', 'low').map((x) => x.method)).toEqual(['a', 'b']);
    expect(rowsOf(all, 'ranked', 'middle').map((x) => x.method)).toEqual(['b', 'a']);
    expect(rowsOf(all, 'ranked', 'name').map((x) => x.method)).toEqual(['b', 'a']);
    expect(rowsOf(all, 'maker', 'name').map((x) => x.method)).toEqual(['m']);
  });
});
