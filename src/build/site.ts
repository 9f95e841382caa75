/** What the whole site shares: its name, its address, and the one way to write a link inside it. */

export const siteName = 'Second Sling';

/**
 * Address of the repository that holds the site, without a closing slash; null when the builder named none.
 * Pages then speak of the issue list in words and link nowhere.
 */
export const repository: string | null = process.env['REPOSITORY_URL']?.replace(/\/+$/, '') || null;

/**
 * Makes the function that turns a path of the site into a link under `base`.
 * The path begins with a slash; what follows `#` or `?` is kept. Throws RangeError on a path without a slash.
 */
export function hrefUnder(base: string): (path: string) => string {
  const root = base.replace(/\/+$/, '');
  return (path) => {
    if (!path.startsWith('/')) throw new RangeError(`path: a link inside the site begins with a slash (got ${path})`);
    return `${root}${path}`;
  };
}

/** Link to a path of this site, whatever folder it is served from. */
export const href = hrefUnder(import.meta.env?.BASE_URL ?? process.env['BASE_PATH'] ?? '/');

/** Full address of a path of this site, for permanent links and citations. */
export function address(path: string): string {
  const site = import.meta.env?.SITE ?? process.env['SITE'] ?? 'http://localhost:4321';
  return new URL(href(path), site).href;
}

/** Page of a figure: `source/result` gives its page, `source/result#cell` the place on it. */
export function figurePath(id: string): string {
  const [record, cell] = id.split('#') as [string, string?];
  return `/figures/${record}/${cell ? `#${cell}` : ''}`;
}

/** One door or menu entry. */
export interface Door { name: string; path: string; says?: string }

/** The links that stand at the head of every page. */
export const headLinks: Door[] = [
  { name: 'Retire', path: '/retire/' },
  { name: 'Replace', path: '/replace/' },
  { name: 'Compare', path: '/compare/' },
  { name: 'Methods', path: '/methods/' },
  { name: 'Figures', path: '/figures/' },
  { name: 'Caution', path: '/caution/' },
];

/** Every room of the site, for the list at the foot of every page. */
export const allLinks: Door[] = [
  { name: 'Has the sling to go?', path: '/retire/' },
  { name: 'The register of a rack', path: '/rack/' },
  { name: 'Who can replace a sling', path: '/replace/' },
  { name: 'What a new sling costs', path: '/replace/cost/' },
  { name: 'Compare ways to attach one', path: '/compare/' },
  { name: 'What a fall loads', path: '/falls/' },
  { name: 'Methods', path: '/methods/' },
  { name: 'Materials', path: '/materials/' },
  { name: 'Guides', path: '/guides/' },
  { name: 'Lessons', path: '/teach/' },
  { name: 'Terms', path: '/terms/' },
  { name: 'Search', path: '/search/' },
  { name: 'A to Z', path: '/a-z/' },
  { name: 'Caution', path: '/caution/' },
  { name: 'Keep for the crag', path: '/offline/' },
  { name: 'Figures', path: '/figures/' },
  { name: 'Breaks', path: '/breaks/' },
  { name: 'Sources', path: '/sources/' },
  { name: 'Gaps', path: '/gaps/' },
  { name: 'The model', path: '/model/' },
  { name: 'Data', path: '/data/' },
  { name: 'Changes', path: '/changes/' },
  { name: 'Cite', path: '/cite/' },
  { name: 'Embed', path: '/embed/' },
  { name: 'Send', path: '/send/' },
  { name: 'About', path: '/about/' },
];
