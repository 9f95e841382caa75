/** Reading: positions, defaults of tables, all faults in one run. */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../src/records/check-project.ts';
import { formatFault, formatReport } from '../../src/records/fault.ts';
import { readAll, slugOf } from '../../src/records/read.ts';
import { editDistance, nearestName } from '../../src/records/nearest-name.ts';
import { positionsOf } from '../../src/records/positions.ts';
import { parseYaml } from '../../src/records/yaml.ts';
import { SOUND } from './project.ts';

describe('positions', () => {
  test('lines and columns count from one, in UTF-16 units, and a carriage return belongs to its line', () => {
    const at = positionsOf('a', 'a\r\n\t\u00e9\u{1f9d7}b\n');
    expect(at(0)).toEqual({ file: 'a', line: 1, col: 1 });
    expect(at(3)).toEqual({ file: 'a', line: 2, col: 1 });
    expect(at(7)).toEqual({ file: 'a', line: 2, col: 5 });
    expect(at(8)).toEqual({ file: 'a', line: 2, col: 6 });
  });

  test.each([
    ['line feeds', '\n'],
    ['carriage returns and line feeds', '\r\n'],
  ])('a value is found behind wide letters, with %s', (_what, end) => {
    const yaml = parseYaml(
      'a.yaml',
      [
        'what: \u00e9\u{1f9d7}',
        'cells:',
        '  a: { value: { mean: 3 }, note: "\u00e9\u00e9" }',
        '  b:',
        '    value: 4',
        '',
      ].join(end),
    );
    expect(yaml.faults).toEqual([]);
    expect(yaml.at(['what'])).toEqual({ file: 'a.yaml', line: 1, col: 7 });
    expect(yaml.at(['cells', 'a', 'value', 'mean'])).toEqual({ file: 'a.yaml', line: 3, col: 23 });
    expect(yaml.keyAt(['cells', 'b'])).toEqual({ file: 'a.yaml', line: 4, col: 3 });
    expect(yaml.at(['cells', 'b', 'value'])).toEqual({ file: 'a.yaml', line: 5, col: 12 });
  });

  test('a path that is absent gives its nearest parent', () => {
    const yaml = parseYaml('a.yaml', 'what: x\nrig: { method: basket }\n');
    expect(yaml.at(['rig', 'widthMm'])).toEqual({ file: 'a.yaml', line: 2, col: 6 });
    expect(yaml.at(['locator'])).toEqual({ file: 'a.yaml', line: 1, col: 1 });
  });

  test('every broken line of YAML is told, not the first alone', () => {
    const { faults } = parseYaml('a.yaml', 'a: b: c\nd: e: f\n');
    expect(faults.map((fault) => `${fault.at.line}:${fault.at.col}`)).toEqual(['1:4', '2:4']);
  });
});

describe('figures', () => {
  const records = readAll({
    ...SOUND,
    'data/figures/lab-b/knots.yaml':
      'what: Knots\nkind: measured\nunit: kN\nof: lab-b/knots#plain\nrig: { form: sewn-loop, material: hmpe, widthMm: 8 }\nstanding: read\nlocator: page 1\nchecked: "2026-01-05"\nlowered: [{ by: few, why: few pulls }]\ncells:\n' +
      '  plain: { value: 22 }\n  share: { value: 60, unit: percent, study: lab-a, rig: { widthMm: 11, method: overhand }, lowered: [{ by: method, steps: 2, why: no bench }] }\n',
  });

  test('a cell takes what it does not say from its table, and adds its own steps of certainty', () => {
    expect(records.cells.get('lab-b/knots#share')?.figure).toMatchObject({
      id: 'lab-b/knots#share',
      source: 'lab-b',
      what: 'Knots',
      kind: 'measured',
      value: 60,
      unit: 'percent',
      of: 'lab-b/knots#plain',
      study: 'lab-a',
      standing: 'read',
      locator: 'page 1',
      rig: { form: 'sewn-loop', material: 'hmpe', widthMm: 11, method: 'overhand' },
      lowered: [
        { by: 'few', steps: 1, why: 'few pulls' },
        { by: 'method', steps: 2, why: 'no bench' },
      ],
    });
  });

  test('the cell that a table names as its denominator has none itself', () => {
    const plain = records.cells.get('lab-b/knots#plain')?.figure;
    expect(plain?.of).toBeUndefined();
    expect(plain?.study).toBe('lab-b');
  });

  test('a single value stands under its path, a table only in its cells', () => {
    expect(records.cells.has('lab-a/straight')).toBe(true);
    expect(records.cells.has('lab-b/table')).toBe(false);
    expect([...records.cells.keys()].filter((id) => id.startsWith('lab-b/table'))).toEqual([
      'lab-b/table#wide',
      'lab-b/table#narrow',
    ]);
  });
});

describe('what a record may leave out', () => {
  const { factors, methods, gaps, rules } = readAll(SOUND);

  test('a factor takes nothing and leaves nothing out', () => {
    expect(factors.get('knot')?.data).toMatchObject({ taken: [], leftOut: [] });
    expect(factors.get('knot')?.data.bridge).toBeUndefined();
  });

  test('a method is apart for nothing, shows nothing, and is named by its own id in tests', () => {
    expect(methods.get('basket')?.data).toMatchObject({ apart: [], shown: [] });
    expect(methods.get('basket')?.data.riggings).toBeUndefined();
  });

  test('a gap concerns no further method', () => {
    expect(gaps.get('basket-on-thin-wire')?.data.concerns).toEqual([]);
  });

  test('a rule of retirement speaks of every sling', () => {
    expect(rules.get('age')?.data).toMatchObject({ when: {}, due: { figure: 'lab-b/lifetime', reads: 'value' } });
  });
});

describe('one run', () => {
  const TEN = `what: Slings
kind: measurd
value: { tests: [12, -3] }
unit: kn
of: rated-minimun
rig: { method: girth, widthMm: 0, colour: red }
standing: red
checked: 2026-01-05
lowered: [{ by: luck, why: as told }]
locator: 4
`;
  // Ten in the reading of one file, by eye: kind, second test, unit, of, method, width, colour, standing, date, by; and the locator makes eleven.
  const PLACES = ['2:7', '3:22', '4:7', '5:5', '6:16', '6:32', '6:35', '7:11', '8:10', '9:17', '10:10'];

  test('tells ten faults and more of one file at once, in the order of the file', () => {
    const faults = checkProject({ ...SOUND, 'data/figures/lab-a/x.yaml': TEN }).filter(
      (fault) => fault.at.file === 'data/figures/lab-a/x.yaml',
    );
    expect(faults.map((fault) => `${fault.at.line}:${fault.at.col}`)).toEqual(PLACES);
  });

  test('rules across records still run on what is sound in a file with a fault of shape', () => {
    const faults = checkProject({
      ...SOUND,
      'data/figures/lab-a/x.yaml':
        'what: Slings\nkind: measured\nvalue: 900\nunit: kN\ncolour: red\nstanding: read\nchecked: "2026-01-05"\n',
    });
    expect(faults.map((fault) => `${fault.rule} ${fault.at.line}:${fault.at.col}`)).toEqual([
      'value-is-possible 3:8',
      'shape 5:1',
      'standing-has-locator 6:11',
    ]);
  });

  test('a field with a wrong shape is not told to be missing as well', () => {
    const faults = checkProject({
      ...SOUND,
      'data/figures/lab-a/x.yaml':
        'what: Slings\nkind: measured\nvalue: much\nunit: kn\nstanding: read\nlocator: 3\nchecked: "2026-01-05"\n',
    });
    expect(faults.map((fault) => fault.rule)).toEqual(['shape', 'shape', 'shape']);
  });

  test('a reference to a record that could not be read does not dangle', () => {
    const faults = checkProject({ ...SOUND, 'data/figures/lab-b/floor.yaml': 'what: Floor\n' });
    expect(new Set(faults.map((fault) => fault.rule))).toEqual(new Set(['shape']));
  });

  test('an empty file, a list and a bare word are refused', () => {
    const says = (text: string) => checkProject({ ...SOUND, 'data/sources/x.yaml': text }).map(formatFault);
    expect(says('')).toEqual(['data/sources/x.yaml:1:1 source: is empty. Fill it, or remove the file.']);
    expect(says('- a\n')).toEqual([
      'data/sources/x.yaml:1:1 source: is not a group of fields (got ["a"]). Write fields, one a line.',
    ]);
    expect(says('word\n')).toEqual([
      'data/sources/x.yaml:1:1 source: is not a group of fields (got word). Write fields, one a line.',
    ]);
  });

  test('the report groups by rule, counts each group and closes with a count', () => {
    const report = formatReport(
      checkProject({
        ...SOUND,
        'data/sources/x.yaml': '',
        'data/sources/y.yaml': '',
        'content/terms/eye.md': 'An eye.',
      }),
    );
    expect(report.split('\n')).toEqual([
      'prose-can-be-read (1 fault)',
      '  content/terms/eye.md:1:1 prose: is Markdown without components (got .md). Rename it to .mdx.',
      '',
      'shape (2 faults)',
      '  data/sources/x.yaml:1:1 source: is empty. Fill it, or remove the file.',
      '  data/sources/y.yaml:1:1 source: is empty. Fill it, or remove the file.',
      '',
      '3 faults',
    ]);
  });

  test('a warning is printed and counted apart', () => {
    const { 'content/methods/basket.mdx': _page, ...rest } = SOUND;
    expect(formatReport(checkProject(rest)).split('\n')).toEqual([
      'method-has-prose (1 warning)',
      '  data/methods/basket.yaml:1:1 basket: there is no content/methods/basket.mdx. Write it; numbers only through <Fig id>.',
      '',
      '0 faults, 1 warning',
    ]);
  });

  test('a rule from outside is run with the others', () => {
    const faults = checkProject(SOUND, [
      {
        name: 'gaps-agree',
        description: 'A rule of an engine.',
        check: (report, { gaps }) => {
          for (const gap of gaps.values())
            report({
              at: gap.at(['question']),
              subject: gap.id,
              problem: 'has a result after all',
              advice: 'Remove the gap.',
            });
        },
      },
    ]);
    expect(faults.map(formatFault)).toEqual([
      'data/gaps/basket-on-thin-wire.yaml:1:11 basket-on-thin-wire: has a result after all. Remove the gap.',
    ]);
  });
});

describe('names', () => {
  test('the distance of two words counts letters changed, added, dropped and swapped', () => {
    // "kitten" to "sitting" is three, the textbook case of edit distance; a swap of neighbours is one.
    expect(editDistance('kitten', 'sitting')).toBe(3);
    expect(editDistance('straigth', 'straight')).toBe(1);
    expect(editDistance('', 'abc')).toBe(3);
  });

  test('a name far from every other has no nearest one', () => {
    expect(nearestName('nelhams-201', ['nelhams-2010', 'ibarra-2021'])).toBe('nelhams-2010');
    expect(nearestName('zzzzzzzz', ['nelhams-2010'])).toBeUndefined();
    expect(nearestName('a', [])).toBeUndefined();
  });

  test('a name is made of any text', () => {
    expect(slugOf('HMPE_10.5mm')).toBe('hmpe-10-5mm');
    expect(slugOf('\u00c9tude n\u00b0 2')).toBe('etude-n-2');
    expect(slugOf('--')).toBe('');
  });
});
