/** Tables of figures by one thing at a time: nothing is lost, nothing stands twice, and no address meets a figure's own. */
import { describe, expect, test } from 'vitest';
import { columnsOf, meantWords, numberWords } from '../../../src/build/figures/columns.ts';
import { allFacetValues, FACETS, facetPath, MOST_ROWS, pagesOfValue, useOf, valuesOfFacet } from '../../../src/build/figures/facets.ts';
import { allFigures, figure, figureBook } from '../../../src/build/figures/figures.ts';

const figures = allFigures();

describe('facets', () => {
  test.each(FACETS.map(({ id }) => id))('by %s each figure stands in one table at most', (id) => {
    const ids = allFacetValues().filter((each) => each.facet.id === id).flatMap((each) => each.figures.map((f) => f.id));
    expect(new Set(ids).size).toBe(ids.length);
  });

  test.each(FACETS.filter(({ without }) => without === '').map(({ id }) => id))('by %s every figure stands in a table', (id) => {
    const count = allFacetValues().filter((each) => each.facet.id === id).reduce((sum, each) => sum + each.figures.length, 0);
    expect(count).toBe(figures.length);
  });

  test('the parts of a table hold its rows in order, each once, and none too many', () => {
    for (const value of allFacetValues()) {
      const pages = pagesOfValue(value);
      expect(pages.flatMap((page) => page.rows)).toEqual(value.figures);
      for (const page of pages) {
        expect(page.rows.length).toBeGreaterThan(0);
        expect(page.rows.length).toBeLessThanOrEqual(MOST_ROWS);
        expect(page.parts).toBe(pages.length);
      }
    }
  });

  test('every value is named in words', () => {
    for (const { words, value } of allFacetValues()) expect(words, value).toMatch(/^[A-Za-z][A-Za-z' ,]+$/);
  });

  test('the address of a table has more parts than that of any figure, so that a source may have any name', () => {
    const parts = (path: string): number => path.split('/').filter((part) => part !== '').length;
    for (const id of figureBook().records.keys()) expect(parts(`/figures/${id}/`)).toBe(3);
    for (const value of allFacetValues()) for (const page of pagesOfValue(value)) expect(parts(facetPath(page.facet.id, page.value, page.part))).toBeGreaterThanOrEqual(4);
  });

  test('measured stands before required, and one rigging stands together', () => {
    const kind = FACETS.find(({ id }) => id === 'kind');
    const material = FACETS.find(({ id }) => id === 'material');
    if (!kind || !material) throw new Error('facets are missing');
    expect(valuesOfFacet(kind, figures).map(({ value }) => value).slice(0, 2)).toEqual(['measured', 'required']);
    const riggings = valuesOfFacet(material, figures).find(({ value }) => value === 'hmpe')?.figures.filter((f) => f.kind === 'measured').map((f) => f.rig.method);
    const changes = riggings?.filter((method, i) => method !== riggings[i - 1]);
    expect(new Set(changes).size).toBe(changes?.length);
  });
});

describe('use', () => {
  // As the records in data/factors, data/methods and data/rules say.
  test.each([
    ['ibarra-2021/girth-on-wire', 'feeds'],
    ['jones-1999/sewn-nylon-17#strand', 'feeds'],
    ['assumed/factor-device-over-rating#range', 'feeds'],
    ['climbers-blog-2015/hmpe-8-knots#girth', 'left-out'],
    ['common-practice/textile-life', 'shown'],
    ['tension-technology/yarn-behaviour#nylon-wet-loss', 'shown'],
  ])('%s: %s', (id, use) => {
    expect(useOf(figure(id))).toBe(use);
  });

  test('what only stands nearest to a gap is not used', () => {
    expect(useOf(figure('lutzenberger/tape-by-placement#sharp-thread-or-peg-eye'))).toBe('not-used');
  });
});

describe('columns', () => {
  test.each([
    [22, '22', ''],
    [{ tests: [11.162, 9.166, 11.425, 11.417] }, '10.8', 'mean of four pulls'],
    [{ tests: [15.2] }, '15.2', 'one pull'],
    [{ tests: [10, 12], censored: [14] }, '11', 'mean of two pulls, and one that did not break'],
    [{ mean: 13.8, n: 3 }, '13.8', 'mean of three pulls'],
    [{ mean: 13.8 }, '13.8', 'mean, count not stated'],
    [{ low: 58, high: 68, kind: 'between products' as const }, '58 to 68', 'between products'],
    [{ low: 4, high: 6, kind: 'extremes of n' as const, n: 5 }, '4 to 6', 'lowest and highest of five pulls'],
    [{ atLeast: 14.4, n: 2 }, 'at least 14.4', 'two pulls'],
    [{ atMost: 8 }, 'at most 8', ''],
    [{ statement: 'Never.' }, 'in words', 'Never.'],
  ])('%j has the number "%s", meant "%s"', (value, number, meant) => {
    expect(numberWords(value)).toBe(number);
    expect(meantWords(value)).toBe(meant);
  });

  test('a number that loses a zero in YAML is as printed', () => {
    expect(numberWords(22, '22.0')).toBe('22.0');
  });

  test('a share names its whole, and whether it is left or lost', () => {
    expect(columnsOf(figure('hse-crr-364/knots#bowline')).unit).toBe('% of the same piece without the knot');
    expect(columnsOf(figure('poynter/cloth-in-sun#outdoors-3-weeks')).unit).toBe('% lost of the same piece when new');
    expect(columnsOf(figure('moyer-2000/flexing#aramid-1000')).unit).toBe('share of the same piece when new');
  });

  test('a force printed in another unit stands beside its kilonewtons', () => {
    // 1 lbf = 4.4482216 N (NIST SP 811): the mean of 3717, 3467 and 4034 lbf is 3739 lbf, 16.6 kN.
    expect(columnsOf(figure('dimeo-1999/cords#hmpe-5.5-triple-fishermans-loop'))).toMatchObject({ value: '3740', unit: 'lbf (16.6 kN)' });
  });
});
