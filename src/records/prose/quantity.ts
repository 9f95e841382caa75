/**
 * Finds quantities in running text: a number, or a number word, with a unit;
 * percents; ranges; money; ratios such as 2:1; shares, multiples and factors of a
 * strength. A number alone is none, and so is a count of rigs or of turns.
 */

/** A quantity in a text: where it starts (UTF-16 units), and the words. */
export interface Quantity {
  index: number;
  text: string;
}

/** Spaces that may stand inside a quantity: any white space, also without width, no-break and narrow. */
const GAP = '[\\s\\u00a0\\u200b\\u2009\\u202f\\u2060\\ufeff]';
/** Digits with thousands apart (37 000, 37,000, 37.000) or together, and a decimal point or comma. */
const NUMBER = `(?:\\d{1,3}(?:[\\u0020\\u00a0\\u2009\\u202f.,'\\u2019]\\d{3})+(?:[.,]\\d+)?|\\d+(?:[.,]\\d+)?(?:[eE][+-]?\\d+)?|[\\u00bc-\\u00be])`;
const JOIN = `(?:${GAP}*(?:[-\\u2010-\\u2015\\u2212~/\\u00b1\\u00d7]|to|and|or|by)${GAP}*)`;

const WORD =
  'one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen' +
  '|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand|dozen';
/** A number in words; no more of them in a row than any number has, so that a list of words costs no time. */
const WORDS = `(?:${WORD})(?:(?:-|${GAP}+|${GAP}+and${GAP}+)(?:${WORD})){0,6}`;

/** Symbols of units. One letter alone counts only behind digits. */
const SYMBOLS =
  'kN|MN|daN|mN|N|kgf|lbf|kg|lbs?|oz|mm|cm|km|m|\\u00b5m|in\\.|ft|kJ|J|MPa|GPa|kPa|Pa|bar|psi|N/tex|cN/tex|dtex|den|g/cm3|g/m|mm/min|m/s|km/h' +
  '|g|ms|min|h|s|Hz|W/mK|EUR|GBP|USD|CHF|K|t';
/** Units spelled out; the plural s is added. */
const SPELLED =
  'kilo-?newton|mega-?newton|deca-?newton|newton|kilogram(?:me)?(?:[ -]force)?|gram(?:me)?|kilo|pound(?:s?[ -]force)?|ounce|tonne|ton' +
  '|milli-?met(?:re|er)|centi-?met(?:re|er)|kilo-?met(?:re|er)|met(?:re|er)|inch(?:e)?|foot|feet|yard|joule|kilojoule|pascal|megapascal|gigapascal' +
  '|year|month|week|day|hour|minute|second|season|per' +
  `${GAP}` +
  '?cent|percentage point|degree|celsius|cycle|euro|dollar|franc|denier|decitex';
/** Signs that stand close behind a number. */
const SIGNS = '%|\\u2030|\\u00b0(?:[CF](?![\\p{L}]))?|\\u20ac|\\u00a3|\\$|\\u2033|\\u2103';

/** Parts of a whole, in words or as one sign. */
const PARTS = 'half|halves|thirds?|quarters?|fifths?|sixths?|sevenths?|eighths?|ninths?|tenths?|twentieths?';
const PART = `(?:(?:(?:an?|one|two|three|four|five|six|seven|eight|nine)(?:${GAP}|-)+)?(?:${PARTS})|[\\u00bc-\\u00be\\u2150-\\u215e])`;
/** What a part of is a quantity. */
const STRENGTH = '(?:strengths?|breaking (?:force|load)s?|ratings?|force|minimum)';
const ARTICLE = '(?:its|the|their|that|a|your)';
/** Verbs behind which a part is a loss or a rest of strength, whatever stands behind it. */
const CHANGES =
  '(?:los(?:es?|t|ing)|keep(?:s|ing)?|kept|retain(?:s|ed|ing)?|costs?' +
  `|(?:drop|fall|fell|weaken|reduce|cut|grow|rise|rose|shrink)\\p{L}*(?:${GAP}+\\p{L}+){0,3}?${GAP}+(?:by|to))`;
const COMPARED = '(?:as|strong(?:er)?|weak(?:er)?|more|less|higher|lower|greater|larger|smaller|thicker|thinner|heavier|lighter|longer|shorter|better|worse)';
/** Places in a text that are numbered with a point. */
const NUMBERED = '(?<!(?:clause|section|chapter|table|page|figure|part|annex|version|edition|no\\.?)[\\s\\u00a0])';

const NOT_BEFORE = '(?<![\\p{L}\\p{N}_.#/&:])(?<!\\p{L}-)';
const NOT_AFTER = '(?![\\p{L}\\p{N}_])';

const PATTERNS = [
  // 31 kN, 5-10 kN, 5 to 10 kN, 5 kN to 10 kN (first part), 10-year, 37 000 N, 60 %, 20 °C
  new RegExp(
    `${NOT_BEFORE}${NUMBER}(?:${JOIN}${NUMBER})*(?:${GAP}*(?:${SIGNS})|(?:${GAP}|-|\\u2010|\\u2011)*(?:(?:${SPELLED})s?|${SYMBOLS})${NOT_AFTER})`,
    'giu',
  ),
  // twelve kilonewtons, ten to twelve years, sixty per cent, one hundred kN
  new RegExp(
    `(?<![\\p{L}\\p{N}-])(?:${WORDS})(?:${GAP}*(?:to|or|and|-)${GAP}*(?:${WORDS}))?(?:${GAP}|-)+(?:(?:${SPELLED})s?|kN|daN|kgf|lbf|kg|mm|cm|%)${NOT_AFTER}`,
    'giu',
  ),
  // € 40, $ 40
  new RegExp(`[\\u20ac\\u00a3$]${GAP}*${NUMBER}`, 'gu'),
  // 2:1 as a ratio; 12:30 and EN 566:2017 are none
  new RegExp(`${NOT_BEFORE}\\d{1,2}(?:\\.\\d+)?${GAP}?:${GAP}?[1-9](?:\\.\\d+)?(?![\\p{L}\\p{N}:])`, 'gu'),
  // loses a third, falls by a quarter, keeps two thirds
  new RegExp(`(?<![\\p{L}\\p{N}])${CHANGES}${GAP}+(?:(?:about|nearly|almost|some|over|under|only|more than|less than|at least|at most)${GAP}+)*${PART}${NOT_AFTER}(?!${GAP}+of${GAP}+(?:${ARTICLE}${GAP}+)?(?:sling|loop|tape|cord|length|turn))`, 'giu'),
  // half its strength, two thirds of the straight strength, a third of its new strength
  new RegExp(`(?<![\\p{L}\\p{N}-])${PART}(?:${GAP}+of)?(?:${GAP}+${ARTICLE})?(?:${GAP}+[\\p{L}-]+){0,2}?${GAP}+${STRENGTH}${NOT_AFTER}`, 'giu'),
  // half as strong, twice the strength, halves its strength
  new RegExp(`(?<![\\p{L}\\p{N}-])(?:half|twice|thrice)${GAP}+as${GAP}+(?:strong|weak|much|thick|thin)${NOT_AFTER}`, 'giu'),
  new RegExp(`(?<![\\p{L}\\p{N}-])(?:twice|thrice|halv(?:es?|ed|ing)|doubl(?:es?|ed|ing)|tripl(?:es?|ed|ing))${GAP}+${ARTICLE}${GAP}+(?:[\\p{L}-]+${GAP}+)??${STRENGTH}${NOT_AFTER}`, 'giu'),
  // three times stronger, 2.5 times the strength, 4 x stronger
  new RegExp(`(?<![\\p{L}\\p{N}-])(?:${WORDS}|${NUMBER})${GAP}*(?:times|x|\\u00d7)${GAP}+(?:${COMPARED}|${ARTICLE}${GAP}+(?:[\\p{L}-]+${GAP}+)??${STRENGTH})${NOT_AFTER}`, 'giu'),
  // 4x, 1.5×
  new RegExp(`${NOT_BEFORE}${NUMBER}[x\\u00d7](?![\\p{L}\\p{N}])(?!${GAP}*\\d)`, 'gu'),
  // 0.61 of straight; clause 3.3 of a standard is none
  new RegExp(`${NUMBERED}${NOT_BEFORE}[01]?[.,]\\d+${GAP}+of${NOT_AFTER}`, 'giu'),
  // ¾ of strength
  new RegExp(`[\\u00bc-\\u00be\\u2150-\\u215e]${GAP}+(?:of|its|the)${NOT_AFTER}`, 'giu'),
  // factor 1.7, a factor of two
  new RegExp(`(?<![\\p{L}\\p{N}])factors?${GAP}+(?:(?:of|is|was|by)${GAP}+)?(?:about${GAP}+)?(?:\\d+(?:[.,]\\d+)?(?![\\p{L}\\p{N}])|(?<=of${GAP}+|about${GAP}+)(?!one${NOT_AFTER})(?:${WORDS})${NOT_AFTER})`, 'giu'),
];

/** Symbols of one or two letters are told apart by case: 5 N and 5 m are quantities, 5 S is not. */
const CASED =
  /(?:^|[\s\d\u00a0\u2009\u202f\u200b\u2060\u00bc-\u00be-])(N|MN|mN|J|kJ|Pa|K|m|g|s|h|t|ms|min|den|bar|in\.)$/;
const ONE_LETTER = /(?<![\p{L}/\u00b0])(?:[a-wyz]|mn|pa|ms|kj)$/iu;
/** "1990s", "the 80s", "50s": a decade. */
const DECADE = /\d0s$/;
/** Turns of speech that count nothing. */
const IDIOM = /^one[\s-]+(?:day|second|minute)$/i;

/** All quantities of a text, in order, none inside another. */
export function findQuantities(text: string): Quantity[] {
  const found: Quantity[] = [];
  for (const pattern of PATTERNS) {
    for (const match of text.matchAll(pattern)) {
      const words = match[0];
      if (DECADE.test(words) || IDIOM.test(words)) continue;
      if (ONE_LETTER.test(words) && !CASED.test(words)) continue;
      found.push({ index: match.index, text: words.replace(new RegExp(`${GAP}+`, 'gu'), ' ').trim() });
    }
  }
  found.sort((a, b) => a.index - b.index || b.text.length - a.text.length);
  let end = -1;
  return found.filter((quantity) => {
    if (quantity.index < end) return false;
    end = quantity.index + quantity.text.length;
    return true;
  });
}
