import { didYouMean } from '../nearest-name.ts';
import type { Collection, Records } from '../read.ts';
import { referencesOf } from '../references.ts';
import type { Rule } from './rule.ts';

const ONE: Record<Collection, [string, string]> = {
  figures: ['figure', 'data/figures/'],
  sources: ['source', 'data/sources/'],
  factors: ['factor', 'data/factors/'],
  classes: ['factor class', 'data/factors/class/'],
  methods: ['method', 'data/methods/'],
  slings: ['sling', 'data/slings/'],
  gaps: ['gap', 'data/gaps/'],
  replacements: ['replacement', 'data/replacements/'],
  law: ['law', 'data/law/'],
  rules: ['rule', 'data/rules/'],
  materials: ['material', 'data/materials/'],
  corrections: ['correction', 'data/corrections/'],
  series: ['series', 'data/series/'],
};

export const referencesExist: Rule = {
  name: 'references-exist',
  description:
    'Every record that is named exists, under its own id; where a number is meant, the address leads to one number.',
  check(report, records) {
    for (const { to, collection, from, field, at } of referencesOf(records)) {
      const found = faultOf(records, collection, to);
      if (found) report({ at, subject: `${from} ${field}`, ...found });
    }
  },
};

/** What is wrong with a name of a record, or nothing. Used for the figures that prose names, too. */
export function faultOf(
  records: Records,
  collection: Collection,
  to: string,
): { problem: string; got: string; advice: string } | undefined {
  const { present, cells, moved, withdrawn } = records;
  const [what, folder] = ONE[collection];
  if (collection !== 'figures') {
    if (present[collection].has(to)) return undefined;
    return {
      problem: `there is no ${what} of this id`,
      got: to,
      advice: didYouMean(to, present[collection], `Write ${folder}${to}.yaml, or correct the name.`),
    };
  }
  if (cells.has(to)) return undefined;
  const [id, cell] = to.split('#') as [string, string?];
  const gone = moved.get(id)?.data;
  if (gone) {
    const targets = typeof gone.to === 'string' ? [gone.to] : gone.to;
    return {
      problem: `this figure has ${gone.kind === 'moved' ? 'moved' : 'been split'}`,
      got: to,
      advice: `Write ${targets.join(' or ')}.`,
    };
  }
  if (withdrawn.has(id))
    return {
      problem: 'this figure was withdrawn',
      got: to,
      advice: 'Name another figure, or remove the reference.',
    };
  const names = records.figures.get(id)?.data;
  if (!names) {
    if (present.figures.has(id)) return undefined; // the file is there; its own faults are told
    return {
      problem: 'there is no figure at this address',
      got: to,
      advice: didYouMean(to, cells.keys(), `Write ${folder}${id}.yaml, or correct the address.`),
    };
  }
  if ('cells' in names && cell === undefined)
    return {
      problem: 'this is a whole table, and one number is needed',
      got: to,
      advice: `Name a cell: ${Object.keys(names.cells)
        .slice(0, 4)
        .map((name) => `${id}#${name}`)
        .join(', ')}.`,
    };
  if (!('cells' in names))
    return { problem: 'this figure has one value and no cells', got: to, advice: `Write ${id}.` };
  return {
    problem: 'the table has no such cell',
    got: to,
    advice: didYouMean(
      to,
      Object.keys(names.cells).map((name) => `${id}#${name}`),
      `Its cells are ${Object.keys(names.cells).join(', ')}.`,
    ),
  };
}
