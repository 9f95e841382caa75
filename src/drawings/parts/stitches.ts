/** Stitches across tape: a block of zigzag lines. */
import type { Mark } from '../scene.ts';

/** Block of stitches on upright tape. @param x its middle; @param width of the tape's face */
export function stitches(x: number, y: number, width: number, height: number): Mark {
  const half = width / 2 - 2;
  let d = `M${x - half} ${y}`;
  for (let i = 1; i * 4 <= height; i++) d += `L${x + (i % 2 === 1 ? half : -half)} ${y + i * 4}`;
  return { mark: 'path', class: 'seam', d };
}
