/** Arrows that say which way something goes: in a step, or where a mistake lets it run. */
import type { Point } from '../curves/point.ts';
import type { Mark } from '../scene.ts';

/** A dashed arrow along path data, its head at a place and pointing a way. @param isFault whether it shows what goes wrong */
export function move(d: string, [x, y]: Point, [dx, dy]: Point, isFault = false): Mark[] {
  const length = Math.hypot(dx, dy);
  const [ux, uy] = [dx / length, dy / length];
  const round = (value: number) => Math.round(value * 10) / 10;
  const corner = (side: 1 | -1) => `${round(x - ux * 11 - uy * 6 * side)} ${round(y - uy * 11 + ux * 6 * side)}`;
  return [
    { mark: 'path', class: isFault ? 'run' : 'move', d },
    { mark: 'path', class: isFault ? 'runhead' : 'ink', d: `M${x} ${y}L${corner(1)}L${corner(-1)}z` },
  ];
}
