/** Names of inputs in the words of the form and of the line that repeats them. */
import type { Eye, Material, OldLight, OldUse, Unit, Value } from '../../records/schema.ts';
import type { Rig } from '../../strength/types.ts';
import type { ListedSlings, SlingNames } from './setup.ts';

export const EYE_NAMES: Readonly<Record<Eye, string>> = {
  'bare-wire': 'bare wire',
  'sleeved-wire': 'wire in a plastic sleeve',
  'wire-under-bar': 'wire under a plastic bar',
  'metal-bar': 'metal bar or forged loop',
  'twin-eye': 'twin eye',
};
const MATERIALS: Partial<Record<Material, string>> = { hmpe: 'HMPE', 'hmpe-nylon': 'HMPE and nylon' };
export const materialName = (material: Material): string => MATERIALS[material] ?? material;

/** How often an old sling was used, and where it was kept: words of the form, and of the line that repeats the rig. */
export const OLD_USE_NAMES: Readonly<Record<OldUse, string>> = {
  stored: 'stored, not used', seldom: 'used a few times a year', monthly: 'used every month', weekly: 'used every week', daily: 'used every day',
};
export const OLD_LIGHT_NAMES: Readonly<Record<OldLight, string>> = { dark: 'kept in the dark', sun: 'out in the sun for months' };

/** Slings in the order of their records. */
export const slingsInOrder = (slings: ListedSlings): [string, ListedSlings[string]][] =>
  Object.entries(slings).sort(([, a], [, b]) => a.order - b.order);

/** Lengths offered for the chosen sling, cm, and the one that a link asked for. */
export function lengthsOf(slings: SlingNames, { sling, length }: Readonly<Record<'sling' | 'length', string>>): string[] {
  const offered = slings[sling]?.lengthsCm.map(String) ?? [];
  return length === '' || offered.includes(length) ? offered : [...offered, length];
}

/** Where the rig comes from: the page's own example, a page built for it, or the reader. */
export type Origin = 'example' | 'page' | 'reader';
export const ORIGIN_WORDS: Readonly<Record<Origin, string>> = { example: 'Example', page: 'This page', reader: 'My rig' };
/** What the button does to the form: while it is open, and while it is folded. */
export const FOLD_WORDS = ['Hide the form', 'Change'] as const;

/** The rig in one line, as a reader would say it. */
export function rigLine(rig: Rig, slings: SlingNames): string {
  const parts = [
    rig.ratingKn === null ? 'rating not known' : `${rig.ratingKn} kN`,
    `${rig.eye ? EYE_NAMES[rig.eye] : 'eye not known'}, ${rig.bearingMm === null ? 'not measured' : `${rig.bearingMm} mm`}`,
    `${rig.sling ? (slings[rig.sling]?.name ?? rig.sling) : 'sling not known'}${rig.lengthCm === null ? '' : ` ${rig.lengthCm} cm`}, ${rig.slingState}`,
  ];
  if (rig.demandKn !== null) parts.push(`must stand up to ${rig.demandKn} kN`);
  if (rig.old) {
    const { material, ageYears, use, light } = rig.old;
    parts.push([
      `old sling ${material ? materialName(material) : 'of unknown material'}`,
      ageYears !== null && `${ageYears} years`, use && OLD_USE_NAMES[use], light && OLD_LIGHT_NAMES[light],
    ].filter(Boolean).join(', '));
  }
  return parts.join(' \u00b7 ');
}

/** Digits of a mean of printed breaks: three, as sources print. */
const three = (x: number): string => String(Number(x.toPrecision(3)));

/** A figure's value in a few words, as printed in its source. */
export function valueText(value: Value | undefined, unit: Unit | undefined): string {
  if (value === undefined) return '';
  const sign = unit === undefined || unit === 'ratio' || unit === 'count' ? '' : unit === 'percent' ? ' %' : ` ${unit}`;
  if (typeof value === 'number') return `${value}${value === 1 ? sign.replace(/s$/, '') : sign}`;
  if ('tests' in value) {
    const { tests } = value;
    return tests.length === 1 ? `${tests[0]}${sign}, one pull` : `mean ${three(tests.reduce((a, b) => a + b, 0) / tests.length)}${sign} of ${tests.length} pulls`;
  }
  if ('mean' in value) return `mean ${value.mean}${sign}${value.n ? ` of ${value.n}` : ''}`;
  if ('low' in value) return `${value.low} to ${value.high}${sign}`;
  if ('atLeast' in value) return `at least ${value.atLeast}${sign}`;
  if ('atMost' in value) return `at most ${value.atMost}${sign}`;
  return value.statement;
}
