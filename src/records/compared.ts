/** Figures that a group of laboratories' results names, with the path of each inside the group. */
import type { Compared } from './schema.ts';
import type { Path } from './yaml.ts';

export interface NamedFigure { address: string; path: Path }

/** Every address in a group; of a share both its figure and what it is a share of. */
export function namedIn(group: readonly Compared[]): NamedFigure[] {
  return group.flatMap((each, i): NamedFigure[] => (typeof each === 'string'
    ? [{ address: each, path: [i] }]
    : [{ address: each.figure, path: [i, 'figure'] }, { address: each.over, path: [i, 'over'] }]));
}
