/** What can be found, as the build writes it and the browser reads it. */

/** Kinds of page. A reader sees their names. */
export const KIND_NAMES = {
  page: 'Page', guide: 'Guide', method: 'Method', material: 'Material', lesson: 'Lesson', rule: 'Rule of retirement', route: 'Way to a new sling',
  law: 'Law', model: 'Model', term: 'Term', figure: 'Figure', source: 'Source', gap: 'Gap', breaks: 'Breaks',
} as const;
export type Kind = keyof typeof KIND_NAMES;

/**
 * A text in which a figure or the name of a source may stand: `{source/result#cell|13.4 kN|read}` is a figure with its
 * words and its standing, `{|EN 566}` a name.
 */
export type Marked = string;

/** One place on a page: a part below a heading. */
export interface Part {
  /** Its anchor; empty for the page itself. */
  at: string;
  head: string;
  /** Paragraphs, parted by line ends. */
  text: Marked;
}

/** One number of a figure's record. */
export interface Cell {
  /** Its anchor; empty where the record has one number. */
  at: string;
  /** The number with its unit and how it is meant. */
  value: string;
  /** What was pulled and how, as the record says. */
  where?: string;
  note?: string;
  /** How we know it: one word. */
  standing: string;
  certainty?: string;
  /** Further spellings of its numbers, found and never shown: in kilonewtons, in percent. */
  more?: string;
}

/** One page, or one anchor that stands for itself, such as a rule. */
export interface SearchPage {
  kind: Kind;
  /** From the site's folder on, with its slash. */
  path: string;
  title: string;
  /** Other names of the same thing. */
  also?: string[];
  /** Who wrote it and when, of sources and figures. */
  by?: string;
  /** What stands there, in a sentence. */
  says?: Marked;
  /** Found and never shown. */
  more?: string;
  parts?: Part[];
  /** Of a figure's record. */
  cells?: Cell[];
}
