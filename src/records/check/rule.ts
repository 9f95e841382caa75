/** What a rule of the record check is. One rule stands in one file of this folder. */
import type { Finding } from '../fault.ts';
import type { Records } from '../read.ts';

export type Report = (finding: Finding & { warning?: boolean }) => void;

export interface Rule {
  /** Name that heads the rule's faults in the report. */
  name: string;
  /** The rule, as one sentence. */
  description: string;
  check(report: Report, records: Records): void;
}
