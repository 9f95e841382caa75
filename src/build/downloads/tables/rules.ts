/** Rules of retirement as a table. */
import { DUE_FROM, type RuleRecord } from '../../../records/schema.ts';
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
      { name: 'lights', type: 'string', list: true, says: 'The word sun where light is among the exposures; the column of earlier releases.', of: ({ when }) => (when.exposures?.includes('light') ? 'sun' : undefined) },
      { name: 'width_from_mm', type: 'number', unit: 'mm', says: 'Least width or diameter that it speaks of; empty: any.', of: ({ when }) => when.widthMm?.[0] },
      { name: 'width_to_mm', type: 'number', unit: 'mm', says: 'Largest width or diameter that it speaks of; empty: any.', of: ({ when }) => when.widthMm?.[1] },
      { name: 'exposures', type: 'string', list: true, says: 'What the sling was exposed to, any of these; empty: any.', of: ({ when }) => spaced(when.exposures) },
      { name: 'events', type: 'string', list: true, says: 'What happened to the sling, any of these; empty: any.', of: ({ when }) => spaced(when.events) },
      { name: 'findings', type: 'string', list: true, says: 'What an inspection finds, any of these; empty: any.', of: ({ when }) => spaced(when.findings) },
      { name: 'due_figure', type: 'string', refers: 'cells', says: 'Figure that gives the time after which it falls due; empty: at once.', of: ({ due }) => due?.figure },
      { name: 'due_reads', type: 'string', among: ['value', 'at most', 'age from'], says: 'What is read there: the value itself, its upper bound, or the age at which its group begins.', of: ({ due }) => due?.reads },
      { name: 'due_from', type: 'string', among: [...DUE_FROM], says: 'What the time is counted from.', of: ({ due }) => due?.from },
      { name: 'says', type: 'string', required: true, says: 'The reason, as a sentence for people.', of: ({ says }) => says },
      { name: 'figures', type: 'string', required: true, list: 'cells', says: 'Figures behind it.', of: ({ figures }) => spaced(figures) },
    ],
  }, [...rules].map(([id, record]) => ({ id, ...record })));
}
