/** The words in which pages print values, conditions and standings. One meaning each, used on every page. */
import { toModelUnit } from '../evidence/force.ts';
import type { Eye, RigConditions, Standing, Unit, Value } from '../records/schema.ts';
import { countWord } from '../search/count-word.ts';

export { countWord };

const UNIT_SIGNS: Partial<Record<Unit, string>> = { percent: '%', ratio: '', count: '', celsius: '°C', degrees: '°', 'g/cm3': 'g/cm³' };

/** The sign of a unit; empty for shares of one and counts. */
export function unitSign(unit: Unit | undefined): string {
  return unit === undefined ? '' : (UNIT_SIGNS[unit] ?? unit);
}

/** A number with its unit, joined by a space that does not break. */
export function withUnit(number: string, unit: Unit | undefined): string {
  const sign = unitSign(unit);
  return sign === '' ? number : `${number}\u00a0${sign}`;
}

/** Three significant digits, for what we compute ourselves (a mean of printed breaks, a conversion). */
export function threeDigits(x: number): string {
  if (!Number.isFinite(x)) throw new RangeError(`x: is not a finite number (got ${x})`);
  return x === 0 ? '0' : String(Number(x.toPrecision(3)));
}

/** Arithmetic mean. Throws RangeError on an empty list. */
export function mean(numbers: readonly number[]): number {
  if (numbers.length === 0) throw new RangeError('numbers: a mean needs at least one');
  return numbers.reduce((sum, x) => sum + x, 0) / numbers.length;
}

/**
 * A value in a few words, whatever its kind: a mean with its count, a range with how it is meant, at least, at most.
 * `asPrinted` replaces a bare number where the source prints it in a way that a number cannot keep.
 */
export function valueWords(value: Value, unit: Unit | undefined, asPrinted?: string): string {
  if (typeof value === 'number') return printedWords(value, unit, asPrinted);
  if ('tests' in value) {
    const count = value.tests.length;
    const kept = value.censored ? `, and ${value.censored.length} that did not break` : '';
    if (count === 1) return `${withUnit(String(value.tests[0]), unit)}, one pull${kept}`;
    return `mean ${withUnit(threeDigits(mean(value.tests)), unit)} of ${count} pulls${kept}`;
  }
  if ('mean' in value) {
    const count = value.n === undefined ? ', count not stated' : value.n === 1 ? ', one pull' : ` of ${value.n} pulls`;
    return `mean ${printedWords(value.mean, unit, asPrinted)}${count}`;
  }
  if ('low' in value) return `${withUnit(`${value.low} to ${value.high}`, unit)}, ${rangeWords(value)}`;
  if ('atLeast' in value) return `at least ${withUnit(String(value.atLeast), unit)}${value.n === undefined ? '' : `, ${pulls(value.n)}`}`;
  if ('atMost' in value) return `at most ${withUnit(String(value.atMost), unit)}${value.n === undefined ? '' : `, ${pulls(value.n)}`}`;
  return value.statement;
}

/** A number with the digits that the source prints; where it prints another unit or words, these stand behind it. */
function printedWords(number: number, unit: Unit | undefined, asPrinted = String(number)): string {
  return /^-?\d+(?:\.\d+)?$/.test(asPrinted) ? withUnit(asPrinted, unit) : `${withUnit(String(number), unit)} (printed: ${asPrinted})`;
}

function pulls(n: number): string {
  return n === 1 ? 'one pull' : `${n} pulls`;
}

function rangeWords(value: { kind: string; n?: number | undefined }): string {
  switch (value.kind) {
    case 'extremes of n': return `lowest and highest of ${value.n} pulls`;
    case 'between products': return 'between products';
    case "author's interval": return 'interval given by the author';
    default: return 'range used in teaching, no tests behind it';
  }
}

/** The value of a figure in a few words; an assumed range says that it is one. */
export function figureWords(figure: { value?: Value | undefined; unit?: Unit | undefined; asPrinted?: string | undefined; standing: Standing; what: string }): string {
  const { value, unit, asPrinted, standing } = figure;
  if (value === undefined) return figure.what;
  if (standing === 'assumed' && typeof value === 'object' && 'low' in value) {
    const range = withUnit(`${value.low} to ${value.high}`, unit);
    // An angle is no piece of gear: its range is one of ways, not of breaks.
    return unit === 'degrees' ? range : `${range}, nine pieces in ten`;
  }
  return valueWords(value, unit, asPrinted);
}

/** How a value is meant, without its numbers: for lists and filters. */
export function valueKind(value: Value | undefined): string {
  if (value === undefined) return 'no number';
  if (typeof value === 'number') return 'one number';
  if ('tests' in value) return 'single breaks';
  if ('mean' in value) return 'mean';
  if ('low' in value) return value.kind === 'extremes of n' ? 'lowest and highest' : value.kind === 'teaching' ? 'teaching range' : 'range';
  if ('atLeast' in value) return 'at least';
  if ('atMost' in value) return 'at most';
  return 'statement';
}

const FORCES: readonly Unit[] = ['kN', 'N', 'daN', 'kgf', 'lbf'];

/** The same value with every number in kilonewtons; null when it is no force, or already printed in kilonewtons. */
export function valueInKilonewtons(value: Value | undefined, unit: Unit | undefined): string | null {
  const factor = toModelUnit(unit);
  if (value === undefined || unit === undefined || unit === 'kN' || factor === null || !FORCES.includes(unit)) return null;
  const turn = (x: number): number => Number(threeDigits(x * factor));
  if (typeof value === 'number') return valueWords(turn(value), 'kN');
  if ('tests' in value) {
    return valueWords({ tests: value.tests.map(turn), ...(value.censored ? { censored: value.censored.map(turn) } : {}) }, 'kN');
  }
  if ('mean' in value) return valueWords({ ...value, mean: turn(value.mean) }, 'kN');
  if ('low' in value) return valueWords({ ...value, low: turn(value.low), high: turn(value.high) }, 'kN');
  if ('atLeast' in value) return valueWords({ ...value, atLeast: turn(value.atLeast) }, 'kN');
  if ('atMost' in value) return valueWords({ ...value, atMost: turn(value.atMost) }, 'kN');
  return null;
}

/** How we know a figure: the short word beside the number, and the sentence on its page. */
export const STANDING_WORDS: Record<Standing, { mark: string; says: string }> = {
  read: { mark: 'read', says: 'We saw the number in the source itself.' },
  quoted: { mark: 'quoted', says: 'We saw the number in a text that quotes the source, not in the source itself.' },
  recalled: { mark: 'recalled', says: 'Written from memory and not checked. Do not rely on it before the source has been read.' },
  'common-practice': { mark: 'trade rule', says: 'A rule of the trade. There is no source behind it.' },
  derived: { mark: 'derived', says: 'Computed from other figures, which are named.' },
  assumed: { mark: 'assumed', says: 'A choice made for the model, with its reason. Nobody measured it.' },
  invented: { mark: 'invented', says: 'Made up to show how the page works. It feeds nothing.' },
};

export const EYE_WORDS: Record<Eye, string> = {
  'bare-wire': 'bare wire',
  'sleeved-wire': 'wire in a plastic sleeve',
  'wire-under-bar': 'wire under a plastic bar',
  'metal-bar': 'metal bar or forged loop',
  'twin-eye': 'twin eye',
};

const MATERIAL_WORDS: Record<string, string> = {
  hmpe: 'HMPE', nylon: 'nylon', polyester: 'polyester', aramid: 'aramid', 'hmpe-nylon': 'HMPE and nylon', 'hmpe-aramid': 'HMPE and aramid',
  lcp: 'LCP', polypropylene: 'polypropylene', steel: 'steel', 'stainless-steel': 'stainless steel', aluminium: 'aluminium',
};

/** A fibre or metal in words. */
export function materialWords(id: string): string {
  return MATERIAL_WORDS[id] ?? id;
}

/** A form of textile or hardware in words. */
export function formWords(id: string): string {
  return id === 'sewn-loop' ? 'sewn loop' : id;
}

/** How a test was rigged, in words. Not the name of a method: a knot in a sling between pins is no knot round an eye. */
export function riggingWords(id: string): string {
  return id.replaceAll('-', ' ').replace('makers', "maker's").replace('fishermans', "fisherman's");
}

/** What a ratio is a fraction of, in words; a figure's address is left to the page to link. */
export function denominatorWords(of: string): string {
  const words: Record<string, string> = {
    'rated-minimum': 'the minimum that the standard asks for',
    unknotted: 'the same piece without the knot',
    strand: 'one strand, pulled straight',
    'twice-strand': 'twice one strand',
    'half-loop-on-10-mm-pins': 'half the sewn loop, pulled over the usual test pins',
    'device-rating': 'the rating marked on the device',
    new: 'the same piece when new',
    'catalogue-strength': 'the strength in the catalogue',
    'choker-rating': 'the rating in a choker',
    'vertical-rating': 'the rating in a straight pull',
  };
  return words[of] ?? of;
}

/** Conditions of a figure, as pairs of label and words, in a fixed order. What is absent the source does not say. */
export function conditionPairs(rig: RigConditions): [string, string][] {
  const pairs: [string, string][] = [];
  if (rig.method) pairs.push(['Rigging', riggingWords(rig.method)]);
  if (rig.form) pairs.push(['Form', formWords(rig.form)]);
  if (rig.material) pairs.push(['Material', materialWords(rig.material)]);
  if (rig.widthMm) pairs.push(['Width', withUnit(String(rig.widthMm), 'mm')]);
  if (rig.diameterMm) pairs.push(['Diameter', withUnit(String(rig.diameterMm), 'mm')]);
  if (rig.bearing) pairs.push(['Pulled over', rig.bearing.replaceAll('-', ' ')]);
  if (rig.bearingMm) pairs.push(['Bearing', withUnit(String(rig.bearingMm), 'mm')]);
  if (rig.legs) pairs.push(['Legs', countWord(rig.legs)]);
  if (rig.state) pairs.push(['State', rig.state]);
  if (rig.pull) pairs.push(['Pull', rig.pull]);
  if (rig.ageYears !== undefined) {
    pairs.push(['Age', typeof rig.ageYears === 'number' ? withUnit(String(rig.ageYears), 'years') : withUnit(`${rig.ageYears.from} to ${rig.ageYears.to}`, 'years')]);
  }
  if (rig.note) pairs.push(['Also', rig.note]);
  return pairs;
}
