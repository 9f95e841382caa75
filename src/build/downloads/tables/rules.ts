/** Rules of retirement as a table. */
import type { RuleRecord } from '../../../records/schema.ts';
import type { SiteRecords } from '../../records.ts';
import { makeTable, spaced, type Table } from '../table.ts';

/** One row a rule. The years stand in the figure that the rule names. */
export function rulesTable({ rules }: SiteRecords): Table {
  return makeTable<RuleRecord & { id: string }>({
    name: 'rules', title: 'Rules of retirement', key: ['id'],
    says: 'One row for each rule on when a sling has to go, or to be looked at. No rule says that a sling may stay.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the rule.', of: ({ id }) => id },
      { name: 'what', type: 'string', required: true, says: 'The rule in a few words.', of: ({ what }) => what },
      { name: 'order', type: 'integer', required: true, unit: 'place', says: 'Place among rules of one verdict.', of: ({ order }) => order },
      { name: 'verdict', type: 'string', required: true, among: ['retire', 'inspect'], says: 'Whether the sling has to go or to be looked at.', of: ({ verdict }) => verdict },
      { name: 'materials', type: 'string', list: true, says: 'Materials that it speaks of; empty: any.', of: ({ when }) => spaced(when.materials) },
      { name: 'uses', type: 'string', list: true, says: 'How often the sling was used; empty: any.', of: ({ when }) => spaced(when.uses) },
      { name: 'lights', type: 'string', list: true, says: 'Where it was kept; empty: any.', of: ({ when }) => spaced(when.lights) },
      { name: 'due_figure', type: 'string', refers: 'cells', says: 'Figure that gives the years from manufacture at which it falls due; empty: at once.', of: ({ due }) => due?.figure },
      { name: 'due_reads', type: 'string', among: ['value', 'age from'], says: 'What is read there: the value itself, or the age at which its group begins.', of: ({ due }) => due?.reads },
      { name: 'says', type: 'string', required: true, says: 'The reason, as a sentence for people.', of: ({ says }) => says },
      { name: 'figures', type: 'string', required: true, list: 'cells', says: 'Figures behind it.', of: ({ figures }) => spaced(figures) },
    ],
  }, [...rules].map(([id, record]) => ({ id, ...record })));
}
