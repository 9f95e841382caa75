/** Units in the head of a column or behind a number. */

/** Units that a column may have: forces, times, lengths. */
export type ColumnUnit = 'kN' | 'N' | 'daN' | 'kgf' | 'lbf' | 's' | 'ms' | 'mm' | 'm';

/** How each is written, in lower case. */
const SPELLINGS: Readonly<Record<string, ColumnUnit>> = {
  kn: 'kN', n: 'N', dan: 'daN', kgf: 'kgf', kp: 'kgf', lbf: 'lbf',
  s: 's', sec: 's', seconds: 's', ms: 'ms', mm: 'mm', m: 'm',
};

/** Written so, a force may be meant or a mass: nobody can tell. */
const MASSES = new Set(['kg', 'lb', 'lbs', 'pound', 'pounds', 't', 'g']);

/** Exactly how many of the common unit (kN, s, mm) one of the unit is. Forces by definition: NIST SP 811, appendix B. */
export const IN_COMMON: Readonly<Record<ColumnUnit, number>> = {
  kN: 1, N: 1e-3, daN: 1e-2, kgf: 9.80665e-3, lbf: 4.4482216152605e-3, s: 1, ms: 1e-3, mm: 1, m: 1000,
};

/** Reads a unit alone, in brackets or without: the unit, `mass` where it is one of mass, null where it is none. */
export function readUnit(text: string): ColumnUnit | 'mass' | null {
  const bare = text.trim().replace(/^[([]\s*|\s*[)\]]$/g, '').toLowerCase();
  if (MASSES.has(bare)) return 'mass';
  return Object.hasOwn(SPELLINGS, bare) ? (SPELLINGS[bare] as ColumnUnit) : null;
}

/** Splits the head of a column into its name and unit: `force (kN)`, `force [kN]`, `force / kN`, `force, kN`, `force_kN`, `force kN`. */
export function readHeading(text: string): { name: string; unit: ColumnUnit | 'mass' | null } {
  const trimmed = text.trim().replace(/\s+/g, ' ');
  const whole = readUnit(trimmed);
  if (whole) return { name: trimmed, unit: whole };
  const bracketed = /^(.*?)\s*[([]\s*([^()[\]]+?)\s*[)\]]$/.exec(trimmed);
  const loose = /^(.*?)\s*(?:[/,_]|\s)\s*([A-Za-z]+)$/.exec(trimmed);
  for (const match of [bracketed, loose]) {
    const [, name = '', unit = ''] = match ?? [];
    // A single letter behind a blank may belong to the name: "series N", "mode s".
    if (match === loose && unit.length === 1 && !/[/,_]\s*[A-Za-z]$/.test(trimmed)) continue;
    const found = readUnit(unit);
    if (name !== '' && found) return { name, unit: found };
  }
  return { name: trimmed, unit: null };
}
