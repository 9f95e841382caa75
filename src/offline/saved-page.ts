/** What the worker writes into pages that it answers from its own copy. Text in, text out. */

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/** A day in markup, from text that begins with `yyyy-mm-dd`; null where it does not, or names no day. */
function dayMarkup(text: string): string | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})/.exec(text) ?? [];
  const name = MONTHS[Number(month) - 1];
  return name && Number(day) >= 1 && Number(day) <= 31 ? `<time datetime="${year}-${month}-${day}">${Number(day)} ${name} ${year}</time>` : null;
}

/** The day that a host said when it sent something, `yyyy-mm-dd`: its clock counts, not the reader's. Null where it said none. */
export function dayOfHost(header: string | null): string | null {
  const time = header === null ? Number.NaN : Date.parse(header);
  return Number.isNaN(time) ? null : new Date(time).toISOString().slice(0, 10);
}

/** Version of the evidence that a page names at its foot; null where it names none. */
export const evidenceOf = (html: string): string | null => /Evidence <span data-id[^>]*>(\d{4}-\d{2}-\d{2}\.\d+)/.exec(html)?.[1] ?? null;

/** Title of a page without the name of the site. */
export const titleOf = (html: string): string => (/<title>([^<]*)<\/title>/.exec(html)?.[1] ?? '').replace(/ - [^-]*$/, '').replaceAll('&#39;', '\'').replaceAll('&quot;', '"').replaceAll('&lt;', '<').replaceAll('&gt;', '>').replaceAll('&amp;', '&');

/**
 * A page with a line at its top that says whose copy it is.
 * @param evidence version of the evidence, or null
 * @param keptOn day on which the copy was fetched, `yyyy-mm-dd`, or null where nobody knows
 */
export function withSavedLine(html: string, evidence: string | null, keptOn: string | null): string {
  const [of, on] = [dayMarkup(evidence ?? ''), dayMarkup(keptOn ?? '')];
  const line = `<div class="head" role="note"><span><b>Saved copy${of ? ` of ${of}` : ''}</b>${on ? `, fetched on ${on}` : ''}.</span></div>`;
  const place = /<header\b/.exec(html) ?? /<main\b/.exec(html);
  return place ? html.slice(0, place.index) + line + html.slice(place.index) : html + line;
}

/** A visited page, for the list of what is kept: where it stands, and its title. */
export interface Visited { address: string; title: string }

/** The page that says that nothing is kept, with the visited pages in its list, the newest first. */
export function withVisited(html: string, visited: readonly Visited[]): string {
  if (visited.length === 0) return html;
  const items = visited.map(({ address, title }) => `<li><a href="${escaped(address)}">${escaped(title || address)}</a></li>`).join('');
  return html.replace(/<div id="visited"[^>]*><\/div>/, () => `<h2>Pages that you opened</h2><ul>${items}</ul>`);
}

/** What is said where even that page is gone: the browser has deleted what was kept. */
export const LAST_WORD = '<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>No network</title></head><body><main><h1>No network</h1><p>The page did not arrive, and the saved copy of this site is no longer on the device. Browsers delete such copies when they need room. Load the page again where there is a network.</p></main></body></html>';
