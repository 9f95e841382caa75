/** Reads `tests/reference/states.csv`: bars join values, a star is all, each cell stands once. */
import { readAll } from '../../src/records/read.ts';
import type { Eye } from '../../src/records/schema.ts';
import { ROOT } from './step.ts';

const RECORDS = readAll(ROOT);
/** All methods and slings on record. */
export const METHODS: readonly string[] = [...RECORDS.methods.keys()];
export const SLINGS: readonly string[] = [...RECORDS.slings.keys()];
const WIRES: Eye[] = ['bare-wire', 'sleeved-wire', 'wire-under-bar'];
/** Eyes with the bearings that the table looks at: not measured, and diameters around the tested ones (mm). */
export const CASES: [Eye, string][] = [
  ...WIRES.flatMap((eye): [Eye, string][] => [[eye, 'unmeasured'], [eye, '3.8'], [eye, '2.5']]),
  ['metal-bar', 'unmeasured'], ['metal-bar', '6'], ['metal-bar', '10'], ['metal-bar', '12'],
  ['twin-eye', 'unmeasured'],
];

export interface StateCell { method: string; sling: string; eye: Eye; bearing: string; state: string; why: string }

const split = (text: string, all: readonly string[]): string[] => (text === '*' ? [...all] : text.split('|'));

/** Expands the table. Faults: unknown names, cells that stand twice, cells that are missing. */
export function readStates(csv: string): { cells: Map<string, StateCell>; faults: string[] } {
  const cells = new Map<string, StateCell>();
  const faults: string[] = [];
  csv.split('\n').forEach((line, i) => {
    if (!line || line.startsWith('#') || line.startsWith('method,')) return;
    const [methods, slings, eyes, bearings, state, ...why] = line.split(',') as [string, string, string, string, string, ...string[]];
    for (const method of split(methods, METHODS)) {
      if (!METHODS.includes(method)) faults.push(`line ${i + 1}: no method ${method}`);
      for (const sling of split(slings, SLINGS)) {
        if (!SLINGS.includes(sling)) faults.push(`line ${i + 1}: no sling ${sling}`);
        for (const eye of split(eyes, [...new Set(CASES.map(([e]) => e))]) as Eye[]) {
          const known = CASES.filter(([e]) => e === eye).map(([, b]) => b);
          if (known.length === 0) faults.push(`line ${i + 1}: no eye ${eye}`);
          for (const bearing of bearings === '*' ? known : bearings.split('|')) {
            if (!known.includes(bearing)) faults.push(`line ${i + 1}: no bearing ${bearing} on ${eye}`);
            const key = [method, sling, eye, bearing].join(' ');
            if (cells.has(key)) faults.push(`line ${i + 1}: ${key} stands twice`);
            cells.set(key, { method, sling, eye, bearing, state, why: why.join(',') });
          }
        }
      }
    }
  });
  for (const method of METHODS) for (const sling of SLINGS) for (const [eye, bearing] of CASES) {
    const key = [method, sling, eye, bearing].join(' ');
    if (!cells.has(key)) faults.push(`${key} is missing`);
  }
  return { cells, faults };
}
