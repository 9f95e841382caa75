/** The little of the citation parsers that tests use; they come without types. */
declare module '@citation-js/core' {
  export class Cite {
    constructor(text: string);
    data: Record<string, unknown>[];
  }
}
declare module '@citation-js/plugin-bibtex';
declare module '@citation-js/plugin-ris';
