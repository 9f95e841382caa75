/** How the data is cited and under what licence it stands: what `CITATION.cff` says, with the version of the evidence. */
import { parse } from 'yaml';
import type { Work } from '../../citing/citable.ts';
import { authorDate } from '../../citing/text-author-date.ts';
import { siteName } from '../site.ts';

/** The part of `CITATION.cff` (format 1.2.0) that is used here. */
export interface Citation {
  title: string;
  /** What comes before citing us. */
  message: string;
  license: string;
  abstract: string;
  keywords: string[];
  authors: { name: string }[];
  'date-released': string;
}

/**
 * What the files have in them, beside the version of the evidence: records that the model does not read come and change
 * without a new version, so two sets of files of one version may differ.
 */
export interface Content {
  /** SHA-256 over the list of hashes of all tables and schemas: a line `<hash>  <path>` each, in the order of the descriptor. */
  hash: string;
  /** Latest day on which the source of a record in them was looked at. */
  checked: string;
}

/** What one set of files is. */
export interface Release {
  /** Version of the evidence; a plus sign at its end says that records changed since it was frozen. */
  version: string;
  /** Day of that version, as year-month-day. */
  day: string;
  /** Address of the site. */
  site: string;
}

const LICENCES: Readonly<Record<string, { path: string; title: string }>> = {
  'CC-BY-4.0': { path: 'https://creativecommons.org/licenses/by/4.0/', title: 'Creative Commons Attribution 4.0 International' },
};

/** Reads `CITATION.cff`. Throws a RangeError where it names a licence that is not described here. */
export function readCitation(text: string): Citation {
  const citation = parse(text) as Citation;
  if (!LICENCES[citation.license]) throw new RangeError(`CITATION.cff: license ${citation.license} is none of ${Object.keys(LICENCES).join(', ')}`);
  return citation;
}

/** The licence of the data, as a Data Package names it. */
export function licenceOf({ license }: Pick<Citation, 'license'>): { name: string; path: string; title: string } {
  return { name: license, ...(LICENCES[license] as { path: string; title: string }) };
}

/** Day of a version of the evidence; the day of the citation file where there is no version yet. */
export function dayOf(version: string, citation: Pick<Citation, 'date-released'>): string {
  return /^\d{4}-\d{2}-\d{2}/.exec(version)?.[0] ?? citation['date-released'];
}

/** The site and its data as a work to cite: all that `CITATION.cff` says, at the version, the day and the address of a release. */
export function siteWork(citation: Citation, { version, day, site }: Release): Work {
  const { name, path } = licenceOf(citation);
  return {
    key: 'second-sling', type: 'dataset', title: citation.title, authors: citation.authors.map((author) => ({ literal: author.name })), issued: day,
    publisher: siteName, version, url: site, language: 'en', licence: { name, url: path },
  };
}

/** The text to cite, the same as on the page Cite. */
export function citationText(citation: Citation, release: Release): string {
  return authorDate(siteWork(citation, release));
}

/** `CITATION.cff` for the files of one version: the evidence's version and day in place of the project's. */
export function citationFile(text: string, { version, day }: Pick<Release, 'version' | 'day'>): string {
  return text.replace(/^version:.*$/m, `version: "${version}"`).replace(/^date-released:.*$/m, `date-released: "${day}"`);
}
