/**
 * Devices of a rack register, handed over to a page that needs them: the form that goes with them to a maker or workshop,
 * and the calculator of costs. What the rules say of each comes along, strictest first. Nothing is kept or changed.
 */
import { FINDING_ANSWERS, headlineText, MATERIAL_ANSWERS } from '../components/retirement/words.ts';
import { byDue } from '../rack/due.ts';
import { faultLine, readRegisterJson, textOfFile } from '../rack/json-file.ts';
import { writePartDay } from '../rack/part-day.ts';
import { itemReasons, type Rules } from '../rack/sling-history.ts';
import type { Item, Register } from '../rack/types.ts';

/** One line of the form. Every field is text for people; empty: not known. */
export interface FormDevice { name: string; count: string; rating: string; made: string; material: string; wrong: string }

/** A device of the register, with what the rules say of its sling. */
export interface HandedDevice {
  form: FormDevice;
  count: number;
  /** "Retire now", "retire by ..."; empty where no rule speaks, or where the rules could not be read. */
  due: string;
  isDueNow: boolean;
}

/** The rules of retirement and the day on which they are asked; null where the rules could not be read. */
export type Judge = { rules: Rules; on: string } | null;

/** What a handed-over register gives: its devices, or every fault with its line and reason. */
export type Handover = { ok: true; /** A sentence where the register is an invented example. */ invented: string | null; devices: HandedDevice[] } | { ok: false; faults: string[] };

/** What the last look found, with its note; else the notes of the item. */
function wrongWith({ inspections, notes }: Item): string {
  const last = inspections.reduce<Item['inspections'][number] | null>((latest, one) => (latest && latest.day > one.day ? latest : one), null);
  const found = (last?.findings ?? []).map((finding) => FINDING_ANSWERS[finding]).join(', ');
  return [found, last?.note ?? '', notes].map((text) => text.trim()).filter((text) => text !== '').join('; ');
}

const formLine = (item: Item): FormDevice => ({
  name: item.name, count: item.count === 1 ? '' : String(item.count), rating: item.ratingKn === null ? '' : `${item.ratingKn} kN`, made: item.sling.made === null ? '' : writePartDay(item.sling.made),
  material: item.sling.material === null ? '' : [MATERIAL_ANSWERS[item.sling.material], ...(item.sling.widthMm === null ? [] : [`${item.sling.widthMm} mm`])].join(' '),
  wrong: wrongWith(item),
});

/** What is on the rack: by what is due where the rules can be asked, else in the register's order of names. */
export function handedDevices(register: Register, judge: Judge): HandedDevice[] {
  return byDue(register, (item) => (judge && itemReasons(judge.rules, item, judge.on)[0]?.asks) ?? null).map(({ item, verdict }) => ({
    form: formLine(item), count: item.count, due: verdict && judge ? headlineText(verdict, judge.on) : '', isDueNow: verdict?.kind === 'retire-now',
  }));
}

/** Hands over a register that was read. */
export function handoverOf(register: Register | null, judge: Judge): Handover {
  if (!register) return { ok: false, faults: ['this browser keeps no register; save one on the page of the rack, or take its file'] };
  const devices = handedDevices(register, judge);
  return devices.length === 0 ? { ok: false, faults: ['the register has nothing on its rack'] } : { ok: true, invented: register.invented, devices };
}

/** Reads a register that was pasted. Total: any text gives devices or faults. */
export function handoverOfText(text: string, judge: Judge): Handover {
  if (text.trim() === '') return { ok: false, faults: ['line 1: nothing was pasted'] };
  const read = readRegisterJson(text);
  return read.ok ? handoverOf(read.value, judge) : { ok: false, faults: read.faults.map(faultLine) };
}

/** Reads the file of a register. */
export function handoverOfFile(bytes: Uint8Array, judge: Judge): Handover {
  const text = textOfFile(bytes);
  return text.ok ? handoverOfText(text.value, judge) : { ok: false, faults: text.faults.map(faultLine) };
}
