/** The archive of `/data/`, opened by a reader that did not pack it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import { afterEach, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { downloads } from '../../../src/build/downloads/all-files.ts';
import { archive, archiveName } from '../../../src/build/downloads/archive.ts';
import { ROOT } from '../../support/step.ts';
import { unzip } from '../../support/unzip.ts';

const made = downloads();
const entries = unzip(made.files.get(made.archive)?.bytes as Uint8Array);
const entry = (path: string): string => entries.find((one) => one.path === path)?.bytes.toString('utf8') ?? '';

describe('the archive', () => {
  test('has every file of the folder with the same bytes, and the sums are right', () => {
    for (const [path, { bytes }] of made.files) {
      if (path === made.archive) continue;
      const found = entries.find((one) => one.path === path);
      expect(found?.bytes.equals(Buffer.from(bytes)), path).toBe(true);
    }
    for (const { path, bytes, crc } of entries) expect(crc32(bytes), path).toBe(crc);
    expect(entries.map(({ path }) => path).filter((path) => !made.files.has(path))).toEqual(['CITATION.cff', 'LICENSE', 'README.md']);
  });

  test('has the licence word for word, and the citation with the version and day of the evidence', () => {
    expect(entry('LICENSE')).toBe(readFileSync(join(ROOT, 'LICENSE'), 'utf8'));
    const { version, 'date-released': day, ...rest } = parse(entry('CITATION.cff')) as Record<string, unknown>;
    const { version: _v, 'date-released': _d, ...own } = parse(readFileSync(join(ROOT, 'CITATION.cff'), 'utf8')) as Record<string, unknown>;
    expect(rest).toEqual(own);
    expect(version).toBe(made.release.version);
    expect(day).toBe(made.release.version.slice(0, 10));
  });

  test('its README says how to cite, the licence, every table, and that the maker comes first', () => {
    const readme = entry('README.md');
    expect(readme).toContain(made.cite);
    expect(readme).toContain('https://creativecommons.org/licenses/by/4.0/');
    expect(readme).toContain("The maker's instruction and a professional replacement come first.");
    for (const { name } of made.tables) expect(readme).toContain(`\`${name}.csv\``);
  });

  test('is in the order of its paths, each dated noon of the day of the version', () => {
    const paths = entries.map(({ path }) => path);
    expect(paths).toEqual([...paths].sort());
    // MS-DOS format: seven bits of years since 1980, four of months, five of days; five bits of hours, six of minutes.
    const [year, month, day] = made.release.day.split('-').map(Number) as [number, number, number];
    for (const { date, time } of entries) expect([1980 + (date >> 9), (date >> 5) & 15, date & 31, time >> 11, (time >> 5) & 63]).toEqual([year, month, day, 12, 0]);
  });
});

describe('the same files', () => {
  const zone = process.env['TZ'];
  afterEach(() => {
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
  });

  test('give the same archive in every time zone and in any order', () => {
    const files = [{ path: 'b.csv', bytes: new TextEncoder().encode('b\r\n') }, { path: 'a.csv', bytes: new TextEncoder().encode('a\r\n') }];
    const hours = new Set<number>();
    const archives = ['Pacific/Kiritimati', 'America/Los_Angeles', 'UTC'].map((name) => {
      process.env['TZ'] = name;
      hours.add(new Date(0).getHours());
      return Buffer.from(archive(files, '2026-11-25')).toString('hex');
    });
    expect(hours.size).toBe(3);
    expect(new Set([...archives, Buffer.from(archive([...files].reverse(), '2026-11-25')).toString('hex')]).size).toBe(1);
  });

  test('are named by the version, in letters that no host reads otherwise', () => {
    expect(archiveName('2026-11-25.1')).toBe('second-sling-2026-11-25.1.zip');
    expect(archiveName('2026-11-25.1+')).toBe('second-sling-2026-11-25.1-changed.zip');
    expect(made.archive).toMatch(/^[a-z0-9.-]+$/);
  });
});
