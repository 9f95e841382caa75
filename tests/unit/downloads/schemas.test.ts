/** The JSON Schemas of `/data/schemas/` against the files that they describe, with a checker of its own (ajv, draft 2020-12). */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { downloads } from '../../../src/build/downloads/all-files.ts';
import { ROOT } from '../../support/step.ts';
import { filesUnder } from '../../support/tree.ts';

const { files, tables, recordSchemas } = downloads();
const read = (path: string): unknown => JSON.parse(new TextDecoder().decode(files.get(path)?.bytes));

function checker(path: string) {
  const ajv = new Ajv2020({ strict: false, allErrors: true });
  addFormats.default(ajv);
  return ajv.compile(read(path) as object);
}

describe.each(tables.map(({ name }) => [name]))('the schema of %s', (name) => {
  const validate = checker(`schemas/tables/${name}.json`);
  const rows = read(`${name}.json`) as Record<string, unknown>[];

  test('accepts its rows', () => {
    expect(validate(rows), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  });

  test('refuses a row without its first column, one with a column more, and a number as text', () => {
    const [first] = rows as [Record<string, unknown>];
    const { [Object.keys(first)[0] as string]: _lost, ...less } = first;
    expect(validate([less])).toBe(false);
    expect(validate([{ ...first, more: 1 }])).toBe(false);
    const number = tables.find((table) => table.name === name)?.fields.find(({ type }) => type === 'number' || type === 'integer');
    if (number) expect(validate([{ ...first, [number.name]: '22' }])).toBe(false);
  });
});

/** The schema of a record file, by its folder and its words. */
function schemaOf(file: string, record: { kind?: string; cells?: object; figure?: string }): string | null {
  const [, folder, next] = file.split('/');
  if (folder === 'figures') return ['moved', 'split', 'withdrawn'].includes(record.kind ?? '') ? `figure-${record.kind}` : record.cells ? 'figure-table' : 'figure';
  if (folder === 'factors') return next === 'class' ? 'factor-class' : 'factor';
  if (folder === 'series' || (folder === 'demo' && next === 'series')) return record.figure ? 'series' : 'series-by-itself';
  const one: Record<string, string> = { sources: 'source', methods: 'method', slings: 'sling', gaps: 'gap', rules: 'rule', materials: 'material', replacements: 'replacement', law: 'law' };
  return one[folder as string] ?? null;
}

describe('the schemas of records', () => {
  const checkers = new Map(recordSchemas.map((name) => [name, checker(`schemas/records/${name}.json`)]));

  test('accept every record of the project', () => {
    const wrong: string[] = [];
    let seen = 0;
    for (const file of filesUnder('data').filter((path) => path.endsWith('.yaml'))) {
      const record = parse(readFileSync(join(ROOT, file), 'utf8')) as { kind?: string; cells?: object };
      const validate = checkers.get(schemaOf(file, record) ?? '');
      if (!validate) continue;
      seen += 1;
      if (!validate(record)) wrong.push(`${file}: ${validate.errors?.[0]?.instancePath} ${validate.errors?.[0]?.message}`);
    }
    expect(wrong).toEqual([]);
    expect(seen).toBeGreaterThan(300);
  });

  const figure = { what: 'Pull', kind: 'measured', standing: 'read', checked: '2026-11-24', unit: 'kN' };
  test.each([
    ['a value with a sign inside a string', { ...figure, value: '>22' }],
    ['a mean without its number', { ...figure, value: { sd: 0.5 } }],
    ['a unit that does not exist', { ...figure, value: 22, unit: 'tons' }],
    ['a field that does not exist', { ...figure, value: 22, maker: 'any' }],
    ['a day that is none', { ...figure, value: 22, checked: '24 November' }],
  ])('refuse %s', (_, record) => {
    expect(checkers.get('figure')?.({ ...figure, value: 22 })).toBe(true);
    expect(checkers.get('figure')?.(record)).toBe(false);
  });
});
