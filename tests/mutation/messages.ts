/**
 * What mutation testing leaves alone: the words of a guard. `throw new RangeError(...)` is changed as a statement and by
 * its condition, but not inside its message. A message is for people, and its tests look at the argument that it names.
 */

/** The little that is used of a place in the syntax tree. */
interface Place {
  readonly node: { readonly type: string; readonly callee?: { readonly name?: string } };
  readonly parentPath: Place | null;
}

/** The reason why nothing is changed at a place, or undefined where it is. */
export function leftAlone(place: Place): string | undefined {
  const isArgument = place.parentPath?.node.type === 'NewExpression' && place.node !== place.parentPath.node.callee;
  return isArgument && place.parentPath?.node.callee?.name === 'RangeError' ? 'the words of a guard' : undefined;
}

export const strykerPlugins = [{ kind: 'Ignore', name: 'messages', value: { shouldIgnore: leftAlone } }];
