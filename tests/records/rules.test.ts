/** Each rule of the check is broken at least once; the exact words, place and advice are held against the fixtures. */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../src/records/check-project.ts';
import { RULES } from '../../src/records/check/index.ts';
import { formatFault } from '../../src/records/fault.ts';
import { FIXTURES } from './fixtures.ts';
import { broken, messages, SOUND } from './project.ts';

/** Rules of reading, which stand outside the list of cross rules. Shapes have their own test. */
const READING = ['yaml', 'yaml-dates', 'yaml-numbers', 'file-place', 'file-name'];

describe('rules of the record check', () => {
  test('a sound project has no fault', () => {
    expect(checkProject(SOUND).map(formatFault)).toEqual([]);
  });

  test('every rule has a fixture that breaks it', () => {
    const tested = new Set(FIXTURES.map((fixture) => fixture.rule));
    expect([...READING, ...RULES.map((rule) => rule.name)].filter((name) => !tested.has(name))).toEqual([]);
    expect([...tested].filter((name) => !READING.includes(name) && !RULES.some((rule) => rule.name === name))).toEqual(
      [],
    );
  });

  test('every rule has a name of its own and says what it asks', () => {
    expect(new Set(RULES.map((rule) => rule.name)).size).toBe(RULES.length);
    for (const rule of RULES) expect(rule.description).toMatch(/^[A-Z].+\.$/);
  });

  test.each(FIXTURES)('$rule finds $title', (fixture) => {
    const { files, marks } = broken(fixture);
    const { own, other } = messages(files, fixture.rule);
    expect(marks.length).toBe(fixture.says.length);
    expect(own).toEqual(fixture.says.map((says, i) => `${marks[i]} ${says}`));
    expect(other.filter((line) => !(fixture.besides ?? []).includes(line.split(' ')[0] as string))).toEqual([]);
  });
});
