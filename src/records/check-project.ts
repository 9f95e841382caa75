/** The whole record check: every fault of every file at once. */
import { RULES } from './check/index.ts';
import type { Rule } from './check/rule.ts';
import { byPlace, type Fault } from './fault.ts';
import type { FileMap } from './files.ts';
import { readAll } from './read.ts';

/**
 * Checks a project: its top folder on disk, or a map of files. `more` are rules
 * that need an engine (that every empty cell has its gap, say); they come from
 * outside because records know nothing of engines. Sorted by file and line.
 */
export function checkProject(rootOrFiles: string | FileMap, more: readonly Rule[] = []): Fault[] {
  const records = readAll(rootOrFiles);
  const faults = [...records.faults];
  for (const rule of [...RULES, ...more])
    rule.check((finding) => {
      faults.push({ ...finding, rule: rule.name });
    }, records);
  return faults.sort(byPlace);
}
