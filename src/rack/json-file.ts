/** A register as a file and back, the same to the byte. A file that cannot be taken whole is not taken at all. */
import { isInspectionKey } from './fields.ts';
import type { FieldKey } from './field-names.ts';
import { jsonLines } from './json-lines.ts';
import { dayFaults, sortedById } from './register.ts';
import { REGISTER_SCHEMA } from './schema.ts';
import { inOrder, pointerStep, type ShapeFault, shapeFaults } from './shape.ts';
import { hasSeen, stampsOf, writeStamps } from './stamps.ts';
import { FORMAT, type Item, type Register, VERSION } from './types.ts';

/** What is wrong with a file: line from 1, place as a JSON pointer where there is one, and why. */
export interface FileFault { line: number; pointer: string | null; why: string }
export type Imported<T> = { ok: true; value: T } | { ok: false; faults: readonly FileFault[] };

/** One fault as a sentence: `line 12, /items/3/ratingKn: must be ...`. */
export const faultLine = ({ line, pointer, why }: FileFault): string => `line ${line}${pointer ? `, ${pointer}` : ''}: ${why}`;

/** Order of keys and items that does not depend on how the register came about. */
function canonical(register: Register): Register {
  const items = register.items.map((item): Item => ({
    ...item,
    inspections: [...item.inspections].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : a.id < b.id ? -1 : 1)),
  }));
  return inOrder(REGISTER_SCHEMA, { ...register, items: sortedById(items) }) as Register;
}

/** The file of a register: JSON with a fixed order of keys, one value a line, line ends of one character. */
export const registerJson = (register: Register): string => `${JSON.stringify(canonical(register), null, 1)}\n`;

/** What a schema cannot say: ids once, days of the calendar, no stamp that is not counted. */
function meaningFaults(register: Register): ShapeFault[] {
  const faults: ShapeFault[] = [];
  const ids = new Set<string>();
  for (const [at, item] of register.items.entries()) {
    const place = `/items/${at}`;
    if (ids.has(item.id)) faults.push({ pointer: `${place}/id`, why: `${item.id} is the id of another item` });
    ids.add(item.id);
    faults.push(...dayFaults(item).map(({ pointer, why }) => ({ pointer: place + pointer, why })));
    const looks = new Set<string>();
    for (const [index, { id }] of item.inspections.entries()) {
      if (looks.has(id)) faults.push({ pointer: `${place}/inspections/${index}/id`, why: `${id} is the id of another inspection` });
      looks.add(id);
      if (!Object.hasOwn(item.stamps, `inspections/${id}`)) faults.push({ pointer: `${place}/inspections/${index}`, why: `lacks its stamp (inspections/${id} in stamps)` });
    }
    const stamped: [string, string[]][] = [[`${place}/stamp`, item.stamp.split(' ')]];
    for (const field of Object.keys(item.stamps) as FieldKey[]) {
      const pointer = `${place}/stamps${pointerStep(field)}`;
      stamped.push([pointer, stampsOf(item, field)]);
      if (item.stamps[field] !== writeStamps(stampsOf(item, field)) || (item.stamps[field] === item.stamp && !isInspectionKey(field))) {
        faults.push({ pointer, why: 'is not written as this format writes it' });
      }
    }
    for (const [pointer, stamps] of stamped) {
      const lost = stamps.find((stamp) => !hasSeen(register.seen, stamp));
      if (lost) faults.push({ pointer, why: `${lost} is an edit that /seen does not count` });
    }
  }
  return faults;
}

/** Faults that are named; a file of another kind would have thousands. */
const MOST_FAULTS = 20;

/** Whether a file says that it is a register of ours, and of which version. */
function foreign(value: unknown): string | null {
  const { format, version } = (typeof value === 'object' && value !== null ? value : {}) as { format?: unknown; version?: unknown };
  if (format !== FORMAT) return `this is no rack register: "format" must be "${FORMAT}"`;
  if (typeof version === 'number' && version > VERSION) return `the file was written by a newer form of this page (version ${version}; this one reads ${VERSION}). Reload the page, then import again`;
  return null;
}

/**
 * Reads the file of a register. Total: never throws, and touches nothing that the reader has.
 * @param file text of the file, with or without a byte order mark
 */
export function readRegisterJson(file: string): Imported<Register> {
  const text = file.replace(/^\uFEFF/, '');
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    const { fault } = jsonLines(text);
    return { ok: false, faults: [{ line: fault?.line ?? 1, pointer: null, why: fault?.why ?? 'the file is no JSON' }] };
  }
  const strange = foreign(value);
  if (strange) return { ok: false, faults: [{ line: 1, pointer: null, why: strange }] };
  const shape = shapeFaults(REGISTER_SCHEMA, value);
  const faults = shape.length > 0 ? shape : meaningFaults(value as Register);
  if (faults.length > 0) {
    const { lines, fault } = jsonLines(text);
    const shown = faults.slice(0, MOST_FAULTS).map(({ pointer, why }): FileFault => ({ line: lines.get(pointer) ?? fault?.line ?? 1, pointer: pointer || '/', why }));
    return { ok: false, faults: faults.length > MOST_FAULTS ? [...shown, { line: 1, pointer: null, why: `and ${faults.length - MOST_FAULTS} more` }] : shown };
  }
  const register = canonical(value as Register);
  if (registerJson(register) !== text) {
    // Written or changed by hand. A key that stands twice would be lost without a word.
    const { fault } = jsonLines(text);
    if (fault) return { ok: false, faults: [{ ...fault, pointer: null }] };
  }
  return { ok: true, value: register };
}

/** Text of a file, or the line on which it is not UTF-8. A program that guessed would change what stands there. */
export function textOfFile(bytes: Uint8Array): Imported<string> {
  const decoded = (part: Uint8Array): string | null => {
    try {
      return new TextDecoder('utf-8', { fatal: true }).decode(part);
    } catch {
      return null;
    }
  };
  const text = decoded(bytes);
  if (text !== null) return { ok: true, value: text };
  let [line, from] = [1, 0];
  for (let end = bytes.indexOf(10); end >= 0 && decoded(bytes.subarray(from, end)) !== null; end = bytes.indexOf(10, from)) {
    line += 1;
    from = end + 1;
  }
  return { ok: false, faults: [{ line, pointer: null, why: 'the file is not written in UTF-8, or is damaged here' }] };
}
