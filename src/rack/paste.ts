/**
 * Many items from pasted lines: `rating, sling, made, count` in loose forms, a name first where there is one. Total: each line
 * gives an item or a reason, and comes back word for word. Nothing is guessed: a line with two meanings is given back.
 */
import { readLabel } from '../retirement/read-label.ts';
import { type PartDay, parsePartDay } from './part-day.ts';
import type { ItemDraft, RackSling } from './types.ts';

/** One line. `line` counts from 1. */
export type PastedLine = { line: number; text: string } & (
  | { kind: 'item'; draft: ItemDraft }
  | { kind: 'not-understood'; why: string }
  | { kind: 'blank' }
  | { kind: 'heading' }
);

const MATERIAL_WORDS = new Map<string, NonNullable<RackSling['material']>>(Object.entries({
  hmpe: 'hmpe', uhmwpe: 'hmpe', hmwpe: 'hmpe', polyethylene: 'hmpe', nylon: 'nylon', polyamide: 'nylon', pa: 'nylon', polyester: 'polyester', pes: 'polyester',
  aramid: 'aramid', 'hmpe-nylon': 'hmpe-nylon', 'hmpe/nylon': 'hmpe-nylon',
}));
const NOT_KNOWN = /^(?:|\?+|-+|–|unknown|not known|n\/a)$/i;
const HEADING = /^(?:name|device|rating|kn|rating kn|rating \(kn\)|sling|made|year|date|count|number|how many)$/i;
const PLAIN_NUMBER = /^\d{1,4}(?:[.,]\d{1,3})?$/;
const MOST_READINGS = 64;

/** What one piece says, or why it says nothing. */
type Said =
  | { says: 'rating'; value: number }
  | { says: 'sling'; material?: NonNullable<RackSling['material']>; widthMm?: number }
  | { says: 'made'; value: PartDay }
  | { says: 'count'; value: number }
  | { says: 'nothing' }
  | { says: 'unclear'; why: string };

const numberIn = (text: string): number => Number(text.replace(',', '.'));
const unclear = (why: string): Said => ({ says: 'unclear', why });

function rated(text: string): Said {
  const value = numberIn(text);
  return value >= 1 && value <= 40 ? { says: 'rating', value } : unclear(`a rating is from 1 to 40 kN (got ${text})`);
}

function counted(text: string): Said {
  const value = Number(text);
  return value >= 1 && value <= 999 ? { says: 'count', value } : unclear(`a count is a whole number from 1 to 999 (got ${text})`);
}

/** A date of manufacture, as the rules read one. Null where the piece is none. */
function readMade(text: string): Said | null {
  const plain = text.replace(/^made:?\s+/i, '');
  const read = readLabel(plain);
  if (!read.ok) return read.why.startsWith('no date') ? null : unclear(`${plain}: ${read.why}`);
  const value = parsePartDay(read.label);
  return value ? { says: 'made', value } : unclear(`${plain}: no day that the register takes`);
}

/** A sling: a material, a width, or both, in any order. Null where the piece speaks of none. */
function readSling(text: string): Said | null {
  const mm = /(?:^|\s)(\d{1,2}(?:[.,]\d{1,2})?)\s*mm(?=$|\s)/i.exec(text);
  const rest = (mm ? `${text.slice(0, mm.index)} ${text.slice(mm.index + mm[0].length)}` : text).trim();
  const pieces = rest.split(/\s+/).filter((piece) => !/^(?:|sling|sewn|tape|dogbone)$/i.test(piece));
  const materials = pieces.flatMap((piece) => MATERIAL_WORDS.get(piece.toLowerCase()) ?? []);
  const numbers = pieces.filter((piece) => /^\d{1,2}(?:[.,]\d{1,2})?$/.test(piece));
  if (materials.length + numbers.length < pieces.length || materials.length > 1 || (!mm && materials.length === 0)) return null;
  if (numbers.length + (mm ? 1 : 0) > 1) return unclear(`${text} has two widths`);
  const width = mm?.[1] ?? numbers[0];
  const widthMm = width === undefined ? null : numberIn(width);
  if (widthMm !== null && !(widthMm >= 1 && widthMm <= 60)) return unclear(`a width is from 1 to 60 mm (got ${width})`);
  return { says: 'sling', ...(materials[0] ? { material: materials[0] } : {}), ...(widthMm === null ? {} : { widthMm }) };
}

/** Reads one piece. @param isFirst whether a bare number here would be the rating */
function readPiece(text: string, isFirst: boolean): Said {
  if (NOT_KNOWN.test(text)) return { says: 'nothing' };
  const kn = /^(\d{1,4}(?:[.,]\d{1,3})?)\s*kn$/i.exec(text);
  if (kn) return rated(kn[1] as string);
  const times = /^(?:[x×]\s*(\d{1,4})|(\d{1,4})\s*(?:[x×]|pcs?\.?|pieces?|of them))$/i.exec(text);
  if (times) return counted((times[1] ?? times[2]) as string);
  const made = readMade(text);
  if (made) return made;
  if (PLAIN_NUMBER.test(text)) return isFirst ? rated(text) : /^\d+$/.test(text) ? counted(text) : unclear(`"${text}" is a number without a unit; write kN or mm after it`);
  return readSling(text) ?? unclear(`"${text}" is no rating, sling, date or count`);
}

/** One reading of a line as pieces: an item, or why not. */
function readPieces(pieces: readonly string[]): ItemDraft | string {
  const [first = ''] = pieces;
  const opening = readPiece(first, true);
  // What says nothing else, in the first place, and is more than digits, is the name.
  const isName = opening.says === 'unclear' && pieces.length > 1 && /\p{L}/u.test(first) && !/^[\d.,]+\s*(?:kn|kg|kgf|dan|lbf?|n|mm)$/i.test(first);
  const draft: ItemDraft = {};
  const sling: Partial<RackSling> = {};
  if (isName) {
    if (first.length > 200) return 'the name is longer than 200 characters';
    draft.name = first;
  }
  for (const [at, piece] of (isName ? pieces.slice(1) : pieces).entries()) {
    const said = readPiece(piece, at === 0);
    const twice = (what: string): string => `two pieces give ${what}; the second is "${piece}"`;
    if (said.says === 'unclear') return said.why;
    if (said.says === 'rating') {
      if (draft.ratingKn !== undefined) return twice('a rating');
      draft.ratingKn = said.value;
    } else if (said.says === 'count') {
      if (draft.count !== undefined) return twice('a count');
      draft.count = said.value;
    } else if (said.says === 'made') {
      if (sling.made !== undefined) return twice('a date');
      sling.made = said.value;
    } else if (said.says === 'sling') {
      if ((said.material && sling.material) || (said.widthMm !== undefined && sling.widthMm !== undefined)) return twice('a sling');
      if (said.material) sling.material = said.material;
      if (said.widthMm !== undefined) sling.widthMm = said.widthMm;
    }
  }
  if (Object.keys(sling).length > 0) draft.sling = sling;
  return Object.keys(draft).some((key) => key !== 'count') ? draft : 'says nothing of a device; write its rating, sling, date and count';
}

/** Every way to cut a line at its commas: one with a digit on both sides may also be a decimal comma. The last way takes all of those as such. */
function cuts(line: string): string[][] | null {
  if (/[;\t]/.test(line)) return [line.split(/[;\t]/)];
  let readings: string[][] = [[]];
  const between = line.split(',');
  for (const [at, piece] of between.entries()) {
    const mayJoin = at > 0 && /\d$/.test(between[at - 1] ?? '') && /^\d/.test(piece);
    const apart = readings.map((pieces) => [...pieces, piece]);
    const joined = mayJoin ? readings.map((pieces) => [...pieces.slice(0, -1), `${pieces.at(-1)},${piece}`]) : [];
    readings = [...apart, ...joined];
    if (readings.length > MOST_READINGS) return null;
  }
  return readings;
}

const TWO_READINGS = 'a comma between two digits can be read in two ways; write semicolons between the pieces';

function readLine(line: string): ItemDraft | string {
  const pieces = cuts(line);
  if (!pieces) return TWO_READINGS;
  const read = (one: readonly string[]): ItemDraft | string => readPieces(one.map((piece) => piece.trim()));
  // Where other commas have a blank after them, one without is a decimal comma if that makes sense.
  const spaced = /, /.test(line) ? read(pieces.at(-1) as string[]) : '';
  if (typeof spaced !== 'string') return spaced;
  const readings = pieces.map(read);
  const drafts = readings.filter((reading) => typeof reading !== 'string');
  const [draft] = drafts;
  if (new Set(drafts.map((one) => JSON.stringify(one))).size > 1) return TWO_READINGS;
  return draft ?? (readings[0] as string);
}

/** Reads pasted text line by line. The lines, put together again with line ends, are what was pasted. */
export function readPasted(text: string): PastedLine[] {
  return text.split(/\r\n|\n|\r/).map((line, at): PastedLine => {
    const place = { line: at + 1, text: line };
    if (line.trim() === '') return { ...place, kind: 'blank' };
    if (line.split(/[;,\t]/).every((piece) => HEADING.test(piece.trim()))) return { ...place, kind: 'heading' };
    const read = readLine(line);
    return typeof read === 'string' ? { ...place, kind: 'not-understood', why: read } : { ...place, kind: 'item', draft: read };
  });
}
