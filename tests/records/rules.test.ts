/** Each rule of the check is broken at least once; the exact words, place and advice are held against the fixtures. */
import { describe, expect, test } from 'vitest';
import { JOINED_RULES } from '../../src/build/record-rules/joined-rules.ts';
import { checkProject } from '../../src/records/check-project.ts';
import { RULES as RECORD_RULES } from '../../src/records/check/index.ts';
import { formatFault } from '../../src/records/fault.ts';
import { FIXTURES } from './fixtures.ts';
import { broken, FACTOR, KNOT, KNOT_FACTOR, messages, NEW, RULE, SOUND, STRAIGHT } from './project.ts';

/** Those that need records alone, and those that are joined to an engine. */
const RULES = [...RECORD_RULES, ...JOINED_RULES];

/** Rules of reading, which stand outside the list of cross rules. Shapes have their own test. */
const READING = ['yaml', 'yaml-dates', 'yaml-numbers', 'file-place', 'file-name'];

describe('rules of the record check', () => {
  test('a sound project has no fault', () => {
    expect(checkProject(SOUND, JOINED_RULES).map(formatFault)).toEqual([]);
  });

  const plain = (fields: string) => `what: A result\nkind: measured\nstanding: read\nlocator: page 1\nchecked: "2026-01-05"\n${fields}`;
  test.each<[string, Record<string, string>]>([
    ['breaks with pulls in which something else gave way', { [STRAIGHT]: (SOUND[STRAIGHT] as string).replace('24.1] }', '24.1], censored: [25] }') }],
    ['ten pulls without a step down', { [STRAIGHT]: (SOUND[STRAIGHT] as string).replace('[22.5, 23.5, 24.1]', '[22, 23, 24, 22, 23, 24, 22, 23, 24, 23]').replace(/lowered.*\n/, '') }],
    ['thin cord that breaks at little', { [NEW]: plain('value: { tests: [250] }\nunit: N\nrig: { form: cord, diameterMm: 2 }\n') }],
    ['a yarn', { [NEW]: plain('value: { tests: [250] }\nunit: N\nrig: { form: yarn }\n') }],
    ['a study of two records, near to another', { [NEW]: plain('value: 12\nunit: kN\nstudy: lab-aa\n'), 'data/figures/lab-a/newer.yaml': plain('value: 13\nunit: kN\nstudy: lab-aa\n') }],
    ['a bearing and a diameter that the factor takes where the figure is silent', {
      [KNOT]: (SOUND[KNOT] as string).replace('form: sewn-loop, material: hmpe, widthMm: 10', 'form: cord, material: hmpe'),
      [KNOT_FACTOR]: (SOUND[KNOT_FACTOR] as string).replace('forms: [sewn-loop], widthMm: [9, 12] }', 'forms: [cord] }\nalong: bearingMm')
        .concat('taken: [{ figure: lab-a/knot, bearingMm: 10, diameterMm: 6, why: as told }]\n'),
    }],
    ['a class whose laboratories agree in shares of their own straight strengths', {
      'data/factors/class/sewn.yaml': (SOUND['data/factors/class/sewn.yaml'] as string)
        .replace('[[lab-a/straight, lab-b/table#wide]]', '[[{ figure: lab-a/knot-force, over: lab-a/straight }, { figure: lab-b/table#wide, over: lab-b/table#narrow }]]'),
    }],
    ['a class with a group of forces in two units, two of shares and one of printed shares, all of the same two laboratories', {
      [NEW]: plain('value: { tests: [14000, 14100] }\nunit: N\nlowered: [{ by: few, why: as told }]\n'),
      'data/figures/lab-b/new.yaml': plain('value: { mean: 0.61, n: 3 }\nunit: ratio\nof: unknotted\nlowered: [{ by: few, why: as told }]\n'),
      'data/factors/class/sewn.yaml': (SOUND['data/factors/class/sewn.yaml'] as string)
        .replace('[[lab-a/straight, lab-b/table#wide]]', '[[lab-a/new, lab-b/table#wide], [{ figure: lab-a/new, over: lab-a/straight }, { figure: lab-b/table#wide, over: lab-b/table#narrow }], [{ figure: lab-a/knot-force, over: lab-a/straight }, { figure: lab-b/table#wide, over: lab-b/table#narrow }], [lab-a/knot, lab-b/new]]'),
    }],
    ...['[6, 8]', '[4, 6]'].map((widthMm): [string, Record<string, string>] => [`a diameter that is taken at an end of ${widthMm}, and a force of rope that is carried over by its section`, {
      [NEW]: plain('value: { tests: [9, 9.1] }\nunit: kN\nrig: { method: straight, form: rope, material: nylon }\nlowered: [{ by: few, why: as told }]\n'),
      'data/factors/rope.yaml': `what: Rope, straight\nacts: loop\nclass: sewn\napplies: { riggings: [straight], materials: [nylon], forms: [cord, rope], widthMm: ${widthMm} }\nfrom: [lab-a/new]\ntaken: [{ figure: lab-a/new, diameterMm: 6, why: as told }]\nbridge: { widthMm: [3, 9], spread: 0.2, bySection: true, why: as told }\n`,
    }]),
    ['a sewn loop that is carried over to other widths without its section', { [FACTOR]: (SOUND[FACTOR] as string).concat('bridge: { widthMm: [6, 14], spread: 0.2, why: as told }\n') }],
    ['a rule that holds at once', { [RULE]: (SOUND[RULE] as string).replace(/due.*\n/, '') }],
    ['a rule on everything that can be asked, with every use from one on', {
      [RULE]: (SOUND[RULE] as string).replace('verdict: retire', 'verdict: retire\nwhen: { uses: [weekly, daily], widthMm: [8, 8], exposures: [salt], events: [edge], findings: [cut] }').replace('reads: value', 'reads: value, from: first-use'),
    }],
    ['an inspection at most so many months after the last', {
      [NEW]: plain('value: { atMost: 6 }\nunit: months\n').replace('measured', 'rule'),
      [RULE]: (SOUND[RULE] as string).replace('verdict: retire', 'verdict: inspect').replace('lab-b/lifetime, reads: value', 'lab-a/new, reads: at most, from: inspection'),
    }],
    ['a rule that falls due at the age at which a group begins', {
      [NEW]: plain('value: { mean: 60, n: 10 }\nunit: percent\nof: new\nrig: { ageYears: { from: 5, to: 10 } }\n'),
      [RULE]: (SOUND[RULE] as string).replace('lab-b/lifetime, reads: value', 'lab-a/new, reads: age from'),
    }],
    ['the series of a figure, one by itself that is lowered for its gaps beside it, and an invented one', {
      'data/series/straight.yaml': 'what: Slings\ncalled: the sling\nfigure: lab-a/straight\nbeside: [{ series: by-itself, why: as told }]\n',
      'data/series/straight.csv': 'pull,mode,force_kN\n1,"at the pin, slowly",24.1\n2,,22.5\n3,,23.5\n',
      'data/series/by-itself.yaml': 'what: Slings\ncalled: the sling\nstanding: read\nsource: lab-a\nlocator: not-recorded\nchecked: "2026-01-05"\nrig: { method: straight, form: sewn-loop, material: hmpe, bearing: pin, legs: 2, state: new, pull: slow }\npulled: { on: "2026-01-05", machine: a ram, oneLot: true, rigs: one for all pulls }\nlowered: [{ by: method, why: as told }]\n',
      'data/series/by-itself.csv': 'pull,force_lbf,mode,link,note\n1,>4200,,,\n',
      'data/demo/series/club.yaml': 'what: Slings\ncalled: the sling\nstanding: invented\nchecked: "2026-01-05"\nrig: { method: straight, form: sewn-loop, material: hmpe, bearing: pin, legs: 2, state: new, pull: slow }\npulled: { on: "2026-01-05", machine: a ram, rateMmPerMin: 100, loadCell: { capacityKn: 50, calibrated: "2025-12-01" }, conditioning: a day, oneLot: true, rigs: one for all pulls }\n',
      'data/demo/series/club.csv': 'pull,force_kN\r\n1,12\r\n',
    }],
    ['a correction of a number that its figure uses as corrected', {
      'data/figures/lab-b/floor.yaml': (SOUND['data/figures/lab-b/floor.yaml'] as string).replace('value: 22', 'value: 22\nasPrinted: "2.20"'),
      'data/corrections/floor.yaml': 'figure: lab-b/floor\nprinted: "2.20 kN"\nused: 22.0\nreason: The point slipped.\nreported: to the laboratory\nstatus: acknowledged\non: "2026-01-05"\nexpect: { printed: "2.20" }\n',
    }],
    ['a correction in words, of single breaks', {
      [STRAIGHT]: (SOUND[STRAIGHT] as string).replace('unit: kN', 'unit: kN\nasPrinted: 22.5; 2.35; 24.1'),
      'data/corrections/straight.yaml': 'figure: lab-a/straight\nprinted: "2.35"\nused: 22.5, 23.5, 24.1\nreason: The point slipped.\nstatus: open\non: "2026-01-05"\nexpect: { printed: 22.5; 2.35; 24.1 }\n',
    }],
    ['a withdrawn figure, and words about a version', {
      [NEW]: 'kind: withdrawn\non: "2026-01-05"\nwhy: The load cell was out of order.\nwas: strength of a knot\n',
      'data/versions/2026-01-05.1.json': '{ "evidence": { "figures": { "lab-a/new#wide": {} } }, "gone": { "lab-a/new": {} } }',
      // The hash: sha256sum of the frozen text above.
      'data/versions/index.json': '[{ "version": "2026-01-05.1", "model": 1, "sha256": "83b448f92042fcbdc5d5cdd68f1a5906b5b40b74940168c271213b905e3f4095" }]',
      'data/changes/2026-01-05.1.yaml': 'model: Sharing between legs is uneven.\nsays: [A figure was withdrawn.]\n',
    }],
    ['a required force below what breaks', { [NEW]: plain('value: 10\nunit: N\n').replace('measured', 'required') }],
  ])('%s: no fault', (_what, files) => {
    expect(checkProject({ ...SOUND, ...files }, JOINED_RULES).map(formatFault)).toEqual([]);
  });

  test.each<[string, string, [string, string], string]>([
    ['a floor that is no single force', 'data/figures/lab-b/floor.yaml', ['value: 22', 'value: { atLeast: 22 }'], 'floor lab-b/floor: is no single force'],
    ['a rule that falls due at a force', RULE, ['lab-b/lifetime, reads: value', 'lab-b/floor, reads: value'], 'rule age: lab-b/floor says no value in years or months'],
    ['a rule that falls due at a range of years', 'data/figures/lab-b/lifetime.yaml', ['value: 10', 'value: { atMost: 10 }'], 'rule age: lab-b/lifetime says no value in years or months'],
    ['a rule beyond the comparison that falls due at a force', RULE, ['lab-b/lifetime, reads: value', 'lab-b/floor, reads: value, from: first-use'], 'rule age: lab-b/floor says no value in years or months'],
    ['a rule that falls due at an age that its figure does not say', RULE, ['reads: value', 'reads: age from'], 'rule age: lab-b/lifetime says no age from in years or months'],
  ])('what the engine refuses is told, whatever the other rules say: %s', (_what, file, [from, to], problem) => {
    const text = SOUND[file] as string;
    expect(text.split(from)).toHaveLength(2);
    const faults = checkProject({ ...SOUND, [file]: text.replace(from, to) }, JOINED_RULES);
    expect(faults.filter((fault) => fault.rule === 'gaps-agree').map(formatFault)).toEqual([
      `data:1:1 evidence: nothing can be compared: ${problem}. Correct the other faults first; where there is none, the engine asks for more than the check does.`,
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
