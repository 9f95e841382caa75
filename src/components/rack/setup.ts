/** What the page of the rack hands to its script. Small, and part of the HTML. */
import type { Eye, VerdictRule } from '../../records/schema.ts';

export interface RackSetup {
  /** Folder that the site is served from, with its closing slash. */
  base: string;
  /** Day of the newest evidence: no day of asking lies before it. */
  asOf: string;
  /** Rules by id. Their figures stand on the page of the verdict. */
  rules: Record<string, Omit<VerdictRule, 'figures'>>;
  /** Eyes, as the comparison names them. */
  eyes: Readonly<Record<Eye, string>>;
}

/** Address of the example rack. */
export const exampleAddress = (base: string): string => `${base}rack/example.json`;
