/** Scores of the model on the records, for the page that shows them. */
import { type Scores, score } from '../evidence/scoring.ts';
import { figureBook } from './figures/figures.ts';
import { siteRecords } from './records.ts';

let cached: Scores | undefined;

/** Every study that can be predicted from others, predicted; computed once. */
export function modelScores(): Scores {
  if (cached) return cached;
  const { factors, classes } = siteRecords();
  cached = score({ factors: Object.fromEntries(factors), classes: Object.fromEntries(classes), figures: Object.fromEntries(figureBook().values) });
  return cached;
}
