/** Every number on every page leads to its figure, or to a working whose leaves are figures. */
import type { HTMLElement } from 'node-html-parser';
import { quantitiesIn, type TreeNode } from './bare-quantities.ts';
import { brief, type Fault, type Gate, type Page, resolveAddress, type Site } from './site.ts';

const ADVICE =
  'Print it with <Fig id>, or put it inside data-working="<id of the working>", data-input, data-axis, data-id, <time> or <cite>, or spell a counting word out.';

export const provenance: Gate = {
  name: 'provenance',
  holds: 'every number leads to its figure or to a working made of figures',
  check: (site) => site.pages.flatMap((page) => checkPage(site, page).map((message) => ({ page: page.path, message }) satisfies Fault)),
};

function checkPage(site: Site, page: Page): string[] {
  const faults: string[] = [];
  const found = quantitiesIn(page.document as unknown as TreeNode);
  for (const { text, where, in: kind } of found.bare) {
    faults.push(`"${brief(text, 70)}" (${kind === 'text' ? '' : `${kind} of `}${where}) is a number without an origin. ${ADVICE}`);
  }
  for (const { marker, where, holds } of found.wide) {
    faults.push(`${marker} at ${where} holds a <${holds}>: it covers more than a quantity. Mark the quantity itself.`);
  }
  for (const { target, where } of found.workings) {
    const problem = workingProblem(site, page, target);
    if (problem) faults.push(`data-working="${target}" (${where}) ${problem}`);
  }
  for (const { href, text, where } of found.figures) {
    const problem = figureProblem(site, page, href);
    if (problem) faults.push(`"${brief(text, 40)}" (${where}) links to ${href}, ${problem}`);
  }
  return [...new Set([...faults, ...headFaults(page)])];
}

/** A working stands on this page (`id`) or another (`/page/#id`), and holds at least one link to a figure that exists. */
function workingProblem(site: Site, page: Page, target: string): string | null {
  const resolved = resolveAddress(site, page, target.includes('#') ? target : `#${target}`);
  if (target === '' || !resolved?.inside) return 'names no working. Give the id of an element, or page#id.';
  const holder = site.page(resolved.path);
  if (!holder) return `leads to ${resolved.path}, which was not built.`;
  const working = holder.document.querySelectorAll('[id]').find((element) => element.getAttribute('id') === resolved.fragment);
  if (!working) return `leads to an id "${resolved.fragment}" that ${holder.path} does not have.`;
  const leaves = linksToFigures(working);
  if (leaves.length === 0) return `leads to a working (${holder.path}#${resolved.fragment}) without a link to a figure.`;
  const broken = leaves.map((href) => figureProblem(site, holder, href)).find((problem) => problem !== null);
  return broken ? `leads to a working with a figure link, ${broken}` : null;
}

const linksToFigures = (element: HTMLElement): string[] =>
  [element, ...element.querySelectorAll('a[href]')].map((link) => link.getAttribute('href') ?? '').filter((href) => /(?:^|\/)figures\/[a-z0-9-]+\/[a-z0-9-]+\/(?:#|$)/.test(href));

/** A figure's page was built, and has the cell that the link names. */
function figureProblem(site: Site, page: Page, href: string): string | null {
  const target = resolveAddress(site, page, href);
  if (!target?.inside) return 'which is no page of this site.';
  const figure = site.page(target.path);
  if (!figure) return `but no page ${target.path} was built.`;
  if (target.fragment !== '' && !figure.ids.has(target.fragment)) return `but ${target.path} has no cell "${target.fragment}".`;
  return null;
}

/** Numbers in a head cannot carry a link: each must stand in the body too, where it does. */
function headFaults(page: Page): string[] {
  const body = page.document.querySelector('body')?.textContent ?? '';
  const known = new Set(numbersIn(body));
  const texts = [
    ['title', page.document.querySelector('head > title')?.textContent ?? ''],
    ...page.document
      .querySelectorAll('head > meta')
      .map((meta) => [meta.getAttribute('name') ?? meta.getAttribute('property') ?? '', meta.getAttribute('content') ?? ''] as const)
      .filter(([name]) => /(?:description|title|image:alt)$/.test(name)),
  ] as const;
  return texts.flatMap(([name, text]) =>
    numbersIn(text)
      .filter((number) => !known.has(number))
      .map((number) => `the ${name} says ${number} ("${brief(text, 60)}"), which the page itself does not show. Show it in the body with its origin, or leave it out.`),
  );
}

const numbersIn = (text: string): string[] => text.match(/\p{Nd}+(?:[.,]\p{Nd}+)?/gu) ?? [];
