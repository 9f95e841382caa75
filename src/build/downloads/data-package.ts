/** The descriptor of the folder `/data/`: a Data Package of version 2 (https://datapackage.org/standard/data-package/). */
import type { SourceRecord } from '../../records/schema.ts';
import { type Citation, citationText, type Content, licenceOf, type Release } from './citation.ts';
import { type DataFile, sha256 } from './file.ts';
import type { Table } from './table.ts';
import { tableSchema } from './table-schema.ts';

const PROFILES = 'https://datapackage.org/profiles/2.0';
/** How the CSV files are written. */
const DIALECT = { header: true, delimiter: ',', lineTerminator: '\r\n', quoteChar: '"', doubleQuote: true, skipInitialSpace: false };

/** A source in words, and where it can be read. */
function sourceEntry({ authors, issued, title, number, url, doi }: SourceRecord): { title: string; path?: string } {
  const path = doi ? `https://doi.org/${doi}` : url;
  return { title: `${authors.join(', ')} (${issued === 'unknown' ? 'no date' : issued}). ${title}${number ? `, ${number}` : ''}`, ...(path ? { path } : {}) };
}

/** Name of a resource: the path without its ending for a table, with hyphens for all else. */
const nameOf = (path: string, isTable: boolean): string => (isTable ? path.replace(/\.csv$/, '') : path.replaceAll(/[/.]/g, '-'));

/**
 * The descriptor of some files. Each is named with its size and hash; each CSV of a table has the table's schema.
 * It does not name itself, nor the archive that it is packed in.
 */
export function dataPackage(
  files: readonly DataFile[],
  tables: readonly Table[],
  { citation, release, content, sources }: { citation: Citation; release: Release; content: Content; sources: Iterable<SourceRecord> },
): Record<string, unknown> {
  const keys = new Map(tables.map((table) => [table.name, table.key]));
  const byCsv = new Map(tables.map((table) => [`${table.name}.csv`, table]));
  return {
    $schema: `${PROFILES}/datapackage.json`,
    name: 'second-sling',
    title: citation.title,
    description: [
      citation.abstract.trim(), citation.message, `Cite this project as: ${citationText(citation, release)}`,
      'Figures quoted from a source remain subject to whatever rights their authors have; facts and numbers themselves are free.',
    ].join('\n\n'),
    version: release.version,
    created: `${release.day}T00:00:00Z`,
    // Beyond the standard: two packages of one version may differ in records that the model does not read.
    contentHash: `sha256:${content.hash}`,
    recordsChecked: content.checked,
    homepage: new URL('data/', release.site).href,
    keywords: citation.keywords,
    licenses: [licenceOf(citation)],
    contributors: citation.authors.map(({ name }) => ({ title: name, roles: ['maintainer'] })),
    sources: [...sources].map(sourceEntry),
    resources: files.map(({ path, mediatype, bytes, says }) => {
      const table = byCsv.get(path);
      return {
        ...(table ? { $schema: `${PROFILES}/dataresource.json` } : {}),
        name: nameOf(path, table !== undefined),
        ...(table ? { type: 'table', title: table.title } : {}),
        description: table?.says ?? says,
        path,
        format: path.replace(/^.*\./, ''),
        mediatype,
        encoding: 'utf-8',
        bytes: bytes.length,
        hash: `sha256:${sha256(bytes)}`,
        ...(table ? { dialect: DIALECT, schema: tableSchema(table, keys) } : {}),
      };
    }),
  };
}
