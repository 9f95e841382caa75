/** Layout of pictures made at build: boxes in place of markup, and the letters that are drawn as shapes. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** A box of the layout; satori takes such objects in place of markup. */
export interface Box { type: string; props: { style?: Record<string, string | number>; children?: string | Box[] } }

/** A box with its style and what stands in it. */
export const box = (style: Record<string, string | number>, children: string | Box[]): Box => ({ type: 'div', props: { style: { display: 'flex', ...style }, children } });

let fonts: { name: string; data: Buffer; weight: 400 | 700; style: 'normal' }[] | null = null;

/** Letters of pictures; they are drawn as shapes, and no font is sent to readers. */
export const letters = (): NonNullable<typeof fonts> => (fonts ??= ([400, 700] as const).map((weight) => ({
  name: 'Public Sans', weight, style: 'normal', data: readFileSync(join(process.cwd(), `node_modules/@fontsource/public-sans/files/public-sans-latin-${weight}-normal.woff`)),
})));
