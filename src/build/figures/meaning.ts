/**
 * What a measured number says: a force itself, or something worked out of forces; a share of strength that is left, or
 * one that is lost. Records carry no field for it: it is read from the words that they use.
 */
import { toModelUnit } from '../../evidence/force.ts';
import type { ShownFigure } from './figures.ts';

/** `kept`: a part of the strength that the denominator has. `lost`: the part that is gone. `other`: no strength, or not said. */
export type ShareKind = 'kept' | 'lost' | 'other';

/** What the words are read from. */
export type Worded = Pick<ShownFigure, 'what' | 'note' | 'cell'>;

const LOST_WHAT = /\bloss of (?:breaking )?strength\b/i;
/** The note's own sentence on how to read the number. */
const LOST_NOTE = /^a loss\b|\ba loss, not what is left\b/i;
const LOST_CELL = /(?:^|-)loss(?:-|$)/;
const OTHER = /\b(?:scatter|variation|standard deviation|coefficient|length, not of its strength)\b/i;
const KEPT = /\bshare of (?:the |its )?(?:[a-z ]+ )?strength\b|\bstrength left\b|\bthat is left\b|\bstrength kept\b/i;
const KEPT_CELL = /(?:^|-)efficiency(?:-|$)/;

/** True for numbers that are shares of something. */
export function isShare({ unit }: Pick<ShownFigure, 'unit'>): boolean {
  return unit === 'ratio' || unit === 'percent';
}

/** Reads one share's words. */
export function shareKind({ what, note = '', cell = '' }: Worded): ShareKind {
  if (OTHER.test(what) || OTHER.test(note)) return 'other';
  if (LOST_NOTE.test(note) || LOST_CELL.test(cell) || LOST_WHAT.test(what)) return 'lost';
  return KEPT.test(what) || KEPT_CELL.test(cell) ? 'kept' : 'other';
}

/** Cells whose number is no break: a scatter, a rating, a range within a lot. */
const DERIVED_CELL = /(?:^|-)(?:sd|cv|rating)$|(?:^|-)range-within-/;
const DERIVED_NOTE = /^standard deviation\b|\bless three standard deviations\b/i;
const DIFFERENCE = /\bhow much more\b/i;

/** True for a force that was measured; false for a scatter, a rating or a difference of forces, and for what is no force. */
export function isForceItself({ unit, what, note = '', cell = '' }: Worded & Pick<ShownFigure, 'unit'>): boolean {
  if (isShare({ unit }) || toModelUnit(unit) === null) return false;
  return !DERIVED_CELL.test(cell) && !DERIVED_NOTE.test(note) && !DIFFERENCE.test(what);
}
