/** "Did you mean": the known name nearest to one that is not known. */

/** Edit distance with swaps of neighbours (optimal string alignment). */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min((row[j - 1] as number) + 1, (last[j] as number) + 1, (last[j - 1] as number) + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, (before[j - 2] as number) + 1);
      row.push(best);
    }
    before = last;
    last = row;
  }
  return last[b.length] as number;
}

/** The nearest of `known` within a third of the name's length (at least two edits), or nothing. Ties go to the first by alphabet. */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let bestDistance = Math.max(2, Math.floor(name.length / 3)) + 1;
  for (const candidate of [...known].sort()) {
    if (Math.abs(candidate.length - name.length) >= bestDistance) continue;
    const distance = editDistance(name, candidate);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** ` Did you mean x?` as the start of an advice, or the given words. */
export function didYouMean(name: string, known: Iterable<string>, otherwise: string): string {
  const near = nearestName(name, known);
  return near === undefined ? otherwise : `Did you mean ${near}?`;
}
