/** Guides in the order in which they are listed. */
import type { MDXInstance } from 'astro';

/** Front matter of `content/guides/<id>.mdx`. */
export interface GuideFields {
  /** The guide's title. */
  title: string;
  /** What a reader finds in it, in one sentence. */
  says: string;
  /** Place in the list. */
  order: number;
}

/** A guide: its id, which is the name of its file, its front matter and its prose. */
export interface Guide extends GuideFields {
  id: string;
  Content: MDXInstance<GuideFields>['Content'];
}

/** Guides from the modules of their files. Throws a RangeError that names the file where the front matter lacks a field. */
export function guidesFrom(modules: Readonly<Record<string, MDXInstance<GuideFields>>>): Guide[] {
  return Object.entries(modules)
    .map(([file, { frontmatter, Content }]) => {
      const { title, says, order } = frontmatter;
      if (!title || !says || typeof order !== 'number') throw new RangeError(`${file}: a guide has title, says and order`);
      return { id: file.replace(/^.*\/|\.mdx$/g, ''), title, says, order, Content };
    })
    .sort((a, b) => a.order - b.order);
}
