/** Files below `/cite/` with the citations of one kind of thing: names, media types, and text. */
import { bibtex } from '../../citing/bibtex.ts';
import type { Citable, Cited, Work } from '../../citing/citable.ts';
import { cslJson } from '../../citing/csl-json.ts';
import type { DataFileLink } from '../../citing/json-ld.ts';
import { ris } from '../../citing/ris.ts';
import { worksInOneFile } from './citations.ts';
import { address } from '../site.ts';

interface Format { name: string; extension: string; mediatype: string; write: (works: readonly Work[]) => string }

/** Formats with the media types that the FAIR Signposting Profile lists. */
export const FORMATS: readonly Format[] = [
  { name: 'BibTeX', extension: 'bib', mediatype: 'application/x-bibtex', write: bibtex },
  { name: 'RIS', extension: 'ris', mediatype: 'application/x-research-info-systems', write: ris },
  { name: 'CSL-JSON', extension: 'json', mediatype: 'application/vnd.citationstyles.csl+json', write: cslJson },
];

/** Name of the files of a kind, without the extension. */
export const FILE_NAMES = { site: 'site', figure: 'figures', series: 'series', comparison: 'comparisons', lesson: 'lessons', kit: 'course-kit' } as const satisfies Partial<Record<Cited, string>>;
export type CitedInFiles = keyof typeof FILE_NAMES;

/** Addresses of the files that have the citations of a kind. Throws a RangeError where the site has no such file. */
export function citationFiles(what: Cited): DataFileLink[] {
  const name = (FILE_NAMES as Partial<Record<Cited, string>>)[what];
  if (!name) throw new RangeError(`what: no file has the citations of a ${what}`);
  return FORMATS.map(({ extension, mediatype }) => ({ url: address(`/cite/${name}.${extension}`), mediatype }));
}

/** Text of one file. */
export const citationFileText = (format: Format, citables: readonly Citable[]): string => format.write(worksInOneFile(citables));
