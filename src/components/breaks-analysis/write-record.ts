/**
 * A series as the records that the project keeps: the source, the series, and its pulls. What is missing is named, and
 * nothing is made up: a record with gaps is written all the same, and the record check says what it lacks.
 */
import type { Pull } from '../../break-tests/pulls.ts';
import type { ForceUnit } from '../../break-tests/table-pulls.ts';
import { writePulls } from '../../break-tests/write-pulls.ts';

/** What a tester says of the series, as typed; empty: not said. Choices have the words of the records. */
export interface RecordWords {
  /** Name of the record: small letters and hyphens. */
  id: string;
  what: string;
  called: string;
  part: string;
  authors: string;
  title: string;
  day: string;
  method: string;
  form: string;
  material: string;
  widthMm: string;
  diameterMm: string;
  bearing: string;
  bearingMm: string;
  legs: string;
  state: string;
  pull: string;
  machine: string;
  rateMmPerMin: string;
  capacityKn: string;
  calibrated: string;
  samplesPerSecond: string;
  conditioning: string;
  oneLot: string;
  rigs: string;
  note: string;
}

export interface WrittenRecord {
  /** Path in the project, and its text. */
  files: readonly { path: string; text: string }[];
  /** What has to be said before the check passes, as fields and what to write. */
  missing: readonly { field: keyof RecordWords; why: string }[];
}

const DAY = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/;
const SLUG = /^[a-z0-9]+(?:-[a-z0-9]+)*$/;
const NUMBER = /^\d{1,6}(?:[.,]\d{1,6})?$/;
const NUMBERS = ['widthMm', 'diameterMm', 'bearingMm', 'legs', 'rateMmPerMin', 'capacityKn', 'samplesPerSecond'] as const satisfies readonly (keyof RecordWords)[];
const ASKED = ['id', 'what', 'called', 'authors', 'title', 'day', 'method', 'form', 'material', 'bearing', 'legs', 'state', 'pull', 'machine', 'oneLot', 'rigs'] as const satisfies readonly (keyof RecordWords)[];

/** A text as YAML: quoted as JSON quotes, which YAML reads. */
const quoted = (text: string): string => JSON.stringify(text.trim().replace(/\s+/g, ' '));
const numeral = (text: string): string => text.trim().replace(',', '.');

/** Fields in braces, those that were not said left out. */
const braces = (fields: readonly (readonly [string, string])[]): string => `{ ${fields.filter(([, value]) => value !== '').map(([key, value]) => `${key}: ${value}`).join(', ')} }`;

/** What is missing or cannot be read. */
function missingOf(words: RecordWords): WrittenRecord['missing'] {
  const missing: { field: keyof RecordWords; why: string }[] = [];
  for (const field of ASKED) if (words[field].trim() === '') missing.push({ field, why: 'not said yet' });
  const wrong = (field: keyof RecordWords, isRight: (text: string) => boolean, why: string): void => {
    if (words[field].trim() !== '' && !isRight(words[field].trim())) missing.push({ field, why });
  };
  wrong('id', (text) => SLUG.test(text), 'small letters, digits and hyphens, such as club-girth-wire');
  for (const field of ['day', 'calibrated'] as const) wrong(field, (text) => DAY.test(text), 'a day such as 2026-10-14');
  for (const field of NUMBERS) wrong(field, (text) => NUMBER.test(text) && Number(numeral(text)) > 0, 'a plain number above nothing');
  wrong('legs', (text) => /^\d+$/.test(text), 'a whole number of strands');
  return missing;
}

/**
 * The three files. Standing is `read`, since whoever contributes has the breaks at hand; certainty is lowered for what was not
 * recorded and for few pulls.
 * @param checked day on which the record is written
 */
export function writeRecord(words: RecordWords, pulls: readonly Pull[], unit: ForceUnit, notes: readonly string[], checked: string): WrittenRecord {
  const missing = missingOf(words);
  const bad = new Set(missing.map(({ field }) => field));
  const said = (field: keyof RecordWords): string => (bad.has(field) ? '' : words[field].trim());
  const number = (field: (typeof NUMBERS)[number]): string => numeral(said(field));
  const id = said('id') || 'name-of-the-series';
  const source = `${id}-report`;
  const open = (['rateMmPerMin', 'calibrated', 'conditioning'] as const).filter((field) => said(field) === '');
  const names = { rateMmPerMin: 'rate', calibrated: 'calibration of the load cell', conditioning: 'conditioning' } as const;
  const lowered = [
    ...(open.length > 0 ? [`  - { by: method, why: ${quoted(`not recorded: ${open.map((field) => names[field]).join(', ')}`)} }`] : []),
    ...(pulls.length < 10 ? [`  - { by: few, why: ${quoted(`${pulls.length} ${pulls.length === 1 ? 'pull' : 'pulls'}`)} }`] : []),
  ];
  const cell = braces([['capacityKn', number('capacityKn')], ['calibrated', said('calibrated') && quoted(said('calibrated'))]]);
  const line = (key: string, value: string): string[] => (value === '' ? [] : [`${key}: ${value}`]);
  const series = [
    ...line('what', quoted(said('what'))),
    ...line('called', quoted(said('called'))),
    ...line('part', said('part') && quoted(said('part'))),
    'standing: read',
    `source: ${source}`,
    'locator: "the whole report"',
    `checked: ${quoted(checked)}`,
    `rig: ${braces([
      ['method', said('method')], ['form', said('form')], ['material', said('material')], ['widthMm', number('widthMm')], ['diameterMm', number('diameterMm')],
      ['bearing', said('bearing')], ['bearingMm', number('bearingMm')], ['legs', number('legs')], ['state', said('state')], ['pull', said('pull')],
    ])}`,
    'pulled:',
    ...[...line('on', quoted(said('day'))), ...line('machine', quoted(said('machine'))), ...line('rateMmPerMin', number('rateMmPerMin')), ...(number('capacityKn') === '' ? [] : [`loadCell: ${cell}`]),
      ...line('samplesPerSecond', number('samplesPerSecond')), ...line('conditioning', said('conditioning') && quoted(said('conditioning'))),
      ...line('oneLot', said('oneLot') === 'yes' ? 'true' : said('oneLot') === 'no' ? 'false' : ''), ...line('rigs', said('rigs'))].map((text) => `  ${text}`),
    ...(lowered.length > 0 ? ['lowered:', ...lowered] : []),
    ...line('note', said('note') && quoted(said('note'))),
    '',
  ].join('\n');
  const report = [
    'type: report', `title: ${quoted(said('title'))}`, `authors: [${said('authors').split(';').map((name) => quoted(name)).join(', ')}]`, `issued: ${quoted(said('day'))}`,
    'language: en', 'free: true', 'informal: "contributed by the tester; nobody else has seen the pulls"', `checked: ${quoted(checked)}`, '',
  ].join('\n');
  return {
    files: [
      { path: `data/sources/${source}.yaml`, text: report },
      { path: `data/series/${id}.yaml`, text: series },
      { path: `data/series/${id}.csv`, text: writePulls(pulls, unit, notes) },
    ],
    missing,
  };
}
