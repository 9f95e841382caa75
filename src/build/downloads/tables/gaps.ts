/** Gaps as tables: the questions, and the cells of the comparison that each leaves empty. */
import type { GapRecord } from '../../../records/schema.ts';
import type { SiteRecords } from '../../records.ts';
import { makeTable, spaced, type Table } from '../table.ts';

/** One row a question. */
export function gapsTable({ gaps }: SiteRecords): Table {
  return makeTable<GapRecord & { id: string }>({
    name: 'gaps', title: 'Gaps', key: ['id'],
    says: 'One row for each question to which we found no published figure, with the test that would settle it.',
    columns: [
      { name: 'id', type: 'string', required: true, says: 'Id of the gap.', of: ({ id }) => id },
      { name: 'question', type: 'string', required: true, says: 'The question.', of: ({ question }) => question },
      { name: 'concerns', type: 'string', list: 'methods', says: 'Methods whose page shows it, besides those that it leaves empty.', of: ({ concerns }) => spaced(concerns) },
      { name: 'page', type: 'string', says: 'The page that shows it, where that is no method\'s.', of: ({ page }) => page },
      { name: 'nearest', type: 'string', list: 'cells', says: 'The nearest figures.', of: ({ nearest }) => spaced(nearest) },
      { name: 'test_rig', type: 'string', required: true, says: 'What a test would rig.', of: ({ test }) => test.rig },
      { name: 'test_pulls', type: 'integer', required: true, unit: 'count', says: 'How many pulls it would need, by our proposal.', of: ({ test }) => test.pulls },
      { name: 'test_vary', type: 'string', says: 'What it would vary.', of: ({ test }) => test.vary },
      { name: 'test_record', type: 'string', required: true, says: 'What it would record.', of: ({ test }) => test.record },
    ],
  }, [...gaps].map(([id, record]) => ({ id, ...record })));
}

interface Block { gap: string; position: number; block: GapRecord['blocks'][number] }

/** One row for each part of the comparison that a gap leaves empty. */
export function gapBlocksTable({ gaps }: SiteRecords): Table {
  return makeTable<Block>({
    name: 'gap-blocks', title: 'What gaps leave empty', key: ['gap', 'position'],
    says: 'One row for each part of the comparison that a gap leaves empty. An empty column means all.',
    columns: [
      { name: 'gap', type: 'string', required: true, refers: 'gaps', says: 'The gap.', of: ({ gap }) => gap },
      { name: 'position', type: 'integer', required: true, unit: 'place', says: 'Place in the list of the gap.', of: ({ position }) => position },
      { name: 'methods', type: 'string', list: 'methods', says: 'Methods.', of: ({ block }) => spaced(block.methods) },
      { name: 'slings', type: 'string', list: 'slings', says: 'Slings.', of: ({ block }) => spaced(block.slings) },
      { name: 'eyes', type: 'string', list: true, says: 'Kinds of eye.', of: ({ block }) => spaced(block.eyes) },
      { name: 'below_mm', type: 'number', unit: 'mm', says: 'Only bearings thinner than this.', of: ({ block }) => block.belowMm },
      { name: 'above_mm', type: 'number', unit: 'mm', says: 'Only bearings thicker than this.', of: ({ block }) => block.aboveMm },
      { name: 'used', type: 'boolean', required: true, says: 'Whether it speaks only of slings that have been used.', of: ({ block }) => block.used ?? false },
    ],
  }, [...gaps].flatMap(([gap, { blocks }]) => blocks.map((block, i) => ({ gap, position: i + 1, block }))));
}
