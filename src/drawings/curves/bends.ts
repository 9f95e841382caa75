/** Control points of plain turns. */
import type { Point } from './point.ts';

/** Half a circle from one place to another on the same height. @param up whether it rises or falls from them */
export function halfTurn(from: number, to: number, y: number, up: boolean): Point[] {
  const [centre, radius] = [(from + to) / 2, Math.abs(to - from) / 2];
  const steps = Math.max(2, Math.round(radius / 3));
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const angle = (Math.PI * i) / steps;
    return [centre + ((from - to) / 2) * Math.cos(angle), y + (up ? -1 : 1) * radius * Math.sin(angle)];
  });
}

/** Straight down or up from one height to another, ends included. */
export function upright(x: number, from: number, to: number): Point[] {
  const steps = Math.max(1, Math.round(Math.abs(to - from) / 16));
  return Array.from({ length: steps + 1 }, (_, i): Point => [x, from + ((to - from) * i) / steps]);
}
