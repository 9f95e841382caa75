/** The README of the archive: what the files are, how they are written, and how to cite them. */
import { type Citation, citationText, type Content, licenceOf, type Release } from './citation.ts';
import type { Table } from './table.ts';

/** How the files are written; the page of the folder says the same. */
export const CONVENTIONS: readonly string[] = [
  'An empty cell, or null in JSON, means: the source or the record does not say. It never means zero.',
  'A number stands as printed, with its unit in a column beside it or in the name of the column.',
  'Columns whose name closes with kn give a printed force in kN. The conversion is exact, by the definitions of the units.',
  'What a share is a share of stands in of or of_address. How we know a number stands in standing, how sure it is in certainty.',
  'A list stands in one cell, its values separated by spaces.',
  'In CSV, a text that a spreadsheet would run as a formula begins with an apostrophe. JSON has it without.',
  'CSV is comma-separated, with a head line, double quotes where needed, and CR LF at the close of each line.',
];

/** Stands in every file that is handed on. */
export const MAKER_FIRST = "The maker's instruction and a professional replacement come first.";

/** What nobody may read out of the numbers. */
export const CAUTION = `${MAKER_FIRST} No row tells you that a sling of yours will bear a load.`;

/** Markdown. */
export function readme(tables: readonly Table[], citation: Citation, release: Release, content: Content): string {
  const licence = licenceOf(citation);
  return [
    `# ${citation.title}`,
    `Evidence ${release.version}, ${new URL('data/', release.site).href}`,
    `Content ${content.hash}, records checked up to ${content.checked}. Records that the model does not read come without a new version of the evidence: two packages of one version may differ, and this hash tells them apart. It is the SHA-256 of the lines \`<hash>  <path>\` of all tables and schemas, in the order of \`datapackage.json\`.`,
    CAUTION,
    '## How to cite',
    citation.message,
    `> ${citationText(citation, release)}`,
    `Each figure has a page of its own with its source and an address that lasts: the address of the site, then figures/, then the id of the figure. For tools, \`CITATION.cff\` says the same.`,
    '## Licence',
    `${licence.title} (${licence.name}), ${licence.path} Name Second Sling, link the page, and say what you changed. \`LICENSE\` has the words in full. Figures quoted from a source remain subject to whatever rights their authors have; facts and numbers themselves are free.`,
    '## Tables',
    'Each table is there as CSV and as JSON with the same rows. `datapackage.json` describes every column (Data Package, version 2), and `schemas/` has a JSON Schema for each table and for each kind of record.',
    tables.map(({ name, says }) => `- \`${name}.csv\`, \`${name}.json\`: ${says}`).join('\n'),
    '## How the files are written',
    CONVENTIONS.map((line) => `- ${line}`).join('\n'),
  ].join('\n\n').concat('\n');
}
