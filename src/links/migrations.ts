/**
 * Older meanings of the keys, each turned into the next. The list only grows:
 * a step is never edited once a link has been made with it.
 */

/** Pieces of a link, decoded, in the order in which they stood: key, value, and the piece word for word. */
export type Pieces = readonly { key: string; value: string; piece: string }[];

/** One step: pieces in meaning `from`, rewritten so that they mean the same in meaning `from + 1`. */
export interface Migration {
  from: number;
  /** What changed, for the person who reads this list. */
  what: string;
  /** A changed default is written out here, so that an old link keeps its old default. */
  rewrite: (pieces: Pieces) => Pieces;
}

/** Append only. Empty while meaning 1 is the newest. */
export const MIGRATIONS: readonly Migration[] = [];

/**
 * Brings pieces from one meaning to the newest.
 * @param pieces decoded pieces
 * @param meaning the `v` of the link
 * @param steps the list to go through; the project's own unless a test gives another
 */
export function migrate(pieces: Pieces, meaning: number, steps: readonly Migration[] = MIGRATIONS): Pieces {
  return steps.filter((step) => step.from >= meaning).reduce((now, step) => step.rewrite(now), pieces);
}
