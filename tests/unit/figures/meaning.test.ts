/** What a measured number says, against the reading of each record by hand: what its source calls left, lost, scatter or difference. */
import { expect, test } from 'vitest';
import { isForceItself, shareKind } from '../../../src/build/figures/meaning.ts';
import { allFigures, figure } from '../../../src/build/figures/figures.ts';

test.each([
  // "share of the strength without a knot" in the record; the sources print what the knot leaves.
  ['hse-crr-364/knots#bowline', 'kept'],
  ['jacobson/older-knots#clove-hitch', 'kept'],
  ['scouting-everywhere-2011/beer-knot', 'kept'],
  ['lew-1999/linked-girth', 'kept'],
  ['moyer-2000/figure-eight-loop#aramid-efficiency', 'kept'],
  // Its note quotes a loss, but the number is what is left.
  ['moyer-2000/flexing#aramid-1000', 'kept'],
  ['cai-rimini/rope-wear#after-5000-m', 'kept'],
  // The source says that the best knot costs this much; the record stands in a table of shares left.
  ['yachting-monthly-2017/knots#smallest-loss', 'lost'],
  ['bressan-2020/knotted-cord-7#loss', 'lost'],
  ['poynter/cloth-in-sun#outdoors-3-weeks', 'lost'],
  ['ellis/lanyard-on-edge#three-strand-16', 'lost'],
  ['schubert-1998/chemicals-and-light#urine', 'lost'],
  ['tension-technology/yarn-behaviour#nylon-wet-loss', 'lost'],
  // A rope's length, and two scatters.
  ['schubert-2000/rope-ageing#shrinkage', 'other'],
  ['harmston-1999/small-nuts#batch-cv', 'other'],
  ['warner-1996/older-scatter#variation', 'other'],
])('the share %s is %s', (id, kind) => {
  expect(shareKind(figure(id))).toBe(kind);
});

test('a share whose words say neither is not taken for strength', () => {
  expect(shareKind({ what: 'Rope after a season, share by weight' })).toBe('other');
});

test.each([
  ['ibarra-2021/girth-on-wire', true],
  ['nelhams-2010/sewn-knots#hmpe-8-doubled', true],
  ['helix-operations-2021/new-single-strand', true],
  // A standard deviation, a mean less three of them, the mark on a sling, a range within a batch, a difference.
  ['helix-operations-2021/anchor-cord#new-single-strand-sd', false],
  ['helix-operations-2021/anchor-cord#used-single-strand-rating', false],
  ['harmston-1995/girth-sling-to-sling#nylon-14-rating', false],
  ['jones-1999/batches#widest-range-within-a-batch', false],
  ['dav-2015/wide-over-narrow', false],
])('%s is a force at which something happened: %s', (id, itself) => {
  expect(isForceItself(figure(id))).toBe(itself);
});

test('no share is a force', () => {
  expect(allFigures().filter((each) => (each.unit === 'percent' || each.unit === 'ratio') && isForceItself(each))).toEqual([]);
});
