/** Each rule of the check is broken at least once; the exact words, place and advice are held against the fixtures. */
import { describe, expect, test } from 'vitest';
import { JOINED_RULES } from '../../src/build/joined-rules.ts';
import { checkProject } from '../../src/records/check-project.ts';
import { RULES as RECORD_RULES } from '../../src/records/check/index.ts';
import { formatFault } from '../../src/records/fault.ts';
import { FIXTURES } from './fixtures.ts';
import { broken, messages, SOUND } from './project.ts';

/** Those that need records alone, and those that are joined to an engine. */
const RULES = [...RECORD_RULES, ...JOINED_RULES];

/** Rules of reading, which stand outside the list of cross rules. Shapes have their own test. */
const READING = ['yaml', 'yaml-dates', 'yaml-numbers', 'file-place', 'file-name'];

describe('rules of the record check', () => {
  test('a sound project has no fault', () => {
    expect(checkProject(SOUND, JOINED_RULES).map(formatFault)).toEqual([]);
  });

  const STRAIGHT = 'data/figures/lab-a/straight.yaml';
  const NEW = 'data/figures/lab-a/new.yaml';
  const plain = (fields: string) => `what: A result\nkind: measured\nstanding: read\nlocator: page 1\nchecked: "2026-01-05"\n${fields}`;
  test.each<[string, Record<string, string>]>([
    ['breaks with pulls in which something else gave way', { [STRAIGHT]: (SOUND[STRAIGHT] as string).replace('24.1] }', '24.1], censored: [25] }') }],
    ['ten pulls without a step down', { [STRAIGHT]: (SOUND[STRAIGHT] as string).replace('[22.5, 23.5, 24.1]', '[22, 23, 24, 22, 23, 24, 22, 23, 24, 23]').replace(/lowered.*\n/, '') }],
    ['thin cord that breaks at little', { [NEW]: plain('value: { tests: [250] }\nunit: N\nrig: { form: cord, diameterMm: 2 }\n') }],
    ['a yarn', { [NEW]: plain('value: { tests: [250] }\nunit: N\nrig: { form: yarn }\n') }],
    ['a study of two records, near to another', { [NEW]: plain('value: 12\nunit: kN\nstudy: lab-aa\n'), 'data/figures/lab-a/newer.yaml': plain('value: 13\nunit: kN\nstudy: lab-aa\n') }],
    ['a required force below what breaks', { [NEW]: plain('value: 10\nunit: N\n').replace('measured', 'required') }],
  ])('%s: no fault', (_what, files) => {
    expect(checkProject({ ...SOUND, ...files }, JOINED_RULES).map(formatFault)).toEqual([]);
  });

  test('what the engine refuses is told, whatever the other rules say', () => {
    const floor = 'data/figures/lab-b/floor.yaml';
    const faults = checkProject({ ...SOUND, [floor]: (SOUND[floor] as string).replace('value: 22', 'value: { atLeast: 22 }') }, JOINED_RULES);
    expect(faults.filter((fault) => fault.rule === 'gaps-agree').map(formatFault)).toEqual([
      'data:1:1 evidence: nothing can be compared: floor lab-b/floor: is no single force. Correct the other faults first; where there is none, the engine asks for more than the check does.',
    ]);
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
