/**
 * A second reading of each knot: over and under along the strand, worked out from a published description before the
 * drawing's own crossings were computed. Numbers name crossings in the order in which they are first met. Descriptions are not quoted:
 * what they say is put in the shape of a reading.
 */
import { expect, test } from 'vitest';
import { cross } from '../../../src/drawings/crossings.ts';
import { drawingsOf } from '../../../src/drawings/drawings.ts';
import { FIGURE_EIGHT_SAYS, figureEightPath } from '../../../src/drawings/knots/figure-eight.ts';
import { OVERHAND_SAYS, overhandPath } from '../../../src/drawings/knots/overhand.ts';
import { fishermansHalf } from '../../../src/drawings/knots/fishermans.ts';
import type { Curve } from '../../../src/drawings/curves/curve.ts';
import type { Strand } from '../../../src/drawings/scene.ts';

/** Reading of one strand: a number for each crossing in the order first met, `o` or `u`. Crossings with other strands are left out. */
function reading(strands: readonly Strand[], name: string, others = false): string[] {
  const crossed = cross(strands);
  const index = strands.findIndex((strand) => strand.name === name);
  const visits = crossed.crossings.flatMap(({ over, under }, crossing) => [{ passage: over, letter: 'o', other: under.strand }, { passage: under, letter: 'u', other: over.strand }]
    .filter(({ passage, other }) => passage.strand === index && (others || other === index)).map(({ passage, letter }) => ({ at: passage.at, letter, crossing })));
  visits.sort((a, b) => a.at - b.at);
  const seen: number[] = [];
  return visits.map(({ letter, crossing }) => {
    if (!seen.includes(crossing)) seen.push(crossing);
    return `${seen.indexOf(crossing) + 1}${letter}`;
  });
}

/** The same knot seen from behind or in a mirror: over for under. */
const mirrored = (list: readonly string[]): string[] => list.map((one) => one.replace(/[ou]/, (letter) => (letter === 'o' ? 'u' : 'o')));
/** Read from its other end, with the numbers given anew. */
function fromOtherEnd(list: readonly string[]): string[] {
  const seen: string[] = [];
  return [...list].reverse().map((one) => {
    const number = one.slice(0, -1);
    if (!seen.includes(number)) seen.push(number);
    return `${seen.indexOf(number) + 1}${one.at(-1)}`;
  });
}
const anyView = (list: readonly string[]): string[][] => [[...list], mirrored(list), fromOtherEnd(list), mirrored(fromOtherEnd(list))];
const along = (path: Curve, says: string): Strand[] => [{ name: 'strand', kind: 'cord', closed: false, points: path.samples.filter((_, i) => i % 6 === 0), says }];
const finished = (method: string): readonly Strand[] => drawingsOf(method).find(({ frame }) => frame === 'right')?.scene.strands ?? [];

// nearlylowtech.com, "The Overhand Knot": followed from one end, over and under take turns, six times; three crossings.
const OVERHAND = ['1o', '2u', '3o', '1u', '2o', '3u'];
// G. Budworth and J. Dalton, The Little Book of Incredibly Useful Knots, "Figure eight": the working end passes over the
// standing part (2), behind it further down (1), and through the loop from front to back (over its near side 4, under its
// far side 3). From the standing end:
const FIGURE_EIGHT = ['1o', '2u', '3o', '4u', '2o', '1u', '4o', '3u'];

test('the overhand is drawn as described', () => {
  expect(anyView(OVERHAND)).toContainEqual(reading(along(overhandPath([200, 200], 1, [160, 90], [160, 310]), OVERHAND_SAYS), 'strand'));
});

test('the figure eight is drawn as described', () => {
  expect(anyView(FIGURE_EIGHT)).toContainEqual(reading(along(figureEightPath([200, 200], 1, [200, 70], [200, 330]), FIGURE_EIGHT_SAYS), 'strand'));
});

// W. B. Gibson, The Complete Guide to Knots, "Lark's Head": a bight is pushed through the ring, the ends are brought round
// and thrust through the bight. Along the sling from the clip: under the bight, over and behind the ring, then as the
// bight over the two legs, behind and over the ring, and out under the bight. At the clip: over and under.
test('the girth hitch is drawn as described', () => {
  const letters = reading(finished('girth-hitch'), 'sling', true).map((one) => one.at(-1)).join('');
  expect(letters).toBe(`o${'uou'}${'oo'}${'uou'}u`);
});

// D. Pawson, Pocket Guide to Knots and Splices, "Bowline on a Bight": with the rope double, a crossing turn; the bight
// comes out through its centre; it is then taken over the double loop and behind loops and turn, and lies behind the pair
// of standing parts. Which part of the crossing turn lies on top: recalled (the working part, as in any overhand turn).
test('the bowline on a bight is drawn as described', () => {
  const letters = reading(finished('bowline-on-a-bight'), 'sling', true).map((one) => one.at(-1)).join('');
  const standing = [
    'o', // in front of the bight, which lies behind the standing parts
    'uu', // the crossing turn: both strands of the working part lie on top
    'u', // under one strand that has come out through the turn
    'oo', // both strands go in behind the turn's far side
    'u', // and out before its near side
    'oo', // the working part over both standing strands
    'u', // and under the other strand that has come out
  ].join('');
  const bight = ['uu', 'oooo', 'uu', 'oo', 'uu'].join('');
  const eye = ['ou', 'uo'];
  expect(letters).toBe(`o${standing}${eye[0]}${bight}${eye[1]}${[...standing].reverse().join('')}u`);
});

// A mountaineering guide at neilhopkins.us, "Water knot" (figure 4-10; its text is very likely US Army, FM 3-97.61, 2002): one overhand retraces the other in reverse, and the
// working ends come out in opposite directions.
test('the ring bend is two overhands, one beside the other, that run opposite ways', () => {
  const strands = finished('tape-loop-ring-bend');
  const tape = strands.find(({ name }) => name === 'tape') as Strand;
  const once = OVERHAND_SAYS.replace(/./g, '$&$&');
  expect(tape.says).toBe(`${once}uoou${once}`);
  const [first, last] = [tape.points[0], tape.points.at(-1)] as [readonly [number, number], readonly [number, number]];
  const knot = tape.points.filter(([x]) => x > 250);
  const middle = knot.reduce((sum, [, y]) => sum + y, 0) / knot.length;
  expect(first[1]).toBeLessThan(middle - 50);
  expect(last[1]).toBeGreaterThan(middle + 50);
});

// T. Russo, Cibola Search and Rescue, "Basic Knots, part 2": a double overhand in each line round the standing part of the
// other. The double fisherman's: two turns in front of three cords, and three behind.
test.each([['double', 2], ['triple', 3]])('each half of the %s fisherman\'s bend has its turns round the other cord and round itself', (_name, turns) => {
  const { says, other } = fishermansHalf(turns as number, 24);
  // Round the other cord: in front once for each turn, behind once more than that.
  expect([...other].filter((letter) => letter === 'u')).toHaveLength(turns as number);
  expect([...other].filter((letter) => letter === 'o')).toHaveLength((turns as number) + 1);
  // Each full turn adds four crossings to a half that has none, and as many over as under among its own.
  expect(says.length - other.length).toBe(8 * (turns as number));
});

// Four strands follow the knot side by side: each says four times what one would. Recalled: a knot tied in the bight
// is dressed so that its strands run parallel.
test.each([['basket-overhand', OVERHAND_SAYS], ['basket-figure-eight', FIGURE_EIGHT_SAYS]])('%s: all four strands follow the same knot', (method, says) => {
  const sling = finished(method).find(({ name }) => name === 'sling') as Strand;
  const four = says.replace(/./g, '$&$&$&$&');
  expect(sling.says.split(four).length - 1 + (sling.says.split([...four].reverse().join('')).length - 1)).toBeGreaterThanOrEqual(4);
});
