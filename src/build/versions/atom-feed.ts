/** Writes a feed in the Atom format (RFC 4287). */
import { isDay } from '../day.ts';

export interface AtomEntry {
  /** A name that never changes, as an IRI. */
  id: string;
  title: string;
  /** Day of the last change that matters, yyyy-mm-dd. */
  day: string;
  /** Full address of the page. */
  page: string;
  /** Plain text. */
  summary: string;
}

export interface AtomFeed {
  id: string;
  title: string;
  author: string;
  /** Full addresses of the page that lists the same, and of the feed itself. */
  page: string;
  self: string;
  /** Newest first. */
  entries: readonly AtomEntry[];
}

/**
 * The feed as a document. It was last updated on the newest day of its entries.
 * Throws a RangeError where there is no entry, where a day is none, or where a text that must be there is empty.
 */
export function atomFeed({ id, title, author, page, self, entries }: AtomFeed): string {
  const newest = entries.map(({ day }) => day).sort().at(-1);
  if (newest === undefined) throw new RangeError('entries: a feed without an entry has no day on which it was updated');
  const lines = [
    '<?xml version="1.0" encoding="utf-8"?>',
    '<feed xmlns="http://www.w3.org/2005/Atom" xml:lang="en">',
    `  <id>${text('id', id)}</id>`,
    `  <title>${text('title', title)}</title>`,
    `  <updated>${moment(newest)}</updated>`,
    `  <author><name>${text('author', author)}</name></author>`,
    `  <link rel="self" type="application/atom+xml" href="${text('self', self)}"/>`,
    `  <link rel="alternate" type="text/html" href="${text('page', page)}"/>`,
    ...entries.flatMap((entry) => [
      '  <entry>',
      `    <id>${text('id', entry.id)}</id>`,
      `    <title>${text('title', entry.title)}</title>`,
      `    <updated>${moment(entry.day)}</updated>`,
      `    <link rel="alternate" type="text/html" href="${text('page', entry.page)}"/>`,
      `    <summary type="text">${text('summary', entry.summary)}</summary>`,
      '  </entry>',
    ]),
    '</feed>',
  ];
  return `${lines.join('\n')}\n`;
}

/** The beginning of a day, as RFC 3339 writes a moment. */
function moment(day: string): string {
  if (!isDay(day)) throw new RangeError(`day: is no day of the calendar (got ${day})`);
  return `${day}T00:00:00Z`;
}

const SIGNS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };

/** A text as XML may have it: its own signs spelled out, and without the signs that it forbids. */
function text(name: string, raw: string): string {
  if (raw.trim() === '') throw new RangeError(`${name}: is empty`);
  const allowed = [...raw].filter((sign) => /[\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/u.test(sign)).join('');
  return allowed.replace(/[&<>"']/g, (sign) => SIGNS[sign] as string);
}
