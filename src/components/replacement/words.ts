/** The words of the calculator of costs. One wording for the page, its table without a script, and what is copied. */
import type { Choice } from '../../replacement/answer.ts';
import type { AskedKind, Way } from '../../replacement/read-words.ts';

export const WAY_NAMES: Readonly<Record<Way, string>> = { maker: 'Maker’s service', workshop: 'Workshop', new: 'Buy new', home: 'Sling at home' };
/** In the middle of a sentence. */
export const WAY_WORDS: Readonly<Record<Way, string>> = { maker: 'the maker’s service', workshop: 'a workshop', new: 'buying new', home: 'a sling at home' };

/** Amounts and counts as the reader's country writes them. */
export interface Printer { money: (amount: number) => string; count: (n: number) => string }

/** Plain numbers, for what is drawn when the page is built. */
export const PLAIN: Printer = { money: (amount) => (Number.isInteger(amount) ? String(amount) : amount.toFixed(2)), count: (n) => String(Number(n.toFixed(2))) };

export const listed = (texts: readonly string[]): string => (texts.length < 2 ? texts.join('') : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`);

/** Devices of one kind: "7 cams", "7 of kind 2". */
export const kindWords = ({ count, name, at }: AskedKind, printer: Printer): string => (name === '' ? `${printer.count(count)} of kind ${at + 1}` : `${printer.count(count)} ${name}`);

/** A plan in words: one way, or which way for which kinds. */
export function choiceWords({ parts }: Choice, printer: Printer): string {
  const [only] = parts;
  if (parts.length === 1 && only) return WAY_WORDS[only.way];
  return parts.map(({ way, kinds }) => `${WAY_WORDS[way]} for ${listed(kinds.map((kind) => kindWords(kind, printer)))}`).join('; ');
}
