/** Rows of the comparison against the records that they come from. Forces beside a record's name are those it prints. */
import { describe, expect, it } from 'vitest';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { EYES } from '../../../src/records/schema.ts';
import { compare, pairsOf, twentieths, wins } from '../../../src/strength/compare.ts';
import type { Comparison, Evidence, Figure, Rig, Row } from '../../../src/strength/types.ts';
import { feedOnly, IBARRA_GIRTH } from '../../support/feed-only.ts';
import { near } from '../break-tests/near.ts';

const evidence = loadEvidence();
const rig: Rig = { ratingKn: 12, eye: 'sleeved-wire', bearingMm: 3.8, sling: 'hmpe-10', lengthCm: 60, slingState: 'new', demandKn: null, old: null };
const rowOf = (change: Partial<Rig>, method: string, from: Evidence = evidence): Row => compare(from, { ...rig, ...change }).rows.find((row) => row.method === method) as Row;
/** Every kind of eye, thin, tested, thick and unmeasured, with each sling and none. */
const everyRig: Rig[] = EYES.flatMap((eye) => [null, 2, 3.8, 10, 14].flatMap((bearingMm) => [null, ...Object.keys(evidence.slings)].map((sling) => ({ ...rig, eye, bearingMm, sling }))));
const answers: Comparison[] = everyRig.map((one) => compare(evidence, one));
const everywhere = (check: (row: Row, rig: Rig, answer: Comparison) => void): void => {
  for (const answer of answers) for (const row of answer.rows) check(row, answer.rig, answer);
};

describe('words of a row', () => {
  it('a row without a result says why, and every reason and summary is a sentence', () => {
    everywhere((row, _, { summary }) => {
      expect(summary).toMatch(/^[A-Z].{20,}\.$/);
      if (!row.attachment && row.group !== 'comparison' && row.group !== 'maker') expect(row.reasons.length, row.method).toBeGreaterThan(0);
      for (const reason of row.reasons) expect(reason).toMatch(/^[A-Z].{10,}\.$/);
      expect(new Set(row.reasons).size).toBe(row.reasons.length);
    });
  });

  it('each cause has its own words', () => {
    expect(rowOf({ sling: null }, 'girth-hitch').reasons).toEqual(['Choose a sling first.']);
    expect(rowOf({ sling: 'no-such-sling' }, 'girth-hitch').reasons).toEqual(['Choose a sling first.']);
    expect(rowOf({}, 'tape-loop-ring-bend').reasons).toEqual(['It is made from another kind of sling than this one.']);
    expect(rowOf({ sling: 'nylon-cord-6' }, 'basket').reasons).toEqual(['We found no test of this method with this material.']);
    expect(rowOf({ slingState: 'used' }, 'girth-hitch').reasons[0]).toMatch(/^The tests were made with new slings/);
    expect(rowOf({ bearingMm: 2 }, 'girth-hitch').reasons).toEqual(['The bearing is thinner than any that we found a test on with this sling.']);
    expect(rowOf({ bearingMm: 14 }, 'girth-hitch').reasons).toEqual(['The bearing is thicker than any that we found a test on with this sling.']);
    expect(rowOf({ ratingKn: null }, 'makers-sling').reasons).toEqual(['Its strength is known only as the rating on the device; without a readable rating there is no number.']);
    expect(rowOf({}, 'makers-sling').reasons).toEqual([]);
  });

  it('the summary counts what stands below it, and asks for a sling where none is chosen', () => {
    const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen'];
    for (const { summary, rows, rig: { sling } } of answers) {
      if (sling === null) {
        expect(summary).toBe('Choose a sling to see what has been tested with it.');
        continue;
      }
      const count = (group: Row['group']): number => rows.filter((row) => row.group === group).length;
      const said = summary.toLowerCase();
      expect(said).toContain(count('ranked') === 0 ? 'no home method can be ranked.' : `${NUMBERS[count('ranked')]} home method${count('ranked') === 1 ? '' : 's'} can be ranked.`);
      for (const [group, words] of [['unranked', 'computed on too little to rank'], ['apart', 'set apart'], ['no-data', 'without data'], ['other-sling', 'made from another sling']] as const) {
        if (count(group) === 0) expect(said).not.toContain(words);
        else expect(said).toMatch(new RegExp(`(^|[ .])${NUMBERS[count(group)]} ${words}`));
      }
    }
  });
});

describe('order and groups', () => {
  it('the maker, ranked, unranked, apart, comparison, without data, from another sling: in that order', () => {
    const order = ['maker', 'ranked', 'unranked', 'apart', 'comparison', 'no-data', 'other-sling'];
    for (const answer of answers) {
      const places = answer.rows.map((row) => order.indexOf(row.group));
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it('within a group that is not ranked rows keep the order of their records', () => {
    for (const { rows } of answers) for (const group of ['unranked', 'apart', 'no-data', 'other-sling'] as const) {
      const orders = rows.filter((row) => row.group === group).map((row) => evidence.methods[row.method]?.order as number);
      expect(orders).toEqual([...orders].sort((a, b) => a - b));
    }
  });

  it('the state goes with the group', () => {
    const states: Record<string, string[]> = { maker: ['result'], ranked: ['result'], unranked: ['result'], apart: ['apart'], 'no-data': ['no-data'], 'other-sling': ['other-sling'] };
    everywhere((row) => {
      if (states[row.group]) expect(states[row.group], `${row.method} ${row.group}`).toContain(row.state);
      expect(row.attachment !== null || row.dots.length === 0).toBe(true);
    });
  });
});

describe('numbers of a row', () => {
  it('the chance to break above the rating or the demand is what the dots show, to a dot', () => {
    for (const demandKn of [null, 6, 15]) for (const ratingKn of [8, 12, 20]) {
      for (const row of compare(evidence, { ...rig, ratingKn, demandKn }).rows) {
        if (row.dots.length === 0 || row.aboveDemand === null) continue;
        expect(Math.abs(row.aboveDemand - row.dots.filter((kn) => kn > (demandKn ?? ratingKn)).length / 20)).toBeLessThanOrEqual(0.0501);
        if (demandKn === null) expect(row.aboveDemand).toBe(row.aboveRating);
      }
    }
  });

  it('without a rating there is neither a rig nor a chance to break above it, and links of the device are left out', () => {
    for (const row of compare(evidence, { ...rig, ratingKn: null }).rows) {
      expect([row.rig, row.aboveRating]).toEqual([null, null]);
      expect(row.links.some((link) => link.part === 'device')).toBe(false);
    }
    const demanded = rowOf({ ratingKn: null, demandKn: 8 }, 'girth-hitch');
    expect(demanded.aboveDemand).toBeGreaterThan(0.5);
    expect(demanded.aboveRating).toBeNull();
  });

  it('the maker\'s sling and the device go with the rating, nothing else does', () => {
    const [small, large] = [rowOf({ ratingKn: 8 }, 'makers-sling'), rowOf({ ratingKn: 16 }, 'makers-sling')];
    for (const end of ['low', 'middle', 'high'] as const) near((large.attachment as NonNullable<Row['attachment']>)[end], 2 * (small.attachment as NonNullable<Row['attachment']>)[end], 1e-9);
    const [thin, thick] = [rowOf({ ratingKn: 8 }, 'girth-hitch'), rowOf({ ratingKn: 16 }, 'girth-hitch')];
    expect(thick.attachment).toEqual(thin.attachment);
    thin.links.forEach((link, i) => {
      const times = link.part === 'device' ? 2 : 1;
      for (const end of ['low', 'middle', 'high'] as const) near((thick.links[i] as Row['links'][number]).spread[end], times * link.spread[end], 1e-9);
    });
  });

  it('a link is lettered by its part', () => {
    const letters = { device: 'D', knot: 'K', connector: 'C', eye: 'E', sling: 'S' };
    everywhere((row) => {
      for (const link of row.links) expect(link.letter).toBe(letters[link.part]);
    });
  });

  it('what moves a row most is told by two factors at most, the larger first, each with its share', () => {
    let told = 0;
    everywhere((row) => {
      if (!row.attachment) return expect(row.moves).toEqual([]);
      told++;
      expect(row.moves.length).toBeGreaterThan(0);
      expect(row.moves.length).toBeLessThanOrEqual(2);
      const shares = row.moves.map(({ share }) => share);
      expect(shares).toEqual([...shares].sort((a, b) => b - a));
      expect(shares.every((share) => share > 0)).toBe(true);
      expect(shares.reduce((a, b) => a + b, 0)).toBeLessThan(1);
      for (const { factor, figures } of row.moves) expect(row.links.flatMap((link) => link.factors).find((one) => one.factor === factor)?.figures).toEqual(figures);
    });
    expect(told).toBeGreaterThan(50);
  });

  it('figures of a row are those of its links, each once', () => {
    everywhere((row) => {
      expect(row.figures).toEqual([...new Set(row.links.flatMap((link) => link.factors.flatMap((factor) => factor.figures)))]);
      expect(new Set(row.shown).size).toBe(row.shown.length);
    });
  });

  it('ticks are the breaks of the same method, on the same kind of eye within half a millimetre, as printed: four girth hitches on 3.8 mm wire', () => {
    const printed = [{ figure: 'ibarra-2021/girth-on-wire', kn: [11.162, 9.166, 11.425, 11.417] }];
    const ticks = (change: Partial<Rig>, method = 'girth-hitch') => rowOf({ eye: 'bare-wire', ...change }, method).ticks.map(({ figure, kn }) => ({ figure, kn: kn.map((x) => Math.round(x * 1000) / 1000) }));
    for (const bearingMm of [3.5, 3.8, 4.3]) expect(ticks({ bearingMm })).toEqual(expect.arrayContaining(printed));
    for (const bearingMm of [4.31, 10]) expect(ticks({ bearingMm }).some(({ figure }) => figure === 'ibarra-2021/girth-on-wire')).toBe(false);
    expect(ticks({}, 'basket').some(({ figure }) => figure === 'ibarra-2021/girth-on-wire')).toBe(false);
    // Under plastic nothing was broken; a nylon sling is another material.
    for (const eye of ['sleeved-wire', 'wire-under-bar'] as const) expect(ticks({ eye })).toEqual([]);
    expect(ticks({ sling: 'nylon-16' }).some(({ figure }) => figure === 'ibarra-2021/girth-on-wire')).toBe(false);
    expect(ticks({ eye: 'metal-bar', bearingMm: 10 }).some(({ figure }) => figure === 'ibarra-2021/girth-on-wire')).toBe(false);
  });

  it('the finished length is a share of the sling less what knots take, by the method\'s record', () => {
    everywhere((row, one) => {
      const { share, lessWidths } = (evidence.methods[row.method] as Evidence['methods'][string]).length;
      const sling = evidence.slings[one.sling ?? ''];
      if (share === undefined || !sling) return expect(row.finishedCm).toBeNull();
      expect(row.finishedCm).toBeCloseTo(Math.max(0, share * 60 - ((lessWidths ?? 0) * sling.widthMm) / 10), 9);
    });
  });
});

describe('the nearest tested case', () => {
  it('of a girth hitch on a thinner wire than tested is its own break on the thicker one, with what it bore there', () => {
    const { nearest, gap } = rowOf({ bearingMm: 2 }, 'girth-hitch', feedOnly('girth-hmpe', [IBARRA_GIRTH]));
    expect(gap).toBe('wire-thinner-than-tested');
    expect(nearest).toMatchObject({ figure: IBARRA_GIRTH, weakerThan: true, onMm: 3.8 });
    // Mean of the logarithms of 11.162, 9.166, 11.425 and 11.417.
    near(nearest?.kn as number, (11.162 * 9.166 * 11.425 * 11.417) ** 0.25, 1e-9);
  });

  it('of a thicker bearing than tested says nothing of weaker', () => {
    const { nearest } = rowOf({ bearingMm: 14 }, 'girth-hitch');
    expect(nearest?.weakerThan).toBe(false);
    expect(evidence.figures[nearest?.figure ?? '']?.rig.material).toBe('hmpe');
  });

  it('is told by its record, with its bearing where that is another', () => {
    everywhere(({ nearest, method }, _, { bearing }) => {
      if (!nearest) return;
      const figure = evidence.figures[nearest.figure] as Figure;
      const apart = figure.rig.bearingMm !== undefined && Math.abs(figure.rig.bearingMm - bearing.mm) > 0.5;
      expect(nearest.onMm, method).toBe(apart ? figure.rig.bearingMm : undefined);
      expect(nearest.why).toBe(figure.what);
      expect(nearest.kn === null).toBe(figure.seen === null);
    });
  });
});

describe('pairs', () => {
  it('of one method against each other one are its wins, home methods only, in the order of the page', () => {
    for (const change of [{}, { eye: 'metal-bar', bearingMm: 10 }] as const) {
      const answer = compare(evidence, { ...rig, ...change });
      const computed = answer.rows.filter((row) => row.attachment && evidence.methods[row.method]?.role === 'home').map((row) => row.method);
      for (const method of computed) {
        const pairs = pairsOf(evidence, answer, method);
        expect(pairs.map((pair) => pair.method)).toEqual(computed.filter((other) => other !== method));
        for (const pair of pairs) {
          expect(pair.wins).toBe(wins(evidence, answer.rig, method, pair.method));
          expect(pair.name).toBe(evidence.methods[pair.method]?.name);
        }
      }
      expect(pairsOf(evidence, answer, 'makers-sling')).toEqual([]);
      expect(pairsOf(evidence, answer, 'keep-the-old-sling')).toEqual([]);
    }
  });
});

describe('what is kept between comparisons', () => {
  it('a row that neither rating nor demand moves is the same object, and nothing kept leaks into another rig', () => {
    const first = compare(evidence, rig);
    const again = compare(evidence, { ...rig, ratingKn: 20, demandKn: 5 });
    for (const row of first.rows) if (!row.attachment) expect(again.rows.find((other) => other.method === row.method)).toBe(row);
    // Twenty other settings later, and from a copy that has seen none, the answer is the same.
    for (let i = 0; i < 20; i++) compare(evidence, { ...rig, bearingMm: 4 + i / 10 });
    expect(compare(evidence, rig)).toEqual(first);
    expect(compare(structuredClone(evidence), rig)).toEqual(first);
  });

  it('an unmeasured bearing is computed as the thinnest tested one, 3.5 mm, and says that it was not measured', () => {
    expect(compare(evidence, { ...rig, bearingMm: null }).bearing).toEqual({ mm: 3.5, measured: false });
    expect(compare(evidence, rig).bearing).toEqual({ mm: 3.8, measured: true });
  });
});

describe('twentieths', () => {
  it('by largest remainders, the first of equals first (by hand)', () => {
    expect(twentieths([0.5, 0.5])).toEqual([10, 10]);
    // 6.67, 6.67, 6.67: two are left, for the first two.
    expect(twentieths([1 / 3, 1 / 3, 1 / 3])).toEqual([7, 7, 6]);
    // 12.2, 6.6, 1.2: one is left, for the remainder of 0.6.
    expect(twentieths([0.61, 0.33, 0.06])).toEqual([12, 7, 1]);
    expect(twentieths([1])).toEqual([20]);
    expect(twentieths([0.99, 0.01])).toEqual([20, 0]);
  });
});
