/** A figure as one row of a table: the number by itself, its unit, what it is of, its conditions. */
import { toModelUnit } from '../../evidence/force.ts';
import { certaintyOf } from '../../records/certainty.ts';
import type { Value } from '../../records/schema.ts';
import { isShare, shareKind } from './meaning.ts';
import type { ShownFigure } from './figures.ts';
import { conditionPairs, countWord, denominatorWords, mean, STANDING_WORDS, threeDigits, unitSign } from '../words.ts';

/** What stands in the columns of one row. */
export interface FigureColumns {
  /** The number or numbers alone; `in words` where the source gives none. */
  value: string;
  /** Sign of the unit, and of a share also what it is a share of. */
  unit: string;
  /** What was measured or asked for. */
  what: string;
  /** How the number is meant: a mean of so many pulls, a range between products. Empty for a single number. */
  meant: string;
  conditions: string;
  standing: string;
  certainty: string;
}

/** Numbers of a value without unit or count: what a reader would copy into a sheet. */
export function numberWords(value: Value | undefined, asPrinted?: string): string {
  if (value === undefined) return 'none';
  if (typeof value === 'number') return asPrinted ?? String(value);
  if ('tests' in value) return value.tests.length === 1 ? String(value.tests[0]) : threeDigits(mean(value.tests));
  if ('mean' in value) return asPrinted ?? String(value.mean);
  if ('low' in value) return `${value.low} to ${value.high}`;
  if ('atLeast' in value) return `at least ${value.atLeast}`;
  if ('atMost' in value) return `at most ${value.atMost}`;
  return 'in words';
}

const pulls = (n: number): string => (n === 1 ? 'one pull' : `${countWord(n)} pulls`);

/** How a number is meant, with its count of pulls. */
export function meantWords(value: Value | undefined): string {
  if (value === undefined || typeof value === 'number') return '';
  if ('tests' in value) {
    const { tests, censored = [] } = value;
    const kept = censored.length > 0 ? `, and ${countWord(censored.length)} that did not break` : '';
    return `${tests.length === 1 ? 'one pull' : `mean of ${pulls(tests.length)}`}${kept}`;
  }
  if ('mean' in value) return value.n === undefined ? 'mean, count not stated' : value.n === 1 ? 'one pull' : `mean of ${pulls(value.n)}`;
  if ('low' in value) {
    if (value.kind === 'extremes of n') return `lowest and highest of ${pulls(value.n ?? 0)}`;
    return value.kind === 'between products' ? 'between products' : value.kind === 'teaching' ? 'range used in teaching' : "author's interval";
  }
  if ('statement' in value) return value.statement;
  return value.n === undefined ? '' : pulls(value.n);
}

/** The numbers of a force in kilonewtons; null where it is printed so, or is no force. */
function inKilonewtons({ value, unit }: ShownFigure): string | null {
  const factor = toModelUnit(unit);
  if (value === undefined || factor === null || unit === 'kN' || isShare({ unit })) return null;
  const turn = (x: number): number => Number(threeDigits(x * factor));
  if (typeof value === 'number') return String(turn(value));
  if ('tests' in value) return numberWords({ tests: value.tests.map(turn) });
  if ('mean' in value) return String(turn(value.mean));
  if ('low' in value) return numberWords({ ...value, low: turn(value.low), high: turn(value.high) });
  if ('atLeast' in value) return numberWords({ atLeast: turn(value.atLeast) });
  return 'atMost' in value ? numberWords({ atMost: turn(value.atMost) }) : null;
}

/** Unit for people; of a share also its whole, save where that is another figure, which the figure's page links. */
function unitWords(figure: ShownFigure): string {
  const sign = unitSign(figure.unit);
  const kn = inKilonewtons(figure);
  if (kn !== null) return `${sign} (${kn} kN)`;
  const kind = isShare(figure) ? shareKind(figure) : 'other';
  if (kind === 'other' || figure.of === undefined) return isShare(figure) && sign === '' ? 'times' : sign;
  const whole = figure.of.includes('/') ? 'another figure' : denominatorWords(figure.of);
  return `${sign === '' ? 'share' : sign} ${kind === 'lost' ? 'lost ' : ''}of ${whole}`;
}

/** One figure in columns. */
export function columnsOf(figure: ShownFigure): FigureColumns {
  const pairs = conditionPairs(figure.rig).map(([label, words]) =>
    (['Rigging', 'Form', 'Material', 'State', 'Also'].includes(label) ? words : label === 'Width' || label === 'Diameter' ? `${words} ${label === 'Width' ? 'wide' : 'thick'}` : `${label.toLowerCase()} ${words}`));
  return {
    value: numberWords(figure.value, figure.asPrinted),
    unit: unitWords(figure),
    what: figure.what,
    meant: meantWords(figure.value),
    conditions: pairs.join(', '),
    standing: STANDING_WORDS[figure.standing].mark,
    certainty: certaintyOf(figure) ?? '',
  };
}
