/** Where a reader goes with a verdict: addresses of other pages, filled with what the reader has said of the sling. */
import { serialiseLink } from '../../links/serialise-link.ts';
import { earliestDay } from '../../retirement/days.ts';
import type { Headline, SlingHistory } from '../../retirement/verdict.ts';
import type { VerdictSetup } from './setup.ts';

const DAYS_A_YEAR = 365.25;
const MS_A_DAY = 86_400_000;
/** Widths of tape this near count as one, mm; diameters of cord this near. As near as the comparison takes them. */
const NEAR_MM: Readonly<Record<string, number>> = { cord: 0.5 };
const NEAR_TAPE_MM = 2;

/** Age in years on a day, counted from the earliest day that the label can mean, to a hundredth. */
export function ageOn(made: string, on: string): number {
  const days = (Date.parse(on) - Date.parse(earliestDay(made))) / MS_A_DAY;
  return Math.max(0, Math.round((days / DAYS_A_YEAR) * 100) / 100);
}

/** The sling of the comparison that is of the same material and nearest in width; null where none is near. */
export function sameSling({ material, widthMm }: Pick<SlingHistory, 'material' | 'widthMm'>, slings: VerdictSetup['slings']): string | null {
  if (material === null || widthMm === null) return null;
  const off = (id: string): number => Math.abs((slings[id]?.widthMm ?? Infinity) - widthMm);
  const near = Object.keys(slings).filter((id) => {
    const { material: fibre, form } = slings[id] as VerdictSetup['slings'][string];
    return fibre === material && off(id) < (NEAR_MM[form] ?? NEAR_TAPE_MM);
  });
  // Sewn slings first: what is on a device is one, unless its owner tied it.
  near.sort((a, b) => Number(slings[a]?.form !== 'sewn-loop') - Number(slings[b]?.form !== 'sewn-loop') || off(a) - off(b));
  return near[0] ?? null;
}

/** The comparison with the same sling, new, and the old one as described. What the reader has not said of the device is not known. */
export function compareAddress(history: SlingHistory, on: string, { base, slings }: Pick<VerdictSetup, 'base' | 'slings'>): string {
  const { material, made, use, exposures } = history;
  const sling = sameSling(history, slings);
  const light = exposures.light === 'yes' ? 'sun' : exposures.light === 'no' ? 'dark' : null;
  const ageYears = made === null ? null : ageOn(made, on);
  const isKnown = [material, ageYears, use, light].some((value) => value !== null);
  const lengths = sling === null ? [] : (slings[sling]?.lengthsCm ?? []);
  return `${base}compare/?${serialiseLink({
    ratingKn: null, eye: null, bearingMm: null, sling, lengthCm: lengths.find((cm) => cm === 60) ?? lengths[0] ?? null, slingState: 'new', demandKn: null,
    old: isKnown ? { material, ageYears, use, light } : null,
  })}`;
}

/** The calculator of costs for one device, with when its sling has to go. */
export function costAddress(verdict: Headline, { base }: Pick<VerdictSetup, 'base'>): string {
  const retire = verdict.kind === 'retire-now' ? 'now' : verdict.kind === 'retire-by' ? verdict.day : '';
  return `${base}replace/cost/?v=1${retire === '' ? '' : `&retire=${retire}`}&kinds=1`;
}
