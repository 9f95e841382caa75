/** Words in which lists name a source. */
import type { SourceRecord } from '../records/schema.ts';

const LANGUAGES: Record<string, string> = {
  en: 'English', fr: 'French', de: 'German', it: 'Italian', ja: 'Japanese', cs: 'Czech', es: 'Spanish',
};

/** A language by its two letters; the letters themselves where it has no word here yet. */
export function languageWords(code: string): string {
  return LANGUAGES[code] ?? code;
}

/** A type of the Citation Style Language in plain words. */
export function sourceTypeWords(type: SourceRecord['type']): string {
  return type === 'article-journal' ? 'journal article' : type === 'paper-conference' ? 'conference paper' : type;
}

/** Who, when, and the number of a standard, in front of a title. */
export function sourceLine({ authors, issued, number, edition }: Pick<SourceRecord, 'authors' | 'issued' | 'number' | 'edition'>): string {
  const numbered = [number, edition && `edition ${edition}`].filter(Boolean).join(', ');
  return [authors.join(', '), issued === 'unknown' ? '' : issued.slice(0, 4), numbered].filter((part) => part !== '').join(', ');
}
