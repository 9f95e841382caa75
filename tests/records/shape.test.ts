/**
 * Every constraint of every schema is broken once, and the message, its place
 * and its advice are held against words written here. The list of constraints
 * comes from the schemas themselves, so a new one without a case fails.
 */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../src/records/check-project.ts';
import { byPlace, formatFault } from '../../src/records/fault.ts';
import { readAll } from '../../src/records/read.ts';
import * as schemas from '../../src/records/schema.ts';
import { bare, type Constraint, constraintsOf, defOf } from './constraints.ts';
import { SOUND } from './project.ts';
import { SHAPES, type Shape, written } from './shapes.ts';

type Path = (string | number)[];

const NAMED: [string, Parameters<typeof constraintsOf>[1]][] = [
  ['figure', schemas.singleFigure],
  ['table', schemas.tableFigure],
  ['moved', schemas.movedFigure],
  ['split', schemas.splitFigure],
  ['withdrawn', schemas.withdrawnFigure],
  ...Object.entries(schemas.valueBranches).map(([form, schema]): [string, Parameters<typeof constraintsOf>[1]] => [
    `value ${form}`,
    schema,
  ]),
  ['source', schemas.source],
  ['factor', schemas.factor],
  ['class', schemas.factorClass],
  ['method', schemas.method],
  ['sling', schemas.sling],
  ['gap', schemas.gap],
  ['replacement', schemas.replacement],
  ['law', schemas.law],
  ['material', schemas.rackMaterial],
  ['rule', schemas.rule],
  ['correction', schemas.correction],
  ['series of a figure', schemas.publishedSeries],
  ['series by itself', schemas.ownSeries],
];
const seen: Parameters<typeof constraintsOf>[2] = new Set();
const constraints = NAMED.flatMap(([name, schema]) =>
  constraintsOf(name, schema, seen).map((constraint) => ({ name, ...constraint })),
);

const WHAT: Record<string, string> = { class: 'factor class', table: 'figure', moved: 'figure', split: 'figure', withdrawn: 'figure', 'series of a figure': 'series', 'series by itself': 'series' };

/** Names of types as the messages say them. */
const HINTS: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a group of fields',
  record: 'a group of fields',
  tuple: 'two numbers',
};
const FORMS: Record<string, [string, string]> = {
  'figure.of|2': [
    'is not an address like source/result or source/result#cell',
    'Write the path of a figure below data/figures/, without its ending.',
  ],
  'figure.study': ['is not a lower-case name with hyphens', 'Use a to z, digits and single hyphens.'],
  'figure.derived.inputs{key}': ['is not a short name', 'Use letters and digits, a small letter first.'],
  'table.cells{key}': ['is not a lower-case cell name', 'Use a to z, digits, hyphens and points.'],
  'source.issued': [
    'is not a year, month, day or the word unknown',
    'Write "2020", "2020-05" or "2020-05-31", in quotes, or unknown.',
  ],
  'source.language': ['is not a two-letter language code', 'Write en, de, fr and so on.'],
};
const VALUE_ADVICE =
  'Write a number, or choose a form: { tests: [...] }, { mean, sd, n }, { low, high, kind }, { atLeast }, { atMost }, { statement }.';
const NO_VALUE = 'is neither a number nor an object with one of tests, mean, low, atLeast, atMost, statement';
const WRONG: Record<string, [unknown, string, string]> = {
  string: [true, 'is not a text (got true)', 'Write words; put quotes round a text that looks like a number.'],
  number: [
    'much',
    'is not a number (got much)',
    'Write a number with a decimal point, without unit, sign words or spaces.',
  ],
  safeint: [1.5, 'is not a whole number (got 1.5)', 'Write a whole number.'],
  boolean: ['perhaps', 'is not true or false (got perhaps)', 'Write true or false, without quotes.'],
  list: ['one', 'is not a list (got one)', 'Write a list: [a, b].'],
  pair: ['wide', 'is not a pair of numbers (got wide)', 'Write two numbers: [from, to].'],
  map: ['one', 'is not a group of fields (got one)', 'Write fields, one a line.'],
  date: ['2026-02-30', 'is not a day of the calendar (got 2026-02-30)', 'Write it as "2026-01-31", in quotes.'],
  url: ['nowhere', 'is not a web address (got nowhere)', 'Write it whole, from https:// on.'],
  'value form': ['much', `${NO_VALUE} (got much)`, VALUE_ADVICE],
};
/** Refinements and unions, each with a value that breaks it alone: the value, where the message stands below it, and the words. */
const SPECIAL: Record<string, [unknown, Path, string, string]> = {
  'value low refinement 1': [
    { low: 12, high: 12, kind: 'teaching' },
    ['low'],
    'the low end is not below the high end (got 12)',
    'Put the smaller number first.',
  ],
  'value low refinement 2': [
    { low: 10, high: 12, kind: 'extremes of n', n: 1 },
    ['kind'],
    'extremes of n need an n of two or more (got extremes of n)',
    'Add n, or choose another kind.',
  ],
  'factor.assumed refinement 1': [
    { low: 2, high: 1, why: 'as told' },
    ['low'],
    'the low end is not below the high end (got 2)',
    'Put the smaller number first.',
  ],
  'factor.taken[] refinement 1': [
    { figure: 'lab-a/straight', why: 'as told' },
    ['figure'],
    'takes neither a bearing nor a diameter (got lab-a/straight)',
    'Add bearingMm or diameterMm, or remove the entry.',
  ],
  'method.length refinement 1': [
    { words: 'half', share: 0.5, lessWidths: 20 },
    ['lessWidths'],
    'what is taken off needs a share to take it from, and a why (got 20)',
    'Add share and why, or remove lessWidths.',
  ],
  'material.topics.knots refinement 1': [
    { figures: [] },
    ['figures'],
    'shows no figure, and says of no gap that it is open and of nothing that it was not found (got [])',
    'Add figures or gaps, or say in none what was not found.',
  ],
  'correction refinement 1': [
    { status: 'acknowledged', reported: undefined },
    ['status'],
    'is more than open, and does not say to whom it was reported (got acknowledged)',
    'Add reported: to whom, and when.',
  ],
  'correction.used union': [
    true,
    [],
    'is not a number (got true)',
    'Write a number with a decimal point, without unit, sign words or spaces.',
  ],
  'class.tau|1.groups[][] union': [
    'lab-a',
    [],
    'is not an address like source/result or source/result#cell (got lab-a)',
    'Write the path of a figure below data/figures/, without its ending.',
  ],
  'figure.of union': ['unknoted', [], 'is none of the known words (got unknoted)', 'Did you mean unknotted?'],
  'figure.of|2 string': [
    true,
    [],
    'is none of the known words (got true)',
    `Write one of: ${schemas.DENOMINATORS.join(', ')}.`,
  ],
  'value low.n greater_than': [
    { low: 10, high: 12, kind: 'teaching', n: 0 },
    ['n'],
    'is below 1 (got 0)',
    'Look the number up again.',
  ],
  'figure.rig.ageYears union': [
    'old',
    [],
    'is not a number (got old)',
    'Write a number with a decimal point, without unit, sign words or spaces.',
  ],
  'figure.lowered[].steps union': [3, [], 'is none of the known words (got 3)', 'Write one of: 1, 2.'],
  'factor.acts union': ['lop', [], 'is none of the known words (got lop)', 'Did you mean loop?'],
  'class.cv union': ['much', [], 'is not a group of fields (got much)', 'Write fields, one a line.'],
  'class.tau union': ['much', [], 'is not a group of fields (got much)', 'Write fields, one a line.'],
};

const get = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((here, step) => (here as Record<string | number, unknown> | undefined)?.[step], value);
const has = (value: unknown, path: Path): boolean => get(value, path) !== undefined;

/** Puts first keys in the place of `{key}` and `{}`. */
function concrete(record: unknown, path: Path): Path {
  const out: Path = [];
  for (const step of path)
    out.push(
      step === '{}' || step === '{key}' ? (Object.keys((get(record, out) as object | undefined) ?? {})[0] ?? '') : step,
    );
  return out;
}

/** The record to break, and where: the first shape of the schema that has the place, in the branch that is meant. */
function placeOf(constraint: Constraint & { name: string }): { shape: Shape; path: Path } | undefined {
  const inside: Path = constraint.name.startsWith('value ') ? ['value'] : [];
  for (const shape of SHAPES.filter((s) => s.name === constraint.name)) {
    const path = concrete(shape.record, [...inside, ...constraint.path]);
    const branch = constraint.branches.every((b) => {
      const value = get(shape.record, concrete(shape.record, [...inside, ...b.path]));
      return (b.option as unknown as { safeParse(v: unknown): { success: boolean } }).safeParse(value).success;
    });
    if (branch && (path.length === 0 || has(shape.record, path))) return { shape, path };
  }
  return undefined;
}

/** Fields below a schema that none of some values has; of a union each group of fields is looked at in the values that are of it. */
function unfilled(name: string, schema: Parameters<typeof constraintsOf>[1], values: readonly unknown[]): string[] {
  const here = bare(schema);
  const def = defOf(here);
  const parts = (part: Parameters<typeof constraintsOf>[1], below: readonly unknown[], step: string) => unfilled(`${name}${step}`, part, below);
  switch (def.type) {
    case 'object':
      return Object.entries(def.shape ?? {}).flatMap(([key, part]) => {
        const below = values.map((value) => (value as Record<string, unknown>)[key]).filter((value) => value !== undefined);
        return below.length === 0 ? [`${name}.${key}`] : parts(part, below, `.${key}`);
      });
    case 'array':
      return parts(def.element as typeof schema, values.flatMap((value) => value as unknown[]), '[]');
    case 'record':
      return parts(def.valueType as typeof schema, values.flatMap((value) => Object.values(value as object)), '{}');
    case 'union':
      return (def.options ?? []).flatMap((option, i) => {
        if (defOf(option).type !== 'object') return [];
        const own = values.filter((value) => (option as unknown as { safeParse(v: unknown): { success: boolean } }).safeParse(value).success);
        return own.length === 0 ? [`${name}|${i + 1}`] : parts(option, own, `|${i + 1}`);
      });
    default:
      return [];
  }
}

interface Case {
  record: Record<string, unknown>;
  expected: string;
}

function caseOf(constraint: Constraint & { name: string }): Case | string {
  const place = placeOf(constraint);
  if (!place) return `no shape has ${constraint.id}`;
  const { shape, path } = place;
  const record = structuredClone(shape.record) as Record<string, unknown>;
  const key = path.at(-1) as string | number;
  const parentPath = path.slice(0, -1);
  const parent = get(record, parentPath) as Record<string | number, unknown>;
  const subject = path.length ? path.join('.') : (WHAT[shape.name] ?? shape.name);
  const fault = (spot: string, who: string, problem: string, advice: string): Case => ({
    record,
    expected: `${shape.file}:${spot} ${who}: ${problem}. ${advice}`,
  });
  const wrong = (value: unknown, problem: string, advice: string) => {
    parent[key] = value;
    return fault(written(record).valueAt(path), subject, problem, advice);
  };
  const { kind } = constraint;
  const form = FORMS[constraint.id.replace(/ form regex$/, '')];
  if (constraint.id in SPECIAL) {
    const [value, below, problem, advice] = SPECIAL[constraint.id] as [unknown, Path, string, string];
    const top = typeof value === 'object' && constraint.name.startsWith('value ') ? ['value'] : path;
    if (top.length) (get(record, top.slice(0, -1)) as Record<string | number, unknown>)[top.at(-1) as string] = value;
    // Of a whole record the fields that are given stand in the place of its own; without a value they go.
    else
      for (const [field, part] of Object.entries(value as object)) {
        if (part === undefined) delete record[field];
        else record[field] = part;
      }
    return fault(written(record).valueAt([...top, ...below]), [...top, ...below].join('.'), problem, advice);
  }
  if (kind === 'required') {
    delete parent[key];
    const [whole, chosen] = constraint.name.startsWith('value ')
      ? ['value', constraint.name.slice('value '.length)]
      : ['', ''];
    if (whole && key === chosen) {
      // Without the field that chooses its form, a value has none.
      const json = JSON.stringify(parent);
      return fault(
        written(record).valueAt([whole]),
        whole,
        `${NO_VALUE} (got ${json.length > 60 ? `${json.slice(0, 57)}...` : json})`,
        VALUE_ADVICE,
      );
    }
    if (constraint.id === 'class.tau|3.assumed required')
      return fault(written(record).valueAt(parentPath), 'tau.borrowed', 'is missing', 'Add borrowed: a text.'); // two forms fit what is left: the first is named
    const inner = bare(constraint.schema);
    const def = defOf(inner);
    const words = constraint.words;
    const hint =
      def.type === 'enum' || def.type === 'literal'
        ? `one of ${words.length > 8 ? `${words.slice(0, 8).join(', ')} and others` : words.join(', ')}`
        : (HINTS[def.type] ?? 'a value');
    return fault(written(record).valueAt(parentPath), subject, 'is missing', `Add ${key}: ${hint}.`);
  }
  if (kind === 'unknown field') {
    const group = path.length ? (get(record, path) as Record<string, unknown>) : record;
    group['unheardOfThing'] = 1;
    return fault(
      written(record).keyAt([...path, 'unheardOfThing']),
      [...path, 'unheardOfThing'].join('.'),
      'is no field of this record',
      'Remove it.',
    );
  }
  if (kind === 'enum' || kind === 'literal') {
    const words = constraint.words;
    return wrong(
      'qqqqqqqqqqqq',
      words.length === 1 ? `is not ${words[0]} (got qqqqqqqqqqqq)` : 'is none of the known words (got qqqqqqqqqqqq)',
      `Write one of: ${words.join(', ')}.`,
    );
  }
  if (constraint.id.endsWith('{key} form regex')) {
    const value = parent[key];
    delete parent[key];
    parent['No Name'] = value;
    return fault(
      written(record).keyAt([...parentPath, 'No Name']),
      [...parentPath, 'No Name'].join('.'),
      `${form?.[0]} (got No Name)`,
      form?.[1] ?? '',
    );
  }
  if (kind === 'form regex') {
    const value = constraint.id.startsWith('figure.of') ? 'Lab/#' : 'No Name!';
    return wrong(value, `${form?.[0]} (got ${value})`, form?.[1] ?? '');
  }
  if (kind === 'min_length') {
    const value = get(record, path);
    if (typeof value === 'string') return wrong('', 'is empty (got )', 'Write words.');
    const few = (value as unknown[]).slice(0, constraint.limit - 1);
    return wrong(
      few,
      `has fewer than ${constraint.limit} entries (got ${JSON.stringify(few)})`,
      'Add what is missing, or remove the field.',
    );
  }
  if (kind === 'greater_than') {
    const value = constraint.inclusive ? constraint.limit - 1 : constraint.limit;
    return wrong(
      value,
      `${constraint.inclusive ? `is below ${constraint.limit}` : `is not above ${constraint.limit}`} (got ${value})`,
      'Look the number up again.',
    );
  }
  if (kind === 'less_than')
    return wrong(
      constraint.limit + 1,
      `is above ${constraint.limit} (got ${constraint.limit + 1})`,
      'Look the number up again.',
    );
  const type = WRONG[kind];
  if (type) return wrong(...type);
  return `no way to break ${constraint.id}`;
}

/** A key's type needs no case of its own: YAML gives texts as keys. */
const IMPOSSIBLE = (id: string) => id.endsWith('{key} string');
/** Fields by which a figure's schema is chosen: without them the record is another kind of figure, and is judged as one. */
const CHOOSERS: readonly string[] = [
  'table.cells required',
  'moved.kind required',
  'moved.kind literal',
  'split.kind required',
  'split.kind literal',
  'withdrawn.kind required',
  'withdrawn.kind literal',
];

describe('shape of records', () => {
  const cases = constraints
    .filter((c) => !IMPOSSIBLE(c.id) && !CHOOSERS.includes(c.id))
    .map((constraint) => ({ id: constraint.id, made: caseOf(constraint) }));

  test('every constraint of every schema has a failing case', () => {
    expect(cases.filter((c) => typeof c.made === 'string').map((c) => c.made)).toEqual([]);
    expect(new Set(cases.map((c) => c.id)).size).toBe(cases.length);
    expect(cases.length).toBeGreaterThan(200);
  });

  // Written by hand: a field that becomes optional must be taken off this list, too.
  test.each<[string, string]>([
    ['figure', 'what kind standing checked'],
    ['table', 'what kind standing checked cells'],
    ['moved', 'kind to on why'],
    ['split', 'kind to on why'],
    ['withdrawn', 'kind on why was'],
    ['source', 'type title authors issued language free checked'],
    ['factor', 'what acts class applies from'],
    ['class', 'what cv ceiling tau'],
    ['method', 'name order role summary takes eyes links length bulk oneClipError closed'],
    ['sling', 'name order form material widthMm lengthsCm'],
    ['gap', 'question nearest test'],
    ['replacement', 'name order who keeps ask'],
    ['law', 'region covers sentences'],
    ['rule', 'what order verdict says figures'],
    ['correction', 'figure printed used reason status on expect'],
  ])('a %s needs these fields: %s', (name, fields) => {
    const { shape } = defOf(NAMED.find(([other]) => other === name)?.[1] as Parameters<typeof constraintsOf>[1]);
    const required = Object.entries(shape ?? {}).filter(([, part]) => !['optional', 'default'].includes(defOf(part).type));
    expect(required.map(([key]) => key).sort()).toEqual(fields.split(' ').sort());
  });

  test('every field of every schema is filled in somewhere', () => {
    expect(NAMED.flatMap(([name, schema]) => {
      const filled = SHAPES.filter((shape) => shape.name === name).map(({ record }) => (name.startsWith('value ') ? record['value'] : record));
      return unfilled(name, schema, filled);
    })).toEqual([]);
  });

  test('the filled-in records themselves have no fault of shape', () => {
    for (const { file, record } of SHAPES) {
      const faults = checkProject({ ...SOUND, [file]: written(record).text }).filter((fault) => fault.rule === 'shape');
      expect(faults.map(formatFault)).toEqual([]);
    }
  });

  test.each(cases.filter((c): c is { id: string; made: Case } => typeof c.made !== 'string'))('$id', ({ made }) => {
    const file = made.expected.slice(0, made.expected.indexOf(':'));
    const { faults } = readAll({ ...SOUND, [file]: written(made.record).text });
    expect(faults.sort(byPlace).map((fault) => `${fault.rule} ${formatFault(fault)}`)).toEqual([
      `shape ${made.expected}`,
    ]);
  });

  test('a table without its cells is a figure without its value', () => {
    const { file, record } = SHAPES.find((shape) => shape.name === 'table') as Shape;
    const { cells: _cells, ...rest } = record;
    const text = written(rest).text;
    const faults = checkProject({ ...SOUND, [file]: text }).filter((fault) => fault.rule === 'kind-fits-value');
    expect(faults.map(formatFault)).toEqual([
      `${file}:2:7 lab-a/x: has no value (got measured). Add value, or cells; only kind: rule may go without.`,
    ]);
  });

  test('a moved, split or withdrawn figure without its kind is judged as an ordinary one', () => {
    for (const name of ['moved', 'split', 'withdrawn']) {
      const { file, record } = SHAPES.find((shape) => shape.name === name) as Shape;
      for (const kind of [undefined, 'gone']) {
        const { kind: _kind, ...rest } = record;
        const faults = checkProject({ ...SOUND, [file]: written(kind ? { kind, ...rest } : rest).text }).map((fault) =>
          formatFault(fault),
        );
        const place = kind
          ? `${file}:1:7 kind: is none of the known words (got gone). Write one of:`
          : `${file}:1:1 kind: is missing. Add kind: one of`;
        expect(faults).toContainEqual(`${place} measured, required, rule, constant, assumed.`);
      }
    }
  });

  test('a number that is none is refused', () => {
    const text =
      'what: Force\nkind: measured\nvalue: .inf\nunit: kN\nstanding: read\nlocator: table 1\nchecked: "2026-01-05"\n';
    const faults = checkProject({ ...SOUND, 'data/figures/lab-a/x.yaml': text }).filter(
      (fault) => fault.rule === 'shape',
    );
    expect(faults.map(formatFault)).toEqual([
      `data/figures/lab-a/x.yaml:3:8 value: is not a finite number (got Infinity). ${VALUE_ADVICE}`,
    ]);
  });

  test.each(NAMED.filter(([name]) => !name.startsWith('value')))('an empty %s is refused', (_name, schema) => {
    expect((schema as unknown as { safeParse(v: unknown): { success: boolean } }).safeParse({}).success).toBe(false);
  });
});
