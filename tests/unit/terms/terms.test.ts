/** The words that the design and the trade use have an entry each. The list is the design's ("Words", "Methods", "The other computations") and the issue's. */
import { describe, expect, test } from 'vitest';
import { readTermBook } from '../../../src/build/terms.ts';
import { readTerms } from '../../../src/records/terms.ts';
import { ROOT } from '../../support/step.ts';

const WORDS = [
  // Words of the design.
  'device', 'eye', 'sling', 'method', 'rig', 'link', 'weak link', 'efficiency', 'figure', 'series', 'demand', 'rating', 'HMPE', 'nylon', 'polyamide', 'polyester', 'aramid',
  // Kinds of eye.
  'bare wire', 'wire in a plastic sleeve', 'wire under a plastic bar', 'metal bar', 'twin eye',
  // Parts, knots and ways of attaching.
  'tape', 'cord', 'webbing', 'sewn loop', 'bartack', 'stitching', 'protective layer', 'load path', 'leg', 'bearing', 'girth hitch', 'basket', 'overhand', 'figure eight',
  'bowline on a bight', 'ring bend', 'water knot', 'beer knot', "double fisherman's", "triple fisherman's", 'bend', 'hitch', 'tail', 'quick link', 'connector', 'gate',
  // Strength and its numbers.
  'kilonewton', 'breaking force', 'minimum breaking strength', 'denominator', 'straight strength', 'middle', 'one-in-twenty low value', 'tolerance bound',
  'mean less three standard deviations', 'standard deviation', 'cv', 'certainty', 'standing', 'gap', 'study', 'censored pull', 'fall factor', 'impact force', 'proof load', 'creep', 'slip',
  // People and decisions.
  'retire', 'inspect', 'maker', 'workshop', 'personal protective equipment', 'PPE',
];
const { terms } = readTermBook(ROOT);

test('every word of the list has an entry', () => {
  const known = new Set(terms.flatMap(({ name, also }) => [name, ...also]));
  expect(WORDS.filter((word) => !known.has(word))).toEqual([]);
});

describe('a meaning', () => {
  test('is one sentence of at most 28 words, as STYLE has it', () => {
    expect(terms.filter(({ meaning }) => meaning.split(/\s+/).length > 28).map(({ id }) => id)).toEqual([]);
  });
  test('does not open with the word that it explains', () => {
    expect(terms.filter(({ name, meaning }) => meaning.toLowerCase().startsWith(`${name.toLowerCase()} `)).map(({ id }) => id)).toEqual([]);
  });
});

test('a term has a page of its own only where there is more to say', () => {
  const { terms: read } = readTerms({
    'content/terms/eye.mdx': '---\nname: eye\nmeaning: A hole.\n---\n\nMore of it.\n',
    'content/terms/gap.mdx': '---\nname: gap\nmeaning: A hole in what is known.\n---\n\n',
    'content/guides/eye.mdx': '---\ntitle: no term\n---\n',
  });
  expect([...read].map(([id, { more }]) => [id, more])).toEqual([['eye', true], ['gap', false]]);
});
