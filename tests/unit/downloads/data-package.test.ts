/** The descriptor against the published profile of the Data Package standard, version 2.0 (tests/reference/datapackage-2.0/source.md), and against the files that it describes. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { downloads } from '../../../src/build/downloads/all-files.ts';
import { newestVersion } from '../../../src/build/evidence.ts';
import { ROOT } from '../../support/step.ts';

interface Resource {
  name: string; path: string; type?: string; format: string; mediatype: string; encoding: string; bytes: number; hash: string;
  schema?: { fields: { name: string; type: string; description: string; constraints?: { required?: boolean; unique?: boolean; enum?: string[] } }[]; primaryKey: string[]; foreignKeys?: { fields: string[]; reference: { resource?: string; fields: string[] } }[] };
}
interface Descriptor {
  contentHash: string; recordsChecked: string; name: string; title: string; version: string; created: string; homepage: string; keywords: string[]; licenses: { name: string; path: string }[];
  sources: { title: string; path?: string }[]; contributors: { title: string }[]; resources: Resource[];
}

const { files, archive } = downloads();
const bytes = (path: string): Uint8Array => files.get(path)?.bytes as Uint8Array;
const read = (path: string): string => new TextDecoder().decode(bytes(path));
const descriptor = JSON.parse(read('datapackage.json')) as Descriptor;
const top = (path: string): string => readFileSync(join(ROOT, path), 'utf8');
const tabular = descriptor.resources.filter((resource) => resource.schema !== undefined);
const rowsOf = ({ path }: Pick<Resource, 'path'>): Record<string, string>[] => Papa.parse<Record<string, string>>(read(path).replace(/\r\n$/, ''), { header: true, newline: '\r\n' }).data;

const ajv = new Ajv({ strict: false, allErrors: true });
addFormats.default(ajv);
const validate = ajv.compile(JSON.parse(top('tests/reference/datapackage-2.0/datapackage.json')) as object);

describe('the published profile', () => {
  test('accepts the descriptor', () => {
    expect(validate(descriptor), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  });

  test.each<[string, (d: Descriptor) => void]>([
    ['no resources', (d) => { d.resources = []; }],
    ['a resource without a path', (d) => { delete (d.resources[0] as Partial<Resource>).path; }],
    ['a path that leaves the folder', (d) => { (d.resources[0] as Resource).path = '../cells.csv'; }],
    ['a hash that is none', (d) => { (d.resources[0] as Resource).hash = 'sha256:xyz'; }],
    ['a type of column that does not exist', (d) => { ((tableIn(d).schema as NonNullable<Resource['schema']>).fields[0] as { type: string }).type = 'words'; }],
    ['an empty list of allowed values', (d) => { (tableIn(d).schema as NonNullable<Resource['schema']>).fields[0] = { name: 'a', type: 'string', description: '', constraints: { enum: [] } }; }],
    ['a foreign key without a reference', (d) => { (tableIn(d).schema as NonNullable<Resource['schema']>).foreignKeys = [{ fields: ['a'] } as never]; }],
    ['a day that is no moment', (d) => { d.created = '2026-11-25'; }],
  ])('refuses %s', (_, spoil) => {
    const spoilt = structuredClone(descriptor);
    spoil(spoilt);
    expect(validate(spoilt)).toBe(false);
  });
});

function tableIn(d: Descriptor): Resource {
  return d.resources.find((resource) => resource.schema !== undefined) as Resource;
}

describe('the descriptor', () => {
  test('names every file but itself and the archive, each once', () => {
    const paths = descriptor.resources.map(({ path }) => path);
    expect([...paths].sort()).toEqual([...files.keys()].filter((path) => path !== 'datapackage.json' && path !== archive).sort());
    expect(new Set(descriptor.resources.map(({ name }) => name)).size).toBe(paths.length);
  });

  test('gives the size and the hash of every file', () => {
    for (const { path, bytes: size, hash } of descriptor.resources) {
      expect(size, path).toBe(bytes(path).length);
      expect(hash, path).toBe(`sha256:${createHash('sha256').update(bytes(path)).digest('hex')}`);
    }
  });

  test('tells two packages of one version apart, by what is in them and by the latest day on which a source was looked at', () => {
    const list = descriptor.resources.map(({ path }) => `${createHash('sha256').update(bytes(path)).digest('hex')}  ${path}\n`).join('');
    expect(descriptor.contentHash).toBe(`sha256:${createHash('sha256').update(list).digest('hex')}`);
    const days = [...read('sources.json').matchAll(/"checked":"(\d{4}-\d{2}-\d{2})"/g), ...read('figures.json').matchAll(/"checked":"(\d{4}-\d{2}-\d{2})"/g)].map(([, day]) => day);
    expect(days.length).toBeGreaterThan(100);
    expect(descriptor.recordsChecked).toBe(days.sort().at(-1));
  });

  test('says of each file what it is: its format is its ending', () => {
    const media: Record<string, RegExp> = { csv: /^text\/csv$/, json: /^application\/(?:schema\+)?json$/ };
    for (const { path, format, mediatype, encoding } of descriptor.resources) {
      expect(path.endsWith(`.${format}`), path).toBe(true);
      expect(mediatype, path).toMatch(media[format] as RegExp);
      expect(encoding, path).toBe('utf-8');
    }
  });

  test('has the version of the evidence, with a plus sign at most', () => {
    expect([newestVersion(ROOT), `${newestVersion(ROOT)}+`]).toContain(descriptor.version);
    expect(descriptor.created.slice(0, 10)).toBe(descriptor.version.slice(0, 10));
  });

  test('has title, keywords, authors and licence of CITATION.cff, and the licence that LICENSE names', () => {
    const cff = parse(top('CITATION.cff')) as { title: string; keywords: string[]; license: string; authors: { name: string }[] };
    expect(descriptor.title).toBe(cff.title);
    expect(descriptor.keywords).toEqual(cff.keywords);
    expect(descriptor.contributors.map(({ title }) => title)).toEqual(cff.authors.map(({ name }) => name));
    expect(descriptor.licenses.map(({ name }) => name)).toEqual([cff.license]);
    expect(top('LICENSE')).toContain(descriptor.licenses[0]?.path);
  });

  test('lists every source', () => {
    expect(descriptor.sources.length).toBe(rowsOf({ path: 'sources.csv' }).length);
  });

  test('describes every table: columns in the order of the file, required ones never empty, allowed values alone', () => {
    expect(tabular.map(({ path }) => path).sort()).toEqual([...files.keys()].filter((path) => path.endsWith('.csv')).sort());
    for (const { path, type, schema } of tabular) {
      expect(type).toBe('table');
      const rows = rowsOf({ path });
      expect(Object.keys(rows[0] ?? {}), path).toEqual(schema?.fields.map(({ name }) => name));
      for (const { name, description, constraints } of schema?.fields ?? []) {
        expect(description.length, `${path} ${name}`).toBeGreaterThan(1);
        const cells = rows.map((row) => row[name] as string);
        if (constraints?.required) expect(cells.filter((cell) => cell === ''), `${path} ${name}`).toEqual([]);
        if (constraints?.unique) expect(new Set(cells).size, `${path} ${name}`).toBe(cells.length);
        if (constraints?.enum) expect(cells.filter((cell) => cell !== '' && !constraints.enum?.includes(cell)), `${path} ${name}`).toEqual([]);
      }
    }
  });

  test('has a primary key in every table that names each row once', () => {
    for (const { path, schema } of tabular) {
      const keys = rowsOf({ path }).map((row) => (schema?.primaryKey ?? []).map((column) => row[column]).join('\n'));
      expect(schema?.primaryKey.length, path).toBeGreaterThan(0);
      expect(new Set(keys).size, path).toBe(keys.length);
    }
  });

  test('has foreign keys that all lead to a row', () => {
    let followed = 0;
    for (const { name: own, path, schema } of tabular) {
      for (const { fields, reference } of schema?.foreignKeys ?? []) {
        const target = tabular.find(({ name }) => name === (reference.resource ?? own)) as Resource;
        expect(target, `${path} ${fields}`).toBeDefined();
        const known = new Set(rowsOf(target).map((row) => reference.fields.map((column) => row[column]).join('\n')));
        const given = rowsOf({ path }).map((row) => fields.map((column) => row[column]).join('\n')).filter((key) => key !== '');
        followed += given.length;
        expect(given.filter((key) => !known.has(key)), `${path} ${fields}`).toEqual([]);
      }
    }
    expect(followed).toBeGreaterThan(500);
  });
});
