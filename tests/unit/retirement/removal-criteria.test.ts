/**
 * Every criterion of the published lists on when a sling goes, or is looked at, is a rule or has the reason why it is
 * none. `removal-criteria.csv` was written from the figures' own words: a list in words stands there whole, sentence by
 * sentence, so that none is passed over.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { RECORDS, RULES } from './history.ts';

interface Row { figure: string; criterion: string; outcome: string; rules: string[]; why: string }

const HEAD = 'figure,criterion,outcome,rules,why';
const LINE = /^([^,"]+),"([^"]+)",(rule|not-applicable),([a-z -]*),(?:"([^"]+)")?$/;
/** Words by which a figure speaks of the end of a piece's use, or of looking at it. */
const SPEAKS = /out of use|out of service|retire|inspect|examin|temperature of use|longest life|used up|clock|end of (?:its|their|a) life|fixed life|discard/i;

const rows = readFileSync(new URL('./removal-criteria.csv', import.meta.url), 'utf8').trimEnd().split('\n').slice(1).map((line): Row => {
  const [, figure, criterion, outcome, rules, why = ''] = LINE.exec(line) ?? [];
  if (!figure || !criterion || !outcome || rules === undefined) throw new RangeError(`removal-criteria.csv: cannot read ${line}`);
  return { figure, criterion, outcome, rules: rules.split(' ').filter(Boolean), why };
});
const statementOf = (address: string): string | undefined => {
  const value = RECORDS.cells.get(address)?.figure.value;
  return typeof value === 'object' && 'statement' in value ? value.statement : undefined;
};

test('the columns are those of its head, and no criterion stands twice', () => {
  expect(readFileSync(new URL('./removal-criteria.csv', import.meta.url), 'utf8').split('\n')[0]).toBe(HEAD);
  const names = rows.map(({ figure, criterion }) => `${figure}: ${criterion}`);
  expect(names.filter((name, i) => names.indexOf(name) < i)).toEqual([]);
});

test('every figure that speaks of the end of use or of inspection is listed, and every listed figure exists', () => {
  const speaking = [...RECORDS.cells].filter(([id, { figure }]) => SPEAKS.test(`${figure.what} ${statementOf(id) ?? ''}`)).map(([id]) => id);
  expect(speaking.length).toBeGreaterThan(30);
  expect(speaking.filter((id) => !rows.some(({ figure }) => figure === id))).toEqual([]);
  expect(rows.filter(({ figure }) => !RECORDS.cells.has(figure)).map(({ figure }) => figure)).toEqual([]);
});

test('a list in words stands there whole', () => {
  const listed = [...new Set(rows.map(({ figure }) => figure))].filter((figure) => statementOf(figure) !== undefined);
  for (const figure of listed) expect(rows.filter((row) => row.figure === figure).map(({ criterion }) => criterion).join(' ')).toBe(statementOf(figure));
});

test('a criterion is rules that exist and rest on its figure, or has its reason', () => {
  const wrong = rows.flatMap(({ figure, criterion, outcome, rules, why }) => {
    const name = `${figure}: ${criterion}`;
    if (outcome === 'not-applicable') return rules.length > 0 || !why ? [`${name} has no reason, or rules`] : [];
    if (rules.length === 0 || why) return [`${name} has no rule, or a reason`];
    return rules.filter((id) => !RULES[id]?.figures.includes(figure)).map((id) => `${name}: ${id} does not rest on it`);
  });
  expect(wrong).toEqual([]);
});

test('the two removal lists for web slings are rules in more than half of their criteria', () => {
  for (const list of ['osha-1926-251/removal', 'asme-b30-9/web-sling-removal']) {
    const own = rows.filter(({ figure }) => figure === list);
    expect(own.filter(({ outcome }) => outcome === 'rule').length).toBeGreaterThan(own.length / 2);
  }
});
