/** What the page of the verdict hands to its script: the rules, and what next steps need. Small, and part of the HTML. */
import type { Material, SlingRecord, VerdictRule } from '../../records/schema.ts';

/** A rule as the script reads it; its figures stand in the table of the page. */
export type PageRule = Omit<VerdictRule, 'figures'>;

/** A published break of used slings: shown where material and age are those of the reader's sling, never computed with. */
export interface UsedBreak { id: string; words: string; says: string; material: Material; form: string; years: { from: number; to: number } }

export interface VerdictSetup {
  /** Folder that the site is served from, with its closing slash. */
  base: string;
  /** Evidence version, and its day: no day of asking lies before it. */
  evidence: string;
  asOf: string;
  rules: Record<string, PageRule>;
  used: UsedBreak[];
  /** Slings that the comparison knows. */
  slings: Record<string, Pick<SlingRecord, 'material' | 'form' | 'widthMm' | 'lengthsCm'>>;
}
