/** What the page of falls says: ranges, ways down, drivers and what is copied. Expected numbers are sums by hand of what was told. */
import { describe, expect, test } from 'vitest';
import { loadFallConstants } from '../../../src/build/fall-evidence.ts';
import { exampleWords, FALL_SOURCES, FIRST_FALL, givesToFalls, usualFalls, workedFall } from '../../../src/build/falls-page.ts';
import { belowBelay, besideQuery, CHOICE_WORDS, comparatorLinks, DRIVER_WORDS, fallText, GAP_WORDS, headline, toldSentence, wayDown } from '../../../src/components/falls/words.ts';
import { FALL_FIGURES, FALL_GAPS } from '../../../src/falls/evidence.ts';
import { parseFallBeside } from '../../../src/links/fall-beside-link.ts';
import { FALL_EXAMPLES } from '../../../src/falls/examples.ts';
import { FALL_CHOICES, type FallWords } from '../../../src/falls/read-fall.ts';

const CONSTANTS = loadFallConstants();
const fall = (change: Partial<FallWords>) => workedFall({ ...FIRST_FALL, ...change }, CONSTANTS);
const spaced = (text: string): string => text.replaceAll('\u00a0', ' ');

test('a climber who hangs on a tight rope that is let go: twice 80 kg, 1.6 kN, as any textbook has it, and no word of a fall', () => {
  const { told, loads } = fall({ up: '0', slack: '', belay: 'held' });
  expect(spaced(fallText(told, loads, ''))).toContain('Climber: 1.6 kN, middle 1.6 kN');
  expect(spaced(wayDown(loads, told.ropeOutM))).toMatch(/^No fall: the rope is tight/);
});

test('fall and factor are those of a sum by hand: 2 x 2 m and 0.5 m of slack on 12 m', () => {
  const { told, loads } = fall({});
  expect(spaced(wayDown(loads, told.ropeOutM))).toMatch(/^A fall of 4.5 m on 12 m of rope: fall factor 0.38. The rope then stretches by about \d/);
  expect(spaced(headline(loads))).toMatch(/^The top piece bears [\d.]+ to [\d.]+ kN, [\d.]+ kN in the middle\.$/);
});

test('a fall onto the belay speaks of no piece', () => {
  const { told, loads } = fall({ onto: 'belay', out: '', slack: '' });
  expect(headline(loads)).toMatch(/^The belay bears /);
  expect(fallText(told, loads, '')).not.toMatch(/top piece|way of the rope/i);
  expect(toldSentence(told)).toContain('above the belay, with nothing clipped');
});

test('what is not known is said to be so, and what is known is named', () => {
  expect(spaced(toldSentence(fall({}).told))).toBe('80 kg, 2 m above the last piece, 0.5 m of slack, 12 m of rope out; single rope, rated force not known; its past not known; belay: not known; way of the rope: not known.');
  expect(spaced(toldSentence(fall({ kn: '870 daN', belay: 'held', route: 'zigzag', state: 'wet', slack: '' }).told))).toBe('80 kg, 2 m above the last piece, no slack, 12 m of rope out; single rope, rated 8.7 kN; wet or frozen; belay: held fast: tied off, or to a fixed point; way of the rope: in a zigzag.');
});

test('a climber who ends below the belayer is told of the ground; below a hanging belay without a piece it goes without saying', () => {
  expect(spaced(belowBelay(1.25, 'piece') ?? '')).toMatch(/1.25 m below the belayer. From the ground that is a fall to the ground/);
  expect([belowBelay(-1, 'piece'), belowBelay(3, 'belay')]).toEqual([null, null]);
});

test('what is copied says what the load is not, whatever the fall', () => {
  for (const change of [{}, { onto: 'belay', out: '' }, { state: 'wet' }] as const) {
    const { told, loads } = fall(change);
    const text = fallText(told, loads, 'https://example.org/falls/');
    for (const said of ['not on the sling alone', 'Placement, rock and wear are not in it', 'a belayer who is lifted', 'https://example.org/falls/']) expect(text).toContain(said);
  }
});

test('links to the comparator carry the middle and the high end; a load below its 1 kN is not offered', () => {
  const { loads } = fall({});
  const [middle, high] = comparatorLinks(loads, null);
  expect(middle?.query).toBe(`v=1&demand=${loads.topPieceKn?.middle.toFixed(1)}`);
  expect(high?.loadKn).toBe(loads.topPieceKn?.high);
  // By hand: 20 kg let go on a tight rope past the belay pull 2 x 0.196 = 0.39 kN.
  const low = { low: 0.39, middle: 0.39, high: 0.39 };
  expect(comparatorLinks({ ...loads, topPieceKn: low }, null)).toEqual([]);
});

test('the range of a top piece goes along whole; a fall onto the belay has none, nor has a range that a link cannot write', () => {
  const { topPieceKn } = fall({}).loads;
  const beside = parseFallBeside(new URLSearchParams(besideQuery({ topPieceKn }, null, 'v=1&kg=80') ?? '').get('f') ?? '');
  expect(beside).toEqual({ fall: { lowKn: expect.closeTo(topPieceKn?.low ?? 0, 1), highKn: expect.closeTo(topPieceKn?.high ?? 0, 1), query: 'v=1&kg=80' } });
  expect(besideQuery(fall({ onto: 'belay', out: '' }).loads, null, '')).toBeNull();
  expect(besideQuery({ topPieceKn: { low: 2.501, middle: 2.502, high: 2.503 } }, null, '')).toBeNull();
});

describe('everything has its words', () => {
  test('every choice, driver and gap', () => {
    for (const [field, words] of Object.entries(FALL_CHOICES)) expect(Object.keys(CHOICE_WORDS[field as keyof typeof FALL_CHOICES]).sort()).toEqual([...words].sort());
    expect(Object.keys(GAP_WORDS).sort()).toEqual(Object.keys(FALL_GAPS).sort());
    const sources = FALL_SOURCES.map(({ id }) => id);
    expect(Object.keys(DRIVER_WORDS).filter((name) => !sources.includes(name))).toEqual([]);
  });

  test('every figure that feeds a fall stands under exactly one heading of where numbers come from', () => {
    expect(FALL_SOURCES.flatMap(({ figures }) => figures).sort()).toEqual(Object.keys(FALL_FIGURES).sort());
    for (const address of Object.values(FALL_FIGURES)) expect(givesToFalls(address)).not.toBeNull();
    expect(givesToFalls('ibarra-2021/girth-on-wire')).toBeNull();
  });
});

test('every worked example opens as the fall that it gives', () => {
  for (const example of FALL_EXAMPLES) {
    const { told } = workedFall(exampleWords(example), CONSTANTS);
    expect(told).toMatchObject({ massKg: example.inputs.massKg, aboveM: example.inputs.aboveM, slackM: example.inputs.slackM, ropeOutM: example.inputs.ropeOutM, ratedKn: example.inputs.ratedKn, onto: example.inputs.isOntoBelay ? 'belay' : 'piece' });
  }
});

test('in the table of usual falls more rope out loads the piece less, and more height loads it more', () => {
  const rows = Map.groupBy(usualFalls(CONSTANTS), ({ above }) => above);
  const middles = [...rows.values()].map((falls) => falls.map(({ loads }) => loads.topPieceKn?.middle ?? 0));
  for (const row of middles) expect(row).toEqual(row.toSorted((a, b) => b - a));
  for (const column of middles[0]?.keys() ?? []) expect(middles.map((row) => row[column])).toEqual(middles.map((row) => row[column] as number).toSorted((a, b) => a - b));
});
