/** How far a word that is typed may lie from one that is meant. */

/**
 * Edits between two words: a letter wrong, missing or too many, and two neighbours swapped, count one each.
 * Infinity where there are more than `most`. (Optimal string alignment.)
 */
export function edits(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return Number.POSITIVE_INFINITY;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((row[j - 1] as number) + 1, (last[j] as number) + 1, (last[j - 1] as number) + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, (before[j - 2] as number) + 1);
      row.push(best);
      least = Math.min(least, best);
    }
    if (least > most) return Number.POSITIVE_INFINITY;
    before = last;
    last = row;
  }
  const all = last[b.length] as number;
  return all > most ? Number.POSITIVE_INFINITY : all;
}

/** Edits that a word may be off: none in numbers and in words below four letters, one up to seven letters, two from eight on. */
export function editsAllowed(word: string): number {
  if (/\p{N}/u.test(word) || word.length < 4) return 0;
  return word.length < 8 ? 1 : 2;
}

/** A word that may be meant, and how far it lies. */
export interface NearWord { word: string; off: number }

/** The words of a vocabulary that lie within `most` edits, the nearest first, then by alphabet. */
export function nearWords(word: string, vocabulary: Iterable<string>, most: number = editsAllowed(word)): NearWord[] {
  const near: NearWord[] = [];
  if (most === 0) return near;
  for (const known of vocabulary) {
    if (/^\d/.test(known)) continue;
    const off = edits(word, known, most);
    if (off > 0 && off <= most) near.push({ word: known, off });
  }
  return near.sort((a, b) => a.off - b.off || (a.word < b.word ? -1 : 1));
}
