/** Files and copies of a register, in one part that comes when it is needed. */
import { csvMerge, type CsvTable, readRegisterCsv } from '../rack/csv-file.ts';
import { type Imported, readRegisterJson, textOfFile } from '../rack/json-file.ts';
import { type Merge, merge } from '../rack/merge.ts';
import type { By, Register } from '../rack/types.ts';

export { registerCalendar } from '../rack/calendar.ts';
export { registerCsv } from '../rack/csv-file.ts';
export { registerJson } from '../rack/json-file.ts';
export { merge };

/** A file that was read, ready to be taken into a register. */
export interface Incoming {
  invented: string | null;
  /** Whether it is a whole register, with its counts of edits. */
  isWhole: boolean;
  merge: (mine: Register, by: By) => Merge;
}

const ofRegister = (theirs: Register): Incoming => ({ invented: theirs.invented, isWhole: true, merge: (mine) => merge(mine, theirs) });
const ofTable = (table: CsvTable): Incoming => ({ invented: table.invented, isWhole: false, merge: (mine, by) => csvMerge(mine, by, table) });

/** Reads a register or a table, told apart by how it begins. Total: never throws. */
export function readImport(content: string | Uint8Array): Imported<Incoming> {
  const decoded: Imported<string> = typeof content === 'string' ? { ok: true, value: content } : textOfFile(content);
  if (!decoded.ok) return decoded;
  if (/^\uFEFF?\s*[[{]/.test(decoded.value)) {
    const read = readRegisterJson(decoded.value);
    return read.ok ? { ok: true, value: ofRegister(read.value) } : read;
  }
  const read = readRegisterCsv(decoded.value);
  return read.ok ? { ok: true, value: ofTable(read.value) } : read;
}
