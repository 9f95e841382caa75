/**
 * Each rule in `data/rules` on three slings: one that it speaks of, one at its edge, one that it does not speak of. Days
 * and kinds were worked out by hand from what the rule's own figures print (ten years, one year, three years, one year,
 * six months, three months; ten millimetres) and from the removal lists. Where a rule has no limit, its edge is the
 * answer "not known".
 */
import { describe, expect, test } from 'vitest';
import { type Field, type Reason, verdictOn } from '../../../src/retirement/verdict.ts';
import { KNOWN, ON, RECORDS, RULES, withAnswers } from './history.ts';

type Answers = Partial<Record<Field, unknown>>;
/** What the rule asks: in words with its day, and after a slash why it fires where that is an open question. Null: it says nothing. */
type Expected = string | null;
type Case = readonly [answers: Answers, expected: Expected];

const NOW = 'retire-now';
const LOOK = `inspect-by ${ON}`;
/** A rule on one question: yes, not known, no. */
const asked = (field: Field, onYes: string, onUnknown = onYes): readonly [Case, Case, Case] => [
  [{ [field]: 'yes' }, onYes], [{ [field]: 'unknown' }, `${onUnknown} / ${field}`], [{ [field]: 'no' }, null],
];
/** A rule on what an inspection finds: where nobody has looked, it asks to look. */
const found = (field: Field): readonly [Case, Case, Case] => asked(field, NOW, LOOK);

const CASES: Readonly<Record<string, readonly [fires: Case, edge: Case, not: Case]>> = {
  // Ten years from manufacture. The day itself is reached; of a month the first day counts. It speaks of every sling: where it is not reached it only names its day.
  age: [[{ made: '2016-11-24', firstUse: '2017' }, NOW], [{ made: '2016-11-25', firstUse: '2017' }, 'retire-by 2026-11-25'], [{ made: '2024-03', firstUse: '2024' }, 'retire-by 2034-03-01']],
  // One year from first use, used each day.
  'daily-use-life': [[{ use: 'daily', firstUse: '2025-11-24' }, NOW], [{ use: 'daily', firstUse: '2025-11-25' }, 'retire-by 2026-11-25'], [{ use: 'weekly', firstUse: '2024-06-01' }, null]],
  'big-fall': asked('events.big-fall', NOW),
  'edge-load': asked('events.edge', NOW),
  'wire-load': asked('events.bare-wire', NOW),
  'test-pull': asked('events.test-pull', NOW),
  chemicals: asked('exposures.chemicals', NOW),
  // The wide weave with HMPE in it counts as HMPE.
  'heat-hmpe': [[{ material: 'hmpe', 'exposures.heat': 'yes' }, NOW], [{ material: 'hmpe-nylon', 'exposures.heat': 'yes' }, NOW], [{ material: 'nylon', 'exposures.heat': 'yes' }, null]],
  cut: found('findings.cut'),
  'edge-nick': found('findings.edge-nick'),
  melted: found('findings.melted'),
  'chemical-burn': found('findings.chemical-burn'),
  stitching: found('findings.stitching'),
  snag: found('findings.snag'),
  fuzz: found('findings.fuzz'),
  stiff: found('findings.stiff'),
  faded: found('findings.faded'),
  'label-missing': found('findings.label-missing'),
  doubt: found('findings.doubt'),
  // Three years from manufacture, where the older group of the pulled slings begins.
  'used-hmpe': [[{ material: 'hmpe', made: '2023-11-24', firstUse: '2024' }, LOOK], [{ material: 'hmpe', made: '2023-11-25', firstUse: '2024' }, 'inspect-by 2026-11-25'], [{ material: 'hmpe', use: 'stored' }, null]],
  // Wide is more than ten millimetres.
  'narrow-hmpe': [[{ material: 'hmpe', widthMm: 8, made: '2022', firstUse: '2022' }, LOOK], [{ material: 'hmpe', widthMm: 10, made: '2022', firstUse: '2022' }, LOOK], [{ material: 'hmpe', widthMm: 10.1, made: '2022', firstUse: '2022' }, null]],
  // One year from manufacture.
  'daily-use': [[{ use: 'daily', made: '2025-11', firstUse: '2026-11' }, LOOK], [{ use: 'daily', made: '2026', firstUse: '2026-11' }, 'inspect-by 2027-01-01'], [{ use: 'weekly', made: '2024' }, null]],
  // Whatever the fibre: of nylon and polyester the loss is measured, and of the others not knowing counts.
  light: asked('exposures.light', NOW),
  heat: asked('exposures.heat', LOOK),
  'wet-nylon': [[{ material: 'nylon', 'exposures.wet': 'yes' }, LOOK], [{ material: 'hmpe-nylon', 'exposures.wet': 'unknown' }, `${LOOK} / exposures.wet`], [{ material: 'polyester', 'exposures.wet': 'yes' }, null]],
  salt: asked('exposures.salt', LOOK),
  dirt: asked('findings.dirt', LOOK),
  'tails-slipped': asked('findings.tails-slipped', LOOK),
  // One year, six months, three months from the last inspection; in a shorter month its last day.
  'inspect-all': [[{ inspected: '2025-11-24' }, LOOK], [{ inspected: '2025-11-25' }, 'inspect-by 2026-11-25'], [{ inspected: '2026-11-24' }, 'inspect-by 2027-11-24']],
  'inspect-weekly': [[{ use: 'weekly', inspected: '2026-05-24' }, LOOK], [{ use: 'weekly', inspected: '2026-08-31' }, 'inspect-by 2027-02-28'], [{ use: 'monthly', inspected: '2026-05-24' }, null]],
  'inspect-daily': [[{ use: 'daily', inspected: '2026-08-24' }, LOOK], [{ use: 'daily', inspected: '2026-08-25' }, 'inspect-by 2026-11-25'], [{ use: 'weekly', inspected: '2026-08-24' }, null]],
};

const words = ({ asks, why, unknown }: Reason): string =>
  [asks.kind, ...('day' in asks ? [asks.day] : []), ...(why === 'met' ? [] : ['/', ...unknown])].join(' ');

test('every rule of the project has its three cases, and every case its rule', () => {
  expect(Object.keys(CASES).sort()).toEqual([...RECORDS.rules.keys()].sort());
});

describe.each(Object.entries(CASES))('%s', (id, cases) => {
  test.each(['fires', 'at its edge', 'does not'].map((name, i) => [name, cases[i] as Case] as const))('%s', (_name, [answers, expected]) => {
    const reason = verdictOn(RULES, withAnswers(KNOWN, answers), ON).reasons.find(({ rule }) => rule === id);
    expect(reason ? words(reason) : null).toBe(expected);
  });
});

test('no rule has a digit in its words', () => {
  expect(Object.entries(RULES).filter(([, { says }]) => /\d/.test(says)).map(([id]) => id)).toEqual([]);
});
