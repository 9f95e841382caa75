/** The words of the trade that the site uses: `content/terms/<id>.mdx`, each a name and its meaning, and prose where there is more to say. */
import { z } from 'zod';
import type { Fault, Position } from './fault.ts';
import type { FileMap } from './files.ts';
import { readFronted } from './front-matter.ts';
import { slug } from './schema.ts';
import type { Path } from './yaml.ts';

/** Front matter of a term. */
export const term = z.strictObject({
  /** The word, in the singular, in lower case unless it is an abbreviation. */
  name: z.string().min(1),
  /** Other names of the same thing. Prose links them too. */
  also: z.array(z.string().min(1)).default([]),
  /** The words that prose links, where name and other names will not do: a verb is spelled like the noun, say. Empty: none. */
  forms: z.array(z.string().min(1)).optional(),
  /** What it is, in one sentence that closes with a full stop. */
  meaning: z.string().regex(/^[^.]+\.$/, 'is not one sentence with its full stop'),
  /** Standards or other sources whose use of the word this is. */
  sources: z.array(slug).default([]),
});
export type TermFields = z.output<typeof term>;

/** A term as pages show it. */
export interface Term extends TermFields {
  /** Name of its file, and its anchor on `/terms/`. */
  id: string;
  file: string;
  /** Whether prose follows the meaning: then it has a page of its own. */
  more: boolean;
  at(path?: Path): Position;
}

/** All terms by id, and what is wrong with their front matter. A term with a fault is absent. */
export function readTerms(files: FileMap): { terms: Map<string, Term>; faults: Fault[] } {
  const { texts, faults } = readFronted(files, 'terms', 'term', term);
  return { terms: new Map([...texts].map(([id, { file, fields, hasProse, at }]) => [id, { ...fields, id, file, more: hasProse, at }])), faults };
}

/** The words by which prose speaks of a term, without their plurals. */
export function formsOf({ name, also, forms }: Pick<Term, 'name' | 'also' | 'forms'>): readonly string[] {
  return forms ?? [name, ...also];
}
