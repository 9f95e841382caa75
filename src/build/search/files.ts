/** The two files that search fetches, each under a name that changes with its content: pages, and figures beside them. */
import { createHash } from 'node:crypto';
import type { SearchPage } from '../../search/pages.ts';
import { searchFigures } from './figures.ts';
import { searchPages } from './pages.ts';

/** One file: its name without ending, and its text. */
export interface SearchFile { name: string; text: string }

const fileOf = (kind: string, pages: readonly SearchPage[]): SearchFile => {
  const text = JSON.stringify(pages);
  return { name: `index-${kind}-${createHash('sha256').update(text, 'utf8').digest('hex').slice(0, 12)}`, text };
};

let made: { pages: SearchFile; figures: SearchFile } | undefined;

/** Both files. @param root the project's folder */
export function searchFiles(root = process.cwd()): { pages: SearchFile; figures: SearchFile } {
  made ??= { pages: fileOf('pages', searchPages(root)), figures: fileOf('figures', searchFigures()) };
  return made;
}
