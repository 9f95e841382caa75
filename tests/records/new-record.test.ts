/** Templates of `npm run new`: what a contributor gets, what is refused, and what the check then asks for. */
import { describe, expect, test } from 'vitest';
import { checkProject } from '../../src/records/check-project.ts';
import { formatFault } from '../../src/records/fault.ts';
import { singleFigure, source } from '../../src/records/schema.ts';
import { draftRecord, figureTemplate, sourceTemplate } from '../../src/records/template.ts';
import { SOUND } from './project.ts';

const USAGE = 'Write: npm run new -- figure <source> <result>, or: npm run new -- source <id>.';

describe('a new record', () => {
  test.each<[string[], string, string]>([
    [[], 'says nothing to write', USAGE],
    [['figur', 'a', 'b'], 'knows no record "figur"', USAGE],
    [['figure', 'a'], 'a figure needs two names, and 1 came', USAGE],
    [['figure'], 'a figure needs two names, and none came', USAGE],
    [['source', 'a', 'b'], 'a source needs one name, and 2 came', USAGE],
    [
      ['figure', 'lab-a', '../x'],
      '"../x" is not a lower-case name with hyphens',
      'Use a to z, digits and single hyphens, for example club-2006.',
    ],
    [
      ['source', 'Lab_A'],
      '"Lab_A" is not a lower-case name with hyphens',
      'Use a to z, digits and single hyphens, for example club-2006.',
    ],
  ])('%j is refused', (words, problem, advice) => {
    expect(draftRecord(words)).toEqual({ problem, advice });
  });

  test('goes where its path says', () => {
    expect(draftRecord(['figure', 'lab-a', 'pull-3'])).toMatchObject({ file: 'data/figures/lab-a/pull-3.yaml' });
    expect(draftRecord(['source', 'lab-c'])).toMatchObject({ file: 'data/sources/lab-c.yaml' });
  });

  test('asks, when it is checked as it is, for each line that must be filled', () => {
    const says = (file: string, text: string) =>
      checkProject({ ...SOUND, [file]: text }).map((fault) => formatFault(fault).replace(/^[^:]+:\d+:\d+ /, ''));
    expect(says('data/figures/lab-a/pull-3.yaml', figureTemplate()).map((line) => line.split(':')[0])).toEqual([
      'what',
      'value',
      'locator',
      'checked',
    ]);
    expect(says('data/sources/lab-c.yaml', sourceTemplate()).map((line) => line.split(':')[0])).toEqual([
      'title',
      'authors',
      'issued',
      'checked',
    ]);
  });

  test('passes once its empty lines are filled', () => {
    const fill = (text: string) =>
      text
        .replace(/^what:$/m, 'what: A pull')
        .replace(/^value:$/m, 'value: 12')
        .replace(/^locator:$/m, 'locator: table 2')
        .replace(/^title:$/m, 'title: Pulls')
        .replace('authors: []', 'authors: [A. Tester]')
        .replace('"YYYY-MM-DD"', '"2026-01-05"')
        .replace('"YYYY"', '"2026"');
    expect(
      checkProject({
        ...SOUND,
        'data/figures/lab-a/pull-3.yaml': fill(figureTemplate()),
        'data/sources/lab-c.yaml': fill(sourceTemplate()),
      }).map(formatFault),
    ).toEqual([]);
  });

  test('names every field of the schema, so that none has to be guessed', () => {
    for (const [schema, text] of [
      [singleFigure, figureTemplate()],
      [source, sourceTemplate()],
    ] as const) {
      const named = new Set([...text.matchAll(/^(?:# )?([a-zA-Z]+):/gm)].map((match) => match[1]));
      expect(Object.keys(schema.shape).filter((key) => !named.has(key))).toEqual([]);
    }
  });
});
