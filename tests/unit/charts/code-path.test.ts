/** A drawn code is read back from its picture by two libraries that share nothing with what draws it: one draws the SVG, one reads the picture. */
import jsQR from 'jsqr';
import sharp from 'sharp';
import { encode } from 'uqr';
import { expect, test } from 'vitest';
import { codePath, QUIET_MODULES } from '../../../src/charts/code-path.ts';

/** What the picture of a drawn code says. @param scale pixels a module */
async function read(modules: boolean[][], scale: number): Promise<string | undefined> {
  const { path, side } = codePath(modules);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side * scale}" height="${side * scale}" viewBox="0 0 ${side} ${side}"><rect width="${side}" height="${side}" fill="#fff"/><path d="${path}"/></svg>`;
  const { data, info } = await sharp(Buffer.from(svg)).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
  return jsQR(new Uint8ClampedArray(data), info.width, info.height, { inversionAttempts: 'dontInvert' })?.data;
}

const LINK = 'https://example.org/compare/13/bare-wire/nylon-cord-7/?v=1&bearing=unmeasured&length=60&used=new&demand=rating&oldsling=unknown&oldage=unknown&olduse=unknown&oldlight=unknown&d=2026-11-25.4&m=2';

for (const [what, text] of [
  ['a short address', 'https://example.org/'],
  ['a comparison with its whole rig', LINK],
  ['a comparison with ten own pulls beside it', `${LINK}&t=girth-hitch~hmpe-8~bare-wire~4~-~9.1~10.2~8.8~9.9~10.4~9.3~9.7~10.1~8.9~9.6&f=6.13~19.49~v%3D1%26kg%3D80%26onto%3Dpiece`],
  ['letters of other scripts', 'https://example.org/?q=größe-紐'],
] as const) {
  test(`${what} is read from its picture letter by letter`, async () => {
    expect(await read(encode(text, { ecc: 'M', border: 0 }).data, 6)).toBe(text);
  });
}

test('the drawing is the grid, module for module, within a quiet zone of four', async () => {
  const grid = [[true, true, false], [false, false, true], [true, false, true]];
  const { path, side } = codePath(grid);
  expect([side, QUIET_MODULES]).toEqual([11, 4]);
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${side}" height="${side}" shape-rendering="crispEdges"><rect width="${side}" height="${side}" fill="#fff"/><path d="${path}"/></svg>`;
  const pixels = await sharp(Buffer.from(svg)).greyscale().raw().toBuffer();
  const dark = Array.from(pixels, (value, at) => ({ value, x: at % side, y: Math.floor(at / side) })).filter(({ value }) => value < 128).map(({ x, y }) => `${x - 4},${y - 4}`);
  expect(dark).toEqual(['0,0', '1,0', '2,1', '0,2', '2,2']);
});
