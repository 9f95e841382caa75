/**
 * Typed links in a page's head by which a program finds what to cite, what describes it, its files, licence and type.
 * They follow level 1 of the FAIR Signposting Profile: one `cite-as`, one `describedby` or more and each `item` with its
 * media type, at most one `license` (an address of the SPDX list where there is one), and first a `type` of schema.org,
 * then `AboutPage` where the page only leads to the thing and is not the thing itself.
 * Source: https://signposting.org/FAIR/, section 2.1.1, version of 2 October 2023.
 */
import type { Citable, Cited } from './citable.ts';
import type { DataFileLink } from './json-ld.ts';

/** A link of a head. */
export interface TypedLink { rel: 'cite-as' | 'describedby' | 'item' | 'license' | 'type'; href: string; type?: string }

const TYPES: Readonly<Record<Cited, string>> = { site: 'Dataset', figure: 'Dataset', series: 'Dataset', comparison: 'Report', lesson: 'LearningResource', kit: 'LearningResource' };

/**
 * The links of a page.
 * @param describedBy files with this citation, at least one
 * @param items files with the thing's content
 * @param isLanding whether the content stands in the files rather than on the page
 * Throws a RangeError where the thing has no address, or nothing describes it.
 */
export function typedLinks({ what, own }: Citable, describedBy: readonly DataFileLink[], items: readonly DataFileLink[], isLanding: boolean): TypedLink[] {
  if (!own.url) throw new RangeError('own.url: must be an address');
  if (describedBy.length === 0) throw new RangeError('describedBy: must name at least one file');
  const file = (rel: TypedLink['rel']) => ({ url, mediatype }: DataFileLink): TypedLink => ({ rel, href: url, type: mediatype });
  return [
    { rel: 'cite-as', href: own.url },
    { rel: 'type', href: `https://schema.org/${TYPES[what]}` },
    ...(isLanding ? [{ rel: 'type', href: 'https://schema.org/AboutPage' } as const] : []),
    ...(own.licence ? [{ rel: 'license', href: `https://spdx.org/licenses/${own.licence.name}` } as const] : []),
    ...describedBy.map(file('describedby')),
    ...items.map(file('item')),
  ];
}
