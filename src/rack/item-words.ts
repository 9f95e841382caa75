/** An item and its sling in a few words: the same in a list, on paper and in a calendar. */
import type { Material } from '../records/schema.ts';
import { writePartDay } from './part-day.ts';
import type { Item } from './types.ts';

/** Fibres in a list: short. */
export const FIBRE_NAMES: Readonly<Partial<Record<Material, string>>> = { hmpe: 'HMPE', nylon: 'nylon', polyester: 'polyester', aramid: 'aramid', 'hmpe-nylon': 'HMPE and nylon' };

const fibreText = ({ sling: { material, widthMm } }: Pick<Item, 'sling'>): string => [material && FIBRE_NAMES[material], widthMm && `${widthMm} mm`].filter(Boolean).join(' ');

/** Its name, or what is known of it. */
export function itemName(item: Pick<Item, 'name' | 'ratingKn' | 'sling'>): string {
  const known = [item.ratingKn && `${item.ratingKn} kN`, fibreText(item)].filter(Boolean).join(', ');
  return item.name.trim() || (known ? `Device, ${known}` : 'Device without a name');
}

/** Its rating, and its sling with its date: `12 kN, HMPE 10 mm, made 2019-04`. */
export function itemText(item: Pick<Item, 'ratingKn' | 'sling'>): string {
  const { made } = item.sling;
  return [item.ratingKn === null ? 'rating not known' : `${item.ratingKn} kN`, fibreText(item) || 'sling not known', made ? `made ${writePartDay(made)}` : 'made not known'].join(', ');
}
