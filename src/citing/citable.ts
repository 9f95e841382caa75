/** What can be cited: a work of ours, and the source of a figure that is cited before it. Types alone. */
import type { SourceRecord } from '../records/schema.ts';

/** One author: a person as a reference list sorts one, or a body under its whole name. */
export type Author = { family: string; given: string } | { literal: string };

/** A type of the Citation Style Language, version 1.0.2. */
export type WorkType = SourceRecord['type'] | 'dataset';

/** One entry of a reference list. What is absent nobody recorded; no exporter fills it in. */
export interface Work {
  /** Key of the entry in files: lower-case letters, digits and hyphens. */
  key: string;
  type: WorkType;
  title: string;
  authors: readonly Author[];
  /** Year, month or day of issue, as `yyyy`, `yyyy-mm` or `yyyy-mm-dd`; null where the work bears none. */
  issued: string | null;
  publisher?: string | undefined;
  /** Place of the publisher. */
  place?: string | undefined;
  /** What it stands in: a journal, a book, a conference. */
  container?: string | undefined;
  /** Kind of work in words, where the type says too little: figure, comparison. */
  genre?: string | undefined;
  /** Number of a report, a standard or a law; of our own works, the address of the record. */
  number?: string | undefined;
  edition?: string | undefined;
  /** Version of the evidence. */
  version?: string | undefined;
  /** Link that lasts. */
  url?: string | undefined;
  doi?: string | undefined;
  /** Two letters. */
  language?: string | undefined;
  /** Name of the licence in the SPDX list, and its address. */
  licence?: { name: string; url: string } | undefined;
  /** The place in it that is cited. */
  locator?: string | undefined;
  /** Day on which the reader saw it, `yyyy-mm-dd`. The site does not know it. */
  accessed?: string | undefined;
}

export type Cited = 'site' | 'figure' | 'series' | 'comparison' | 'lesson' | 'kit';

/** A thing of this site with all that a citation needs. */
export interface Citable {
  what: Cited;
  own: Work;
  /** The source whose number it is: cited first. Null where the thing is ours alone. */
  original: Work | null;
}

/** Both works of a citable in the order in which they are cited: the source, then us. */
export function worksOf({ own, original }: Pick<Citable, 'own' | 'original'>): Work[] {
  return original ? [original, own] : [own];
}
