/** Reading a date as a person writes it, or as it stands on a label: a year, a month or a day. */
import { earliestDay } from './days.ts';

/** A label such as 2019, 2019-05 or 2019-05-31; or what is wrong with the text, in words that say what to do. */
export type ReadLabel = { ok: true; label: string } | { ok: false; why: string };

const MONTHS = ['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december'];
const OLDEST = 1950;
const refused = (why: string): ReadLabel => ({ ok: false, why });

/** Number of a month by its name or by the beginning of it; 0 where it is none. */
const monthNamed = (word: string): number => MONTHS.findIndex((name) => name.startsWith(word.toLowerCase())) + 1;

/** Year, month and day as the text orders them; null where it is no date; a text says why it can be two. */
function partsOf(text: string): (string | undefined)[] | string | null {
  const yearFirst = /^(\d{4})(?:[-./](\d{1,2})(?:[-./](\d{1,2}))?)?$/.exec(text);
  if (yearFirst) return [yearFirst[1] as string, yearFirst[2], yearFirst[3]];
  const monthFirst = /^(\d{1,2})[-./](\d{4})$/.exec(text);
  if (monthFirst) return [monthFirst[2] as string, monthFirst[1]];
  const dayFirst = /^(\d{1,2})([-./])(\d{1,2})\2(\d{4})$/.exec(text);
  if (dayFirst) {
    const [, first, mark, second, year] = dayFirst as unknown as [string, string, string, string, string];
    // Points are used where the day comes first; strokes are used for both orders.
    const isTwo = mark !== '.' && first !== second && Number(first) <= 12 && Number(second) <= 12;
    if (isTwo) return `can be two days; write the year first, as in ${year}-04-17`;
    return mark !== '.' && Number(second) > 12 ? [year, first, second] : [year, second, first];
  }
  const inWords = /^(?:(\d{1,2})\.?\s+)?(\p{L}{3,9})\.?\s+(\d{4})$/u.exec(text);
  if (!inWords) return null;
  const month = monthNamed(inWords[2] as string);
  return month > 0 ? [inWords[3] as string, String(month), inWords[1]] : null;
}

/**
 * Reads `2019`, `2019-05`, `2019-05-31`, `05/2019`, `31.5.2019` or `May 2019`. A day that can be read in two orders is
 * refused, never guessed.
 * @param text as typed; blanks around it do not matter
 */
export function readLabel(text: string): ReadLabel {
  const parts = partsOf(text.trim());
  if (parts === null) return refused('no date; write it like 2019, 2019-05 or 2019-05-31');
  if (typeof parts === 'string') return refused(parts);
  const label = parts.filter((part) => part !== undefined).map((part) => part.padStart(2, '0')).join('-');
  try {
    if (Number(parts[0]) < OLDEST) return refused(`before ${OLDEST}; write the year with four digits`);
    earliestDay(label);
    return { ok: true, label };
  } catch {
    return refused('no day of the calendar');
  }
}
