/** Counts comparisons of computed with expected numbers and keeps what was off. */

/** What a file of reference values came to. */
export interface TallyResult {
  readonly passed: number;
  /** One line a failure. */
  readonly failures: readonly string[];
  /** Families or kinds that are not built, with the ids of their entries. */
  readonly skipped: ReadonlyMap<string, readonly string[]>;
  /** Largest error of each family, as a share of what was allowed. */
  readonly worst: ReadonlyMap<string, number>;
}

export class Tally {
  passed = 0;
  readonly failures: string[] = [];
  readonly skipped = new Map<string, string[]>();
  readonly worst = new Map<string, number>();

  /** Compares one number; `family` groups the largest errors. */
  number(family: string, id: string, what: string, got: number, expected: number, allowed: number): void {
    const off = Math.abs(got - expected);
    this.worst.set(family, Math.max(this.worst.get(family) ?? 0, off / allowed));
    if (off <= allowed) this.passed++;
    else {
      this.failures.push(
        `${id}: ${what} got ${got}, expected ${expected}, off by ${off.toExponential(2)} (allowed ${allowed.toExponential(2)})`,
      );
    }
  }

  /** Counts an entry that could not be read or computed as one failure. */
  broken(id: string, reason: unknown): void {
    this.failures.push(`${id}: ${reason instanceof Error ? reason.message : String(reason)}`);
  }

  /** Notes an entry that nothing here computes. */
  skip(family: string, id: string): void {
    this.skipped.set(family, [...(this.skipped.get(family) ?? []), id]);
  }
}

/** What is wrong with one entry of a list, or null where it is an object with an id. */
export function entryFault(entry: unknown): string | null {
  if (entry === null || typeof entry !== 'object' || Array.isArray(entry)) return 'is no object.';
  return typeof (entry as { id?: unknown }).id === 'string' ? null : 'has no id.';
}
