/** A reader's own breaks in a link: what is written, and what is refused. Values are written by hand from the grammar at the head of the file. */
import { describe, expect, test } from 'vitest';
import { MOST_OWN_PULLS, type OwnTests, parseOwnTests, serialiseOwnTests } from '../../../src/links/own-tests-link.ts';

const words = { methods: ['basket', 'girth-hitch'], slings: ['hmpe-8', 'hmpe-10'] };
const parse = (value: string) => parseOwnTests(value, words);
const FIVE: OwnTests = { method: 'basket', sling: 'hmpe-10', eye: 'bare-wire', bearingMm: 4, oneLot: false, oneRig: false, broken: [9], atLeast: [] };

describe('what is written is read again, word for word', () => {
  test.each([
    ['basket~hmpe-10~bare-wire~4~-~9', {}],
    ['girth-hitch~hmpe-8~twin-eye~unmeasured~lot~9', { method: 'girth-hitch', sling: 'hmpe-8', eye: 'twin-eye', bearingMm: null, oneLot: true }],
    ['basket~hmpe-10~bare-wire~3.8~rig~9~10.25~>11~>12.5', { bearingMm: 3.8, oneRig: true, broken: [9, 10.25], atLeast: [11, 12.5] }],
    ['basket~hmpe-10~bare-wire~1~lot-rig~0.01~1000', { bearingMm: 1, oneLot: true, oneRig: true, broken: [0.01, 1000] }],
    [`basket~hmpe-10~bare-wire~40~-${'~9'.repeat(60)}`, { bearingMm: 40, broken: Array.from({ length: 60 }, () => 9) }],
  ] as [string, Partial<OwnTests>][])('%s', (value, change) => {
    expect(serialiseOwnTests({ ...FIVE, ...change })).toBe(value);
    expect(parse(value)).toEqual({ tests: { ...FIVE, ...change } });
  });
});

test('a force is written to a newton, and never with an exponent', () => {
  expect(serialiseOwnTests({ ...FIVE, broken: [9.12345, 10.0004], atLeast: [0.0125] })).toBe('basket~hmpe-10~bare-wire~4~-~9.123~10~>0.013');
});

test('blanks do not matter, and a pull that did not break may stand before one that did', () => {
  expect(parse(' basket ~ hmpe-10 ~ bare-wire ~ 4 ~ - ~ >11 ~ 9,5 ')).toEqual({ tests: { ...FIVE, broken: [9.5], atLeast: [11] } });
});

describe('what cannot be used is refused with the reason', () => {
  const FORCE = 'not a plain number; write one from 0.01 to 1000 kN';
  test.each([
    ['', 'no method is called ""'],
    ['loop~hmpe-10~bare-wire~4~-~9', 'no method is called "loop"'],
    ['basket', 'no sling is called ""'],
    ['basket~rope~bare-wire~4~-~9', 'no sling is called "rope"'],
    ['basket~hmpe-10', 'a kind of eye is bare-wire, sleeved-wire, wire-under-bar, metal-bar, twin-eye'],
    ['basket~hmpe-10~wire~4~-~9', 'a kind of eye is bare-wire, sleeved-wire, wire-under-bar, metal-bar, twin-eye'],
    ['basket~hmpe-10~bare-wire', 'the bearing is not a plain number; write one from 1 to 40 mm'],
    ['basket~hmpe-10~bare-wire~41~-~9', 'the bearing is outside 1 to 40 mm'],
    ['basket~hmpe-10~bare-wire~4', 'what is known of lots and rigs is -, lot, rig, lot-rig'],
    ['basket~hmpe-10~bare-wire~4~rig-lot~9', 'what is known of lots and rigs is -, lot, rig, lot-rig'],
    [`basket~hmpe-10~bare-wire~4~-${'~9'.repeat(61)}`, 'more than 60 pulls'],
    ['basket~hmpe-10~bare-wire~4~-~9~', `the force "" is ${FORCE}`],
    ['basket~hmpe-10~bare-wire~4~-~9>10', `the force "9>10" is ${FORCE}`],
    ['basket~hmpe-10~bare-wire~4~-~>>9', `the force ">>9" is ${FORCE}`],
    ['basket~hmpe-10~bare-wire~4~-~0.009', 'the force "0.009" is outside 0.01 to 1000 kN'],
    ['basket~hmpe-10~bare-wire~4~-~>1001', 'the force ">1001" is outside 0.01 to 1000 kN'],
    ['basket~hmpe-10~bare-wire~4~-', 'in no pull did the attachment break'],
    ['basket~hmpe-10~bare-wire~4~-~>9~>10', 'in no pull did the attachment break'],
  ])('%s', (value, why) => expect(parse(value)).toEqual({ why }));
});

test('the page says how many pulls a link takes', () => expect(MOST_OWN_PULLS).toBe(60));
