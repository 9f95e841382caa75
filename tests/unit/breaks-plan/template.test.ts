/** The empty table of pulls: a tester fills it, and our reader and a checker of tables take it as it is. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { BREAK_FIELDS, templateCsv, templateSchema } from '../../../src/build/series/template.ts';
import { readTable } from '../../../src/break-tests/read-table.ts';

/** Filled by hand as the columns say; the forces are invented. */
const FILLED = ['12.3,torn,sling at the eye,"a1, lot 7"', '>13.05,nothing broke,machine,', '11.8,torn,knot,', ',slipped,sling at the eye,load cell off', '12.9,torn,sling at the eye,'];
const filled = (): string => templateCsv().split('\r\n').slice(0, 6).map((line, i) => (i === 0 ? line : `${i},${FILLED[i - 1]}`)).join('\r\n');

test('the head is the one that readers know', () => {
  expect(templateCsv().split('\r\n')[0]).toBe('pull,force_kN,mode,link,note');
});

test('a strict reader finds ten numbered pulls and nothing else in it', () => {
  const { data, errors } = Papa.parse<Record<string, string>>(templateCsv().trim(), { header: true });
  expect(errors).toEqual([]);
  expect(data.map((row) => Object.values(row).join('|'))).toEqual(Array.from({ length: 10 }, (_, i) => `${i + 1}||||`));
});

test('filled, our reader takes force with its unit, the lower limit, how and what broke', () => {
  const reading = readTable(filled());
  if ('stop' in reading) throw new Error(`stopped: ${JSON.stringify(reading.stop)}`);
  const [pull, force, mode, link, note] = reading.table.columns;
  expect(pull).toMatchObject({ name: 'pull', kind: 'numbers', values: [1, 2, 3, 4, 5] });
  expect(force).toMatchObject({ kind: 'numbers', unit: 'kN', values: [12.3, 13.05, 11.8, null, 12.9], atLeast: [false, true, false, false, false] });
  expect(mode).toMatchObject({ name: 'mode', kind: 'text', values: ['torn', 'nothing broke', 'torn', 'slipped', 'torn'] });
  expect(link).toMatchObject({ name: 'link', values: ['sling at the eye', 'machine', 'knot', 'sling at the eye', 'sling at the eye'] });
  expect(note).toMatchObject({ name: 'note', kind: 'text' });
});

test('filled where people write decimal commas, it is read, too', () => {
  const reading = readTable(filled().replace('12.3,', '"12,3",').replace('>13.05', '">13,05"').replace('11.8', '"11,8"').replace('12.9', '"12,9"'));
  expect('table' in reading && reading.table.columns[1]).toMatchObject({ values: [12.3, 13.05, 11.8, null, 12.9], atLeast: [false, true, false, false, false] });
});

test('its schema is one of the published standard, and explains each column', () => {
  const top = JSON.parse(readFileSync(join(import.meta.dirname, '../../reference/datapackage-2.0/datapackage.json'), 'utf8')) as object;
  const ajv = new Ajv({ strict: false, allErrors: true });
  addFormats.default(ajv);
  const validate = ajv.compile(top);
  const { $schema: _address, ...schema } = templateSchema();
  const resource = { name: 'breaks', path: 'template.csv', profile: 'tabular-data-resource', schema };
  validate({ $schema: 'https://datapackage.org/profiles/2.0/datapackage.json', resources: [resource] });
  expect(validate.errors ?? []).toEqual([]);
  // The profile does look into the schema of a resource.
  expect(validate({ resources: [{ ...resource, schema: { ...schema, fields: 'none' } }] })).toBe(false);
  expect(schema.fields.map(({ name }) => name)).toEqual(BREAK_FIELDS.map(({ name }) => name));
  for (const { description } of schema.fields) expect(description.length).toBeGreaterThan(40);
});

test('its pattern takes forces and lower limits, and refuses words and units', () => {
  const pattern = templateSchema().fields.find(({ name }) => name === 'force_kN')?.constraints?.pattern ?? '(?!)';
  for (const force of ['12.3', '12,3', '>12.3', '> 12', '9']) expect(force).toMatch(new RegExp(pattern));
  for (const other of ['', '>', '12.3 kN', '<12', '1.2.3', 'torn', '-4']) expect(other).not.toMatch(new RegExp(pattern));
});
