/** The feed of changes against what RFC 4287 asks of a document, read by a parser that is not ours. */
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, test } from 'vitest';
import { type AtomFeed, atomFeed } from '../../../src/build/versions/atom-feed.ts';
import { uuidUrn } from '../../../src/build/citing/urn.ts';
import { hashOf } from '../../../src/build/versions/versions.ts';

const FEED: AtomFeed = Object.freeze({
  id: 'urn:uuid:00000000-0000-8000-8000-000000000000', title: 'Changes', author: 'The site', page: 'https://example.org/changes/', self: 'https://example.org/changes/feed.xml',
  entries: [
    { id: 'urn:uuid:00000000-0000-8000-8000-000000000002', title: 'Evidence 2026-12-01.1', day: '2026-12-01', page: 'https://example.org/changes/2026-12-01.1/', summary: 'Sling & "eye" <wire>, the maker\'s.' },
    { id: 'urn:uuid:00000000-0000-8000-8000-000000000001', title: 'Evidence 2026-11-25.1', day: '2026-11-25', page: 'https://example.org/changes/2026-11-25.1/', summary: 'The first.' },
  ],
});
const parse = (text: string) => new XMLParser({ ignoreAttributes: false, attributeNamePrefix: '@', isArray: (name) => name === 'entry' || name === 'link', parseTagValue: false }).parse(text).feed;

describe('the feed', () => {
  const text = atomFeed(FEED);
  const feed = parse(text);

  test('is well-formed XML in the namespace of Atom', () => {
    expect(XMLValidator.validate(text)).toBe(true);
    expect(feed['@xmlns']).toBe('http://www.w3.org/2005/Atom');
  });

  // RFC 4287, 4.1.1: exactly one id, title and updated; an author, as its entries have none; links to itself and to the page.
  test('has what a feed must have, once', () => {
    expect({ id: feed.id, title: feed.title, updated: feed.updated, author: feed.author }).toEqual({ id: FEED.id, title: 'Changes', updated: '2026-12-01T00:00:00Z', author: { name: 'The site' } });
    expect(feed.link.map((link: Record<string, string>) => [link['@rel'], link['@type'], link['@href']])).toEqual([
      ['self', 'application/atom+xml', 'https://example.org/changes/feed.xml'], ['alternate', 'text/html', 'https://example.org/changes/'],
    ]);
  });

  // RFC 4287, 4.1.2: id, title, updated; an entry without content has an alternate link.
  test('has what an entry must have, in the order given, with its signs kept', () => {
    expect(feed.entry.map((entry: Record<string, unknown>) => [entry['id'], entry['title'], entry['updated'], (entry['link'] as Record<string, string>[])[0]?.['@href']])).toEqual(
      FEED.entries.map(({ id, title, day, page }) => [id, title, `${day}T00:00:00Z`, page]),
    );
    expect(feed.entry[0].summary).toEqual({ '#text': 'Sling & "eye" <wire>, the maker\'s.', '@type': 'text' });
  });

  // RFC 4287, 3.3: moments as RFC 3339 writes them.
  test('its moments can be read as such', () => {
    for (const moment of [feed.updated, ...feed.entry.map((entry: { updated: string }) => entry.updated)]) expect(new Date(moment).toISOString().replace('.000', '')).toBe(moment);
  });

  test('was last updated on its newest day, wherever that entry stands', () => {
    expect(parse(atomFeed({ ...FEED, entries: [...FEED.entries].reverse() })).updated).toBe('2026-12-01T00:00:00Z');
  });

  test('leaves out the signs that XML forbids', () => {
    const odd = atomFeed({ ...FEED, title: 'A\u0000 \u000bfeed\ud800 of 10 \u2192 9 \u{1f9d7}' });
    expect(XMLValidator.validate(odd)).toBe(true);
    expect(parse(odd).title).toBe('A feed of 10 \u2192 9 \u{1f9d7}');
  });

  test.each<[string, Partial<AtomFeed>, string]>([
    ['without entries', { entries: [] }, 'entries: a feed without an entry has no day on which it was updated'],
    ['without a title', { title: ' ' }, 'title: is empty'],
    ['with a day that is none', { entries: [{ ...(FEED.entries[0] as AtomFeed['entries'][number]), day: '2026-02-30' }] }, 'day: is no day of the calendar (got 2026-02-30)'],
    ['with an entry that says nothing', { entries: [{ ...(FEED.entries[0] as AtomFeed['entries'][number]), summary: '' }] }, 'summary: is empty'],
  ])('%s is refused', (_what, part, message) => {
    expect(() => atomFeed({ ...FEED, ...part })).toThrow(new RangeError(message));
  });
});

describe('a name made from a hash', () => {
  // RFC 9562, appendix B.2: SHA-256 of the name www.example.com in the namespace of domain names.
  test('is that of the standard\'s own example', () => {
    expect(uuidUrn('5c146b143c524afd938a375d0df1fbf6fe12a66b645f72f6158759387e51f3c8')).toBe('urn:uuid:5c146b14-3c52-8afd-938a-375d0df1fbf6');
  });

  // RFC 9562, 4.1 and 4.2: the thirteenth digit is the version, the seventeenth begins with the bits 10.
  test('has version 8 and the variant of the standard, whatever the hash', () => {
    for (const text of ['', 'a', 'b', 'c', 'd', 'e']) expect(uuidUrn(hashOf(text))).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  test('is made from a hash alone', () => {
    expect(() => uuidUrn('5C14')).toThrow(new RangeError('sha256: is no hash of sixty-four hexadecimal digits (got 5C14)'));
  });
});
