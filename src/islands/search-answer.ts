/** What answers a search: it comes with the index, not with the page. */
export { countSentence, Results } from '../components/search/results.tsx';
export { searchIndex } from '../search/find.ts';
