/** Where a keeper goes with an item. */

/** The page of the verdict on one sling. @param base folder of the site, with its closing slash */
export const retireHref = (base: string): string => `${base}retire/`;

/** Who can replace a sling. */
export const replaceHref = (base: string): string => `${base}replace/`;
