/**
 * Reads the address of a comparison. Total: any string gives a rig, and each
 * piece that was not understood is listed word for word with the reason.
 */
import type { Eye, Material } from '../records/schema.ts';
import type { Rig } from '../strength/types.ts';
import { migrate, type Pieces } from './migrations.ts';
import { EVIDENCE_VERSION, type NotUnderstood, oneOf, piecesOf, UNDECODED, UNDECODED_WHY } from './pieces.ts';
import { readNumber } from './read-number.ts';
import {
  CURRENT_MEANING, EXAMPLE_RIG, EYE_IDS, FORCE_UNITS, INPUT_RANGES, OLD_LIGHT_IDS, OLD_SLING_MATERIALS, OLD_USE_IDS, RIG_KEYS, SORT_ORDERS,
  type NumberKey, type RigKey, type View,
} from './rig-keys.ts';

/** Words of the records that a link may name. */
export interface Vocabulary {
  /** Ids of sling records. */
  slings: readonly string[];
}

/** What a link says. */
export interface ParsedLink {
  rig: Rig;
  view: View;
  notUnderstood: NotUnderstood[];
  /** Pieces that were used, word for word. */
  understood: string[];
  /** Meaning of the keys that the link was read with. */
  v: number;
  /** Evidence version that the link was made with, or null. */
  d: string | null;
  /** Model number that the link was made with, or null. */
  m: number | null;
}

const WHOLE = /^[1-9]\d{0,5}$/;
const KEYS: readonly string[] = ['v', ...RIG_KEYS, 'd', 'm', 't', 'f', 'unit', 'sort'];

/** Sets the old sling; null where nothing is known of it. */
function setOld(rig: Rig, change: Partial<NonNullable<Rig['old']>>): void {
  const old = { material: null, ageYears: null, use: null, light: null, ...rig.old, ...change };
  rig.old = Object.values(old).every((value) => value === null) ? null : old;
}

/** Writes a number, or "not known", into the rig. */
function setNumber(rig: Rig, key: NumberKey, value: number | null): void {
  if (key === 'rating') rig.ratingKn = value;
  else if (key === 'bearing') rig.bearingMm = value;
  else if (key === 'length') rig.lengthCm = value;
  else if (key === 'demand') rig.demandKn = value;
  else setOld(rig, { ageYears: value });
}

/** Marks an input as not known: what a link asks for and we cannot read is never replaced by a default. */
export function setUnknown(rig: Rig, key: RigKey): void {
  if (key === 'eye') rig.eye = null;
  else if (key === 'sling') rig.sling = null;
  // Nothing known of a sling counts against it: unknown wear is read as used.
  else if (key === 'used') rig.slingState = 'used';
  else if (key === 'oldsling') setOld(rig, { material: null });
  else if (key === 'olduse') setOld(rig, { use: null });
  else if (key === 'oldlight') setOld(rig, { light: null });
  else setNumber(rig, key, null);
}

/** Words that say "not known", for each input. */
const UNKNOWN_WORDS: Partial<Record<RigKey, readonly string[]>> = { bearing: ['unmeasured', 'unknown'], demand: ['rating', 'unknown'] };

/** Writes one value into the rig; returns the reason where it cannot be. */
function setInput(rig: Rig, key: RigKey, value: string, vocabulary: Vocabulary): string | null {
  if ((UNKNOWN_WORDS[key] ?? ['unknown']).includes(value)) {
    setUnknown(rig, key);
    return null;
  }
  switch (key) {
    case 'eye': {
      const eye: Eye | undefined = oneOf(EYE_IDS, value);
      if (!eye) return `not a kind of eye; one of ${EYE_IDS.join(', ')}, unknown`;
      rig.eye = eye;
      return null;
    }
    case 'sling': {
      const sling = oneOf(vocabulary.slings, value);
      if (!sling) return `not a sling we have; one of ${vocabulary.slings.join(', ')}, unknown`;
      rig.sling = sling;
      return null;
    }
    case 'used': {
      const state = oneOf(['new', 'used'] as const, value);
      if (!state) return 'not one of new, used, unknown';
      rig.slingState = state;
      return null;
    }
    case 'oldsling': {
      const material: Material | undefined = oneOf(OLD_SLING_MATERIALS, value);
      if (!material) return `not a material we have for old slings; one of ${OLD_SLING_MATERIALS.join(', ')}, unknown`;
      setOld(rig, { material });
      return null;
    }
    case 'olduse': {
      const use = oneOf(OLD_USE_IDS, value);
      if (!use) return `not one of ${OLD_USE_IDS.join(', ')}, unknown`;
      setOld(rig, { use });
      return null;
    }
    case 'oldlight': {
      const light = oneOf(OLD_LIGHT_IDS, value);
      if (!light) return `not one of ${OLD_LIGHT_IDS.join(', ')}, unknown`;
      setOld(rig, { light });
      return null;
    }
    default: {
      const read = readNumber(value, INPUT_RANGES[key]);
      if (!read.ok) return read.why;
      setNumber(rig, key, read.value);
      return null;
    }
  }
}

/** Meaning that a link is read with: the one that it names, where that is one and known, or else the newest. */
export function meaningOf(pieces: Pieces, newest: number = CURRENT_MEANING): number {
  const named = [...new Set(pieces.filter((one) => one.key === 'v').map((one) => one.value))].join();
  return WHOLE.test(named) ? Math.min(Number(named), newest) : newest;
}

/**
 * Reads a query string.
 *
 * An absent key means its default under the link's `v`. A piece that is not
 * understood makes that input "not known": the link wanted something that we
 * do not have, and putting the default there would answer for another rig. The
 * same key twice with the same value is used once; with different values none
 * is used, because the order of the pieces carries no meaning.
 *
 * @param query with or without the question mark; any string
 * @param vocabulary ids that records define
 * @param base rig that absent keys fall back to: the defaults, or the rig of a prebuilt page
 */
export function parseLink(query: string, vocabulary: Vocabulary, base: Readonly<Rig> = EXAMPLE_RIG): ParsedLink {
  const { pieces: decoded, unreadable: notUnderstood } = piecesOf(query);
  const understood: string[] = [];
  const view: View = { unit: 'kN', sort: 'low' };
  const rig: Rig = { ...base };
  let d: string | null = null;
  let m: number | null = null;
  const v = meaningOf(decoded);

  const pieces: Pieces = migrate(decoded, v);
  for (const key of new Set(pieces.map((one) => one.key))) {
    const same = pieces.filter((one) => one.key === key);
    const [first] = same as [Pieces[number]];
    const list = (why: string, which: Pieces = same) => {
      for (const one of which) notUnderstood.push({ piece: one.piece, why });
    };
    if (!KEYS.includes(key)) {
      list(`no input is called ${JSON.stringify(key)}`);
      continue;
    }
    const rigKey = oneOf(RIG_KEYS, key);
    if (same.some((one) => one.value !== first.value)) {
      list('the same input twice with different values; none is used');
      if (rigKey) setUnknown(rig, rigKey);
      continue;
    }
    let why: string | null = null;
    if (first.value === UNDECODED) why = UNDECODED_WHY;
    else if (rigKey) why = setInput(rig, rigKey, first.value, vocabulary);
    else if (key === 'v') why = String(v) === first.value ? null : `not a meaning of links that we know; read with meaning ${v}`;
    else if (key === 'd') {
      if (EVIDENCE_VERSION.test(first.value)) d = first.value;
      else why = 'not an evidence version';
    } else if (key === 'm') {
      if (WHOLE.test(first.value)) m = Number(first.value);
      else why = 'not a model number';
    } else if (key === 't' || key === 'f') {
      // What stands beside the comparison is no part of the rig; whoever shows it reads it.
    } else if (key === 'unit') {
      const unit = oneOf(FORCE_UNITS, first.value);
      if (unit) view.unit = unit;
      else why = `not one of ${FORCE_UNITS.join(', ')}`;
    } else {
      const sort = oneOf(SORT_ORDERS, first.value);
      if (sort) view.sort = sort;
      else why = `not one of ${SORT_ORDERS.join(', ')}`;
    }
    if (why !== null) {
      list(why);
      if (rigKey) setUnknown(rig, rigKey);
    } else {
      understood.push(first.piece);
      list('said twice; used once', same.slice(1));
    }
  }
  return { rig, view, notUnderstood, understood, v, d, m };
}
