/** Every internal address on a page leads to a built file, and its fragment to an id there. */
import { brief, type Fault, type Gate, type Page, resolveAddress, selectorOf, type Site } from './site.ts';

/** Attributes that hold an address. `srcset` holds several. */
const ADDRESSES = ['href', 'src', 'poster', 'action', 'component-url', 'renderer-url', 'before-hydration-url'];

export const links: Gate = {
  name: 'links',
  holds: 'every internal address and fragment leads somewhere',
  check: (site) => site.pages.flatMap((page) => checkPage(site, page)),
};

function checkPage(site: Site, page: Page): Fault[] {
  const faults: Fault[] = [];
  for (const attribute of ADDRESSES) {
    for (const element of page.document.querySelectorAll(`[${attribute}]`)) {
      const address = element.getAttribute(attribute) ?? '';
      const problem = problemOf(site, page, address);
      if (problem) faults.push({ page: page.path, message: `${attribute}="${brief(address)}" at ${selectorOf(element)}: ${problem}` });
    }
  }
  return faults;
}

/** What is wrong with an address, or null. Fragments of interactive pages are checked like any other. */
function problemOf(site: Site, page: Page, address: string): string | null {
  const target = resolveAddress(site, page, address);
  if (!target) return 'is no address.';
  if (!target.inside) {
    return /^(https?|mailto|data):/.test(target.url) ? null : `has a scheme no reader's browser opens (${target.url.split(':')[0]}).`;
  }
  const leads = site.page(target.path);
  if (!leads) {
    if (site.files.has(target.path)) return null;
    const slashless = site.page(`${target.path}/`);
    return slashless ? 'lacks its closing slash: write the address with one.' : `no page or file ${target.path} was built.${near(target.path, site.pages.map((p) => p.path))}`;
  }
  if (target.fragment === '' || target.fragment === 'top' || leads.ids.has(target.fragment)) return null;
  return `the page ${leads.path} has no id "${target.fragment}".${near(target.fragment, [...leads.ids])}`;
}

/** The names nearest to a missing one, to help find the slip. */
function near(missing: string, known: readonly string[]): string {
  if (known.length === 0) return ' It has no ids at all.';
  const pieces = missing.split(/[/#.-]+/).filter((piece) => piece.length > 1);
  const scored = known
    .map((name) => ({ name, shared: pieces.filter((piece) => name.includes(piece)).length }))
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared || a.name.length - b.name.length)
    .slice(0, 4)
    .map(({ name }) => name);
  const shown = scored.length > 0 ? scored : known.slice(0, 6);
  return ` ${scored.length > 0 ? 'Near it' : 'There are'}: ${shown.join(', ')}.`;
}
