/** What else a source says: the other records of one source. */
import { figureBook, isOrdinary } from './figures.ts';

let ofSources: Map<string, string[]> | undefined;

/** Ids of the other records of a record's source that hold values, in order of id. They are put in order by source once. */
export function neighboursOf(record: string): string[] {
  const sourceOf = (id: string): string => id.split('/')[0] as string;
  ofSources ??= Map.groupBy([...figureBook().records].filter(([, each]) => isOrdinary(each)).map(([id]) => id), sourceOf);
  return (ofSources.get(sourceOf(record)) ?? []).filter((other) => other !== record);
}
