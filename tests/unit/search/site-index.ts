/** The index of the whole site, made once for the tests that search it. */
import { searchFigures } from '../../../src/build/search/figures.ts';
import { searchPages } from '../../../src/build/search/pages.ts';
import { type Outcome, searchIndex } from '../../../src/search/find.ts';

export const allPages = [...searchPages(), ...searchFigures()];
const index = searchIndex();
index.add(allPages);

/** What a search comes to. */
export const look = (typed: string): Outcome => index.find(typed);
/** Name of the first result. */
export const first = (typed: string): string | undefined => look(typed).found[0]?.page.title;
/** Addresses of the first few. */
export const paths = (typed: string, most = 3): string[] => look(typed).found.slice(0, most).map(({ page }) => page.path);
