/** What the pages of materials show: records in order, topics in words, and the rows of small panels. */
import { type RackMaterialRecord, TOPICS, type Topic } from '../records/schema.ts';
import { figure, type ShownFigure } from './figures/figures.ts';
import { panelRows, type PanelRow } from './material-chart.ts';
import { siteRecords } from './records.ts';

/** Names of topics. */
export const TOPIC_WORDS: Record<Topic, string> = {
  knots: 'In knots', bearings: 'On thin bearings', wet: 'Wet', hot: 'Hot', light: 'In light', chemicals: 'Chemicals', age: 'With age and use', repeated: 'Loaded again and again',
};

/** A material with its id. */
export interface RackMaterial extends RackMaterialRecord { id: string }

/** All materials in their order. */
export function rackMaterials(): RackMaterial[] {
  return [...siteRecords().materials].map(([id, record]) => ({ id, ...record })).sort((a, b) => a.order - b.order);
}

/** One material. Throws RangeError where there is none of that id. */
export function rackMaterial(id: string): RackMaterial {
  const found = rackMaterials().find((material) => material.id === id);
  if (!found) throw new RangeError(`id: no material has the id ${id}`);
  return found;
}

/** Figures that some materials show under a topic, by material. */
export function figuresOf(materials: readonly RackMaterial[], topic: Topic): Map<string, ShownFigure[]> {
  return new Map(materials.map(({ id, topics }) => [id, topics[topic].figures.map(figure)]));
}

/** Rows of panels of a topic for some materials. */
export function rowsOf(materials: readonly RackMaterial[], topic: Topic): PanelRow[] {
  return panelRows(topic, figuresOf(materials, topic), figure);
}

/** A topic as an address may name it. Throws RangeError on any other word. */
export function topicOf(word: string): Topic {
  const found = TOPICS.find((topic) => topic === word);
  if (!found) throw new RangeError(`topic: is none of ${TOPICS.join(', ')} (got ${word})`);
  return found;
}
