/** What others can show inside their own pages: where it stands, and the code to copy. */
import { address } from './site.ts';

/** One thing to embed. */
export interface Embed {
  /** Path of the page that is shown, beginning and closing with a slash. */
  path: string;
  /** Name of the frame, read out by programs that read pages aloud. */
  title: string;
  /** Height of the frame, px: the whole at the usual width. A narrower frame scrolls in itself. */
  heightPx: number;
}

/** Width of the frame where there is room, px. */
export const EMBED_WIDTH_PX = 640;

/** Paths of the kinds. */
export const comparisonEmbed = (ratingKn: number | null, eye: string | null, sling: string | null): string => `/embed/compare/${ratingKn}/${eye}/${sling}/`;
/** @param id `<source>/<result>` */
export const figureEmbed = (id: string): string => `/embed/figure/${id}/`;
export const chainEmbed = (method: string): string => `/embed/chain/${method}/`;
export const FALL_EMBED = '/embed/fall/';

/** Heights, px: what one of the kind needs at the usual width; a long table or comparison scrolls. */
export const EMBED_HEIGHT_PX = { comparison: 900, figure: 420, chain: 540, fall: 760 } as const;

/** What a frame lets the page do: open links in a tab of their own, which is then a page like any other. It needs no script. */
export const SANDBOX = 'allow-popups allow-popups-to-escape-sandbox';

const escaped = (text: string): string => text.replace(/[&<>"]/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** The code to copy: a frame that is as wide as there is room, sends no address along and runs nothing. */
export function embedCode({ path, title, heightPx }: Embed): string {
  return `<iframe src="${address(path)}" title="${escaped(title)}" width="${EMBED_WIDTH_PX}" height="${heightPx}" style="max-width: 100%; border: 0" loading="lazy" referrerpolicy="no-referrer" sandbox="${SANDBOX}"></iframe>`;
}
