/** How fast the register of a rack is with many items: verdicts, order by what is due, export, import, table, merge. Part of `npm run bench`. */
import { registerCalendar } from '../rack/calendar.ts';
import { readRegisterCsv, registerCsv } from '../rack/csv-file.ts';
import { verdictRules } from '../build/retirement-rules.ts';
import { byDue, type VerdictOf } from '../rack/due.ts';
import { recorded, startHistory } from '../rack/history.ts';
import { readRegisterJson, registerJson } from '../rack/json-file.ts';
import { merge } from '../rack/merge.ts';
import { readPasted } from '../rack/paste.ts';
import { addInspection, addItems, changeItem, emptyRegister, writeFields } from '../rack/register.ts';
import { itemReasons } from '../rack/sling-history.ts';
import type { Register } from '../rack/types.ts';
import { readAll } from '../records/read.ts';

const RUNS = 7;
const ITEMS = 5000;
const ON = '2026-11-25';
const by = (copy: string) => ({ copy, at: '2026-11-25T10:00:00Z' });


/** Median time of each thing that a keeper of so many items waits for. */
export function benchRack(): { what: string; milliseconds: number }[] {
  const pasted = Array.from({ length: ITEMS }, (_, at) => `Device ${at}; ${6 + (at % 10)} kN; ${at % 2 ? 'HMPE 10' : 'nylon 16'}; ${2010 + (at % 16)}-0${1 + (at % 9)}; 1`).join('\n');
  const drafts = readPasted(pasted).flatMap((line) => (line.kind === 'item' ? [line.draft] : []));
  const added = addItems(emptyRegister(), by('bench1'), drafts);
  const ids = added.items.map(({ id }) => id);
  const mine: Register = addInspection(added, by('bench1'), ids[0] as string, { day: '2026-11-25', findings: ['fuzz'], by: 'A', note: '' });
  const theirs = writeFields(added, by('bench2'), ids.filter((_, at) => at % 2 === 0).map((item) => ({ item, field: 'sling.use', value: 'weekly' })));
  const rules = verdictRules(readAll(process.cwd()));
  const known = new Map(mine.items.map((item) => [item.id, itemReasons(rules, item, ON)[0]?.asks ?? null]));
  const verdictOf: VerdictOf = ({ id }) => known.get(id) ?? null;
  const [file, table] = [registerJson(mine), registerCsv(mine)];

  const parts: [string, () => unknown][] = [
    ['paste', () => readPasted(pasted)],
    ['verdicts', () => mine.items.map((item) => itemReasons(rules, item, ON))],
    ['order by what is due', () => byDue(mine, verdictOf)],
    ['one change, with its undo', () => recorded(startHistory(mine), changeItem(mine, by('bench1'), ids[1] as string, { name: 'Another' }), 'Name')],
    ['export', () => registerJson(mine)],
    ['import', () => readRegisterJson(file)],
    ['table', () => registerCsv(mine)],
    ['table back', () => readRegisterCsv(table)],
    ['merge, half the items changed', () => { const merged = merge(mine, theirs); return merged.ok && merged.settled(); }],
    ['calendar', () => registerCalendar(mine, verdictOf, '2026-11-25T10:00:00Z')],
  ];
  return parts.map(([name, run]) => {
    const times = Array.from({ length: RUNS }, () => {
      const from = performance.now();
      run();
      return performance.now() - from;
    }).sort((a, b) => a - b);
    return { what: `rack of ${ITEMS} items, ${name}, median of ${RUNS}`, milliseconds: times[Math.floor(RUNS / 2)] ?? 0 };
  });
}
