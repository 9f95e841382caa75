/** Figures as search finds them: a record with its numbers. */
import { certaintyOf } from '../../records/certainty.ts';
import type { Cell, SearchPage } from '../../search/pages.ts';
import { figureBook, isOrdinary, type ShownFigure, valuesOf } from '../figures/figures.ts';
import { siteRecords } from '../records.ts';
import { figurePath } from '../site.ts';
import { conditionPairs, figureWords, STANDING_WORDS, valueInKilonewtons } from '../words.ts';

/** Who gives a figure: the authors and the year of its source. */
function byOf(source: string): string {
  const origin = siteRecords().sources.get(source);
  if (!origin) return source === 'assumed' ? 'assumed for the model' : 'rule of the trade';
  return [origin.authors.join(', '), origin.number, origin.issued === 'unknown' ? '' : origin.issued.slice(0, 4)].filter(Boolean).join(', ');
}

/** The numbers of a value. */
function numbersOf(value: ShownFigure['value']): number[] {
  if (value === undefined) return [];
  if (typeof value === 'number') return [value];
  if ('tests' in value) return [...value.tests, ...(value.censored ?? [])];
  return Object.values(value).filter((one): one is number => typeof one === 'number');
}

/** Numbers as somebody may look for them: each with the unit, and a share as a percentage. */
function moreOf({ value, unit, of }: ShownFigure): string {
  const numbers = numbersOf(value);
  if (unit === 'ratio' && of !== undefined) return numbers.map((x) => `${Number((x * 100).toPrecision(3))} %`).join(' . ');
  const own = unit === undefined || unit === 'ratio' || unit === 'count' || unit === 'percent' ? [] : numbers.map((x) => `${x} ${unit}`);
  return [...own, valueInKilonewtons(value, unit) ?? ''].filter(Boolean).join(' . ');
}

function cellOf(shown: ShownFigure): Cell {
  const certainty = certaintyOf(shown);
  const where = conditionPairs(shown.rig).map(([label, words]) => (['Width', 'Diameter', 'Pulled over', 'Bearing', 'Legs', 'Pull', 'Age'].includes(label) ? `${label.toLowerCase()} ${words}` : words)).join(', ');
  const more = moreOf(shown);
  return {
    at: shown.cell ?? '',
    value: shown.value === undefined ? 'in words' : figureWords(shown),
    ...(where ? { where } : {}),
    ...(shown.note ? { note: shown.note } : {}),
    standing: STANDING_WORDS[shown.standing].mark,
    ...(certainty ? { certainty } : {}),
    ...(more ? { more } : {}),
  };
}

/** All records of figures, in order of address. */
export function searchFigures(): SearchPage[] {
  return [...figureBook().records].flatMap(([id, record]) => {
    if (!isOrdinary(record)) return [];
    return [{ kind: 'figure' as const, path: figurePath(id), title: record.what, by: byOf(id.split('/')[0] as string), more: id.replace(/[/-]/g, ' '), cells: valuesOf(id, record).map(cellOf) }];
  });
}
