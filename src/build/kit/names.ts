/** Names that the page of the course kit and what packs it share. */

/** Path of the archive. */
export const KIT_PATH = '/teach/second-sling-course-kit.zip';
/** Path of its page, which is also its first page. */
export const KIT_PAGE = '/teach/kit/';
/** Stands on the page until the archive is packed and its size is known. */
export const SIZE_MARK = 'size not known until the site is built';
