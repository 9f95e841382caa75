/** Eight common devices find a right first line. Expectations: see tests/support/devices.ts. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadEvidence } from '../../../src/build/evidence.ts';
import { compare } from '../../../src/strength/compare.ts';
import { DEVICES, type Device } from '../../support/devices.ts';
import { readStates } from '../../support/states.ts';

const evidence = loadEvidence();
const { cells } = readStates(readFileSync(new URL('../../reference/states.csv', import.meta.url), 'utf8'));
const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve', 'thirteen'];

/** The first line as the table of states and the list of ranked methods give it. */
export function firstLine({ eye, bearing, sling, ranked }: Device): string {
  const count = (state: string): number => Object.entries(evidence.methods).filter(([id, { role }]) =>
    role === 'home' && cells.get([id, sling, eye, bearing].join(' '))?.state === state).length;
  const parts = [
    [count('result') - ranked.length, 'computed on too little to rank'], [count('apart'), 'set apart'],
    [count('no-data'), 'without data'], [count('other-sling'), 'made from another sling'],
  ].filter(([n]) => (n as number) > 0).map(([n, what]) => `${NUMBERS[n as number]} ${what}`);
  const rest = parts.length === 1 ? (parts[0] as string) : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
  return `On this eye with this sling ${NUMBERS[ranked.length]} home method${ranked.length > 1 ? 's' : ''} can be ranked. ${rest.charAt(0).toUpperCase()}${rest.slice(1)}.`;
}

for (const device of DEVICES) {
  test(`${device.name}, rated ${device.ratingKn} kN: ${device.why}`, () => {
    const { eye, bearing, sling, ratingKn } = device;
    const { summary, rows } = compare(evidence, { ratingKn, eye, bearingMm: bearing === 'unmeasured' ? null : Number(bearing), sling, lengthCm: 60, slingState: 'new', demandKn: null, old: null });
    expect(summary).toBe(firstLine(device));
    expect(rows[0]?.method).toBe('makers-sling');
    expect(rows.filter((row) => row.group === 'ranked').map((row) => row.method)).toEqual(device.ranked);
  });
}
