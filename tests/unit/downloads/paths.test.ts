/** Paths and columns of `/data/` are a contract: paths.json lists all that were ever published, and only grows. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { downloads } from '../../../src/build/downloads/all-files.ts';
import { ROOT } from '../../support/step.ts';

const published = JSON.parse(readFileSync(join(ROOT, 'tests/unit/downloads/paths.json'), 'utf8')) as { paths: string[]; columns: Record<string, string[]> };
const { files, tables, archive } = downloads();
const built = [...files.keys()].map((path) => (path === archive ? 'second-sling-<version>.zip' : path));

test('every path that was ever published is still built', () => {
  expect(published.paths.filter((path) => !built.includes(path)), 'a path was dropped: build it again').toEqual([]);
});

test('every path that is built stands in the list', () => {
  expect(built.filter((path) => !published.paths.includes(path)), 'a new path: add it to paths.json').toEqual([]);
  expect(new Set(published.paths).size).toBe(published.paths.length);
});

test('every column that was ever published is still there', () => {
  const lost = Object.entries(published.columns).flatMap(([name, columns]) => {
    const fields = tables.find((table) => table.name === name)?.fields.map((field) => field.name) ?? [];
    return columns.filter((column) => !fields.includes(column)).map((column) => `${name}.${column}`);
  });
  expect(lost, 'a column was dropped or renamed: bring it back').toEqual([]);
});

test('every column stands in the list', () => {
  const more = tables.flatMap(({ name, fields }) => fields.filter((field) => !published.columns[name]?.includes(field.name)).map((field) => `${name}.${field.name}`));
  expect(more, 'a new column: add it to paths.json').toEqual([]);
});
