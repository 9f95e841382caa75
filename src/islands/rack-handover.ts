/** Devices of a rack register, handed over as its file, for a form that goes with them to a maker or workshop. Nothing is kept. */
import { FINDING_ANSWERS, MATERIAL_ANSWERS } from '../components/retirement/words.ts';
import { faultLine, readRegisterJson, textOfFile } from '../rack/json-file.ts';
import { writePartDay } from '../rack/part-day.ts';
import type { Item, Register } from '../rack/types.ts';

/** One line of the form. Every field is text for people; empty: not known. */
export interface FormDevice { name: string; count: string; rating: string; made: string; material: string; wrong: string }

/** What a handed-over register gives: its devices, or every fault with its line and reason. */
export type Handover = { ok: true; /** A sentence where the register is an invented example. */ invented: string | null; devices: FormDevice[] } | { ok: false; faults: string[] };

/** What the last look found, with its note; else the notes of the item. */
function wrongWith({ inspections, notes }: Item): string {
  const last = inspections.reduce<Item['inspections'][number] | null>((latest, one) => (latest && latest.day > one.day ? latest : one), null);
  const found = (last?.findings ?? []).map((finding) => FINDING_ANSWERS[finding]).join(', ');
  return [found, last?.note ?? '', notes].map((text) => text.trim()).filter((text) => text !== '').join('; ');
}

/** Lines of the form from a register: what is on the rack, in the register's order. */
export function formDevices(register: Register): FormDevice[] {
  return register.items.filter(({ removed }) => !removed).map((item) => ({
    name: item.name, count: item.count === 1 ? '' : String(item.count), rating: item.ratingKn === null ? '' : `${item.ratingKn} kN`, made: item.sling.made === null ? '' : writePartDay(item.sling.made),
    material: item.sling.material === null ? '' : [MATERIAL_ANSWERS[item.sling.material], ...(item.sling.widthMm === null ? [] : [`${item.sling.widthMm} mm`])].join(' '),
    wrong: wrongWith(item),
  }));
}

/** Reads a register that was pasted. Total: any text gives devices or faults. */
export function handoverOfText(text: string): Handover {
  if (text.trim() === '') return { ok: false, faults: ['line 1: nothing was pasted'] };
  const read = readRegisterJson(text);
  if (!read.ok) return { ok: false, faults: read.faults.map(faultLine) };
  const devices = formDevices(read.value);
  return devices.length === 0 ? { ok: false, faults: ['line 1: the register has nothing on its rack'] } : { ok: true, invented: read.value.invented, devices };
}

/** Reads the file of a register. */
export function handoverOfFile(bytes: Uint8Array): Handover {
  const text = textOfFile(bytes);
  return text.ok ? handoverOfText(text.value) : { ok: false, faults: text.faults.map(faultLine) };
}
