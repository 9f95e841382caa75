/** Line and column of a place in a text. */
import type { Position } from './fault.ts';

/**
 * Gives the function from an offset (UTF-16 units, from 0) to its position.
 * A line ends at `\n`, so a carriage return before it belongs to the line; a
 * tab is one column, as compilers count.
 */
export function positionsOf(file: string, text: string): (offset: number) => Position {
  const starts = [0];
  for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) starts.push(i + 1);
  return (offset) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] as number) <= offset) low = middle;
      else high = middle - 1;
    }
    return { file, line: low + 1, col: Math.max(0, offset) - (starts[low] as number) + 1 };
  };
}
