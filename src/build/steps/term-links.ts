/**
 * Links terms in all prose while it is built. It stands before the integration that reads MDX, so that what it puts in
 * is read like any other link: no script, and nothing that a contributor has to write.
 */
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { linkTerms } from '../../records/prose/link-terms.ts';
import { linkedBefore, readTermBook, type TermBook } from '../terms.ts';

/** The integration. It must stand in front of `mdx()`. */
export function termLinks(): AstroIntegration {
  return {
    name: 'term-links',
    hooks: {
      'astro:config:setup': ({ config, updateConfig }) => {
        const root = fileURLToPath(config.root);
        const base = config.base.replace(/\/+$/, '');
        let book: TermBook | undefined;
        updateConfig({
          vite: {
            plugins: [{
              name: 'term-links',
              enforce: 'pre' as const,
              buildStart() {
                book = readTermBook(root);
              },
              transform: {
                filter: { id: /\/content\/.*\.mdx$/ },
                handler(code: string, id: string) {
                  book ??= readTermBook(root);
                  return { code: linkTerms(code, book.lexicon, base, linkedBefore(id, book)), map: null };
                },
              },
            }],
          },
        });
      },
    },
  };
}
