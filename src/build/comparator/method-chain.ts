/** The load path of a method as a drawing shows it, with the link marked that most often goes first in the method's example. */
import type { ChainLink } from '../../drawings/chain.tsx';
import { type MethodExample, methodExample } from './method-strength.ts';
import { siteRecords } from '../records.ts';

const LETTERS = { device: 'D', knot: 'K', connector: 'C', eye: 'E', sling: 'S' } as const;

/** Without an example no link is marked. @throws RangeError where no method has the id */
export function methodChain(id: string): { links: ChainLink[]; example: MethodExample | null } {
  const method = siteRecords().methods.get(id);
  if (!method) throw new RangeError(`id: no method has the id ${id}`);
  const example = methodExample(id);
  const weakest = example?.row.strip ? example.row.links.reduce((most, link) => (link.first > most.first ? link : most)) : null;
  const links = example
    ? example.row.links.map((link) => ({ letter: link.letter, isWeakest: link === weakest }))
    : method.links.map(({ part }) => ({ letter: LETTERS[part as keyof typeof LETTERS] ?? 'S', isWeakest: false }));
  return { links, example };
}
