/** Words of the pages of series that need a record. */
import type { ShownSeries } from '../../build/series/page.ts';
import type { NoModel } from '../../build/series/model.ts';
import { countWord, withUnit } from '../../build/words.ts';
import { three } from './words.ts';

/** The finding as a heading: what was broken, and between which forces. */
export function seriesHeading({ record, analysis }: Pick<ShownSeries, 'record' | 'analysis'>): string {
  const { summary, pulls, atLeast } = analysis;
  const [least, most] = [three(summary.minimum), withUnit(three(summary.maximum), 'kN')];
  const between = summary.minimum === summary.maximum ? most : `${least} to ${most}`;
  const limits = atLeast > 0 ? `, ${countWord(atLeast)} of them lower limits` : '';
  return `${record.what}: ${between} in ${countWord(pulls)} ${pulls === 1 ? 'pull' : 'pulls'}${limits}`;
}

/** Why the model has no answer for a series. */
export const NO_MODEL_WORDS: Readonly<Record<NoModel, string>> = {
  method: 'It was not rigged as any method of the comparator is, so the model has no answer to set beside it.',
  bearing: 'What it was pulled over is no eye of a device, or its thickness is not known. So the model has no answer to set beside it.',
  sling: 'The comparator has no sling of this material, form and width.',
  state: 'The model speaks of new slings alone, and these were not new.',
  pull: 'The model speaks of one slow pull, and these were broken otherwise.',
  silent: 'The model gives no number for this rig.',
};
