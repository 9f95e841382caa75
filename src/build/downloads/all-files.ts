/** Every file of the folder `/data/`, made once for a build. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadEvidence, ROOT } from '../evidence.ts';
import { figureBook, type FigureBook } from '../figures/figures.ts';
import { type SiteRecords, siteRecords } from '../records.ts';
import { allSeries, type ShownSeries } from '../series/page.ts';
import { address } from '../site.ts';
import { allTables } from './all-tables.ts';
import { archive, archiveName } from './archive.ts';
import { type Citation, citationFile, type Content, citationText, dayOf, readCitation, type Release } from './citation.ts';
import { csvText } from './csv.ts';
import { dataPackage } from './data-package.ts';
import { type DataFile, sha256, textFile } from './file.ts';
import { jsonText } from './json.ts';
import { recordJsonSchemas, tableJsonSchema } from './json-schema.ts';
import { readme } from './readme.ts';
import type { Table } from './table.ts';

/** The folder, and what its page says of it. */
export interface Downloads {
  tables: readonly Table[];
  /** Names of the schemas of records. */
  recordSchemas: readonly string[];
  /** Every file by its path below `/data/`. */
  files: ReadonlyMap<string, DataFile>;
  /** Name of the archive. */
  archive: string;
  release: Release;
  citation: Citation;
  /** The text to cite. */
  cite: string;
  content: Content;
}

/** What the files are made from: the records, and two files at the top of the project. */
export interface Origin {
  records: SiteRecords;
  book: FigureBook;
  /** Published series of breaks. */
  series: readonly ShownSeries[];
  release: Release;
  /** Text of `CITATION.cff`. */
  citationText: string;
  /** Text of `LICENSE`. */
  licenceText: string;
}

const prettyJson = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`;

/** What some files have in them. */
function contentOf(files: readonly DataFile[], { sources, figures }: SiteRecords): Content {
  const days = [...sources.values(), ...figures.values()].flatMap((record) => ('checked' in record ? [record.checked] : []));
  return { hash: sha256(new TextEncoder().encode(files.map(({ path, bytes }) => `${sha256(bytes)}  ${path}\n`).join(''))), checked: days.sort().at(-1) ?? 'unknown' };
}

/** Makes every file. The same origin gives the same bytes. */
export function makeDownloads({ records, book, series, release, citationText: cff, licenceText }: Origin): Downloads {
  const citation = readCitation(cff);
  const tables = allTables(records, book, series);
  const schemas = recordJsonSchemas();
  const described = [
    ...tables.flatMap((table) => [
      textFile(`${table.name}.csv`, 'text/csv', table.says, csvText(table)),
      textFile(`${table.name}.json`, 'application/json', `The same rows as ${table.name}.csv, with numbers as numbers. Its shape is schemas/tables/${table.name}.json.`, jsonText(table)),
    ]),
    ...tables.map((table) => textFile(`schemas/tables/${table.name}.json`, 'application/schema+json', `JSON Schema of ${table.name}.json.`, prettyJson(tableJsonSchema(table)))),
    ...[...schemas].map(([name, schema]) => textFile(`schemas/records/${name}.json`, 'application/schema+json', 'JSON Schema of one kind of record in the repository.', prettyJson(schema))),
  ];
  const content = contentOf(described, records);
  const descriptor = textFile('datapackage.json', 'application/json', 'Describes every other file.',
    prettyJson(dataPackage(described, tables, { citation, release, content, sources: records.sources.values() })));
  const packed = [
    ...described, descriptor,
    textFile('LICENSE', 'text/plain', 'Licence.', licenceText),
    textFile('CITATION.cff', 'text/yaml', 'Citation for tools.', citationFile(cff, release)),
    textFile('README.md', 'text/markdown', 'What the files are and how to cite them.', readme(tables, citation, release, content)),
  ];
  const name = archiveName(release.version);
  const zip: DataFile = { path: name, mediatype: 'application/zip', says: 'All files in one archive.', bytes: archive(packed, release.day) };
  return {
    tables, recordSchemas: [...schemas.keys()], release, citation, archive: name, cite: citationText(citation, release), content,
    files: new Map([...described, descriptor, zip].map((file) => [file.path, file])),
  };
}

let made: Downloads | undefined;

/** The folder `/data/` of the project that is built. */
export function downloads(): Downloads {
  if (made) return made;
  const top = (name: string): string => readFileSync(join(ROOT, name), 'utf8');
  const cff = top('CITATION.cff');
  const { version } = loadEvidence();
  made = makeDownloads({
    records: siteRecords(), book: figureBook(), series: [...allSeries().values()].filter(({ invented }) => !invented), citationText: cff, licenceText: top('LICENSE'),
    release: { version, day: dayOf(version, readCitation(cff)), site: address('/') },
  });
  return made;
}
