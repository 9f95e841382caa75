/** The pieces of a query, decoded: what every reader of a link begins with. Total: any string gives pieces and reasons. */
import type { Pieces } from './migrations.ts';

/** A piece of a link that was not used, and why. */
export interface NotUnderstood {
  /** The piece as it stands in the link, before any decoding. */
  piece: string;
  why: string;
}

/** Stands for a value whose percent signs do not decode; no value of ours holds it. */
export const UNDECODED = '\u0000';
export const UNDECODED_WHY = 'percent signs that do not decode';

/** Text of one half of a piece, or null where the percent signs do not decode. */
function decode(text: string): string | null {
  try {
    return decodeURIComponent(text.replaceAll('+', ' '));
  } catch {
    return null;
  }
}

/** Splits a query. @param query with or without the question mark */
export function piecesOf(query: string): { pieces: Pieces; unreadable: NotUnderstood[] } {
  const unreadable: NotUnderstood[] = [];
  const pieces = query.replace(/^\?/, '').split('&').flatMap((piece) => {
    if (piece === '') return [];
    const equals = piece.indexOf('=');
    const key = decode(equals < 0 ? piece : piece.slice(0, equals));
    const value = decode(equals < 0 ? '' : piece.slice(equals + 1));
    if (key !== null) return [{ key, value: value === null ? UNDECODED : value.trim(), piece }];
    unreadable.push({ piece, why: UNDECODED_WHY });
    return [];
  });
  return { pieces, unreadable };
}

/** One of the listed words, or undefined. */
export const oneOf = <T extends string>(words: readonly T[], text: string): T | undefined => words.find((word) => word === text);

export const EVIDENCE_VERSION = /^\d{4}-\d{2}-\d{2}\.\d{1,4}$/;
