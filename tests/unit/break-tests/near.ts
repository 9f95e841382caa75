import { expect, it } from 'vitest';

/** Fails unless `got` is within a share `relative` of `expected`. */
export function near(got: number, expected: number, relative: number): void {
  expect(Math.abs(got - expected), `${got} should be within ${relative} of ${expected}`).toBeLessThanOrEqual(relative * Math.max(Math.abs(expected), 1e-12));
}

/** Random numbers that are the same each run: mulberry32, public domain. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** Standard normals from such a source, by Box and Muller. */
export function normals(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/**
 * A test by thousands of simulated series. Where the code is changed to see what notices (tests/mutation), it is left out:
 * there each test is run a thousand times.
 */
export const simulated = it.skipIf('MUTATED_ROOM' in process.env);
