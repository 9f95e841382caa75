/**
 * What contradicts a figure or agrees with it: numbers of other studies for the same rigging, material, form and nearly
 * the same width. They are set side by side with their conditions; whether one is right, the page does not say.
 */
import { toModelUnit } from '../../evidence/force.ts';
import type { RigConditions, Value } from '../../records/schema.ts';
import { isForceItself, isShare, shareKind } from './meaning.ts';
import { allFigures, type ShownFigure } from './figures.ts';
import { conditionPairs } from '../words.ts';

/** Widths of tape this near count as one, mm; diameters of cord, rope and wire this near. As near as the model takes them. */
export const SAME_WIDTH_MM = 2;
export const SAME_DIAMETER_MM = 0.5;

/** How what two sources print lies. `unknown`: both print one number, and nothing of how it scatters. */
export type Overlap = 'above' | 'below' | 'overlap' | 'unknown';

/** Another study's figure, with what sets its conditions apart. */
export interface Beside {
  figure: ShownFigure;
  /** Where all that it prints lies, seen from all that the figure asked for prints. */
  overlap: Overlap;
  /** Labels of conditions in which the two differ or of which one says nothing: "bearing", "state". */
  differs: string[];
}

/** What a number says, so that only like is set beside like; null where nothing is to be compared. */
function sortOf(figure: ShownFigure): string | null {
  if (isShare(figure)) {
    const kind = shareKind(figure);
    // Two shares of other figures have different wholes, each its own.
    return kind === 'other' || figure.of === undefined ? null : `${kind} of ${figure.of}`;
  }
  if (toModelUnit(figure.unit) !== null) return isForceItself(figure) ? 'force' : null;
  return figure.unit ?? null;
}

const near = (a: number | undefined, b: number | undefined, within: number): boolean =>
  (a === undefined || b === undefined ? a === b : Math.abs(a - b) <= within + 1e-9);

/** Whether two rigs are one in what decides strength first: rigging, material, form, width. */
export function sameRig(a: RigConditions, b: RigConditions): boolean {
  return a.method !== undefined && a.method === b.method && a.material !== undefined && a.material === b.material && a.form !== undefined && a.form === b.form &&
    near(a.widthMm, b.widthMm, SAME_WIDTH_MM) && near(a.diameterMm, b.diameterMm, SAME_DIAMETER_MM);
}

/** Ends of what a source prints, in the model's unit: of one number, or a mean alone, both are that number. Null for words. */
export function printedRange(value: Value, scale: number): [number, number] | null {
  if (typeof value === 'number') return [value * scale, value * scale];
  if ('tests' in value) {
    const all = [...value.tests, ...(value.censored ?? [])].map((x) => x * scale);
    // A pull in which something else gave way first says only that the strength is no less.
    return [Math.min(...all), value.censored ? Number.POSITIVE_INFINITY : Math.max(...all)];
  }
  if ('mean' in value) return [value.mean * scale, value.mean * scale];
  if ('low' in value) return [value.low * scale, value.high * scale];
  if ('atLeast' in value) return [value.atLeast * scale, Number.POSITIVE_INFINITY];
  return 'atMost' in value ? [0, value.atMost * scale] : null;
}

/** How what is printed in `b` lies beside what is printed in `a`. */
export function overlapOf(a: [number, number] | null, b: [number, number] | null): Overlap {
  if (!a || !b || (a[0] === a[1] && b[0] === b[1])) return 'unknown';
  return b[0] > a[1] ? 'above' : b[1] < a[0] ? 'below' : 'overlap';
}

/** Conditions in which two figures differ, by their labels in lower case. */
function differences(a: RigConditions, b: RigConditions): string[] {
  const [one, other] = [a, b].map((rig) => new Map(conditionPairs(rig))) as [Map<string, string>, Map<string, string>];
  return [...new Set([...one.keys(), ...other.keys()])].filter((label) => one.get(label) !== other.get(label)).map((label) => label.toLowerCase());
}

/** Figures of other studies that measured the same, nearest conditions first. */
export function besideOf(figure: ShownFigure, all: readonly ShownFigure[]): Beside[] {
  const sort = sortOf(figure);
  if (figure.kind !== 'measured' || sort === null || figure.value === undefined) return [];
  const scale = (f: ShownFigure): number => toModelUnit(f.unit) ?? 1;
  const own = printedRange(figure.value, scale(figure));
  return all
    .filter((other) => other.kind === 'measured' && other.study !== figure.study && other.value !== undefined && sameRig(figure.rig, other.rig) && sortOf(other) === sort)
    .map((other) => ({ figure: other, overlap: overlapOf(own, printedRange(other.value as Value, scale(other))), differs: differences(figure.rig, other.rig) }))
    .sort((a, b) => a.differs.length - b.differs.length || (a.figure.id < b.figure.id ? -1 : 1));
}

const rigKey = ({ rig: { method, material, form } }: ShownFigure): string => `${method} ${material} ${form}`;
let onSite: Map<string, ShownFigure[]> | undefined;

/** `besideOf` among all figures of the site, which are put in order by rig once: else each page would look at all of them. */
export function besideOnSite(figure: ShownFigure): Beside[] {
  onSite ??= Map.groupBy(allFigures(), rigKey);
  return besideOf(figure, onSite.get(rigKey(figure)) ?? []);
}
