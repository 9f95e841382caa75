/** What can be taken away of a comparison, each as one text: loaded together, when the reader first asks for one. */
import type { SortOrder } from '../../links/rig-keys.ts';
import type { Comparison } from '../../strength/types.ts';
import type { ForceUnit } from '../../strength/wording.ts';
import { comparisonCsv } from './comparison-csv.ts';
import { comparisonJson } from './comparison-json.ts';
import { comparisonSvg } from './comparison-svg.ts';
import { comparisonText } from './comparison-text.ts';
import type { SlingNames } from './setup.ts';

/** A comparison as the reader sees it. */
export interface Shown {
  comparison: Comparison;
  unit: ForceUnit;
  sort: SortOrder;
  slings: SlingNames;
  /** Address that shows it again. */
  link: string;
  /** Drawings of a row, or of the axis where no method is given, as SVG elements in text. */
  drawn: (method: string | null) => string[];
}

export const takenAway = {
  text: ({ comparison, slings, unit, link }: Shown): string => comparisonText(comparison, slings, unit, link),
  // The mark in front tells a spreadsheet that the letters are UTF-8.
  csv: ({ comparison, unit, link }: Shown): string => `\uFEFF${comparisonCsv(comparison, unit, link)}`,
  json: ({ comparison, unit, link }: Shown): string => comparisonJson(comparison, unit, link),
  svg: comparisonSvg,
} as const;
