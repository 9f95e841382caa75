/** Sources as a table. */
import { source, type SourceRecord } from '../../../records/schema.ts';
import type { SiteRecords } from '../../records.ts';
import { makeTable, type Table } from '../table.ts';

type Row = SourceRecord & { id: string };

/** One row a source, in the terms of the Citation Style Language. */
export function sourcesTable({ sources }: SiteRecords): Table {
  return makeTable<Row>({
    name: 'sources', title: 'Sources', key: ['id'],
    says: 'One row for each standard, report, article, law or post that figures come from.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the source: author or body, and year.', of: ({ id }) => id },
      { name: 'type', type: 'string', required: true, among: source.shape.type.options, says: 'Kind of source.', of: ({ type }) => type },
      { name: 'title', type: 'string', required: true, says: 'Title.', of: ({ title }) => title },
      { name: 'authors', type: 'string', required: true, says: 'Authors, separated by semicolons.', of: ({ authors }) => authors.join('; ') },
      { name: 'publisher', type: 'string', says: 'Publisher or issuing body, when it is not the author.', of: ({ publisher }) => publisher },
      { name: 'container', type: 'string', says: 'Journal, site or collection that it stands in.', of: ({ container }) => container },
      { name: 'number', type: 'string', says: 'Number of a standard, report or law.', of: ({ number }) => number },
      { name: 'edition', type: 'string', says: 'Edition.', of: ({ edition }) => edition },
      { name: 'issued', type: 'string', required: true, says: 'Year, month or day of issue, or unknown.', of: ({ issued }) => issued },
      { name: 'language', type: 'string', required: true, says: 'Language, by its code of two letters.', of: ({ language }) => language },
      { name: 'url', type: 'string', says: 'Where it can be read.', of: ({ url }) => url },
      { name: 'doi', type: 'string', says: 'Its digital object identifier.', of: ({ doi }) => doi },
      { name: 'free', type: 'boolean', required: true, says: 'Whether it can be read without paying.', of: ({ free }) => free },
      { name: 'informal', type: 'string', says: 'Says that the test is informal, and how.', of: ({ informal }) => informal },
      { name: 'checked', type: 'date', required: true, says: 'Day on which it was last looked at.', of: ({ checked }) => checked },
      { name: 'note', type: 'string', says: 'Note.', of: ({ note }) => note },
    ],
  }, [...sources].map(([id, record]) => ({ id, ...record })));
}
