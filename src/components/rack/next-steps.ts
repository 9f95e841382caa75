/** Where a keeper goes with an item. */
import type { Item } from '../../rack/types.ts';

/** The page of the verdict on one sling. @param base folder of the site, with its closing slash */
export const retireHref = (_item: Item, base: string): string => `${base}retire/`;

/** Who can replace a sling. */
export const replaceHref = (base: string): string => `${base}replace/`;
