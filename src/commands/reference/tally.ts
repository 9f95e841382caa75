/** Counts comparisons of computed with expected numbers and keeps what was off. */

/** What a file of reference values came to. */
export interface TallyResult {
  readonly passed: number;
  /** One line a failure. */
  readonly failures: readonly string[];
  /** Families or kinds that are not built, with the number of their entries. */
  readonly skipped: ReadonlyMap<string, number>;
  /** Largest error of each family, as a share of what was allowed. */
  readonly worst: ReadonlyMap<string, number>;
}

export class Tally {
  passed = 0;
  readonly failures: string[] = [];
  readonly skipped = new Map<string, number>();
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

  /** Counts entries that nothing here computes. */
  skip(family: string, entries = 1): void {
    this.skipped.set(family, (this.skipped.get(family) ?? 0) + entries);
  }
}
