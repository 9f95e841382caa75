/** One entry of a file of published checks: reading its numbers, and comparing with them within its tolerance. */
import type { Interval } from '../../evidence/random-effects.ts';
import type { Tally } from './tally.ts';

/** One entry; its numbers are reached through `numberAt` and the like, which say what is missing. */
export interface Entry {
  id: string;
  inputs: unknown;
  expected: unknown;
  tolerance?: Record<string, unknown>;
}

/** Half a unit of the last digit that a number was printed with, as far as its shortest form still shows it. */
export function halfLastDigit(value: number): number {
  const [mantissa = '', exponent = '0'] = value.toString().split('e');
  const decimals = (mantissa.split('.')[1] ?? '').length;
  return 0.5 * 10 ** (Number(exponent) - decimals);
}

/** What stands at a path in an entry; undefined where nothing does. */
export function at(value: unknown, ...path: (string | number)[]): unknown {
  let here = value;
  for (const key of path) {
    if (here === null || typeof here !== 'object') return undefined;
    here = (here as Record<string | number, unknown>)[key];
  }
  return here;
}

/** The number at a path, also where it is written as a string. */
export function numberAt(value: unknown, ...path: (string | number)[]): number {
  const found = at(value, ...path);
  const number = typeof found === 'string' ? Number(found) : found;
  if (typeof number !== 'number' || Number.isNaN(number)) throw new Error(`${path.join('.')} is no number.`);
  return number;
}

/** The list of numbers at a path. */
export function listAt(value: unknown, ...path: (string | number)[]): number[] {
  const found = at(value, ...path);
  if (!Array.isArray(found)) throw new Error(`${path.join('.')} is no list.`);
  return found.map((item, i) => numberAt(found, i) + 0 * Number(item !== null));
}

/** Compares numbers of one entry, each within the tolerance that the entry states. */
export class EntryCheck {
  readonly family: string;
  readonly id: string;
  readonly tolerance: Record<string, unknown>;
  private readonly tally: Tally;
  private readonly strict: boolean;

  constructor(tally: Tally, entry: Entry, family: string, strict: boolean) {
    this.tally = tally;
    this.family = family;
    this.id = entry.id;
    this.tolerance = entry.tolerance ?? {};
    this.strict = strict;
  }

  /** What the entry allows for this number: by the named keys of its tolerance, else its `rel` and `abs`. */
  allowedFor(expected: number, keys: { rel?: string; abs?: string } = { rel: 'rel', abs: 'abs' }): number {
    const rel = keys.rel ? this.tolerance[keys.rel] : undefined;
    const abs = keys.abs ? this.tolerance[keys.abs] : undefined;
    const relative = typeof rel === 'number' ? rel * Math.abs(expected) : 0;
    const absolute = typeof abs === 'number' ? abs : 0;
    const stated = Math.max(relative, absolute);
    return stated > 0 ? stated : Math.max(1e-9 * Math.abs(expected), 1e-12);
  }

  compare(what: string, got: number, expected: unknown, keys?: { rel?: string; abs?: string }): void {
    if (expected === undefined) return;
    const value = typeof expected === 'string' ? Number(expected) : expected;
    if (typeof value !== 'number' || Number.isNaN(value)) throw new Error(`${what} is no number.`);
    let allowed = this.allowedFor(value, keys);
    // Where fifteen figures are printed, the last ones are beyond what doubles can promise.
    if (this.strict && value !== 0) {
      allowed = Math.min(allowed, Math.max(halfLastDigit(value) * (1 + 1e-6), 1e-11 * Math.abs(value)));
    }
    this.tally.number(this.family, this.id, what, got, value, allowed);
  }

  /** A tolerance that the code states, because the entry has none for this number. */
  within(what: string, got: number, expected: unknown, allowed: number): void {
    if (expected === undefined) return;
    this.tally.number(this.family, this.id, what, got, Number(expected), allowed);
  }

  interval(what: string, got: Interval, expected: unknown): void {
    if (expected === undefined) return;
    this.compare(`${what} low`, got.low, at(expected, 0));
    this.compare(`${what} high`, got.high, at(expected, 1));
  }
}
