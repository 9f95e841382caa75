/**
 * The tests that a changed room is tried against: its own unit tests, and those reference tests of its answers that are
 * quick enough to be run a thousand times.
 */
export const TESTS: Readonly<Record<string, readonly string[]>> = {
  numerics: ['unit/numerics/*', 'reference/pooling', 'reference/distributions'],
  'break-tests': ['unit/break-tests/*', 'reference/break-statistics'],
  evidence: ['unit/evidence/*', 'reference/pooling', 'reference/trade-facts'],
  retirement: ['unit/retirement/*'],
  links: ['unit/links/*'],
  strength: ['unit/strength/*', 'unit/comparator/wording', ...['chain', 'pooling', 'golden', 'trade-facts', 'states'].map((name) => `reference/${name}`)],
};

/** What `--quick` leaves out. The score is then the least that it can be. */
export const SLOW = ['states', 'golden', 'chain.property', 'compare.property', 'orthants'];
