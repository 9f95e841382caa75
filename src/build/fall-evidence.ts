/** Joins the records to the engine of falls: its constants, from the figures that it names. */
import { type FallConstants, FALL_FIGURES, fallConstants } from '../falls/evidence.ts';
import type { Unit } from '../records/schema.ts';
import { type Records, readAll } from '../records/read.ts';
import { ROOT } from './evidence.ts';

/** Units that the engine takes its figures in; another one would change every load without a word. */
const UNITS: ReadonlySet<Unit> = new Set<Unit>(['N', 'm', 'kg', 'kN', 'ratio', 'N/tex', 'degrees']);

/** The constants of some records. @throws RangeError when a figure is missing, or of another form or unit than is needed */
export function fallConstantsOf(records: Records): FallConstants {
  return fallConstants((address) => {
    const figure = records.cells.get(address)?.figure;
    if (!figure) throw new RangeError(`${address}: the engine of falls reads it, and there is no such figure.`);
    if (!figure.unit || !UNITS.has(figure.unit)) throw new RangeError(`${address}: the engine of falls needs it in ${[...UNITS].join(', ')} (got ${figure.unit}).`);
    return figure.value;
  });
}

/** Addresses of all figures that feed the loads of falls, each once. */
export const fallFigureAddresses = (): string[] => [...new Set(Object.values(FALL_FIGURES))];

let loaded: FallConstants | null = null;

/** The constants of the records on disk. */
export function loadFallConstants(root = ROOT): FallConstants {
  if (loaded && root === ROOT) return loaded;
  const constants = fallConstantsOf(readAll(root));
  if (root === ROOT) loaded = constants;
  return constants;
}
