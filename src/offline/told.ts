/** What the worker and the page `/offline/` say to each other. */

/** Why keeping failed. `changed`: the site was being replaced, so that its files did not fit together. */
export type FillFault = 'full' | 'network' | 'changed' | 'refused';

/** The worker's news of a set that it fills. */
export type Told = { is: 'filling'; done: number; of: number } | { is: 'kept' } | { is: 'failed'; why: FillFault; path: string };

/** The page asks a worker that is there already to fill its set again, because the browser has deleted it. */
export const FILL_AGAIN = 'fill again';

/** Name of the channel on which the worker tells. @param base folder of the site, with a slash at both ends */
export const channelOf = (base: string): string => `second-sling-offline ${base}`;

/** The note that makes a set whole: day on which it was fetched, or null, and version of its evidence. */
export interface CompleteNote { on: string | null; evidence: string }
