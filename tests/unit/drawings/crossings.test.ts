/** The crossing finder: what is drawn and what is stated must be the same, both ways. */
import { expect, test } from 'vitest';
import { cross } from '../../../src/drawings/crossings.ts';
import { allDrawings } from '../../../src/drawings/drawings.ts';
import type { Strand } from '../../../src/drawings/scene.ts';

const line = (name: string, points: Strand['points'], says: string): Strand => ({ name, kind: 'cord', closed: false, points, says });
const ACROSS = [[0, 50], [50, 50], [100, 50]] as const;
const DOWN = [[50, 0], [50, 40], [50, 100]] as const;

test('two lines that cross once have one crossing, with the stated one on top', () => {
  const { crossings } = cross([line('across', ACROSS, 'o'), line('down', DOWN, 'u')]);
  expect(crossings).toHaveLength(1);
  expect(crossings[0]?.over.strand).toBe(0);
  expect(crossings[0]?.point[0]).toBeCloseTo(50, 6);
  expect(crossings[0]?.point[1]).toBeCloseTo(50, 6);
});

test('a crossing that is drawn and not stated is an error', () => {
  expect(() => cross([line('across', ACROSS, ''), line('down', DOWN, 'u')])).toThrow('across: comes to 1 crossings and says 0');
});

test('a crossing that is stated and not drawn is an error', () => {
  expect(() => cross([line('across', ACROSS, 'oo'), line('down', DOWN, 'u')])).toThrow('across: comes to 1 crossings and says 2');
});

test('two strands that both say over is an error', () => {
  expect(() => cross([line('across', ACROSS, 'o'), line('down', DOWN, 'o')])).toThrow('across and down at 50,50: one must pass over, one under (got oo)');
});

test('a strand that crosses itself comes to the crossing twice', () => {
  const loop = line('loop', [[0, 100], [60, 40], [50, 0], [40, 40], [100, 100]], 'ou');
  const { crossings } = cross([loop]);
  expect(crossings).toHaveLength(1);
  expect(crossings[0]?.over.at).toBeLessThan(crossings[0]?.under.at as number);
});

test('every drawing states each of its crossings, and no other', () => {
  for (const { method, frame, scene } of allDrawings()) {
    expect(() => cross(scene.strands), `${method} ${frame}`).not.toThrow();
    const said = scene.strands.reduce((sum, { says }) => sum + says.length, 0);
    expect(cross(scene.strands).crossings.length * 2, `${method} ${frame}`).toBe(said);
  }
});
